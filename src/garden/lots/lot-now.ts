import type { Lot } from '../../answers/question.js';
import { addDays, daysBetween, type PlainDate } from '../../basics/calendar.js';
import { betaQuantile } from '../../basics/numerics/beta-quantile.js';
import type { Span } from '../../germination/crop.js';
import { crops } from '../../germination/crops.js';
import { agedShare, daysPerProbit, VIABILITY_HOLDS, viabilityHolds } from '../../germination/storage/viability.js';
import type { ViabilitySet } from '../../germination/storage/viability-sets.js';
import type { LotFields } from '../store/season-store.js';
import type { LotNote } from './lot-facts.js';

/** Time in store by one published set of constants. */
export interface Ageing {
  readonly set: ViabilitySet;
  /** Probits of viability lost in store. */
  readonly probits: number;
}

/** What is known of a lot's germination on a date, as far as it can be reckoned with. */
export interface LotState {
  /** Percent that germinated, or that the packet promises, when it was found; a little short of 100 where it is aged; null: not known. */
  readonly foundPercent: number | null;
  /** One for each published set of constants; empty if the lot is not aged. */
  readonly ageings: readonly Ageing[];
  readonly testBeforeUse: boolean;
  readonly assumptions: readonly LotNote[];
  readonly warnings: readonly LotNote[];
}

/** What a lot is worth on a date. */
export interface LotNow {
  /** Germination percentage; null: unknown. */
  readonly percent: number | null;
  /** Middle 80 % left open by the count and by constants that differ; null without a count and with one set at most. */
  readonly range: Span | null;
  /** Percentage by each published set of constants; empty if it is not aged. */
  readonly aged: readonly { readonly percent: number; readonly source: string }[];
  readonly testBeforeUse: boolean;
  readonly assumptions: readonly LotNote[];
  readonly warnings: readonly LotNote[];
}

/** A packet's percent is a whole number of a hundred. */
const PACKET_SEEDS = 100;
/** The share of tests outside of the interval, on either side. */
const TAIL = 0.1;
/** A germination test is valid for this long [d]. */
const TEST_LASTS_DAYS = 365;
/** A lot older than this is called older seed [d]. */
const OLDER_DAYS = 365;

/**
 * What a lot is worth on a date: the percent as found, or aged from then on where its moisture and store are known.
 *
 * A counted test's range is Jeffreys' interval: from the beta distribution whose shapes are the counts and a half each. It
 * holds what it says on the average even for ten seeds, where the exact interval of Clopper and Pearson is far too wide; and
 * `plantShare` draws from the same distribution. Where none or all germinated it
 * goes to the end, unless it is aged: a share of one would never age.
 *
 * Source: Brown, Cai, DasGupta (2001). Interval estimation for a binomial proportion. Stat. Sci. 16: 101-133.
 */
export function lotNow(lot: LotFields, onDate: PlainDate): LotNow {
  const { foundPercent, ageings, ...rest } = lotState(lot, onDate);
  if (foundPercent === null) return { percent: null, range: null, aged: [], ...rest };
  const found = foundPercent / 100;
  const aged = ageings.map(({ set, probits }) => ({
    percent: 100 * agedShare(found, probits),
    source: set.source,
  }));
  const costs = ageings.length > 0 ? ageings.map(({ probits }) => probits) : [0];
  const middle = costs.reduce((sum, cost) => sum + cost, 0) / costs.length;
  const interval = lot.test
    ? jeffreys(lot.test, ageings.length > 0)
    : costs.length > 1
      ? { from: found, to: found }
      : null;
  return {
    percent: ageings.length > 0 ? 100 * agedShare(found, middle) : foundPercent,
    range: interval && {
      from: 100 * agedShare(interval.from, Math.max(...costs)),
      to: 100 * agedShare(interval.to, Math.min(...costs)),
    },
    aged,
    ...rest,
  };
}

/** A kept lot as a forecast's question takes it. */
export const lotForQuestion = (lot: LotFields, onDate: PlainDate): Lot => ({
  germinationPercent: lotNow(lot, onDate).percent,
  testedOn: lot.testedOn,
  hotLimitShiftC: lot.hotLimitShiftC,
});

/**
 * A percent that can be aged: where all germinated a quarter of a seed is taken off, as a share of one would never age.
 *
 * Source: Bartlett's rule for 0 and 100 % among probits and logits, from memory.
 */
const shortOfAll = (percent: number, { test }: LotFields): number =>
  Math.min(percent, 100 - 100 / (4 * (test?.sown ?? PACKET_SEEDS)));

function jeffreys({ sown, germinated }: NonNullable<LotFields['test']>, isAged: boolean): Span {
  const [a, b] = [germinated + 0.5, sown - germinated + 0.5];
  return {
    from: germinated === 0 && !isAged ? 0 : betaQuantile(TAIL, a, b),
    to: germinated === sown && !isAged ? 1 : betaQuantile(1 - TAIL, a, b),
  };
}

