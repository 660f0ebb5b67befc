import { addDays, dateAt } from '../../basics/calendar.js';
import type { Note } from '../../basics/errors.js';
import { rateAt, STEP_BEYOND_K, shareAt } from '../../germination/curve/curve.js';
import { cropInFacts } from '../../germination/custom-crop.js';
import { type CohortRun, LETHAL_C, LETHAL_HOURS, type Seed } from '../../germination/run/cohorts.js';
import { MIN_COUNT_DAYS } from '../../germination/run/count-day.js';
import type { Outcome } from '../../germination/run/outcome.js';
import { isThinRecord } from '../../seedbed/surface/seasonal-persistence.js';
import type { Extrapolation } from '../ahead/hours-ahead.js';
import { kindOfYears } from '../ahead/past-soil.js';
import { type Question, type QuestionBed, seedDepthCm } from '../question.js';
import { extrapolationNote } from './extrapolation-note.js';
import type { ForecastAssumption, ForecastWarning, LearnedFact } from './forecast-facts.js';
import type { SeedRecord } from './record/seed-temperature.js';

/** Findings that the notes report. */
export interface ForecastFindings {
  readonly seed: Seed;
  readonly run: CohortRun;
  readonly outcome: Outcome;
  /** Hourly temperatures from wetting to the count [°C]. */
  readonly countedC: Float64Array;
  readonly record: SeedRecord;
  readonly beyond: Extrapolation;
  readonly countDays: number;
  readonly hasHotSpell: boolean;
  readonly imbibitionMs: number;
}

/** A repeated week can be off by weeks in spring, so a warning says so if it carries the seed this share of the way or more. */
const MAX_HELD_PROGRESS = 0.25;
/** Emergence this many times slower than the crop's best exposes the seed to rot: our choice of when to say so. */
const SLOW_FACTOR = 3;
/** Seed this many times deeper than usual comes slowly and weakly: common practice, no source. */
export const DEEP_FACTOR = 2;
const TEST_LASTS_DAYS = 366;
/** A drift or a repeated week says little of a sowing so long after it: our choice. */
const FAR_AHEAD_DAYS = 14;

/** Assumptions of the answer. */
export function forecastAssumptions(question: Question, findings: ForecastFindings): Note[] {
  const { crop, bed, sowing, site, lot, learned } = question;
  const isCalibrated = learned && (question.timeFactor === null || question.standFactor === null);
  const notes: (ForecastAssumption | LearnedFact)[] = [
    { code: 'curve', params: { crop: cropInFacts(crop), source: crop.source } },
    {
      code: 'moist-seedbed',
      params: { wettedOn: bed.wettedOn === null ? null : dateAt(findings.imbibitionMs, site.zone) },
    },
    {
      code: 'count-day',
      params: { countDays: findings.countDays, isOwn: question.countDays === null ? 'no' : 'yes' },
    },
    { code: 'ranges', params: {} },
    {
      code: 'beds-against-laboratory',
      params: {
        stand: originOf(question.standFactor, learned?.standFactor),
        time: originOf(question.timeFactor, learned?.timeFactor),
      },
    },
    ...(isCalibrated ? [learned.text] : []),
  ];
  if (sowing.depthCm === null) notes.push({ code: 'depth', params: { depthCm: seedDepthCm(question) } });
  if (lot?.germinationPercent == null) notes.push({ code: 'lot', params: { about: 'forecast' } });
  if (findings.record.knownToH < findings.record.imbibitionH + findings.countedC.length) {
    notes.push(extrapolationNote(findings.beyond, findings.record, site, kindOfYears(question)));
  }
  if (question.series.some((one) => one.readings === null) && site.latitude === null) {
    notes.push({ code: 'daylight', params: {} });
  }
  if (question.zoneFromStamps) notes.push({ code: 'zone-from-stamps', params: { timeZone: site.zone.name } });
  const isMeasured = findings.record.soil.model === null && question.series.some((one) => one.medium === 'soil');
  if (isMeasured && isDescribed(bed)) notes.push({ code: 'bed-as-measured', params: {} });
  if (crop.soil === null) {
    notes.push({
      code: 'own-rows',
      params: { hotThresholdC: crop.hotThresholdC, marginK: STEP_BEYOND_K },
    });
  }
  return notes;
}

/** Origin of a factor that is applied to the laboratory's figures. */
const originOf = (own: unknown, taught: unknown): 'crop' | 'taught' | 'own' =>
  own !== null && own !== undefined ? 'own' : taught ? 'taught' : 'crop';

