import type { RiskAnswer } from '../../../contract/risk.js';
import type { Risk } from '../../../growth/pests/pest-risks.js';
import type { Rounding } from '../../negotiation/rounding.js';
import type { Unworded } from '../../negotiation/worded.js';

/** Serializes risks to rows, with whole degree days. */
export const serializeRisks = (risks: readonly Risk[], { whole }: Rounding): Unworded<RiskAnswer>[] =>
  risks.map((risk) => ({
    ...risk,
    degreeDays: risk.degreeDays && {
      ...risk.degreeDays,
      soFar: risk.degreeDays.soFar === null ? null : whole(risk.degreeDays.soFar),
    },
  }));
