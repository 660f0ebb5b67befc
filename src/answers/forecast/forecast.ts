import { addDays, dateAt, daysBetween, HOUR_MS, instantAt, type PlainDate } from '../../basics/calendar.js';
import { type Note, RequestError } from '../../basics/errors.js';

import type { ShouldStop } from '../../basics/stop.js';
import type { Crop, Span } from '../../germination/crop.js';
import { type ChartAnswer, chartOf } from '../../germination/curve/chart.js';
import { rateAt } from '../../germination/curve/curve.js';
import { type CohortRun, cohortRun, unknownPace } from '../../germination/run/cohorts.js';
import { LONGEST_COUNT_DAYS } from '../../germination/run/count-day.js';
import { type Outcome, outcomeAt } from '../../germination/run/outcome.js';
import { coldSpells, hotSpells, type Spell } from '../../germination/run/spells.js';
import type { SeriesReport } from '../../readings/report.js';
import { doubtShare, ensembleOf } from '../ahead/ensemble.js';
import { type FindPast, pastSoil } from '../ahead/past-soil.js';
import { type Middle, type Question, seedDepthCm } from '../question.js';
import { answerRefusal } from '../refusal-facts.js';
import { placeDays } from '../soil/place-days.js';
import { atSeed } from '../soil/probe-at-seed.js';
import { refuseDepth } from '../soil/refuse-depth.js';
import { soilDoubtK, soilRanges } from '../soil/soil-range.js';
import { type DateVerdict, dateVerdict } from '../windows/date-verdict.js';
import type { HarvestDates } from '../windows/harvest-dates.js';
import { heatAhead } from '../windows/heat-ahead.js';
import { bedChanges } from './bed-changes.js';
import { supposedBeyond } from './beyond.js';
import { countDaysFor } from './count-days.js';
import { type Event, ensembleRanges, supposedRanges, withLearned } from './event-ranges.js';
import { type ForecastDay, forecastDays } from './forecast-days.js';
import { forecastAssumptions, forecastWarnings } from './forecast-notes.js';
import { type HoursAtSeed, hoursAtSeed } from './hours-at-seed.js';
import { type Milestone, milestoneOf, type NoMilestone } from './milestones.js';
import { coldRemedies, hotRemedies, type Remedy, type SpellSetting } from './remedies.js';
import { seedOf, viablePercentOf } from './seed-of.js';
import { seedRecord } from './seed-temperature.js';
import { firstFreeDate, type SpellAnswer, spellAnswer } from './spell-answers.js';

/** What this sowing will do. Temperatures in °C, stands in percent of seeds sown; nothing is rounded yet. */
export interface Forecast {
  readonly crop: Crop;
  readonly sowing: {
    readonly date: PlainDate;
    readonly time: string;
    readonly depthCm: number;
    readonly seeds: number | null;
  };
  readonly countDays: number;
  readonly emergence: {
    readonly first: Milestone | NoMilestone;
    readonly half: Milestone | NoMilestone;
    readonly most: Milestone | NoMilestone;
  };
  readonly stand: {
    readonly by: PlainDate;
    readonly laboratory: number;
    readonly ifHeldAreLost: number;
    readonly field: Span;
    readonly seedlings: Span | null;
  };
  readonly chart: ChartAnswer;
  readonly hotSpells: readonly SpellAnswer[] | null;
  readonly coldSpells: readonly SpellAnswer[] | null;
  readonly keepMoist: { readonly from: PlainDate; readonly to: PlainDate };
  readonly daily: readonly ForecastDay[];
  /** null: nobody asked, or no climate is known. */
  readonly dateVerdict: DateVerdict | null;
  readonly harvest: HarvestDates | null;
  /** null: means alone are known. */
  readonly hours: HoursAtSeed | null;
  readonly understood: readonly SeriesReport[];
  readonly assumptions: readonly Note[];
  readonly warnings: readonly Note[];
}

/** How much longer than half of the seed nine tenths take, with the spread of most crops. */
const MOST_OVER_HALF = 1.5;

