import { addDays, type PlainDate } from '../../basics/calendar.js';
import type { BedSeason, GrowingPlan, GrowingSowing } from '../calendar/calendar-season.js';
import { planQuestionOf } from '../plan/plan-question.js';
import { sowingsToMake } from '../plan/sowings-to-make.js';
import { type KnownSowing, knownSowing } from '../sowing/known-sowing.js';
import { resowByOf } from '../sowing/resowing.js';
import { sowingState } from '../sowing/sowing-state.js';
import { orUnanswered, type SeasonWorkPort, type WorkPort } from '../sowing/work-port.js';
import type { CountedSowing, Plan } from '../store/season-store.js';
import type { Bed, Store } from '../store/store.js';
import { type BedInputs, inputsOfRows } from './bed-inputs.js';
import type { BedRecords } from './bed-records.js';
import { comingMinima } from './coming-minima.js';

/** What is kept of a bed and of what lately grew in it. */
export interface KnownSeason {
  readonly owner: string;
  readonly bed: Bed;
  readonly kept: BedInputs;
  readonly sowings: readonly CountedSowing[];
  readonly plans: readonly Plan[];
  readonly now: Date;
  readonly today: PlainDate;
}

/** Sowings are spoken of for so long [d], which is longer than most crops stand, */
const SEASON_DAYS = 240;
/** and the last so many of them: each is a forecast of its own. */
const MAX_SOWINGS = 20;
/** Maximum plans of a bed in its season: the first by id whose harvest is not over. */
const MAX_PLANS = 10;
/** Maximum plans read to find them. */
const MAX_PLANS_LOOKED_AT = 100;

/** What is kept of a bed's season. */
export async function knownSeason(store: Store, owner: string, rows: BedRecords, now: Date): Promise<KnownSeason> {
  const { bed, today } = rows;
  const [kept, last, plans] = await Promise.all([
    inputsOfRows(store, owner, rows),
    store.sowingsOf(owner, bed.id, MAX_SOWINGS),
    store.plans(owner, { bed: bed.id, limit: MAX_PLANS_LOOKED_AT }),
  ]);
  const sowings = last.filter(({ sowing: { date } }) => date >= addDays(today, -SEASON_DAYS));
  return {
    owner,
    bed,
    kept,
    sowings,
    plans: plans.filter(({ harvest }) => harvest.to >= today).slice(0, MAX_PLANS),
    now,
    today,
  };
}

/** What grows in a bed, and will, sowing by sowing and plan by plan: each takes its time, and one waits for the other. */
export async function bedSeason(store: Store, known: KnownSeason, ask: SeasonWorkPort): Promise<BedSeason> {
  const { owner, bed, kept, now } = known;
  const windowsOnce = onceEach(ask);
  const sowings: GrowingSowing[] = [];
  for (const counted of known.sowings) {
    sowings.push(await growingSowing(await knownSowing(store, owner, counted, kept, now), windowsOnce));
  }
  const plans: GrowingPlan[] = [];
  for (const plan of known.plans) plans.push(...(await growingPlan(plan, known, ask)));
  return { bed, sowings, plans, comingMinC: await comingMinima(store, owner, kept) };
}

/** A lost sowing shows only its date and until when it can be made again; a good one shows no such date. */
async function growingSowing(known: KnownSowing, ask: WorkPort): Promise<GrowingSowing> {
  const { growing, judgement, indoors, harvest, resowing, triage } = await sowingState(known, ask);
  const verdict = judgement?.verdict;
  const isLost = verdict === 'lost';
  return {
    sowing: known.sowing,
    crop: known.crop,
    forecast: growing && !isLost ? growing.forecast : null,
    indoors: isLost ? null : indoors,
    harvest,
    isSparse: verdict === 'thin',
    resowBy: verdict === 'good' ? null : resowByOf(resowing),
    sowAgain: triage?.do === 'sow-again' ? triage.text : null,
  };
}

/** The sowings that a plan still needs; none where the stored data cannot tell. */
async function growingPlan(
  plan: Plan,
  { kept, today, sowings }: KnownSeason,
  ask: SeasonWorkPort,
): Promise<GrowingPlan[]> {
  const planned = await orUnanswered(async () => {
    const question = planQuestionOf(
      plan,
      kept,
      today,
      sowings.map(({ sowing }) => sowing),
    );
    return { crop: question.crop, ...(await ask.plan(question)) };
  });
  return 'why' in planned ? [] : [{ plan, crop: planned.crop, sowings: sowingsToMake(plan, planned) }];
}

/** Sowings of one crop and lot, alike in depth and hour, have the same windows: they are asked for once. */
export function onceEach(ask: WorkPort): WorkPort {
  const asked = new Map<string, ReturnType<WorkPort['windows']>>();
  return {
    growing: ask.growing,
    windows(question) {
      const { crop, bed, depthCm, time, lot, from, to } = question;
      const key = JSON.stringify([crop, bed, depthCm, time, lot, from, to]);
      const windows = asked.get(key) ?? ask.windows(question);
      asked.set(key, windows);
      return windows;
    },
  };
}
