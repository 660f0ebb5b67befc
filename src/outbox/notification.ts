import type { Say } from '../basics/fact.js';
import type { Alert } from '../garden/alerts/alerts.js';
import type { Notification } from '../garden/store/alert-store.js';

/**
 * An alert as it is stored and sent: numbers rounded to a tenth for readers, and a text with its code and parameters.
 */
export function notificationOf({ event, subject, before, mark, data }: Alert, nowMs: number, say: Say): Notification {
  const message = data && {
    type: event,
    timestamp: new Date(nowMs).toISOString(),
    data: { ...data, text: say(data.text), ...data.text },
  };
  return { subject, before, mark, body: message && JSON.stringify(message, tenths) };
}

const tenths = (_: string, value: unknown): unknown =>
  typeof value === 'number' ? Math.round(10 * value) / 10 : value;