/** What can be said of a lot on a date, and why. */
export function lotState(lot: LotFields, onDate: PlainDate): LotState {
  const toldPercent = lot.test ? (100 * lot.test.germinated) / lot.test.sown : lot.germinationPercent;
  const { germinationPercent } = lot;
  const crop = typeof lot.crop === 'string' ? crops.get(lot.crop) : undefined;
  const sets = crop?.viability ?? [];
  const { ageings, notes } = ageingOf(lot, sets, toldPercent, onDate);
  const bornOn = lot.packedYear === null ? lot.testedOn : lastDayOf(lot.packedYear);
  const isOutlived =
    bornOn !== null &&
    crop?.storageYears != null &&
    onDate > addYears(bornOn, crop.storageYears) &&
    !isFresh(lot, onDate);
  const testBeforeUse = ageings.length === 0 && isOutlived;
  const isOlder = bornOn !== null && onDate > addDays(bornOn, OLDER_DAYS);
  return {
    foundPercent: ageings.length > 0 && toldPercent !== null ? shortOfAll(toldPercent, lot) : toldPercent,
    ageings,
    testBeforeUse,
    assumptions: [
      foundNote(lot),
      ...notes,
      ...(bornOn === null ? [{ code: 'lot-age-unknown', params: {} } as const] : []),
      ...(isOlder ? [{ code: 'older-seed-later', params: {} } as const] : []),
    ],
    warnings: [
      ...(testBeforeUse ? [{ code: 'test-before-use', params: { storageYears: crop!.storageYears! } } as const] : []),
      ...(germinationPercent !== null && germinationPercent > 0 && germinationPercent <= 1
        ? [
            {
              code: 'percent-or-share',
              params: { germinationPercent, meantPercent: 100 * germinationPercent },
            } as const,
          ]
        : []),
    ],
  };
}

function foundNote({ test, germinationPercent }: LotFields): LotNote {
  if (test) return { code: 'lot-test', params: { germinated: test.germinated, sown: test.sown } };
  return germinationPercent === null
    ? { code: 'lot-unknown', params: {} }
    : { code: 'lot-packet', params: { germinationPercent } };
}

/** The time in store by each published set, and what that rests on, or why there is none. */
function ageingOf(
  lot: LotFields,
  sets: readonly ViabilitySet[],
  foundPercent: number | null,
  onDate: PlainDate,
): { ageings: readonly Ageing[]; notes: readonly LotNote[] } {
  const { moisturePercent, storeC, testedOn } = lot;
  const without = (why: NotAged): { ageings: []; notes: LotNote[] } => ({ ageings: [], notes: [notAged(why)] });
  if (foundPercent === null) return { ageings: [], notes: [] };
  if (moisturePercent === null || storeC === null) {
    return moisturePercent === null && storeC === null ? { ageings: [], notes: [] } : without('partly');
  }
  if (testedOn === null) return without('undated');
  if (sets.length === 0) return without('unpublished');
  if (!viabilityHolds(moisturePercent, storeC)) return without('outside');
  const days = Math.max(0, daysBetween(testedOn, onDate));
  const ageings = sets.map((set) => ({ set, probits: days / daysPerProbit(set, moisturePercent, storeC) }));
  return { ageings, notes: agedNotes(ageings, days, moisturePercent, storeC) };
}

type NotAged = Extract<LotNote, { readonly code: 'lot-not-aged' }>['params']['why'];

function notAged(why: NotAged): LotNote {
  const { moistureFrom, moistureTo, storeFromC, storeToC } = VIABILITY_HOLDS;
  const params = { why, moistureFromPercent: moistureFrom, moistureToPercent: moistureTo, storeFromC, storeToC };
  return { code: 'lot-not-aged', params };
}

function agedNotes(ageings: readonly Ageing[], days: number, moisturePercent: number, storeC: number): LotNote[] {
  const [kin, otherKin = 'nothing'] = ageings.flatMap(({ set }) => set.measuredOn ?? []);
  const sources = ageings.map(({ set }) => set.source).join('; ');
  return [
    { code: 'lot-aged', params: { days, moisturePercent, storeC, sources } },
    ...(ageings.length > 1 ? [{ code: 'lot-constants-differ', params: {} } as const] : []),
    ...(kin ? [{ code: 'lot-constants-of-kin', params: { kin, otherKin } } as const] : []),
  ];
}

/** True if a test is still valid. */
const isFresh = ({ testedOn }: LotFields, onDate: PlainDate): boolean =>
  testedOn !== null && onDate <= addDays(testedOn, TEST_LASTS_DAYS);

const lastDayOf = (year: number): PlainDate => `${year}-12-31` as PlainDate;

/** The same date so many years on; of 29 February the day after it. */
const addYears = (date: PlainDate, n: number): PlainDate =>
  addDays(`${Number(date.slice(0, 4)) + n}-${date.slice(5, 7)}-01` as PlainDate, Number(date.slice(8)) - 1);
