import { dateAt, daysBetween, HOUR_MS, instantText } from '../../basics/calendar.js';
import { basisCode } from '../../basics/series.js';
import { groundOf } from '../../seedbed/conduction/soil-from-air.js';
import { stepResponse } from '../../seedbed/conduction/step-response.js';
import { probeOutliers } from '../../seedbed/probe/probe-outliers.js';
import { probeUpdate } from '../../seedbed/probe/probe-update.js';
import { nodeAt } from '../../seedbed/surface/ground.js';
import { residualVarianceK2 } from '../../seedbed/surface/residual-model.js';
import { comingUncertaintyK } from '../forecast/coming-uncertainty.js';
import type { Site } from './known-hours.js';
import type { ModelledBed } from './modelled-bed.js';
import { placeDays } from './place-days.js';
import type { Clock, ProbeAtSeed } from './probe-at-seed.js';
import { runningDay } from './running-day.js';
import type { SoilWarning } from './soil-facts.js';

/** Calibration of the bed's model by its probes. Shapes (nHours of the record's clock). */
export interface ProbeCalibration {
  /** To be added to the model at the seed [K]. */
  readonly correctionK: Float64Array;
  /** Standard deviation of a day's mean about the corrected one [K]. */
  readonly sdK: Float64Array;
  /** Ratio of the bed's diurnal range to the model's; 1 without a probe. */
  readonly diurnalFactor: number;
  /** False where no day was known by both. */
  readonly isCalibrated: boolean;
  /** The same standard deviation on days after the record's last, of its soil alone [K]. Shape (nDays). */
  sdAheadK(nDays: number): Float64Array;
  readonly warnings: readonly SoilWarning[];
}

/** Standard deviation between depths of the difference from the model [K]: our judgement. */
const OTHER_DEPTH_SD_K = 0.4;
/** A day counts where so many of its hours are known by both [h]. */
const WHOLE_DAY_H = 18;
/** At or below this snow or ice may lie between probe and model [°C]. */
const ICE_C = 1;
/** A forecast day is never less sure than a day of the season at random [K]: our judgement. */
const FORECAST_SD_MAX_K = 2.5;
/** Added standard deviation on days whose air was filled, or whose diurnal range and so sunshine was assumed [K]: our judgement. */
const FILLED_AIR_SD_K = 1.5;
const SUPPOSED_SWING_SD_K = 1;
/** Under snow that may not lie [K]. */
const SNOW_SD_K = 2;

/**
 * Learns from the days that both probes and model know, for all days of the model.
 *
 * @param model    The bed's model.
 * @param depthsCm The depths it was asked for.
 * @param probes   The surest last.
 * @param setting  `startSdK`: the model began from soil that a probe had measured as well as this, so that its doubt only
 * grows from there on; null: it did not.
 */
