import { addDays, dateAt, daysBetween, HOUR_MS, instantAt, type PlainDate } from '../../basics/calendar.js';
import { type Note, RequestError } from '../../basics/errors.js';

import type { ShouldStop } from '../../basics/stop.js';
import type { Crop, Span } from '../../germination/crop.js';
import { type ChartAnswer, chartOf } from '../../germination/curve/chart.js';
import { rateAt } from '../../germination/curve/curve.js';
import { type CohortRun, cohortRun, unknownProgress } from '../../germination/run/cohorts.js';
import { MAX_COUNT_DAYS } from '../../germination/run/count-day.js';
import { type Outcome, outcomeAt } from '../../germination/run/outcome.js';
import { coldSpells, hotSpells, type Spell } from '../../germination/run/spells.js';
import type { Risk } from '../../growth/pests/pest-risks.js';
import type { SeriesReport } from '../../readings/report.js';
import { ensembleOf, uncertaintyShare } from '../ahead/ensemble.js';
import { type FindPast, pastSoil } from '../ahead/past-soil.js';
import { type Middle, type Question, seedDepthCm } from '../question.js';
import { answerRefusal } from '../refusal-facts.js';
import { placeDays } from '../soil/place-days.js';
import { atSeed } from '../soil/probe-at-seed.js';
import { refuseDepth } from '../soil/refuse-depth.js';
import { soilRanges, soilUncertaintyK } from '../soil/soil-range.js';
import { type DateVerdict, dateVerdict } from '../windows/date-verdict.js';
import type { HarvestDates } from '../windows/harvest-dates.js';
import { heatAhead } from '../windows/heat-ahead.js';
import { pestNotes } from '../windows/risks-met.js';
import { bedChanges } from './bed-changes.js';
import { countDaysFor } from './count-days.js';
import { assumedRanges, type Event, ensembleRanges, withLearned } from './event-ranges.js';
import { assumedExtrapolation } from './extrapolation.js';
import { type ForecastDay, forecastDays } from './forecast-days.js';
import { forecastAssumptions, forecastWarnings } from './forecast-notes.js';
import { type HoursAtSeed, hoursAtSeed } from './hours-at-seed.js';
import { type Milestone, milestoneOf, type NoMilestone, slowerBy } from './milestones.js';
import { coldRemedies, hotRemedies, type Remedy, type SpellSetting } from './remedies.js';
import { sowingSafety } from './safety-notes.js';
import { seedOf, viablePercentOf } from './seed-of.js';
import { type SeedRecord, seedRecord } from './seed-temperature.js';
import { sowingRisks } from './sowing-risks.js';
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
  /** Risks to it, in the order of dates. */
  readonly risks: readonly Risk[];
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
  const imbibitionMs = imbibitionMsOf(question, sowMs);
  const depthCm = seedDepthCm(question);
  refuseDepth(question.bed.kind, depthCm, ['sowing', 'depthCm']);
  const bedding = { site, bed: question.bed, depthCm };
  const { beyond, past } = assumedExtrapolation({ ...question, ...bedding }, imbibitionMs, findPast, shouldStop);
  const record = seedRecord(question.series, bedding, imbibitionMs, beyond, { past, neededH: 0 }, shouldStop);
  const seed = seedOf(question);
  const chart = chartOf(crop);
  const waitH = (imbibitionMs - sowMs) / HOUR_MS;
  const knownH = record.knownToH - record.imbibitionH;
  const reachDays = beyond === 'refuse' ? Math.max(0, Math.floor(knownH / 24)) : MAX_COUNT_DAYS;
  const countDays = question.countDays ?? countDaysFor(chart, seed.timeFactor, record, waitH, reachDays);
  const countH = 24 * countDays - waitH;
  const by = addDays(sowing.date, countDays);
  if (countH <= 0) refuseLateWetting(question, by);

  const endOfCountH = beyond === 'refuse' ? Math.max(countH, Math.min(countH + 24, knownH)) : countH + 24;
  const temperature = record.upTo(Math.max(0, Math.ceil(endOfCountH)));
  const days = placeDays(temperature.startMs, temperature.hourlyC.length, sowing.date, countDays + 1, site.zone);
  const hourlyC = temperature.hourlyC.subarray(record.imbibitionH);
  const dayOfHour = days.dayOfHour.subarray(record.imbibitionH);
  const counted = hourlyC.subarray(0, Math.max(0, Math.ceil(countH)));

  const hourly = unknownProgress(counted.length);
  const ownRun = cohortRun(seed, counted, hourly);
  const viablePercent = viablePercentOf(question, seed);
  const ownOutcome = outcomeAt(ownRun, countH, viablePercent);
  refuseGapBeforeMost(record, ownOutcome, countH);
  const dated = (hour: number): PlainDate => dateAt(imbibitionMs + hour * HOUR_MS, site.zone);
  const sdK = temperature.sdK.subarray(record.imbibitionH, record.imbibitionH + counted.length);
  const residuals = record.soil.model?.surface.residuals ?? null;
  const members = record.members(counted.length);
  const ensemble = record.ahead
    ? ensembleOf(
        seed,
        members,
        soilUncertaintyK(residuals, sdK, ownOutcome.halfH ?? countH),
        uncertaintyShare(record.soil.probes.length > 0),
      )
    : null;
  const run = ensemble?.middle ?? ownRun;
  const outcome = ensemble ? outcomeAt(run, countH, viablePercent) : ownOutcome;
  const weather = ensemble
    ? ensembleRanges(ensemble, outcome)
    : assumedRanges({ knownH, beyond }, outcome, soilRanges(seed, counted, sdK, residuals, run, outcome));
  const learnedTime = learnedTimeOf(question);
  const withFactor = (timeFactor: number): CohortRun => cohortRun({ ...seed, timeFactor }, counted);
  const ranges = learnedTime
    ? withLearned(weather, run, outcome, {
        fast: withFactor(learnedTime.from),
        middle: ownRun,
        slow: withFactor(learnedTime.to),
      })
    : weather;
  const slowerH = slowerBy(counted, (tempC) => rateAt(seed.curve, tempC));
  const clock = { waitH, countH, dated, bedTimeFactor: bedTimeFactorOf(question), slowerH };
  const milestone = (event: Event): Milestone | NoMilestone => {
    const eventH = outcome[`${event}H`];
    return eventH === null ? { why: outcome.whyNone! } : milestoneOf(eventH, ranges[event]!, clock);
  };
  const emergence = { first: milestone('first'), half: milestone('half'), most: milestone('most') };

  const sown = {
    seed,
    hourlyC: counted,
    hourly,
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
    eveningH: waitH > 0 ? -1 : (instantAt(sowing.date, '18:00', site.zone) - imbibitionMs) / HOUR_MS,
    freeDate: firstFreeDate(days, temperature.hourlyC, {
      fromDay: daysBetween(sowing.date, dateAt(imbibitionMs, site.zone)) + 1,
      sowingH: Number(sowing.time.slice(0, 2)),
      progressAt: (tempC) => rateAt(seed.curve, tempC) / (24 * seed.timeFactor * MOST_OVER_HALF),
      isHarmful,
    }),
    lastDate: by,
    bearsMoving: crop.weeksInTrays !== null,
    bedChanges: hot.length > 0 ? bedChanges(record.soil, bedding, record.imbibitionH, hot.at(-1)!.toH) : [],
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
  // Beans and peas are quicker in beds than the chart has them: the bed stays moist for the slower of the two.
  const keepMoistTo = 'inBeds' in emergence.most ? [emergence.most.inBeds.to, emergence.most.date].sort()[1]! : by;

  const judged = question.judgesDate && past ? dateVerdict(question, past, shouldStop) : null;
  const hotAnswers = spellAnswers(hot, hotRemedies, (tempC) => tempC > seed.hotThresholdC);
  const coldAnswers = spellAnswers(cold, coldRemedies, (tempC) => tempC < (cold[0]?.thresholdC ?? -Infinity));
  const meanC = meanOf(counted, outcome.halfH ?? countH);
  const risks = sowingRisks({ ...question, date: sowing.date, half: emergence.half, most: emergence.most, by, meanC });

  const findings = {
    seed,
    run,
    outcome,
    countedC: counted,
    record,
    beyond,
    countDays,
    hasHotSpell: hot.length > 0,
    imbibitionMs,
  };
  return {
    crop,
    sowing: { ...sowing, depthCm },
    countDays,
    emergence,
    stand: standOf(question, outcome, by),
    chart: chart(meanC),
    hotSpells: hotAnswers,
    coldSpells: coldAnswers,
    keepMoist: { from: dateAt(imbibitionMs, site.zone), to: keepMoistTo },
    daily: forecastDays(atSeed(question.series, depthCm), days, temperature, {
      imbibitionH: record.imbibitionH,
      countH,
      hotThresholdC: seed.hotThresholdC,
      run,
      viablePercent,
    }),
    dateVerdict: judged?.dateVerdict ?? null,
    harvest: judged?.harvest ?? null,
    hours: record.showsSwing ? hoursAtSeed(days, temperature) : null,
    risks,
    understood: question.understood,
    assumptions: [...record.soil.assumptions, ...forecastAssumptions(question, findings), ...pestNotes(risks)],
    warnings: [
      ...record.warnings(countH),
      ...(hot.length === 0 && record.ahead && !record.ahead.isUsual
        ? heatAhead(members, seed.hotThresholdC, outcome.mostH ?? countH, record.ahead.years)
        : []),
      ...forecastWarnings(question, findings),
      ...sowingSafety(question.bed, { hot: hotAnswers ?? [], cold: coldAnswers ?? [] }),
    ],
  };
}

/** When the seed is first wet: at sowing, or in dry soil at noon of the day it is watered. */
function imbibitionMsOf({ bed, site, sowing }: Question, sowMs: number): number {
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

/** Once most are up, the soil says nothing more of them; before, nobody knows what it did in a long gap. */
function refuseGapBeforeMost(record: SeedRecord, { mostH }: Outcome, countH: number): void {
  const gap = record.longGap(Math.ceil(countH));
  if (gap && gap.fromH < (mostH ?? countH)) throw gap.refusal;
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
