import type { FastifyRequest } from 'fastify';
import { WEEK_DAYS } from '../../../answers/week/this-week.js';
import { aheadFact } from '../../../answers/week/week-facts.js';
import { addDays, type PlainDate } from '../../../basics/calendar.js';
import { basisCode } from '../../../basics/series.js';
import type { SowingAnswer } from '../../../contract/sowings.js';
import type { WeekAnswer } from '../../../contract/this-week.js';
import { type BedRecords, bedRows, type PlaceRecords } from '../../../garden/bed/bed-records.js';
import { onceEach } from '../../../garden/bed/bed-season.js';
import type { CountedSowing } from '../../../garden/store/season-store.js';
import type { ComingDays, Store } from '../../../garden/store/store.js';
import { workPortOf } from '../../../worker/work-port-of.js';
import { ownerOf } from '../../auth/owner.js';
import type { Unworded } from '../../negotiation/worded.js';
import type { Service } from '../../question/endpoint.js';
import { cachedSowing } from '../sowings/cached-sowing.js';

/** The last so many sowings of a place are told of: each is a forecast of its own. */
const MAX_SOWINGS = 25;
/** An older sowing no longer grows, whatever is known of its harvest [d]. */
const MAX_DAYS = 366;
const PAGE = 100;

interface SownThere {
  readonly counted: CountedSowing;
  readonly rows: BedRecords;
}

/** The last sowings of a bed, or of all beds of a place. */
export async function sownThere(
  store: Store,
  owner: string,
  { place, bed, today }: PlaceRecords,
  nowMs: number,
): Promise<SownThere[]> {
  const beds = bed ? [bed.id] : await bedsOf(store, owner, place.id);
  const found: SownThere[] = [];
  for (const id of beds) {
    const rows = await bedRows(store, owner, id, nowMs);
    if (!rows) continue;
    const last = await store.sowingsOf(owner, id, MAX_SOWINGS);
    found.push(...last.map((counted) => ({ counted, rows })));
  }
  return found
    .filter(({ counted: { sowing } }) => sowing.date >= addDays(today, -MAX_DAYS) && sowing.date <= today)
    .sort((a, b) => (a.counted.sowing.date < b.counted.sowing.date ? 1 : -1))
    .slice(0, MAX_SOWINGS);
}

async function bedsOf(store: Store, owner: string, place: string): Promise<string[]> {
  const found: string[] = [];
  for (let after: string | undefined; ; ) {
    const page = await store.beds(owner, { after, limit: PAGE });
    found.push(...page.filter((bed) => bed.place === place).map(({ id }) => id));
    after = page.at(-1)?.id;
    if (page.length < PAGE) return found;
  }
}

/** What grows there, what there is to do about it, and what the coming days bring. */
export type GrowingThere = Pick<Unworded<WeekAnswer>, 'sown' | 'toDo' | 'plantOut' | 'ahead'>;

/**
 * What grows there today.
 *
 * @param from The first day of the week. Tasks and weather are told where it is today; else only what grows.
 */
export async function growingThere(
  service: Service,
  request: FastifyRequest,
  sown: readonly SownThere[],
  {
    place,
    today,
    from,
    now,
  }: {
    readonly place: string;
    readonly today: PlainDate;
    readonly from: PlainDate;
    readonly now: Date;
  },
): Promise<GrowingThere> {
  const isToday = from === today;
  const to = addDays(from, WEEK_DAYS);
  const owner = ownerOf(request);
  const ask = onceEach(workPortOf(service.work, request.askedBy()));
  const open: SowingAnswer[] = [];
  for (const { counted, rows } of sown) {
    const answer = await cachedSowing(service, request, counted, rows, { ask, now });
    if (!isOver(answer, rows.today)) open.push(answer);
  }
  const frost = isToday ? frostAhead(await service.store.comingDays(owner, place), today) : null;
  const told = isToday ? open : [];
  return {
    sown: open.map(({ id, bed, crop, date }) => ({
      crop,
      sowing: id,
      bed,
      date,
    })),
    toDo: told.flatMap(({ id, toDo }) => toDo.filter(({ from }) => from <= to).map((one) => ({ sowing: id, ...one }))),
    plantOut: told.flatMap((one) => plantingOut(one, to)),
    ahead: [...(frost ? [frost] : []), ...told.flatMap((one) => heatAhead(one, today))],
  };
}

const isOver = ({ judgement, harvest }: SowingAnswer, today: PlainDate): boolean =>
  judgement?.verdict === 'lost' || (harvest !== null && harvest.to < today);

const plantingOut = ({ id, crop, toDo }: SowingAnswer, to: PlainDate): GrowingThere['plantOut'] =>
  toDo
    .filter(({ task, from }) => task === 'plant-out' && from <= to)
    .map(({ task: _task, ...one }) => ({
      crop: String(crop),
      sowing: id,
      ...one,
    }));

type Ahead = GrowingThere['ahead'][number];

/** Frost in the coming nights, as forecast; null: none. */
function frostAhead(coming: ComingDays | undefined, today: PlainDate): Ahead | null {
  const nights = (coming?.days ?? []).filter(({ date, min }) => date >= today && min !== null && min <= 0);
  const [first] = nights;
  if (!first) return null;
  const dates = { from: first.date, to: nights.at(-1)!.date };
  const minC = Math.min(...nights.map(({ min }) => min!));
  return {
    code: 'frost',
    ...dates,
    text: aheadFact('ahead.frost', { ...dates, minC, nights: nights.length }),
  };
}

/** The last basis of a day that somebody measured or forecast: what comes after it is supposed. */
const FORECAST = basisCode('forecast');

/** Hot spells of a sowing that begin on days that were measured or forecast. */
function heatAhead({ id, crop, forecast }: SowingAnswer, today: PlainDate): Ahead[] {
  const known = new Set(forecast?.daily.flatMap(({ date, basis }) => (basisCode(basis) <= FORECAST ? [date] : [])));
  return (forecast?.hotSpells ?? [])
    .filter(({ from, to }) => to >= today && known.has(from))
    .map(({ from, to, peakC, thresholdC }) => ({
      code: 'hot-spell',
      sowing: id,
      from,
      to,
      text: aheadFact('ahead.hot-spell', {
        crop: String(crop),
        from,
        to,
        peakC,
        thresholdC,
      }),
    }));
}
