import { notUnderstood } from '../../basics/errors.js';
import type { Fact } from '../../basics/fact.js';
import { type DailyMinima, frostDates, type MonthDay } from '../../climate/frost-dates.js';
import { frostShift, type KnownFrost, MAX_SHIFT_K } from '../../climate/frost-shift.js';
import type { TunedBy } from './climate.js';
import { climateAssumption, climateRefusal, climateWarning } from './climate-facts.js';

/** What a grower knows of frost by heart: the dates of half of the years, `MM-DD`. */
export interface FrostAround {
  readonly lastFrostAround?: MonthDay | null | undefined;
  readonly firstFrostAround?: MonthDay | null | undefined;
}

/** Changes that the told dates bring. */
export interface MinimaTuning {
  /** To be added to all minima [K]; 0: nothing. */
  readonly movedK: number;
  readonly tunedBy: TunedBy | null;
  readonly assumptions: readonly Fact[];
  readonly warnings: readonly Fact[];
}

/** The share applied of the shift at which half of the years would agree: at 13 stations the monthly minima from the table then err by
 * 1.4 K (root mean square), with none of it by 1.5 K, with the whole by 1.9 K. */
const APPLIED = 0.7;
/** A greater shift hardly is a hollow or a town [K]. */
const FAR_K = 5;

/**
 * How far the minima of some years lie from what a grower knows of frost. Of two dates told, the mean of their shifts is taken.
 *
 * @param minima   Of past or typical years [°C].
 * @param latitude North positive [°].
 * @param around   The dates told.
 * @param path     Where in the request they stand.
 * @throws {RequestError} `not-understood` for a date that no shift up to 8 K makes true.
 */
export function tunedMinima(
  minima: DailyMinima,
  latitude: number,
  { lastFrostAround, firstFrostAround }: FrostAround,
  path: readonly (string | number)[],
): MinimaTuning {
  const known: KnownFrost[] = [
    ...(lastFrostAround ? [{ side: 'spring', around: lastFrostAround } as const] : []),
    ...(firstFrostAround ? [{ side: 'autumn', around: firstFrostAround } as const] : []),
  ];
  if (known.length === 0) return { movedK: 0, tunedBy: null, assumptions: [], warnings: [] };
  const untuned = frostDates(minima, 0, latitude);
  const used = known.filter(({ side }) => untuned[side].seasonsWithFrost > 0);
  const shifts = used.map((one) => {
    const shiftK = frostShift(minima, latitude, one);
    if (shiftK === null) throw tooFar(one, untuned[one.side].risk50, path);
    return { ...one, shiftK, untunedOn: untuned[one.side].risk50 };
  });
  const warnings = [
    ...known
      .filter((one) => !used.includes(one))
      .map(({ side, around }) => climateWarning('frost-date-unused', { side, aroundOn: around })),
    ...shifts
      .filter(({ shiftK }) => Math.abs(shiftK) > FAR_K)
      .map(({ side, around, untunedOn, shiftK }) =>
        climateWarning('frost-date-far', { side, aroundOn: around, untunedOn, shiftK: tenth(Math.abs(shiftK)) }),
      ),
  ];
  if (shifts.length === 0) return { movedK: 0, tunedBy: null, assumptions: [], warnings };
  const movedK = (APPLIED * shifts.reduce((sum, { shiftK }) => sum + shiftK, 0)) / shifts.length;
  const [spring, autumn] = (['spring', 'autumn'] as const).map((side) => shifts.find((one) => one.side === side));
  return {
    movedK,
    tunedBy: {
      ...(spring ? { lastFrostAround: spring.around, untuned: spring.untunedOn } : {}),
      ...(autumn ? { firstFrostAround: autumn.around, untunedFirst: autumn.untunedOn } : {}),
      minimaMovedC: movedK,
    },
    assumptions: shifts.map(({ side, around, untunedOn }) =>
      climateAssumption('frost-date-told', {
        side,
        aroundOn: around,
        untunedOn,
        movedK: tenth(Math.abs(movedK)),
        direction: movedK < 0 ? 'colder' : 'warmer',
      }),
    ),
    warnings,
  };
}

/** Minima moved by so much [K]; none is above its maximum. */
export const movedMinima = (minC: Float64Array, maxC: Float64Array, movedK: number): Float64Array =>
  movedK === 0 ? minC : minC.map((min, day) => Math.min(min + movedK, maxC[day]!));

function tooFar({ side, around }: KnownFrost, untunedOn: MonthDay | null, path: readonly (string | number)[]) {
  const field = side === 'spring' ? 'lastFrostAround' : 'firstFrostAround';
  const params = { side, aroundOn: around, untunedOn, maxShiftK: MAX_SHIFT_K };
  return notUnderstood([{ path: [...path, field], detail: climateRefusal('not-understood.frost-date-far', params) }]);
}

const tenth = (value: number): number => Math.round(value * 10) / 10;