/** What a sowing will do: when it comes up, how much of it, and what heat and cold do to it. */
export function forecast(question: Question, findPast: FindPast = pastSoil, shouldStop?: ShouldStop): Forecast {
  const { crop, site, sowing } = question;
  const sowMs = instantAt(sowing.date, sowing.time, site.zone);
  const wetMs = wettingMs(question, sowMs);
  const depthCm = seedDepthCm(question);
  refuseDepth(question.bed.kind, depthCm, ['sowing', 'depthCm']);
  const bedding = { site, bed: question.bed, depthCm };
  const { beyond, past } = supposedBeyond({ ...question, ...bedding }, wetMs, findPast, shouldStop);
  const record = seedRecord(question.series, bedding, wetMs, beyond, { past }, shouldStop);
  const seed = seedOf(question);
  const chart = chartOf(crop);
  const waitH = (wetMs - sowMs) / HOUR_MS;
  const knownH = record.knownToH - record.wetH;
  const reachDays = beyond === 'refuse' ? Math.max(0, Math.floor(knownH / 24)) : LONGEST_COUNT_DAYS;
  const countDays = question.countDays ?? countDaysFor(chart, seed.timeFactor, record, waitH, reachDays);
  const countH = 24 * countDays - waitH;
  const by = addDays(sowing.date, countDays);
  if (countH <= 0) refuseLateWetting(question, by);

  const endOfCountH = beyond === 'refuse' ? Math.max(countH, Math.min(countH + 24, knownH)) : countH + 24;
  const temperature = record.upTo(Math.max(0, Math.ceil(endOfCountH)));
  const days = placeDays(temperature.startMs, temperature.hourlyC.length, sowing.date, countDays + 1, site.zone);
  const hourlyC = temperature.hourlyC.subarray(record.wetH);
  const dayOfHour = days.dayOfHour.subarray(record.wetH);
  const counted = hourlyC.subarray(0, Math.max(0, Math.ceil(countH)));

  const pace = unknownPace(counted.length);
  const ownRun = cohortRun(seed, counted, pace);
  const viablePercent = viablePercentOf(question, seed);
  const ownOutcome = outcomeAt(ownRun, countH, viablePercent);
  const dated = (hour: number): PlainDate => dateAt(wetMs + hour * HOUR_MS, site.zone);
  const sdK = temperature.sdK.subarray(record.wetH, record.wetH + counted.length);
  const residuals = record.soil.model?.surface.residuals ?? null;
  const traces = record.traces(counted.length);
  const ensemble = record.ahead
    ? ensembleOf(
        seed,
        traces,
        soilDoubtK(residuals, sdK, ownOutcome.halfH ?? countH),
        doubtShare(record.soil.probes.length > 0),
      )
    : null;
  const run = ensemble?.middle ?? ownRun;
  const outcome = ensemble ? outcomeAt(run, countH, viablePercent) : ownOutcome;
  const weather = ensemble
    ? ensembleRanges(ensemble, outcome)
    : supposedRanges({ knownH, beyond }, outcome, soilRanges(seed, counted, sdK, residuals, run, outcome));
  const learnedTime = learnedTimeOf(question);
  const withFactor = (timeFactor: number): CohortRun => cohortRun({ ...seed, timeFactor }, counted);
  const ranges = learnedTime
    ? withLearned(weather, run, outcome, {
        fast: withFactor(learnedTime.from),
        middle: ownRun,
        slow: withFactor(learnedTime.to),
      })
    : weather;
  const clock = { waitH, countH, dated, bedTimeFactor: bedTimeFactorOf(question) };
  const milestone = (event: Event): Milestone | NoMilestone => {
    const eventH = outcome[`${event}H`];
    return eventH === null ? { why: outcome.whyNone! } : milestoneOf(eventH, ranges[event]!, clock);
  };
  const emergence = { first: milestone('first'), half: milestone('half'), most: milestone('most') };

  const sown = {
    seed,
    hourlyC: counted,
    pace,
    dayOfHour: dayOfHour.subarray(0, counted.length),
    countH,
    viablePercent,
  };
  const hot = hotSpells(sown, ownRun, ownOutcome);
  const cold = coldSpells(sown, ownRun, ownOutcome);
  const setting = (isHarmful: (tempC: number) => boolean): SpellSetting => ({
    hourlyC,
    dayOfHour,
    sowingTime: sowing.time,
    eveningH: waitH > 0 ? -1 : (instantAt(sowing.date, '18:00', site.zone) - wetMs) / HOUR_MS,
    freeDate: firstFreeDate(days, temperature.hourlyC, {
      fromDay: daysBetween(sowing.date, dateAt(wetMs, site.zone)) + 1,
      sowingH: Number(sowing.time.slice(0, 2)),
      progressAt: (tempC) => rateAt(seed.curve, tempC) / (24 * seed.timeFactor * MOST_OVER_HALF),
      isHarmful,
    }),
    lastDate: by,
    bearsMoving: crop.weeksInTrays !== null,
    bedChanges: hot.length > 0 ? bedChanges(record.soil, bedding, record.wetH, hot.at(-1)!.toH) : [],
  });
  // What can be done is worked out only where there is something to be done about.
  const spellAnswers = (
    spells: Spell[],
    remedies: (spell: Spell, setting: SpellSetting) => Remedy[],
    isHarmful: (tempC: number) => boolean,
  ): SpellAnswer[] | null => {
    if (!record.showsSwing) return null;
    if (spells.length === 0) return [];
    const known = setting(isHarmful);
    return spells.map((spell) => spellAnswer(spell, dated, remedies(spell, known), known));
  };
  const mostInBeds = 'inBeds' in emergence.most ? emergence.most.inBeds.to : by;

  const judged = question.judgesDate && past ? dateVerdict(question, past, shouldStop) : null;
  const findings = {
    seed,
    run,
    outcome,
    countedC: counted,
    record,
    beyond,
    countDays,
    hasHotSpell: hot.length > 0,
    wetMs,
  };
  return {
    crop,
    sowing: { ...sowing, depthCm },
    countDays,
    emergence,
    stand: standOf(question, outcome, by),
    chart: chart(meanOf(counted, outcome.halfH ?? countH)),
    hotSpells: spellAnswers(hot, hotRemedies, (tempC) => tempC > seed.hotThresholdC),
    coldSpells: spellAnswers(cold, coldRemedies, (tempC) => tempC < (cold[0]?.thresholdC ?? -Infinity)),
    keepMoist: { from: dateAt(wetMs, site.zone), to: mostInBeds },
    daily: forecastDays(atSeed(question.series, depthCm), days, temperature, {
      wetH: record.wetH,
      countH,
      hotThresholdC: seed.hotThresholdC,
      run,
      viablePercent,
    }),
    dateVerdict: judged?.dateVerdict ?? null,
    harvest: judged?.harvest ?? null,
    hours: record.showsSwing ? hoursAtSeed(days, temperature) : null,
    understood: question.understood,
    assumptions: [...record.soil.assumptions, ...forecastAssumptions(question, findings)],
    warnings: [
      ...record.warnings,
      ...(hot.length === 0 && record.ahead && !record.ahead.isUsual
        ? heatAhead(traces, seed.hotThresholdC, outcome.mostH ?? countH, record.ahead.years)
        : []),
      ...forecastWarnings(question, findings),
    ],
  };
}