export function probeCalibration(
  model: ModelledBed,
  depthsCm: readonly number[],
  probes: readonly ProbeAtSeed[],
  {
    clock,
    modelFromH,
    site,
    startSdK,
  }: { readonly clock: Clock; readonly modelFromH: number; readonly site: Site; readonly startSdK: number | null },
): ProbeCalibration {
  const { startMs, nHours } = clock;
  const firstDate = dateAt(startMs + modelFromH * HOUR_MS, site.zone);
  const lastDate = dateAt(startMs + nHours * HOUR_MS - 1, site.zone);
  const days = placeDays(startMs, nHours, firstDate, daysBetween(firstDate, lastDate) + 1, site.zone);
  const nDays = days.dates.length;
  const sun = dailyMeans(model.sun(), modelFromH, days.dayOfHour, nDays);
  const residualK = new Float64Array(nDays).fill(NaN);
  const warnings: SoilWarning[] = [];
  for (const probe of probes) {
    const modelC = model.hourlyC[depthsCm.indexOf(probe.depthCm)];
    // Readings hours apart tell no day's mean; a probe below the container is not in this bed.
    if (!modelC || probe.isCoarse) continue;
    const doubted = doubtfulHours(probe, modelC, modelFromH);
    if (doubted.length > 0) warnings.push(calibrationWarning(probe, doubted, clock, site));
    const isDoubted = new Set(doubted);
    const sums = new Float64Array(nDays);
    const soilSums = new Float64Array(nDays);
    const hours = new Int32Array(nDays);
    for (let hour = modelFromH; hour < nHours && hour - modelFromH < modelC.length; hour++) {
      const measured = probe.atProbe.hourlyC[hour]!;
      const day = days.dayOfHour[hour]!;
      if (Number.isNaN(measured) || day < 0 || day >= nDays || isDoubted.has(hour)) continue;
      if (probe.atProbe.basis[hour] !== basisCode('measured')) continue;
      sums[day]! += measured - modelC[hour - modelFromH]!;
      soilSums[day]! += Math.min(measured, modelC[hour - modelFromH]!);
      hours[day]!++;
    }
    for (let day = 0; day < nDays; day++) {
      const known = hours[day]!;
      if (known >= WHOLE_DAY_H && soilSums[day]! / known > ICE_C) residualK[day] = sums[day]! / known;
    }
  }
  const taught = [...residualK.keys()].filter((day) => !Number.isNaN(residualK[day]));
  const taughtDays = {
    days: taught,
    sun: taught.map((day) => sun[day]!),
    residualsK: taught.map((day) => residualK[day]!),
  };
  const { residuals } = model.surface;
  const { correctionK, sdK } = probeUpdate(residuals, taughtDays, { days: [...residualK.keys()], sun });
  // The lesson of a probe at another depth is uncertain by the distance between them.
  const isAtSeed = probes.some(({ moved }) => moved === 'not-moved');
  const movedSdK = taught.length > 0 && !isAtSeed ? OTHER_DEPTH_SD_K : 0;
  const grown = startSdK === null ? null : growthOfUncertainty(model, depthsCm.at(-1)!, nDays);
  warnings.push(...disagreement(residualK, Math.sqrt(residualVarianceK2(residuals, 0))));
  const airSdK = doubtOfAir(model, modelFromH, days.dayOfHour, nDays);
  const dailySdK = sdK.map((sd, day) => {
    const soilSdK = taught.length === 0 && grown ? Math.hypot(sd * grown[day]!, startSdK!) : sd;
    return Math.hypot(soilSdK, airSdK[day]!, movedSdK);
  });
  const diurnalFactor = diurnalFactorOf(probes, (probe) => model.hourlyC[depthsCm.indexOf(probe.depthCm)], modelFromH);
  if (diurnalFactor === MIN_SWING || diurnalFactor === MAX_SWING) warnings.push(oddSwing(diurnalFactor));
  return {
    correctionK: betweenMiddles(correctionK, days.dayOfHour, days.endH),
    sdK: byDay(dailySdK, days.dayOfHour),
    diurnalFactor: diurnalFactor,
    isCalibrated: taught.length > 0,
    sdAheadK(nAhead) {
      const ahead = Array.from({ length: nAhead }, (_, day) => nDays + day);
      const asUsual = new Float64Array(nAhead);
      return probeUpdate(residuals, taughtDays, { days: ahead, sun: asUsual }).sdK.map((sd) =>
        Math.hypot(sd, movedSdK),
      );
    },
    warnings,
  };
}

/** Weight of the model's own diurnal range beside a probe's, in days of readings [d]: our choice. */
const SWING_PRIOR_DAYS = 2;
/** Minimum hours read on a day to know its diurnal range [h]. */
const SWING_MIN_H = 20;
/** A bed that swings beyond these is another bed than the one described. */
const MIN_SWING = 0.6;
const MAX_SWING = 1.6;

