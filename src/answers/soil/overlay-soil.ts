import { basisCode } from '../../basics/series.js';
import type { Bedding } from '../question.js';
import { climatologicalDiurnalK } from './climatological-diurnal.js';
import { fillFromModel, missingHours } from './fill-gaps.js';
import type { ModelledBed } from './modelled-bed.js';
import type { Clock, ProbeAtSeed } from './probe-at-seed.js';
import type { ProbeCalibration } from './probe-calibration.js';
import { runningDay } from './running-day.js';
import type { SoilWarning } from './soil-facts.js';

/** Known hours, with each source overlaid on the ones before. Shapes (nHours). */
export interface OverlaidSoil {
  /** Hourly means [°C]; NaN where nothing is known. */
  readonly hourlyC: Float64Array;
  /** Provenance of each hour: codes of basics/series. */
  readonly basis: Uint8Array;
  /** 1 where the hour shows the swing of day and night. */
  readonly swings: Uint8Array;
  /** Standard deviation of a day's mean [K]. */
  readonly sdK: Float64Array;
}

/** Nothing known yet. */
export const blank = ({ nHours }: Clock): OverlaidSoil => ({
  hourlyC: new Float64Array(nHours).fill(NaN),
  basis: new Uint8Array(nHours),
  swings: new Uint8Array(nHours),
  sdK: new Float64Array(nHours),
});

/** Nothing known any more, in the same arrays. */
export function forget({ hourlyC, basis, swings, sdK }: OverlaidSoil): void {
  hourlyC.fill(NaN);
  for (const one of [basis, swings, sdK]) one.fill(0);
}

/** A probe's day errs by so much more where its readings were moved up or down: 10 cm brought to 5 cm, 5 cm to 10 cm. */
export const MOVED_SD_K = { 'not-moved': 0, down: 0.15, up: 0.4, 'too-far': 1.8, 'too-short': 0.6 } as const;
/** A difference from the room that is more than a thermometer's [K]. */
const FELT_K = 0.5;

/** The model, moved and widened as the probes have taught. */
export function overlayModel(
  known: OverlaidSoil,
  model: ModelledBed,
  calibration: ProbeCalibration,
  fromH: number,
): void {
  const modelC = model.hourlyC.at(-1)!;
  const dayC = calibration.diurnalFactor === 1 ? null : runningDay(modelC);
  const corrected = basisCode('corrected');
  const modelled = basisCode('modelled');
  for (let hour = 0; hour < modelC.length && fromH + hour < known.hourlyC.length; hour++) {
    const at = fromH + hour;
    const basis = model.air.basis[hour]!;
    const atSeedC = dayC ? dayC[hour]! + calibration.diurnalFactor * (modelC[hour]! - dayC[hour]!) : modelC[hour]!;
    known.hourlyC[at] = atSeedC + calibration.correctionK[at]!;
    known.basis[at] = calibration.isCalibrated && basis === modelled ? corrected : basis;
    known.swings[at] = model.air.swings[hour]!;
    known.sdK[at] = calibration.sdK[at]!;
  }
}

/** Overlays a probe's readings. */
export function overlayProbe(
  known: OverlaidSoil,
  { atProbe, atSeedC, moved }: ProbeAtSeed,
  modelledC: Float64Array | null,
): void {
  const movedSdK = MOVED_SD_K[moved];
  for (let hour = 0; hour < known.hourlyC.length; hour++) {
    const hasModel = modelledC !== null && !Number.isNaN(modelledC[hour]!);
    const tempC = moved === 'too-short' && !hasModel ? atProbe.hourlyC[hour]! : atSeedC[hour]!;
    if (Number.isNaN(tempC)) continue;
    // A day known by its mean teaches the model its level; the model keeps its swing.
    if (hasModel && atProbe.swings[hour] === 0) continue;
    known.hourlyC[hour] = tempC;
    known.basis[hour] = atProbe.basis[hour]!;
    known.swings[hour] = atProbe.swings[hour]!;
    known.sdK[hour] = movedSdK === 0 ? atProbe.sdK[hour]! : Math.hypot(atProbe.sdK[hour]!, movedSdK);
  }
}

/** Overlays the daily mean of a probe too deep for more, with a climatological diurnal range, where no air is known. */
export function overlayClimatologicalRange(
  known: OverlaidSoil,
  probes: readonly ProbeAtSeed[],
  bedding: Bedding,
  clock: Clock,
): void {
  const isBare = (hour: number, { atProbe }: ProbeAtSeed): boolean =>
    Number.isNaN(known.hourlyC[hour]) && !Number.isNaN(atProbe.hourlyC[hour]);
  const deep = probes.filter(
    (probe) => probe.moved === 'too-far' && known.hourlyC.some((_, hour) => isBare(hour, probe)),
  );
  if (deep.length === 0) return;
  const swingC = climatologicalDiurnalK(bedding, clock);
  for (const probe of deep.reverse()) {
    const { atProbe } = probe;
    const meanC = runningDay(atProbe.hourlyC);
    for (let hour = 0; hour < clock.nHours; hour++) {
      if (!isBare(hour, probe)) continue;
      known.hourlyC[hour] = meanC[hour]! + (swingC?.[hour] ?? 0);
      known.basis[hour] = Math.max(basisCode('modelled'), atProbe.basis[hour]!);
      known.swings[hour] = swingC ? 1 : 0;
      known.sdK[hour] = Math.hypot(atProbe.sdK[hour]!, MOVED_SD_K['too-far']);
    }
  }
}

/** A thermometer in the room's soil knows better than the grower's word for the room, until the end. */
export function holdRoom(known: OverlaidSoil, probes: readonly ProbeAtSeed[], roomC: number): SoilWarning[] {
  const probe = probes.at(-1);
  const endH = probe ? probe.atSeedC.findLastIndex((tempC) => !Number.isNaN(tempC)) + 1 : 0;
  if (endH < 24) return [];
  const lastDay = known.hourlyC.subarray(endH - 24, endH);
  const heldC = lastDay.reduce((sum, tempC) => sum + tempC, 0) / 24;
  if (Math.abs(heldC - roomC) < FELT_K) return [];
  known.hourlyC.fill(heldC, endH);
  known.basis.fill(basisCode('corrected'), endH);
  return [{ code: 'room-as-measured', params: { heldC: Math.round(10 * heldC) / 10, roomC } }];
}

/** Hours within the probes' record that no probe knows: filled by the model, brought to the readings on either side. */
export function fillFromProbeAndModel(
  known: OverlaidSoil,
  modelledC: Float64Array,
  probes: readonly ProbeAtSeed[],
): void {
  const measured = new Float64Array(known.hourlyC.length).fill(NaN);
  for (const { atSeedC, atProbe } of probes) {
    for (let hour = 0; hour < measured.length; hour++) {
      if (!Number.isNaN(atSeedC[hour]) && atProbe.swings[hour] === 1) measured[hour] = atSeedC[hour]!;
    }
  }
  for (const gap of missingHours(measured)) {
    if (fillFromModel(measured, gap, modelledC)) {
      known.hourlyC.set(measured.subarray(gap.fromH, gap.toH), gap.fromH);
      known.basis.fill(basisCode('filled'), gap.fromH, gap.toH);
    }
  }
}