/** When the seed is first wet: at sowing, or in dry soil at noon of the day it is watered. */
function wettingMs({ bed, site, sowing }: Question, sowMs: number): number {
  if (bed.wettedOn === null) return sowMs;
  if (bed.wettedOn < sowing.date) {
    throw new RequestError(
      'not-understood',
      answerRefusal('not-understood.wetted-before-sowing', { wettedOn: bed.wettedOn, sowingDate: sowing.date }),
      [{ path: ['where', 'bed', 'wettedOn'], detail: answerRefusal('not-understood.wetted-before-sowing.field') }],
    );
  }
  return Math.max(sowMs, instantAt(bed.wettedOn, '12:00', site.zone));
}

function refuseLateWetting({ bed }: Question, by: PlainDate): never {
  throw new RequestError(
    'not-understood',
    answerRefusal('not-understood.wetted-after-count', { wettedOn: bed.wettedOn!, countDate: by }),
    [{ path: ['countDays'], detail: answerRefusal('not-understood.wetted-after-count.field') }],
  );
}

/** What counts say of the time, where the grower has not said better. */
const learnedTimeOf = ({ timeFactor, learned }: Question): Middle | null =>
  timeFactor === null ? (learned?.timeFactor ?? null) : null;

/** A factor that is in the clock already leaves only its own range to be added, and a grower's own has none. */
function bedTimeFactorOf(question: Question): Span {
  const learned = learnedTimeOf(question);
  if (learned) return { from: learned.from / learned.middle, to: learned.to / learned.middle };
  return question.timeFactor === null ? question.crop.bedTimeFactor : { from: 1, to: 1 };
}

function meanOf(hourlyC: Float64Array, toH: number): number {
  const hours = Math.max(1, Math.min(hourlyC.length, Math.round(toH)));
  let sum = 0;
  for (let hour = 0; hour < hours; hour++) sum += hourlyC[hour] ?? 0;
  return sum / hours;
}

function standOf({ crop, standFactor, learned, sowing }: Question, outcome: Outcome, by: PlainDate): Forecast['stand'] {
  const factor = standFactor ?? learned?.standFactor ?? crop.field;
  const field = {
    from: outcome.ifHeldAreLostPercent * factor.from,
    to: outcome.laboratoryPercent * factor.to,
  };
  return {
    by,
    laboratory: outcome.laboratoryPercent,
    ifHeldAreLost: outcome.ifHeldAreLostPercent,
    field,
    seedlings:
      sowing.seeds === null ? null : { from: (sowing.seeds * field.from) / 100, to: (sowing.seeds * field.to) / 100 },
  };
}