/**
 * Ratio of the probes' diurnal range to the model's, about the mean of the day around each hour.
 *
 * Formula: (Σ m o + k) / (Σ m² + k), m and o the differences from the running day's mean, modelled and measured, and k two
 * days' share of Σ m²: least squares, drawn towards 1 where little is known. The probe's depth does not matter: what
 * widens the surface's swing widens all depths' alike.
 */
function diurnalFactorOf(
  probes: readonly ProbeAtSeed[],
  modelOf: (probe: ProbeAtSeed) => Float64Array | undefined,
  modelFromH: number,
): number {
  let [both, own, hours] = [0, 0, 0];
  // Each hour is heard once, from the surest probe that knows it.
  const heard = new Uint8Array(probes[0]?.atProbe.hourlyC.length ?? 0);
  for (const probe of [...probes].reverse()) {
    const modelC = modelOf(probe);
    if (!modelC || probe.moved === 'too-far' || probe.isCoarse) continue;
    const end = Math.min(probe.atProbe.hourlyC.length - modelFromH, modelC.length);
    const measuredC = probe.atProbe.hourlyC.subarray(modelFromH, modelFromH + end);
    // Both means are over the same hours, and over most of a day of them.
    const heardC = modelC.subarray(0, end).map((tempC, hour) => (Number.isNaN(measuredC[hour]) ? NaN : tempC));
    const [measuredDay, modelDay] = [runningDay(measuredC, SWING_MIN_H), runningDay(heardC, SWING_MIN_H)];
    for (let hour = 0; hour < end; hour++) {
      const isRead =
        probe.atProbe.swings[modelFromH + hour] === 1 && !Number.isNaN(measuredC[hour]! - measuredDay[hour]!);
      if (!isRead || probe.atProbe.basis[modelFromH + hour] !== basisCode('measured') || heard[hour] === 1) continue;
      heard[hour] = 1;
      const modelled = modelC[hour]! - modelDay[hour]!;
      both += modelled * (measuredC[hour]! - measuredDay[hour]!);
      own += modelled * modelled;
      hours++;
    }
  }
  if (hours < WHOLE_DAY_H || own === 0) return 1;
  const prior = (own / hours) * 24 * SWING_PRIOR_DAYS;
  return Math.min(MAX_SWING, Math.max(MIN_SWING, (both + prior) / (own + prior)));
}

/** A model that began from measured soil errs little at first: its doubt grows as the soil forgets. */
function growthOfUncertainty({ surface, kind }: ModelledBed, depthCm: number, nDays: number): Float64Array {
  const ground = groundOf(surface, kind, [depthCm]);
  return stepResponse(ground, nodeAt(ground, depthCm), surface.conductance, nDays);
}

/** Means of the model's hours by the place's dates; a date without an hour of its own has the one before it. */
function dailyMeans(hourlyC: Float64Array, fromH: number, dayOfHour: Int32Array, nDays: number): Float64Array {
  const sums = new Float64Array(nDays);
  const hours = new Int32Array(nDays);
  for (let hour = 0; hour < hourlyC.length && fromH + hour < dayOfHour.length; hour++) {
    const day = dayOfHour[fromH + hour]!;
    if (day < 0 || day >= nDays) continue;
    sums[day]! += hourlyC[hour]!;
    hours[day]!++;
  }
  let last = 0;
  return sums.map((sum, day) => {
    if (hours[day]! > 0) last = sum / hours[day]!;
    return last;
  });
}

/** Hours of a probe that nothing in the air explains, on the record's clock. */
function doubtfulHours({ atProbe }: ProbeAtSeed, modelC: Float64Array, modelFromH: number): number[] {
  const residualsK = modelC.map((tempC, hour) =>
    atProbe.swings[modelFromH + hour] === 1 ? atProbe.hourlyC[modelFromH + hour]! - tempC : NaN,
  );
  return probeOutliers(residualsK).map((hour) => modelFromH + hour);
}

const oddSwing = (factor: number): SoilWarning => ({
  code: 'probe-swings-oddly',
  params: { swing: factor < 1 ? 'less' : 'more' },
});

