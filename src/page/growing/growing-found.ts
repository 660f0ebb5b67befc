import type { ThermometerWire } from '../../contract/beds.js';
import type { PlanAnswer, PlanWire } from '../../contract/plans.js';
import type { SowingAnswer } from '../../contract/sowings.js';
import { get, isFailure, pathWith, type Result, type Send } from '../shell/api.js';
import { inTurns } from '../shell/in-turns.js';
import { type Inventory, listOf, todayAt } from '../shell/inventory.js';
import type { AskedQuestion } from '../shell/view.js';
import { daysLater } from '../shell/words.js';

/** The stored fields of a sowing, without its state. */
export type KeptSowing = Pick<SowingAnswer, 'id' | 'bed' | 'crop' | 'date' | 'seeds' | 'method'>;

/** Everything that grows in the beds asked for. */
export interface Found {
  readonly shelf: Inventory;
  /** Sowings, newest first, each with its state or the reason for having none. */
  readonly sowings: readonly { readonly kept: KeptSowing; readonly got: Result<SowingAnswer> }[];
  /** Earlier sowings, and those over MAX_SOWINGS. */
  readonly otherSowings: readonly KeptSowing[];
  readonly plans: readonly { readonly kept: PlanWire; readonly got: Result<PlanAnswer> }[];
  readonly otherPlans: readonly PlanWire[];
  /** Stored thermometers by bed id; a bed whose thermometers cannot be read has none. */
  readonly thermometers: Thermometers;
}

export type Thermometers = ReadonlyMap<string, readonly ThermometerWire[]>;

/** Maximum sowings worked out for one page. */
const MAX_SOWINGS = 20;
const MAX_PLANS = 8;
const MAX_BEDS = 20;
/** An older sowing is no longer counted [d]. */
const SEASON_DAYS = 366;
const AT_A_TIME = 4;

/** Finds what grows in one bed, or in all. */
export async function findGrowing({
  question,
  shelf,
  send,
}: Pick<AskedQuestion, 'question' | 'shelf' | 'send'>): Promise<Result<Found>> {
  const [sowings, plans] = await Promise.all([
    listOf<KeptSowing>(send, 'sowings', { bed: question.ofBed }),
    listOf<PlanWire>(send, 'plans', { bed: question.ofBed }),
  ]);
  if (isFailure(sowings)) return sowings;
  if (isFailure(plans)) return plans;
  const [standing, otherSowings] = parted(
    sowings.value.all.sort((a, b) => (a.date < b.date ? 1 : -1)),
    MAX_SOWINGS,
    ({ bed, date }) => daysLater(date, SEASON_DAYS) >= todayAt(shelf, bed, ''),
  );
  const [open, otherPlans] = parted(
    plans.value.all.sort((a, b) => (a.harvest.from < b.harvest.from ? -1 : 1)),
    MAX_PLANS,
    ({ bed, harvest }) => harvest.to >= todayAt(shelf, bed, ''),
  );
  const states = await statesOf(send, standing, question.ofBed);
  const planned = await inTurns(open, AT_A_TIME, ({ id }) =>
    get<PlanAnswer>(send, { method: 'GET', path: `/v1/plans/${id}` }),
  );
  const beds = bedsInQuestion({ question, shelf }).slice(0, MAX_BEDS);
  const measured = await inTurns(beds, AT_A_TIME, ({ id }) =>
    get<{ readonly thermometers: ThermometerWire[] }>(send, { method: 'GET', path: `/v1/beds/${id}/thermometers` }),
  );
  const thermometers = new Map(
    beds.map(({ id }, i) => [id, isFailure(measured[i]!) ? [] : measured[i]!.value.thermometers]),
  );
  return {
    value: {
      thermometers,
      shelf,
      sowings: standing.map((kept, i) => ({ kept, got: states[i]! })),
      otherSowings,
      plans: open.map((kept, i) => ({ kept, got: planned[i]! })),
      otherPlans,
    },
  };
}

/** The bed asked for, or all. */
export const bedsInQuestion = ({ question, shelf }: Pick<AskedQuestion, 'question' | 'shelf'>): Inventory['beds'] =>
  shelf.beds.filter(({ id }) => question.ofBed === '' || id === question.ofBed);

/** The first `most` items that are meant, and all others. */
function parted<T>(all: readonly T[], most: number, isMeant: (one: T) => boolean): [T[], T[]] {
  const meant = all.filter(isMeant).slice(0, most);
  return [meant, all.filter((one) => !meant.includes(one))];
}

type ListedSowings = Pick<SowingAnswer, 'model' | 'issuedAt'> & {
  readonly sowings: readonly Omit<SowingAnswer, 'model' | 'issuedAt' | 'assumptions'>[];
};

/** The states of sowings, from one request, so that shared work is done once. */
async function statesOf(send: Send, sowings: readonly KeptSowing[], bed: string): Promise<Result<SowingAnswer>[]> {
  const earliest = sowings.at(-1)?.date;
  if (earliest === undefined) return [];
  const query = { with: 'judgement,toDo,forecast', from: earliest, bed };
  const listed = await get<ListedSowings>(send, { method: 'GET', path: pathWith('/v1/sowings', query) });
  if (isFailure(listed)) return sowings.map(() => listed);
  const { sowings: found, model, issuedAt } = listed.value;
  const states = new Map(found.map((one) => [one.id, { ...one, assumptions: [], model, issuedAt }]));
  // More than one page of sowings share the earliest of these days.
  return inTurns(sowings, AT_A_TIME, async ({ id }) => {
    const state = states.get(id);
    return state ? { value: state } : get<SowingAnswer>(send, { method: 'GET', path: `/v1/sowings/${id}` });
  });
}
