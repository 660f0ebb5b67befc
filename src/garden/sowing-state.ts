import { FEWEST_YEARS, yearsTold } from '../answers/past-soil.js';
import type { Bed as QuestionBed } from '../answers/question.js';
import type { SowingWindow } from '../answers/sowing-windows.js';
import { dateAt, daysBetween, type PlainDate } from '../basics/calendar.js';
import type { Note } from '../basics/errors.js';
import type { DailyMinima } from '../climate/frost-dates.js';
import type { Crop } from '../germination/crop.js';
import { chosenCrop } from '../germination/crop-choice.js';
import { type Asker, growingNow, windowsAhead } from './ask.js';
import type { Growing, GrowingQuestion, Grown } from './growing.js';
import { type Harvest, harvestOf } from './harvest.js';
import { type IndoorStart, indoorsOf, nightsBear, USUAL_ROOM_C } from './indoors.js';
import { type Expected, expectedOf, type Judgement, judgementOf, type Observed, observedOf } from './judgement.js';
import { type Kept, keptBed } from './kept-soil.js';
import { lotForQuestion } from './lot-now.js';
import type { CountedSowing, SeedLot, Sowing } from './season-store.js';
import type { Store } from './store.js';

/** All that is kept and bears on a sowing. */
export interface KnownSowing extends CountedSowing {
  readonly kept: Kept;
  readonly crop: Crop;
  readonly lot: SeedLot | null;
  readonly question: GrowingQuestion;
  readonly now: Date;
  /** At the place. */
  readonly today: PlainDate;
}

/** How a sowing stands today. */
export interface SowingState {
  /** null: its bed's temperatures do not tell; `warnings` say why. */
  readonly growing: Growing | null;
  readonly expected: Expected | null;
  readonly observed: Observed | null;
  readonly judgement: Judgement | null;
  readonly indoors: IndoorStart | null;
  readonly harvest: Harvest | null;
  /** The last date on which a new sowing is still good; null without past years. */
  readonly resowBy: PlainDate | null;
  readonly warnings: readonly Note[];
}

/** So many of a bed's sowings are looked at, and so many of a crop teach. */
const MOST_LOOKED_AT = 60;
const MOST_LESSONS = 12;

/** What is kept and bears on a sowing; undefined where its bed is gone. */
export async function knownSowing(
  store: Store,
  owner: string,
  { sowing, counts }: CountedSowing,
  now: Date,
): Promise<KnownSowing | undefined> {
  const [kept, others, lot] = await Promise.all([
    keptBed(store, owner, sowing.bed, now.getTime()),
    lessonsOf(store, owner, sowing.bed, sowing),
    sowing.lot === null ? undefined : store.lot(owner, sowing.lot),
  ]);
  if (!kept) return undefined;
  const crop = chosenCrop(sowing.crop);
  const isIndoors = sowing.method === 'indoors';
  const question: GrowingQuestion = {
    ...grown({ sowing, counts }, lot),
    crop,
    site: kept.site,
    zoneFromStamps: false,
    bed: isIndoors ? tray(kept, sowing) : kept.bedMake!,
    timeFactor: null,
    standFactor: null,
    learned: null,
    countDays: null,
    series: isIndoors ? [] : kept.series,
    understood: [],
    beyond: null,
    normals: kept.normals,
    others,
  };
  return { sowing, counts, kept, crop, lot: lot ?? null, question, now, today: dateAt(now.getTime(), kept.site.zone) };
}

/**
 * A bed's counted sowings of a crop, sown in the same way: what they have taught bears on the next one.
 *
 * @param like The crop and the way; with an id, a sowing that is itself left out.
 */
export async function lessonsOf(
  store: Store,
  owner: string,
  bed: string,
  like: Pick<Sowing, 'crop' | 'method'> & { readonly id?: string },
): Promise<Grown[]> {
  const ofBed = await store.sowingsOf(owner, bed, MOST_LOOKED_AT);
  const alike = ofBed
    .filter(
      ({ sowing: { id, crop, method }, counts }) =>
        id !== like.id &&
        counts.length > 0 &&
        method === like.method &&
        JSON.stringify(crop) === JSON.stringify(like.crop),
    )
    .slice(-MOST_LESSONS);
  const ids = [...new Set(alike.flatMap(({ sowing: { lot } }) => lot ?? []))];
  const lots = new Map(await Promise.all(ids.map(async (id) => [id, await store.lot(owner, id)] as const)));
  return alike.map((one) => grown(one, one.sowing.lot === null ? undefined : lots.get(one.sowing.lot)));
}