/** True if the bed is described as other than the default of bare, open, moist ground. */
const isDescribed = ({ kind, cover, shadePercent, moisture }: QuestionBed): boolean =>
  kind !== 'open-ground' || cover !== 'bare' || shadePercent !== 0 || moisture === 'wet' || moisture === 'rain';

/** Warnings of the answer. */
export function forecastWarnings(question: Question, findings: ForecastFindings): Note[] {
  const { crop, sowing, lot } = question;
  const { seed, outcome, run, countedC, record, beyond } = findings;
  const warnings: ForecastWarning[] = [];
  const depthCm = seedDepthCm(question);
  if (crop.sowingDepthCm !== null && depthCm > DEEP_FACTOR * crop.sowingDepthCm) {
    warnings.push({ code: 'deep', params: { depthCm, usualCm: crop.sowingDepthCm } });
  }
  if (beyond === 'repeat-last-week' && heldProgress(findings) > MAX_HELD_PROGRESS) {
    warnings.push({ code: 'held-week', params: {} });
  }
  if (
    beyond === 'seasonal-drift' &&
    isThinRecord(record.knownToH) &&
    record.knownToH - record.imbibitionH < countedC.length
  ) {
    warnings.push({ code: 'thin-record', params: {} });
  }
  if (findings.countDays === MIN_COUNT_DAYS && question.countDays === null && outcome.whyNone !== null) {
    warnings.push({ code: 'too-cold-or-hot', params: { countDays: MIN_COUNT_DAYS } });
  }
  const daysAhead = Math.round((record.imbibitionH - record.knownToH) / 24);
  if (daysAhead > FAR_AHEAD_DAYS) warnings.push({ code: 'far-ahead', params: { about: 'forecast', daysAhead } });
  const germinationPercent = lot?.germinationPercent ?? null;
  if (germinationPercent !== null && germinationPercent > 0 && germinationPercent <= 1) {
    warnings.push({
      code: 'share-for-percent',
      params: { germinationPercent, meantPercent: 100 * germinationPercent },
    });
  }
  const hours = countedC.subarray(0, 24).reduce((sum, tempC) => sum + (tempC > seed.hotThresholdC ? 1 : 0), 0);
  if (record.showsSwing && hours > 0 && !findings.hasHotSpell) {
    warnings.push({ code: 'hot-first-day', params: { hours, hotThresholdC: seed.hotThresholdC } });
  }
  const untested = untestedHours(seed, countedC, outcome);
  if (untested > 0) warnings.push({ code: 'extrapolated', params: { hours: untested } });
  if (run.killedAtH < Infinity) {
    warnings.push({ code: 'killing-heat', params: { limitC: LETHAL_C, limitHours: LETHAL_HOURS } });
  }
  const bestRate = Math.max(...crop.rows.map((row) => (row.days === null ? 0 : 1 / row.days)));
  if (outcome.halfH !== null && outcome.halfH / 24 > SLOW_FACTOR / bestRate) {
    warnings.push({ code: 'slow', params: { about: 'forecast' } });
  }
  if (lot?.testedOn && lot.testedOn < addDays(sowing.date, -TEST_LASTS_DAYS)) {
    warnings.push({ code: 'old-test', params: { testedOn: lot.testedOn } });
  }
  return [...warnings, ...crop.cautions];
}

/** Share of the progress to half emergence that falls in assumed hours. */
function heldProgress({ seed, countedC, record, outcome }: ForecastFindings): number {
  const toH = Math.min(countedC.length, outcome.halfH ?? countedC.length);
  let progress = 0;
  for (let hour = Math.max(0, record.knownToH - record.imbibitionH); hour < toH; hour++)
    progress += rateAt(seed.curve, countedC[hour]!) / 24;
  return progress;
}

function untestedHours({ curve }: Seed, countedC: Float64Array, outcome: Outcome): number {
  const fromC = Math.max(curve.rate.testedFromC, curve.share.testedFromC);
  const toC = Math.min(curve.rate.testedToC, curve.share.testedToC);
  const end = Math.min(countedC.length, Math.ceil(outcome.mostH ?? countedC.length));
  let hours = 0;
  for (let hour = 0; hour < end; hour++) {
    const tempC = countedC[hour]!;
    if ((tempC < fromC || tempC > toC) && (rateAt(curve, tempC) > 0 || shareAt(curve, tempC) > 0)) hours++;
  }
  return hours;
}
