import { seedOf, viablePercentOf } from '../../answers/forecast/seed-of.js';
import type { Note } from '../../basics/errors.js';
import { cropInFacts } from '../../germination/custom-crop.js';
import { daysOutdoors } from '../bed/days-outdoors.js';
import type { Growing } from './growing.js';
import type { Harvest } from './harvest.js';
import type { MaturityDates } from './harvest-in-years.js';
import { bearsPlants, type IndoorStart, indoorsOf } from './indoors.js';
import { type Expected, expectedOf, type Judgement, judgementOf, type Observed, observedOf } from './judgement.js';
import type { KnownSowing } from './known-sowing.js';
import { maturityIn } from './maturity.js';
import { type Resowing, seasonAhead } from './resowing.js';
import type { SowingWarning } from './sowing-facts.js';
import type { Triage } from './triage.js';
import { triageNow } from './triage-now.js';
import { growingNow, type WorkPort } from './work-port.js';

/** How a sowing stands today. */
export interface SowingState {
  /** null: its bed's temperatures do not tell; `warnings` say why. */
  readonly growing: Growing | null;
  readonly expected: Expected | null;
  readonly observed: Observed | null;
  readonly judgement: Judgement | null;
  readonly indoors: IndoorStart | null;
  readonly harvest: Harvest | null;
  /** When a new sowing is good; null: past years do not tell. */
  readonly resowing: Resowing | 'too-late' | null;
  /** Advice about a row that should be up; null: it is not due, or nothing is known of it. */
  readonly triage: Triage | null;
  readonly warnings: readonly Note[];
}

/** How a sowing stands: what it does, what was found, and what may still be done. */
export async function sowingState(known: KnownSowing, ask: WorkPort): Promise<SowingState> {
  const { sowing, counts, crop, question, today } = known;
  const told = await growingNow(known, ask);
  const growing = 'why' in told ? null : told;
  const warnings = 'why' in told ? [told.why] : [];
  const indoors = indoorStartOf(known);
  const half = growing?.forecast.emergence.half;
  const up = half && 'date' in half ? half.date : null;
  const evidence = growing && {
    crop,
    forecast: growing.forecast,
    viablePercent: viablePercentOf(question, seedOf(question)),
    posterior: growing.posterior,
    isOverdue: growing.isOverdue,
    counts,
    seeds: sowing.seeds,
    today,
  };
  const judgement = evidence && judgementOf(evidence);
  const ripe = maturityIn(known);
  const season = sowing.method === 'direct' ? await seasonAhead({ known, crop }, ask) : null;
  const own: MaturityDates = up ? ripe({ half: up, plantedOut: indoors?.plantOut ?? null }) : { harvest: null };
  const expected = growing && expectedOf(growing.forecast, today);
  const observed = evidence && observedOf(evidence);
  return {
    growing,
    expected,
    observed,
    judgement,
    indoors,
    harvest: judgement?.verdict === 'lost' ? null : own.harvest,
    resowing: season?.resowing ?? null,
    triage:
      growing && judgement && expected
        ? await triageNow({ known, growing, judgement, expected, observed, season, harvest: own.harvest }, ask)
        : null,
    warnings: [...warnings, ...(own.why ? [own.why] : []), ...trayWarnings(known)],
  };
}

/** Without past years the nights are unknown, so the grower waits for the last frost. */
function trayWarnings({ sowing, crop, kept }: KnownSowing): SowingWarning[] {
  const isTray = sowing.method === 'indoors' && crop.weeksInTrays !== null;
  if (!isTray || daysOutdoors(kept)) return [];
  return [{ code: 'planting-out-unknown', params: { crop: cropInFacts(crop) } }];
}

/** When a sowing that stands indoors is hardened off and planted out; null: it does not, or comes to nothing there. */
export const indoorStartOf = ({ sowing, crop, question, kept }: KnownSowing): IndoorStart | null =>
  sowing.method === 'indoors'
    ? indoorsOf(
        crop,
        sowing.date,
        question.bed.roomC!,
        bearsPlants(crop, daysOutdoors(kept), {
          latitudeDeg: kept.site.latitude,
          drains: kept.bedMake?.kind === 'raised-bed',
        }),
      )
    : null;
