import type { RiskAnswer } from '../../../contract/risk.js';
import type { Risk } from '../../../growth/pests/pest-risks.js';
import type { Rounding } from '../../negotiation/rounding.js';
import type { Unworded } from '../../negotiation/worded.js';

/** What threatens rows, as the contract words it: sums of degree days are told whole. */
export const serializeRisks = (risks: readonly Risk[], { whole }: Rounding): Unworded<RiskAnswer>[] =>
  risks.map((risk) => ({
    ...risk,
    degreeDays: risk.degreeDays && {
      ...risk.degreeDays,
      soFar: risk.degreeDays.soFar === null ? null : whole(risk.degreeDays.soFar),
    },
  }));
