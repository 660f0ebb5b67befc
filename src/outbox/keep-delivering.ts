import { isPublicAddress } from '../egress/public-address.js';
import { type DeliverSettings, deliver } from './deliver.js';
import { webhookSender } from './send-webhook.js';

export interface DeliveriesSettings extends Omit<DeliverSettings, 'sender' | 'signal'> {
  readonly version: string;
  /** Allows receivers on this machine and in its network. */
  readonly allowPrivate: boolean;
}

const EVERY_MS = 5000;
/** Deliveries at a time; a slow receiver occupies only one of them. */
const AT_ONCE = 16;

/** A running delivery loop. */
export interface Delivering {
  /** Starts the deliveries that are due, up to the limit. */
  begin(): Promise<void>;
  /** Starts nothing new and aborts what is under way, which is sent again later. */
  stop(): Promise<void>;
}

/** Sends the messages that are due, a few subscriptions at a time, until stopped. */
export function delivering(settings: DeliverSettings): Delivering {
  const underWay = new Map<string, Promise<void>>();
  let asking: Promise<void> | null = null;

  const ask = async (): Promise<void> => {
    const room = AT_ONCE - underWay.size;
    if (room <= 0 || settings.signal.aborted) return;
    // Deliveries under way are leased or about to be, so they are not due.
    const due = await settings.store.dueDeliveries(settings.clock().getTime(), AT_ONCE);
    for (const one of due.filter((ref) => !underWay.has(nameOf(ref))).slice(0, room)) {
      const sending = deliver(one, settings)
        .then(
          () => true,
          (err: unknown) => {
            settings.log.error({ err }, 'a message cannot be sent now');
            return false;
          },
        )
        .then((isDone) => {
          underWay.delete(nameOf(one));
          // A slot is free, and the subscription may have another message. After a fault of the database the next round
          // retries.
          if (isDone) void begin();
        });
      underWay.set(nameOf(one), sending);
    }
  };
  const begin = (): Promise<void> => {
    asking ??= ask()
      .catch((err: unknown) => settings.log.error({ err }, 'the messages that are due cannot be asked for now'))
      .finally(() => {
        asking = null;
      });
    return asking;
  };
  return {
    begin,
    async stop() {
      await asking;
      await Promise.all(underWay.values());
    },
  };
}

const nameOf = ({ owner, subscription }: { owner: string; subscription: string }): string => `${owner} ${subscription}`;

/** Sends the messages that are due, at once and then every few seconds, until stopped. */
export function keepDelivering({ version, allowPrivate, ...settings }: DeliveriesSettings): { stop(): Promise<void> } {
  const stopping = new AbortController();
  const sender = webhookSender({
    userAgent: `germination-forecaster/${version}`,
    isAllowed: (address) => allowPrivate || isPublicAddress(address),
    allowHttp: allowPrivate,
  });
  const work = delivering({ ...settings, sender, signal: stopping.signal });
  void work.begin();
  const timer = setInterval(() => void work.begin(), EVERY_MS);
  timer.unref();
  return {
    async stop() {
      clearInterval(timer);
      stopping.abort();
      await work.stop();
      await sender.close();
    },
  };
}
