import { dateAt, type PlainDate } from '../../basics/calendar.js';
import type { Note } from '../../basics/errors.js';
import type { ShouldStop } from '../../basics/stop.js';
import type { Crop, Span } from '../../germination/crop.js';
import type { ChartAnswer } from '../../germination/curve/chart.js';
import type { Outcome } from '../../germination/run/outcome.js';
import type { Risk } from '../../growth/pests/pest-risks.js';
import type { SeriesReport } from '../../readings/report.js';
import { type FindPast, pastSoil } from '../ahead/past-soil.js';
import type { Question } from '../question.js';
import { atSeed } from '../soil/probe-at-seed.js';
import { type DateVerdict, dateVerdict } from '../windows/date-verdict.js';
import type { HarvestDates } from '../windows/harvest-dates.js';
import { heatAhead } from '../windows/heat-ahead.js';
import { pestNotes } from '../windows/risks-met.js';
import { type Emergence, emergenceOf } from './emergence.js';
import { type ForecastDay, forecastDays } from './forecast-days.js';
import { type ForecastFindings, forecastAssumptions, forecastWarnings } from './forecast-notes.js';
import { type HoursAtSeed, hoursAtSeed } from './hours-at-seed.js';
import type { Milestone, NoMilestone } from './milestones.js';
import type { SpellAnswer } from './remedies/spell-answers.js';
import { type SpellsMet, spellsMet } from './remedies/spells-met.js';
import { sowingSafety } from './safety-notes.js';
import { sowingRisks } from './sowing-risks.js';
import { type Sown, sownOf } from './sown.js';

/** Forecast of a sowing. Temperatures in °C, stands in percent of seeds sown; nothing is rounded. */
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

/** Forecasts a sowing: when it comes up, how much of it, and the effect of heat and cold. */
export function forecast(question: Question, findPast: FindPast = pastSoil, shouldStop?: ShouldStop): Forecast {
  const { crop, site, sowing } = question;
  const sown = sownOf(question, findPast, shouldStop);
  const { bedding, seed, record, beyond, period } = sown;
  const { countDays, countH, imbibitionMs, by } = period;
  const { temperature, days, countedC } = sown.hours;
  const emergence = emergenceOf(sown);
  const { run, outcome, dates } = emergence;
  const spells = spellsMet(sown, emergence);
  const judged = question.judgesDate && sown.past ? dateVerdict(question, sown.past, shouldStop) : null;
  const meanC = meanOf(countedC, outcome.halfH ?? countH);
  const risks = sowingRisks({ ...question, date: sowing.date, half: dates.half, most: dates.most, by, meanC });
  const findings = {
    seed,
    run,
    outcome,
    countedC,
    record,
    beyond,
    countDays,
    hasHotSpell: spells.hasHotSpell,
    imbibitionMs,
  };
  return {
    crop,
    sowing: { ...sowing, depthCm: bedding.depthCm },
    countDays,
    emergence: dates,
    stand: standOf(question, outcome, by),
    chart: sown.chart(meanC),
    hotSpells: spells.hot,
    coldSpells: spells.cold,
    keepMoist: { from: dateAt(imbibitionMs, site.zone), to: moistTo(dates.most, by) },
    daily: forecastDays(atSeed(question.series, bedding.depthCm), days, temperature, {
      imbibitionH: record.imbibitionH,
      countH,
      hotThresholdC: seed.hotThresholdC,
      run,
      viablePercent: sown.viablePercent,
    }),
    dateVerdict: judged?.dateVerdict ?? null,
    harvest: judged?.harvest ?? null,
    hours: record.showsSwing ? hoursAtSeed(days, temperature) : null,
    risks,
    understood: question.understood,
    assumptions: [...record.soil.assumptions, ...forecastAssumptions(question, findings), ...pestNotes(risks)],
    warnings: warningsOf(sown, emergence, spells, findings),
  };
}

const warningsOf = (
  { question, seed, record, period }: Sown,
  { members, outcome }: Emergence,
  { hot, cold, hasHotSpell }: SpellsMet,
  findings: ForecastFindings,
): Note[] => [
  ...record.warnings(period.countH),
  ...(!hasHotSpell && record.ahead && !record.ahead.isUsual
    ? heatAhead(members, seed.hotThresholdC, outcome.mostH ?? period.countH, record.ahead.years)
    : []),
  ...forecastWarnings(question, findings),
  ...sowingSafety(question.bed, { hot: hot ?? [], cold: cold ?? [] }),
];

/** Beans and peas are quicker in beds than the chart has them: the bed stays moist for the slower of the two. */
const moistTo = (most: Emergence['dates']['most'], by: PlainDate): PlainDate =>
  'inBeds' in most ? [most.inBeds.to, most.date].sort()[1]! : by;

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
