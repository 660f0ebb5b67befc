import { DAY_MS, dateAt, type PlainDate, zoneNamed } from '../basics/calendar.js';
import { digestOfJson } from '../basics/digest.js';
import type { Poll } from '../garden/store/alert-store.js';
import type { Store } from '../garden/store/store.js';

/** State of a garden at a poll. */
export interface Watermark {
  /** Changes with every revision: when it is equal, nothing has changed. */
  readonly quick: string;
  /** Changes with whatever can change a message, but not with each reading. */
  readonly exact: string;
  /** Mean of each thermometer's last day of readings [°C], by bed and thermometer; null: no readings in that day. */
  readonly soilC: Readonly<Record<string, number | null>>;
}

/** Smallest relevant change of the soil [K]: it moves half emergence by some hours. Our judgement. */
const SOIL_MOVED_K = 0.5;
/** Latest sowings of a bed that count. */
const MAX_SOWINGS = 200;

/** The watermark's quick part, from every revision and date, without further reading. */
export function quickWatermark({ subscription, beds }: Poll, version: string, nowMs: number): string {
  const dated = beds.map(({ timeZone, ...bed }) => ({ ...bed, today: todayAt(timeZone, nowMs) }));
  return digestOfJson([version, subscription.revision, dated]);
}

/** The current state of the garden, as far as it can change a message of the subscription. */
export async function watermark(
  store: Store,
  owner: string,
  poll: Poll,
  version: string,
  nowMs: number,
): Promise<Watermark> {
  const { subscription, beds } = poll;
  const soilC: Record<string, number | null> = {};
  const parts: unknown[] = [version, subscription.revision];
  for (const { id, placeRevision, timeZone } of beds) {
    if (subscription.beds !== null && !subscription.beds.includes(id)) continue;
    const [bed, counted, thermometers] = await Promise.all([
      store.bed(owner, id),
      store.sowingsOf(owner, id, MAX_SOWINGS),
      store.series(owner, id),
    ]);
    const lots = [...new Set(counted.flatMap(({ sowing }) => sowing.lot ?? []))];
    const { revision: _, calendarToken: __, ...make } = bed ?? { revision: 0, calendarToken: null };
    parts.push(
      [id, placeRevision, todayAt(timeZone, nowMs), make, counted],
      await Promise.all(lots.map((lot) => store.lot(owner, lot))),
      // Readings earlier than the first before are a change too.
      thermometers.map(({ medium, probeDepthCm, from }) => [medium, probeDepthCm, from]),
    );
    for (const { medium, probeDepthCm } of thermometers) {
      const probe = { medium, probeDepthCm };
      const lately = await store.readings(owner, id, probe, { fromMs: nowMs - DAY_MS, toMs: nowMs });
      soilC[`${id} ${medium} ${probeDepthCm}`] = meanOf(lately.valueC);
    }
  }
  return { quick: quickWatermark(poll, version, nowMs), exact: digestOfJson(parts), soilC };
}

/** True when a message may have changed between two polls. */
export const hasMoved = (before: Watermark, now: Watermark): boolean =>
  before.exact !== now.exact ||
  Object.entries(now.soilC).some(([thermometer, meanC]) => {
    const wasC = before.soilC[thermometer] ?? null;
    return meanC === null || wasC === null ? meanC !== wasC : Math.abs(meanC - wasC) > SOIL_MOVED_K;
  });

/** A stored watermark; null when another version of the program wrote it. */
export function watermarkFrom(text: string | null): Watermark | null {
  if (!text?.startsWith('{')) return null;
  return JSON.parse(text) as Watermark;
}

const todayAt = (timeZone: string, nowMs: number): PlainDate => dateAt(nowMs, zoneNamed(timeZone));

const meanOf = (values: ArrayLike<number>): number | null => {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]!;
  return values.length === 0 ? null : sum / values.length;
};