/** A probe that reads far from anything that this air makes of this bed, day after day. */
function disagreement(residualK: Float64Array, sdK: number): SoilWarning[] {
  const known = residualK.filter((residual) => !Number.isNaN(residual)).sort();
  const middleK = known[known.length >> 1] ?? 0;
  if (Math.abs(middleK) < TOO_FAR_SD * sdK) return [];
  return [
    {
      code: 'probe-and-air-disagree',
      params: { offK: Math.round(Math.abs(middleK)), direction: middleK > 0 ? 'warmer' : 'colder' },
    },
  ];
}
/** A larger difference, in standard deviations, is an error rather than a property of the bed. */
const TOO_FAR_SD = 3;

function calibrationWarning(
  { depthCm }: ProbeAtSeed,
  hours: readonly number[],
  { startMs }: Clock,
  { zone }: Site,
): SoilWarning {
  const firstMs = startMs + hours[0]! * HOUR_MS;
  return {
    code: 'unlike-the-air',
    params: {
      depthCm,
      hours: hours.length,
      firstDate: dateAt(firstMs, zone),
      firstTime: instantText(firstMs, zone).slice(11, 16),
    },
  };
}

/** Uncertainty that each day's air adds [K]: it grows with each day of a forecast after the last measured one. */
function doubtOfAir(
  { air, snowCover }: ModelledBed,
  modelFromH: number,
  dayOfHour: Int32Array,
  nDays: number,
): Float64Array {
  const sdK = new Float64Array(nDays);
  const [forecast, filled] = [basisCode('forecast'), basisCode('filled')];
  const lead = new Int32Array(nDays).fill(-1);
  air.basis.forEach((basis, hour) => {
    const day = dayOfHour[modelFromH + hour] ?? -1;
    if (day < 0 || day >= nDays) return;
    if (basis >= forecast) lead[day] = day > 0 && lead[day - 1]! >= 0 ? lead[day - 1]! + 1 : 0;
    if (basis === filled) sdK[day] = FILLED_AIR_SD_K;
    else if (air.swings[hour] === 0) sdK[day] = SUPPOSED_SWING_SD_K;
    sdK[day] = Math.max(sdK[day]!, SNOW_SD_K * snowCover[hour]!);
  });
  return sdK.map((sd, day) =>
    lead[day]! < 0 ? sd : Math.hypot(sd, Math.min(FORECAST_SD_MAX_K, comingUncertaintyK(lead[day]!))),
  );
}

/** Daily values on hours: straight from the middle of one day to that of the next. */
function betweenMiddles(daily: Float64Array, dayOfHour: Int32Array, endH: Float64Array): Float64Array {
  const lastDay = daily.length - 1;
  const middleH = endH.map((end, day) => end - (day > 0 ? (end - endH[day - 1]!) / 2 : 12));
  const hourly = new Float64Array(dayOfHour.length);
  for (let hour = 0; hour < hourly.length; hour++) {
    const day = withinDays(dayOfHour[hour]!, lastDay);
    const sinceMiddle = hour + 0.5 - middleH[day]!;
    const other = withinDays(day + (sinceMiddle < 0 ? -1 : 1), lastDay);
    const share = other === day ? 0 : Math.min(1, sinceMiddle / (middleH[other]! - middleH[day]!));
    hourly[hour] = daily[day]! + share * (daily[other]! - daily[day]!);
  }
  return hourly;
}

function byDay(daily: Float64Array, dayOfHour: Int32Array): Float64Array {
  const hourly = new Float64Array(dayOfHour.length);
  for (let hour = 0; hour < hourly.length; hour++)
    hourly[hour] = daily[withinDays(dayOfHour[hour]!, daily.length - 1)]!;
  return hourly;
}

const withinDays = (day: number, lastDay: number): number => (day < 0 ? 0 : Math.min(day, lastDay));
