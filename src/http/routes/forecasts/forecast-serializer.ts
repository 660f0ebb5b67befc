import type { Forecast } from '../../../answers/forecast/forecast.js';
import type { Milestone, NoMilestone } from '../../../answers/forecast/milestones.js';
import type { SpellAnswer } from '../../../answers/forecast/remedies/spell-answers.js';
import type { ForecastAnswer } from '../../../contract/forecast.js';
import type { Span } from '../../../germination/crop.js';
import type { Rounding } from '../../negotiation/rounding.js';
import type { Unworded } from '../../negotiation/worded.js';
import { serializeReport } from '../readings/report-serializer.js';
import { serializeRisks } from './risk-serializer.js';

/** Serializes a forecast, without the fields of every answer. */
export function serializeForecast(
  forecast: Forecast,
  rounding: Rounding,
): Omit<Unworded<ForecastAnswer>, 'model' | 'issuedAt'> {
  const { temperature, days, whole } = rounding;
  const { stand, chart, emergence, sowing } = forecast;
  const milestone = (one: Milestone | NoMilestone) => ('why' in one ? { ...one } : { ...one, days: days(one.days) });
  return {
    crop: forecast.crop.id,
    sowing: {
      date: sowing.date,
      time: sowing.time,
      depthCm: sowing.depthCm,
      ...(sowing.seeds === null ? {} : { seeds: sowing.seeds }),
    },
    countDays: forecast.countDays,
    emergence: { first: milestone(emergence.first), half: milestone(emergence.half), most: milestone(emergence.most) },
    stand: {
      by: stand.by,
      laboratory: whole(stand.laboratory),
      ifHeldAreLost: whole(stand.ifHeldAreLost),
      field: spanOf(stand.field, whole),
      ...(stand.seedlings ? { seedlings: spanOf(stand.seedlings, whole) } : {}),
    },
    chart: {
      meanC: temperature(chart.meanC),
      days: chart.days === null ? null : days(chart.days),
      percent: whole(chart.percent),
    },
    hotSpells: forecast.hotSpells?.map((spell) => serializeSpell(spell, rounding)) ?? null,
    coldSpells: forecast.coldSpells?.map((spell) => serializeSpell(spell, rounding)) ?? null,
    keepMoist: forecast.keepMoist,
    daily: forecast.daily.map(({ date, min, mean, max, basis, emergedPercent, hotHours }) => ({
      date,
      min: temperature(min),
      mean: temperature(mean),
      max: temperature(max),
      basis,
      emergedPercent: whole(emergedPercent),
      hotHours,
    })),
    dateVerdict: forecast.dateVerdict && {
      ...forecast.dateVerdict,
      reasons: forecast.dateVerdict.reasons.map((reason) => ({ ...reason })),
    },
    harvest: forecast.harvest,
    risks: serializeRisks(forecast.risks, rounding),
    understood: forecast.understood.map((report) => serializeReport(report, rounding)),
    assumptions: [...forecast.assumptions],
    warnings: [...forecast.warnings],
  };
}

function serializeSpell(spell: SpellAnswer, { temperature, days, whole }: Rounding) {
  return {
    ...spell,
    peakC: temperature(spell.peakC),
    thresholdC: temperature(spell.thresholdC),
    delayDays: spell.delayDays && { half: days(spell.delayDays.half), most: days(spell.delayDays.most) },
    standAtRisk: whole(spell.standAtRisk),
    freeDate: spell.freeDate && { date: spell.freeDate.date, hotHoursLeft: spell.freeDate.hoursLeft },
    remedies: spell.remedies.map((remedy) => ({
      ...remedy,
      ...(remedy.hotHoursAvoided ? { hotHoursAvoided: spanOf(remedy.hotHoursAvoided, whole) } : {}),
      ...(remedy.coolerC ? { coolerC: spanOf(remedy.coolerC, temperature) } : {}),
    })),
  };
}

const spanOf = ({ from, to }: Span, round: (value: number) => number): Span => ({ from: round(from), to: round(to) });
