import type { Quantiles } from '../../../answers/windows/quantiles.js';
import type { Reason } from '../../../answers/windows/reasons.js';
import type { SowingWindows } from '../../../answers/windows/sowing-windows.js';
import type { WindowReply } from '../../../contract/windows.js';
import type { Rounding } from '../../negotiation/rounding.js';
import type { Unworded } from '../../negotiation/worded.js';
import { serializeRisks } from '../forecasts/risk-serializer.js';
import { serializeReport } from '../readings/report-serializer.js';

const plainReasons = (reasons: readonly Reason[]) => reasons.map((reason) => ({ ...reason }));

/** Sowing windows in the contract's words, rounded as the caller wants them. */
export function serializeWindows(
  found: SowingWindows,
  rounding: Rounding,
  hasDates = true,
): Omit<Unworded<WindowReply>, 'model' | 'issuedAt'> {
  const { days, whole, share } = rounding;
  const inDays = each(days);
  const inPercent = each(whole);
  return {
    crop: found.crop.id,
    years: found.years,
    criteria: found.criteria,
    best: found.best && { ...found.best, reasons: plainReasons(found.best.reasons) },
    windows: found.windows.map((window) => ({
      ...window,
      sureness: window.sureness === null ? null : share(window.sureness),
      halfDays: inDays(window.halfDays),
      stand: inPercent(window.stand),
      risks: serializeRisks(window.risks, rounding),
    })),
    closed: [...found.closed],
    spans: found.spans.map((span) => ({
      ...span,
      sureness: span.sureness === null ? null : share(span.sureness),
      reasons: plainReasons(span.reasons),
    })),
    ways: [...found.ways],
    instead: [...found.instead],
    ...(hasDates ? { dates: datesOnWire(found, rounding) } : {}),
    cautions: [...found.cautions],
    risks: serializeRisks(found.risks, rounding),
    understood: found.understood.map((report) => serializeReport(report, rounding)),
    assumptions: [...found.assumptions],
    warnings: [...found.warnings],
  };
}

const each = (round: (value: number) => number) => (one: Quantiles | null) =>
  one && { p10: round(one.p10), p50: round(one.p50), p90: round(one.p90) };

function datesOnWire({ dates }: SowingWindows, { days, whole, share }: Rounding): NonNullable<WindowReply['dates']> {
  const inDays = each(days);
  const inPercent = each(whole);
  return dates.map((one) => ({
    date: one.date,
    sureness: one.sureness === null ? null : share(one.sureness),
    firstDays: inDays(one.firstDays),
    halfDays: inDays(one.halfDays),
    mostDays: inDays(one.mostDays),
    stand: inPercent(one.stand),
    ifHeldAreLost: inPercent(one.ifHeldAreLost),
    grade: one.grade,
    harvest: one.harvest,
  }));
}
