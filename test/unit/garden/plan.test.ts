import { describe, expect, it } from 'vitest';
import { type FindPast, type PastSoil, pastSoil } from '../../../src/answers/ahead/past-soil.js';
import { defaultBed } from '../../../src/answers/question.js';
import { addDays, daysBetween, findZone, type PlainDate } from '../../../src/basics/calendar.js';
import { type GardenPlan, gardenPlan } from '../../../src/garden/plan/plan.js';
import type { PlanQuestion } from '../../../src/garden/plan/plan-question.js';
import { readSeries } from '../../../src/readings/read-series.js';
import { cropCalled } from '../germination/make.js';
import { sayPlainly } from '../words/say-plainly.js';

const plain = (date: string): PlainDate => date as PlainDate;
const zone = findZone('Etc/GMT+2')!;

/** Six invented years of air up to the end of 2026: a mean, what the year swings to either side, and weather of 3 K. */
function airOf(meanC: number, swingC: number) {
  const daily = Array.from({ length: 6 * 365 }, (_, day) => {
    const odd = 3 * Math.sin(day / 4.3) + 2 * Math.sin(day / 31);
    const mean = meanC - swingC * Math.cos((2 * Math.PI * (day - 25)) / 365.25) + odd;
    return { date: addDays(plain('2021-01-03'), day), min: mean - 5, max: mean + 5 };
  });
  return readSeries({ medium: 'air', unit: 'C', daily }, zone, []);
}
/** The soil of each climate, worked out once. */
const known = new Map<unknown, Map<string, PastSoil>>();
const findPast: FindPast = (series, bedding, phaseMs) => {
  const ofAir = known.get(series[0]) ?? new Map<string, PastSoil>();
  known.set(series[0], ofAir);
  const key = `${bedding.depthCm} ${bedding.bed.shadePercent}`;
  const past = ofAir.get(key) ?? pastSoil(series, bedding, phaseMs);
  ofAir.set(key, past);
  return past;
};

const temperate = airOf(11, 9);
const hot = airOf(22, 10);

const planOf = (
  crop: string,
  harvest: [from: string, to: string],
  changes: Partial<PlanQuestion> = {},
  perWeek = 10,
): GardenPlan =>
  gardenPlan(
    {
      crop: cropCalled(crop),
      harvest: { from: plain(harvest[0]), to: plain(harvest[1]), perWeek },
      today: plain('2027-01-01'),
      sown: [],
      site: { zone, latitude: 44, longitude: -30, annualRainMm: null },
      bed: defaultBed,
      depthCm: 1.3,
      series: [temperate],
      normals: null,
      ...changes,
    },
    findPast,
  );

const steps = (dates: readonly PlainDate[]): number[] => dates.slice(1).map((date, i) => daysBetween(dates[i]!, date));

