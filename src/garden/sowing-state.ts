import { FEWEST_YEARS, yearsTold } from '../answers/past-soil.js';
import type { Bed as QuestionBed } from '../answers/question.js';
import { seedOf, viablePercentOf } from '../answers/seed-of.js';
import type { SowingWindow } from '../answers/sowing-windows.js';
import { addDays, dateAt, daysBetween, type PlainDate } from '../basics/calendar.js';
import type { Note } from '../basics/errors.js';
import type { DailyMinima } from '../climate/frost-dates.js';
import type { Crop } from '../germination/crop.js';
import { chosenCrop } from '../germination/crop-choice.js';
import { type Asker, growingNow, windowsAhead } from './ask.js';
import { frostEnd } from './frost-end.js';
import type { Growing, GrowingQuestion, Grown } from './growing.js';
import { type Harvest, harvestOf } from './harvest.js';
import { type IndoorStart, indoorsOf, nightsBear, USUAL_ROOM_C, weeksUntilFit } from './indoors.js';
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
  /** When a new sowing is good; null: past years do not tell. */
  readonly resowing: Resowing | 'too-late' | null;
  readonly warnings: readonly Note[];
}

/** From the first date of a season that is still to come, or today, to its last. */
export interface Resowing {
  readonly from: PlainDate;
  readonly by: PlainDate;
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
  const { sowing, counts, crop, question, today } = known;
  const told = await growingNow(known, ask);
  const growing = 'why' in told ? null : told;
  const warnings = 'why' in told ? [told.why] : [];
  const indoors = indoorStartOf(known);
  const half = growing?.forecast.emergence.half;
  const up = half && 'date' in half ? half.date : null;
  const evidence = growing && {
    crop,
    forecast: growing.forecast,
    viablePercent: viablePercentOf(question, seedOf(question)),
    posterior: growing.posterior,
    isOverdue: growing.isOverdue,
    counts,
    seeds: sowing.seeds,
    today,
  };
  const judgement = evidence && judgementOf(evidence);
  const ripe = up ? ripeOf(known)({ half: up, plantedOut: indoors?.plantOut ?? null }) : { harvest: null };
  return {
    growing,
    expected: growing && expectedOf(growing.forecast, today),
    observed: evidence && observedOf(evidence),
    judgement,
    indoors,
    harvest: judgement?.verdict === 'lost' ? null : ripe.harvest,
    resowing: sowing.method === 'direct' ? await resowing(known, ask) : null,
    warnings: [...warnings, ...('why' in ripe ? [ripe.why] : [])],
  };
}

/** When a sowing may be ready, as far as frost lets it; or why frost takes it before. */
function ripeOf({ crop, kept }: Pick<KnownSowing, 'crop' | 'kept'>) {
  const { latitude } = kept.site;
  const endAfter = frostEnd(minimaOf(kept), crop.frost, latitude);
  return (from: Parameters<typeof harvestOf>[1]): { readonly harvest: Harvest | null; readonly why?: Note } => {
    const harvest = harvestOf(crop, from, latitude);
    const end = harvest && endAfter(from.plantedOut ?? from.half);
    if (!end || harvest.to <= end) return { harvest };
    if (harvest.from < end) return { harvest: { ...harvest, to: end } };
    const text = `Frost ends ${crop.name.toLowerCase()} about ${end} in the middle of past years, before any of it is ready: under glass or a cover it may go on.`;
    return { harvest: null, why: { code: 'frost-before-harvest', text } };
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

async function resowing(known: KnownSowing, ask: Asker): Promise<SowingState['resowing']> {
  const { kept, crop, question, sowing, today } = known;
  if (yearsTold(kept.series) < FEWEST_YEARS) return null;
  const { time, depthCm } = sowing;
  const isToCome = sowing.date > today;
  const from = isToCome ? sowing.date : today;
  // A window is a week or more: asked for from its last days on, it would be none.
  const found = await windowsAhead(kept, addDays(from, -7), { crop, time, depthCm, lot: question.lot }, ask);
  if ('why' in found || found.years.count === 0) return null;
  return resowingIn(found.windows, from, worthSowing(known));
}

/** Published days are stretched at most so far before a sowing is one for another season. Our assumption. */
const LONGEST_STRETCH = 1.5;

/** Is what is sown on a date ready in the same season, before frost ends it? Of a crop nobody knows the days of: yes. */
function worthSowing({ crop, kept }: KnownSowing): (date: PlainDate, halfDays: number) => boolean {
  const untilFit = crop.maturity?.countedFrom === 'planting-out' ? 7 * (weeksUntilFit(crop) ?? 0) : null;
  const ripe = ripeOf({ crop, kept });
  return (date, halfDays) => {
    const half = addDays(date, Math.round(halfDays));
    const { harvest, why } = ripe({ half, plantedOut: untilFit === null ? null : addDays(half, untilFit) });
    if (why) return false;
    const publishedDays = (crop.maturity?.fromDays ?? 0) + (untilFit === null ? 0 : halfDays + untilFit);
    return !harvest || daysBetween(date, harvest.from) <= LONGEST_STRETCH * publishedDays;
  };
}

/**
 * When there is time for a new sowing in the season of a date: of windows that a summer's heat parts, the last ends it, or
 * earlier what would no more be ready.
 *
 * @param windows From about that date on, in the order of time.
 * @param isWorth Is what is sown on a date, and half up after so many days, ready in time?
 */
export function resowingIn(
  windows: readonly Pick<SowingWindow, 'from' | 'to' | 'halfDays'>[],
  date: PlainDate,
  isWorth: (date: PlainDate, halfDays: number) => boolean = () => true,
): Resowing | 'too-late' {
  const open = windows.filter(({ to }) => to >= date);
  const end = open.findIndex(({ from }, i) => daysBetween(open[i - 1]?.to ?? date, from) > SEASON_GAP_DAYS);
  const dates = (end < 0 ? open : open.slice(0, end)).flatMap(({ from, to, halfDays }) => {
    const first = from > date ? from : date;
    return Array.from({ length: daysBetween(first, to) + 1 }, (_, day) => addDays(first, day)).filter((one) =>
      isWorth(one, halfDays?.p50 ?? 0),
    );
  });
  const [first, last] = [dates[0], dates.at(-1)];
  return first && last ? { from: first, by: last } : 'too-late';
}

/** The last date on which a new sowing is still good; null where there is none this season, or nobody knows. */
export const resowByOf = ({ resowing }: Pick<SowingState, 'resowing'>): PlainDate | null =>
  resowing === null || resowing === 'too-late' ? null : resowing.by;
