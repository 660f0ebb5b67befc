import type { Quantiles, SowingWindows } from '../../../answers/windows/sowing-windows.js';
import type { WindowAnswer } from '../../../contract/windows.js';
import type { Rounding } from '../../negotiation/rounding.js';
import type { Unworded } from '../../negotiation/worded.js';
import { serializeRisks } from '../forecasts/risk-serializer.js';
import { serializeReport } from '../readings/report-serializer.js';

/** Sowing windows in the contract's words, rounded as the caller wants them. */
export function serializeWindows(
  found: SowingWindows,
  rounding: Rounding,
): Omit<Unworded<WindowAnswer>, 'model' | 'issuedAt'> {
  const { days, whole, share } = rounding;
  const each = (round: (value: number) => number) => (one: Quantiles | null) =>
    one && { p10: round(one.p10), p50: round(one.p50), p90: round(one.p90) };
  const inDays = each(days);
  const inPercent = each(whole);
  return {
    crop: found.crop.id,
    years: found.years,
    criteria: found.criteria,
    best: found.best,
    windows: found.windows.map((window) => ({
      ...window,
      sureness: window.sureness === null ? null : share(window.sureness),
      halfDays: inDays(window.halfDays),
      stand: inPercent(window.stand),
      risks: serializeRisks(window.risks, rounding),
    })),
    closed: [...found.closed],
    dates: found.dates.map((one) => ({
      date: one.date,
      sureness: one.sureness === null ? null : share(one.sureness),
      firstDays: inDays(one.firstDays),
      halfDays: inDays(one.halfDays),
      mostDays: inDays(one.mostDays),
      stand: inPercent(one.stand),
      ifHeldAreLost: inPercent(one.ifHeldAreLost),
    })),
    cautions: [...found.cautions],
    risks: serializeRisks(found.risks, rounding),
    understood: found.understood.map((report) => serializeReport(report, rounding)),
    assumptions: [...found.assumptions],
    warnings: [...found.warnings],
  };
}
