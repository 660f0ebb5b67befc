import { DAY_MS, dateAt, type PlainDate, zoneNamed } from '../basics/calendar.js';
import { digestOfJson } from '../basics/digest.js';
import type { Poll } from '../garden/store/alert-store.js';
import type { Store } from '../garden/store/store.js';

/** What a garden was like when it was looked at. */
export interface Watermark {
  /** Changes with every revision: where it is the same, all is the same. */
  readonly quick: string;
  /** Changes with whatever can change a message, but not with each reading. */
  readonly exact: string;
  /** The mean of each thermometer's last day of readings [°C], by bed and thermometer; null: it has read nothing since. */
  readonly soilC: Readonly<Record<string, number | null>>;
}

/** Soil that has moved by less than this says nothing new [K]: it moves half emergence by some hours. Our judgement. */
const SOIL_MOVED_K = 0.5;
/** Of a bed's sowings the last so many are looked at. */
const MAX_SOWINGS = 200;

/** The look itself, before anything else is read: with every revision and date. */
export function quickWatermark({ subscription, beds }: Poll, version: string, nowMs: number): string {
  const dated = beds.map(({ timeZone, ...bed }) => ({ ...bed, today: todayAt(timeZone, nowMs) }));
  return digestOfJson([version, subscription.revision, dated]);
}

/** What the garden is like now, as far as it can change a message of the subscription. */
export async function watermark(
  store: Store,
  owner: string,
  look: Poll,
  version: string,
  nowMs: number,
): Promise<Watermark> {
  const { subscription, beds } = look;
  const soilC: Record<string, number | null> = {};
  const said: unknown[] = [version, subscription.revision];
  for (const { id, placeRevision, timeZone } of beds) {
    if (subscription.beds !== null && !subscription.beds.includes(id)) continue;
    const [bed, counted, thermometers] = await Promise.all([
      store.bed(owner, id),
      store.sowingsOf(owner, id, MAX_SOWINGS),
      store.series(owner, id),
    ]);
    const lots = [...new Set(counted.flatMap(({ sowing }) => sowing.lot ?? []))];
    const { revision: _, calendarToken: __, ...make } = bed ?? { revision: 0, calendarToken: null };
    said.push(
      [id, placeRevision, todayAt(timeZone, nowMs), make, counted],
      await Promise.all(lots.map((lot) => store.lot(owner, lot))),
      // Earlier readings than before are news as well.
      thermometers.map(({ medium, probeDepthCm, from }) => [medium, probeDepthCm, from]),
    );
    for (const { medium, probeDepthCm } of thermometers) {
      const probe = { medium, probeDepthCm };
      const lately = await store.readings(owner, id, probe, { fromMs: nowMs - DAY_MS, toMs: nowMs });
      soilC[`${id} ${medium} ${probeDepthCm}`] = meanOf(lately.valueC);
    }
  }
  return { quick: quickWatermark(look, version, nowMs), exact: digestOfJson(said), soilC };
}

/** May a message have changed between two looks? */
export const hasMoved = (before: Watermark, now: Watermark): boolean =>
  before.exact !== now.exact ||
  Object.entries(now.soilC).some(([thermometer, meanC]) => {
    const wasC = before.soilC[thermometer] ?? null;
    return meanC === null || wasC === null ? meanC !== wasC : Math.abs(meanC - wasC) > SOIL_MOVED_K;
  });

/** A mark as it was kept; null where it is none of this program. */
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
