import { describe, expect, it } from 'vitest';
import type { YearOfDates } from '../../../src/answers/windows/year-of-dates.js';
import type { PlainDate } from '../../../src/basics/calendar.js';
import { directStarts, gradesOfStarts, indoorStarts, ripening } from '../../../src/garden/plan/starts.js';
import { planStandDays, startsOfYear } from '../../../src/garden/plan/starts-of-year.js';
import { grownOn } from '../../../src/garden/sowing/harvest.js';
import { harvestPeriodOf } from '../../../src/garden/sowing/harvest-period.js';
import { cropCalled, seedOf } from '../germination/make.js';

const firstDate = '2027-01-01' as PlainDate;
const N_DAYS = 200;

/** A season of a crop in years of soil that never changes, each with frosts on some days. */
function seasonOf(id: string, years: readonly { readonly soilC: number; readonly frostDays?: readonly number[] }[]) {
  const crop = cropCalled(id);
  const picking = harvestPeriodOf(crop)!;
  const ripe = ripening(picking, firstDate, N_DAYS + 200, null);
  const soilC = new Float64Array(N_DAYS).fill(20);
  // Of air whose means are not known no harvest is judged.
  const common = { crop, seed: seedOf(crop), picking, firstDate, nDays: N_DAYS, ripe, harvest: null, soilC };
  const nHours = 24 * (N_DAYS + planStandDays(crop) + 2);
  const inYears = years.map(({ soilC, frostDays = [] }) => {
    const minC = new Float64Array(N_DAYS + 400).fill(10);
    for (const day of frostDays) minC[day] = -3;
    const year: YearOfDates = {
      hourlyC: new Float64Array(nHours).fill(soilC),
      sowH: Float64Array.from({ length: N_DAYS }, (_, day) => 24 * day + 12),
      minC,
      meanC: null,
      minFromH: 0,
    };
    return startsOfYear(common, year);
  });
  const gradeOf = gradesOfStarts(inYears, N_DAYS, { sureness: 0.8, isUsual: false });
  return { ...common, years: inYears, gradeOf };
}

describe('directStarts', () => {
  it('come up as the chart says, and are picked the published days after', () => {
    // Snap bean: 11 days at 20 °C, 8 at 25; picked 47 to 61 days after half: 50 to 80 from sowing, less 11, around 54.
    const starts = directStarts(seasonOf('snap-bean', [{ soilC: 20 }, { soilC: 20 }, { soilC: 25 }]));
    const { half, isOpen, ripeDay, whyNot } = starts[30]!;
    // Sown at noon.
    expect(half!.p50).toBe(41);
    expect(half!.p10).toBeLessThan(41);
    expect([isOpen, whyNot]).toEqual([true, null]);
    expect(ripeDay).toBe((41 + 47 + 41 + 60) / 2);
    expect(starts[30]!.reach({ fromDay: 88, toDay: 94 })).toBe(1);
    // In the warm year it is over three days sooner.
    expect(starts[30]!.reach({ fromDay: 101, toDay: 107 })).toBeCloseTo(2 / 3);
    expect(starts[30]!.reach({ fromDay: 60, toDay: 66 })).toBe(0);
  });

  it('are shut in soil too cold or too hot, and say which', () => {
    const cold = directStarts(seasonOf('snap-bean', [{ soilC: 8 }, { soilC: 8 }]))[30]!;
    expect([cold.isOpen, cold.whyNot]).toEqual([false, 'too-cold']);
    const hot = directStarts(seasonOf('lettuce', [{ soilC: 33 }, { soilC: 33 }]))[30]!;
    expect([hot.isOpen, hot.whyNot]).toEqual([false, 'too-hot']);
  });

  it('are taken by a frost before they are ripe, in the years that have it', () => {
    const starts = directStarts(seasonOf('snap-bean', [{ soilC: 20, frostDays: [95] }, { soilC: 20 }]));
    const week = { fromDay: 96, toDay: 102 };
    expect(starts[30]!.reach(week)).toBe(0.5);
    expect(starts[30]!.picked).toEqual({ fromDay: 88, toDay: 98 });
    // Picking has begun on day 88, and goes on up to the frost.
    expect(starts[30]!.reach({ fromDay: 88, toDay: 94 })).toBe(1);
  });

  it('are none of a crop that is counted from planting out', () => {
    expect(directStarts(seasonOf('tomato', [{ soilC: 20 }]))).toEqual([]);
  });
});

describe('indoorStarts', () => {
  it('are picked the published days after planting out, once nights bear them', () => {
    const season = seasonOf('tomato', [{ soilC: 20 }]);
    const starts = indoorStarts(season, 20, (date) => date >= '2027-03-01');
    // 8 days to half and five weeks in the tray: sown on day 16, 17 January, it is fit on day 59, 1 March.
    expect(starts[16]!.indoors!.plantOut).toBe('2027-03-01');
    expect(starts[16]!.reach({ fromDay: 59 + 55, toDay: 59 + 55 })).toBe(1);
    expect(starts[16]!.reach({ fromDay: 59 + 54, toDay: 59 + 54 })).toBe(0);
    // Two weeks of waiting are borne, three are not.
    expect(starts[2]!.isOpen).toBe(true);
    expect(starts[1]!.isOpen).toBe(false);
  });

  it('are none where the room is too cold, or the crop bears no moving', () => {
    expect(indoorStarts(seasonOf('tomato', [{ soilC: 20 }]), 4, () => true)).toEqual([]);
    expect(indoorStarts(seasonOf('carrot', [{ soilC: 20 }]), 20, () => true)).toEqual([]);
  });
});

describe('ripening', () => {
  it('says for each day what grownOn says for one date', () => {
    for (const latitude of [44, -37, 0, 66, null]) {
      const ripe = ripening({ fromDays: 50, toDays: 64, countedFrom: 'sowing' }, firstDate, 400, latitude);
      for (let day = 0; day < 400; day += 7) {
        const start = new Date(Date.UTC(2027, 0, 1 + day)).toISOString().slice(0, 10) as PlainDate;
        const daysTo = (date: PlainDate): number => (Date.parse(date) - Date.parse(firstDate)) / 86_400_000;
        const wanted = [50, 64].map((days) => daysTo(grownOn(start, days, latitude)));
        const { fromDay, toDay } = ripe(day);
        // A day of the second year is a quarter of a day off.
        expect(Math.abs(fromDay - wanted[0]!), `${latitude} ${day}`).toBeLessThanOrEqual(1);
        expect(Math.abs(toDay + 1 - wanted[1]!), `${latitude} ${day}`).toBeLessThanOrEqual(1);
      }
    }
  });
});