const grown = ({ sowing, counts }: CountedSowing, lot: SeedLot | undefined): Grown => ({
  sowing,
  lot: lot ? lotForQuestion(lot, sowing.date) : null,
  lotId: sowing.lot,
  counts,
});

/** A tray is as warm as the room: as the sowing says, else the bed, if that is one indoors. */
const tray = ({ bedMake }: Kept, { roomC }: Sowing): QuestionBed => ({
  kind: 'indoors',
  cover: 'bare',
  moisture: 'moist',
  shadePercent: 0,
  roomC: roomC ?? bedMake?.roomC ?? USUAL_ROOM_C,
  wettedOn: null,
});

/** How a sowing stands: what it does, what was found, and what may still be done. */
export async function sowingState(known: KnownSowing, ask: Asker): Promise<SowingState> {
  const { sowing, counts, kept, crop, today } = known;
  const told = await growingNow(known, ask);
  const growing = 'why' in told ? null : told;
  const warnings = 'why' in told ? [told.why] : [];
  const indoors = indoorStartOf(known);
  const half = growing?.forecast.emergence.half;
  const up = half && 'date' in half ? half.date : null;
  const evidence = growing && {
    crop,
    forecast: growing.forecast,
    posterior: growing.posterior,
    counts,
    seeds: sowing.seeds,
    today,
  };
  return {
    growing,
    expected: growing && expectedOf(growing.forecast, today),
    observed: evidence && observedOf(evidence),
    judgement: evidence && judgementOf(evidence),
    indoors,
    harvest: up && harvestOf(crop, { half: up, plantedOut: indoors?.plantOut ?? null }, kept.site.latitude),
    resowBy: sowing.method === 'direct' ? await resowBy(known, ask) : null,
    warnings,
  };
}

/** When a sowing that stands indoors is hardened off and planted out; null: it does not, or comes to nothing there. */
export const indoorStartOf = ({ sowing, crop, question, kept }: KnownSowing): IndoorStart | null =>
  sowing.method === 'indoors'
    ? indoorsOf(crop, sowing.date, question.bed.roomC!, nightsBear(minimaOf(kept), crop.frost))
    : null;

/** The air's minima that are kept, day by day from the first one on; NaN where none is. */
export function minimaOf({ series }: Kept): DailyMinima | null {
  const air = series.find(({ medium, origin }) => medium === 'air' && origin === 'measured');
  const firstDate = air?.days[0]?.date;
  if (!air || firstDate === undefined) return null;
  const minC = new Float64Array(daysBetween(firstDate, air.days.at(-1)!.date) + 1).fill(Number.NaN);
  for (const { date, min } of air.days) minC[daysBetween(firstDate, date)] = min ?? Number.NaN;
  return { firstDate, minC };
}

/** Windows further apart than this are of two seasons [d]. */
const SEASON_GAP_DAYS = 90;

async function resowBy({ kept, crop, question, sowing, today }: KnownSowing, ask: Asker): Promise<PlainDate | null> {
  if (yearsTold(kept.series) < FEWEST_YEARS) return null;
  const { time, depthCm } = sowing;
  const found = await windowsAhead(kept, today, { crop, time, depthCm, lot: question.lot }, ask);
  return 'why' in found || found.years.count === 0 ? null : lastGoodDate(found.windows);
}

/** The end of the season's windows: of those that a summer's heat parts, the last. */
export function lastGoodDate(windows: readonly Pick<SowingWindow, 'from' | 'to'>[]): PlainDate | null {
  let last: PlainDate | null = null;
  for (const { from, to } of windows) {
    if (last !== null && daysBetween(last, from) > SEASON_GAP_DAYS) break;
    last = to;
  }
  return last;
}
