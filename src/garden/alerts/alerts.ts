import { isWanted, type KnownNow, type SowingNow } from '../sowing/known-now.js';
import type { AlertEvent, SubscriptionFields } from '../store/alert-store.js';
import { emergenceNews } from './emergence-news.js';
import { frostNews } from './frost-news.js';
import { hotSpellNews } from './hot-spell-news.js';
import type { News, NewsData } from './news.js';
import { sowAgainNews } from './sow-again-news.js';
import { windowNews } from './window-news.js';

/** Something that is to be remembered as told of a subject, or forgotten; `data` where somebody is to hear of it. */
export interface Alert {
  readonly event: AlertEvent;
  readonly subject: string;
  /** The stored report before and after; null: none. */
  readonly before: string | null;
  readonly mark: string | null;
  readonly data: NewsData | null;
}

const ofSowing: Record<
  Exclude<AlertEvent, 'window-open'>,
  (known: SowingNow, told: string | null) => News | undefined
> = {
  'hot-spell': hotSpellNews,
  'emergence-shift': emergenceNews,
  frost: frostNews,
  'sow-again': sowAgainNews,
};

/**
 * What a subscription is to be told, from what is known now and what was last told. What is no longer known, or no
 * longer wanted, is forgotten.
 *
 * @param told What was last told, by subject.
 */
export function alertsOf(
  subscription: SubscriptionFields,
  told: ReadonlyMap<string, string>,
  known: KnownNow,
): Alert[] {
  const alerts: Alert[] = [];
  const subjects = new Set<string>();
  const consider = (event: AlertEvent, of: string, newsOf: (told: string | null) => News | undefined): void => {
    if (!subscription.events.includes(event)) return;
    const subject = `${event} ${of}`;
    subjects.add(subject);
    const before = told.get(subject) ?? null;
    const news = newsOf(before);
    if (news && (news.mark !== before || news.data)) alerts.push({ event, subject, before, ...news });
  };
  for (const one of known.sowings) {
    if (!isWanted(subscription, one.sowing.bed, one.crop.id)) continue;
    for (const [event, newsOf] of Object.entries(ofSowing) as [keyof typeof ofSowing, typeof hotSpellNews][]) {
      consider(event, one.sowing.id, (before) => newsOf(one, before));
    }
  }
  for (const one of known.windows) {
    if (!isWanted(subscription, one.bed, one.crop.id)) continue;
    consider('window-open', `${one.bed} ${one.crop.id}`, (before) => windowNews(one, before));
  }
  for (const [subject, before] of told) {
    if (subjects.has(subject)) continue;
    alerts.push({ event: subject.split(' ')[0] as AlertEvent, subject, before, mark: null, data: null });
  }
  return alerts;
}
