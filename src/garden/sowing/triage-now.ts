import { seedOf, viablePercentOf } from '../../answers/forecast/seed-of.js';
import { talliesOf } from '../learning/tally.js';
import { type Check, checksFor } from './check-for.js';
import type { Growing } from './growing.js';
import type { Harvest } from './harvest.js';
import { type Expected, eatenSince, type Judgement, type Observed } from './judgement.js';
import type { KnownSowing } from './known-sowing.js';
import { fittingCrops, oddsOfDate, type SeasonAhead } from './resowing.js';
import { isToTriage, isWanting, type Triage, triageOf } from './triage.js';
import type { WorkPort } from './work-port.js';

/** The state of a row that decides the advice about it. */
export interface Standing {
  readonly known: KnownSowing;
  readonly growing: Growing;
  readonly judgement: Judgement;
  readonly expected: Expected;
  readonly observed: Observed | null;
  readonly season: SeasonAhead | null;
  readonly harvest: Harvest | null;
}

/** Advice on a row that should be up. The windows are worked out only where they change the advice. */
export async function triageNow(standing: Standing, ask: WorkPort): Promise<Triage | null> {
  const { known, growing, judgement, expected, observed, season, harvest } = standing;
  if (!isToTriage(expected, judgement)) return null;
  const { sowing, crop, today } = known;
  const isTooLate = season?.resowing === 'too-late' && (judgement.verdict === 'lost' || judgement.verdict === 'thin');
  return triageOf({
    crop,
    sown: sowing.date,
    seeds: sowing.seeds,
    today,
    expected,
    observed,
    judgement,
    lostIfBare: growing.lostIfBare,
    moistTo: growing.forecast.keepMoist.to,
    missing: missingOf(known),
    bareCounts: known.counts.filter(({ seedlings }) => seedlings === 0).length,
    season,
    harvest,
    fitting: isTooLate ? await fittingCrops(known, ask) : [],
    checkFor: isWanting(judgement, observed) ? await checksOf(standing, ask) : [],
  });
}

/** Why little or nothing came up. */
async function checksOf({ known, growing: { forecast } }: Standing, ask: WorkPort): Promise<Check[]> {
  const { sowing, crop, question, counts, lotState, today } = known;
  const { daily, hotSpells, coldSpells } = forecast;
  return checksFor({
    crop,
    bed: question.bed,
    sowing: forecast.sowing,
    today,
    daily,
    hotSpells,
    coldSpells,
    hotThresholdC: seedOf(question).hotThresholdC,
    seed: lotState && {
      isOld: lotState.testBeforeUse,
      germinationPercent: question.lot?.germinationPercent ?? null,
    },
    eatenSince: eatenSince({ counts, seeds: sowing.seeds }),
    dateOdds: sowing.method === 'direct' ? await oddsOfDate(known, crop, sowing.date, ask) : null,
  });
}

/** The share of a middling stand that was missing at the last count, 0 to 1. */
function missingOf({ crop, question, counts, sowing }: KnownSowing): number {
  const last = talliesOf(counts).at(-1);
  const of = last?.ofSeeds ?? sowing.seeds;
  if (!last || !of) return 1;
  const usual = ((viablePercentOf(question, seedOf(question)) / 100) * (crop.field.from + crop.field.to)) / 2;
  return Math.max(0, 1 - last.came / (usual * of));
}