describe('gardenPlan', () => {
  it('spaces emergence evenly, and sowings further apart in spring', () => {
    const { sowings, gaps, weeksPerSowing } = planOf('head-lettuce', ['2027-07-11', '2027-09-25']);
    expect(gaps).toEqual([]);
    expect(weeksPerSowing).toBe(2);
    expect(sowings.length).toBe(6);
    // What is ready by its warmth follows on itself less evenly than what comes up. Of eleven weeks the last batch has but one.
    const ready = steps(sowings.map(({ harvest }) => harvest.from));
    for (const step of ready.slice(0, -1)) expect(Math.abs(step - 14)).toBeLessThanOrEqual(8);
    const apart = steps(sowings.map(({ date }) => date));
    expect(apart[0]!).toBeGreaterThan(14);
    expect(sowings.map(({ plants }) => plants)).toEqual([20, 20, 20, 20, 20, 10]);
    expect(sowings.every(({ harvest, half }) => harvest.from > half.date && harvest.to > harvest.from)).toBe(true);
  });

  it('asks for more seed where more is wanted, on the same dates', () => {
    let before: GardenPlan | null = null;
    for (const perWeek of [1, 3, 10, 11, 200]) {
      const now = planOf('carrot', ['2027-07-01', '2027-08-15'], {}, perWeek);
      now.sowings.forEach(({ date, seeds, plants }, i) => {
        expect(seeds).toBeGreaterThanOrEqual(plants);
        if (!before) return;
        expect(date).toBe(before.sowings[i]!.date);
        expect(seeds).toBeGreaterThan(before.sowings[i]!.seeds);
      });
      before = now;
    }
  });

  it('never sows earlier for a harvest that is wanted some weeks later', () => {
    let before = '';
    for (const from of [
      '2027-05-03',
      '2027-05-17',
      '2027-05-24',
      '2027-06-14',
      '2027-07-05',
      '2027-08-16',
      '2027-10-04',
    ]) {
      const first = planOf('beet', [from, '2027-10-31']).sowings.find(({ method }) => method === 'direct')!;
      expect(first.date >= before, from).toBe(true);
      before = first.date;
    }
  });

  it('says plainly that what should have been sown already is too late', () => {
    const { sowings, gaps } = planOf('carrot', ['2027-08-01', '2027-10-10'], { today: plain('2027-06-20') });
    expect(gaps[0]).toMatchObject({ from: '2027-08-01', why: 'too-late' });
    expect(sayPlainly(gaps[0]!.text)).toContain('before today');
    expect(sowings.length).toBeGreaterThan(0);
    for (const { date } of sowings) expect(date >= '2027-06-20').toBe(true);
    const past = planOf('carrot', ['2027-05-20', '2027-07-31'], { today: plain('2027-06-20') });
    expect(past.sowings).toEqual([]);
    expect(past.gaps.at(-1)!.to).toBe('2027-07-31');
  });

  it('goes on from what was sown, and from today where it was not', () => {
    const whole = planOf('carrot', ['2027-08-01', '2027-10-10']).sowings;
    const [first, second] = whole.map(({ date }) => date) as [PlainDate, PlainDate];
    const today = addDays(first, 10);
    const kept = planOf('carrot', ['2027-08-01', '2027-10-10'], { today, sown: [{ date: first, method: 'direct' }] });
    expect(kept.sowings).toEqual(whole.map((one, i) => ({ ...one, sown: i === 0 })));
    const missed = planOf('carrot', ['2027-08-01', '2027-10-10'], { today });
    expect(missed.sowings[0]!.date).toBe(today);
    const tooLate = planOf('carrot', ['2027-08-01', '2027-10-10'], { today: addDays(first, 45) });
    expect(tooLate.gaps[0]).toMatchObject({ from: '2027-08-01', why: 'too-late' });
    // Another kind of sowing, or one of long ago, is none of the plan's.
    const other = planOf('carrot', ['2027-08-01', '2027-10-10'], { today, sown: [{ date: first, method: 'indoors' }] });
    expect(other.sowings).toEqual(missed.sowings);
    expect(today < second).toBe(true);
  });

  it('leaves gaps where cold or frost will, each with its reason', () => {
    const { gaps, sowings } = planOf('snap-bean', ['2027-05-01', '2027-12-31'], { series: [airOf(8, 13)] });
    expect(gaps[0]).toMatchObject({ from: '2027-05-01', why: 'too-cold' });
    expect(gaps.at(-1)).toMatchObject({ to: '2027-12-31', why: 'frost' });
    expect(sayPlainly(gaps.at(-1)!.text)).toContain('Frost would take');
    expect(sowings.length).toBeGreaterThan(3);
  });

  it('in heat shades what shade saves, and leaves a gap where it would be ripe in the heat all the same', () => {
    const { sowings, gaps } = planOf('lettuce', ['2027-06-01', '2027-11-30'], { series: [hot] });
    const shaded = sowings.filter((one) => one.shaded);
    expect(shaded.length).toBeGreaterThan(0);
    for (const { grade, instead, advice } of shaded) {
      expect(advice.some(({ code }) => code === 'shade')).toBe(true);
      expect(instead?.action ?? null).toBe(grade === 'poor' ? 'shade' : null);
    }
    expect(shaded.some(({ grade }) => grade === 'poor')).toBe(true);
    expect(gaps).toMatchObject([{ from: '2027-06-01', why: 'too-hot' }]);
    // Carrots are not moved: what is left is a gap.
    const carrots = planOf('carrot', ['2027-06-01', '2027-11-30'], { series: [airOf(27, 9)] });
    expect(carrots.gaps.some(({ why }) => why === 'too-hot')).toBe(true);
    expect(carrots.sowings.every(({ method }) => method === 'direct')).toBe(true);
  });

  it('starts in a room what the bed does not reach, and says that it rests on the tray', () => {
    const { sowings } = planOf('lettuce', ['2027-05-01', '2027-11-30'], { series: [airOf(17, 10)] });
    const trays = sowings.filter(({ indoors }) => indoors);
    expect(trays.length).toBeGreaterThan(1);
    for (const { indoors, instead, grade, harvest } of trays) {
      expect(indoors!.roomC).toBe(20);
      expect(indoors!.hardenOff.to < indoors!.plantOut).toBe(true);
      expect([grade, instead?.action]).toEqual(['poor', 'start-indoors']);
      expect(harvest.from > indoors!.plantOut).toBe(true);
    }
  });

  it('plants out what is counted from there, when nights are mild enough', () => {
    const { sowings } = planOf('tomato', ['2027-07-15', '2027-09-15']);
    expect(sowings.length).toBeGreaterThan(0);
    for (const { method, indoors, harvest, date, half } of sowings) {
      expect(method).toBe('indoors');
      // 8 days to half at 20 °C. From planting out 805 °C·d above 10 °C, in a summer whose warmest month is of 20 °C.
      expect(daysBetween(date, half.date)).toBe(8);
      expect(daysBetween(indoors!.plantOut, harvest.from)).toBeGreaterThan(80);
      expect(indoors!.plantOut > '2027-05-01').toBe(true);
    }
  });

  it('plans nothing for a crop whose days to maturity nobody says', () => {
    const { sowings, gaps } = planOf('onion', ['2027-07-15', '2027-09-15'], { series: [] });
    expect(sowings).toEqual([]);
    expect(gaps).toEqual([
      {
        from: '2027-07-15',
        to: '2027-09-15',
        why: 'maturity-unknown',
        text: { code: 'gap.maturity-unknown', params: { crop: 'onion' } },
      },
    ]);
  });

  it('makes a usual year of normals where no past years are known, without odds; and refuses where there are none', () => {
    const normals = {
      meanMaxC: [8, 8.5, 10.5, 13, 16.5, 20, 22.5, 23, 20, 16, 11.5, 9],
      meanMinC: [2, 2, 3, 5, 8, 11.5, 14, 14.5, 12, 9, 5, 3],
    };
    const { sowings, years, assumptions } = planOf('lettuce', ['2027-07-01', '2027-08-31'], { series: [], normals });
    expect(years).toEqual({ from: null, to: null, count: 0 });
    expect(sowings.length).toBe(5);
    expect(sowings.every(({ sureness, half }) => sureness === null && half.range === null)).toBe(true);
    expect(assumptions.map(({ code }) => code)).toContain('normals');
    expect(() => planOf('lettuce', ['2027-07-01', '2027-08-31'], { series: [] })).toThrow(/^no-past-years/);
  });
});
