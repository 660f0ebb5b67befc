import { DAY_MS, HOUR_MS, instantAt } from '../basics/calendar.js';
import { type Note, RequestError } from '../basics/errors.js';
import { basisCode } from '../basics/series.js';
import { neverStop, type ShouldStop } from '../basics/stop.js';
import type { ReadSeries } from '../readings/read-series.js';
import { containerOf } from '../seedbed/bed.js';
import { LEVEL_DAYS } from '../seedbed/seasonal-drift.js';
import { surfaceOf } from '../seedbed/surface.js';
import { airAboveBed, type Wanted } from './air-above-bed.js';
import { type BedLesson, bedLesson } from './bed-lesson.js';
import { fillFromModel, missingHours } from './fill-gaps.js';
import { extentOf } from './known-hours.js';
import { measuredDiffusivityM2s } from './measured-diffusivity.js';
import { type ModelledBed, modelledBed } from './modelled-bed.js';
import {
  type Clock,
  lastWholeStretch,
  type ProbeAtSeed,
  probeAtSeed,
  profileFromProbe,
  tellableDepthCm,
} from './probe-at-seed.js';
import type { Bedding } from './question.js';
import { runningDay } from './running-day.js';
import { soilAssumptions, soilWarnings } from './soil-notes.js';
import { usualSwingC } from './usual-swing.js';

/** What is known of the soil at the depth asked, hour by hour, before anything is supposed. */
export interface SoilRecord extends Clock {
  /** Hourly means [°C]; NaN where nothing is known. Shape (nHours). */
  readonly hourlyC: Float64Array;
  /** What each hour rests on: codes of basics/series. */
  readonly basis: Uint8Array;
  /** 1 where the hour shows the swing of day and night. */
  readonly swings: Uint8Array;
  /** How far a day's mean there may be off: standard deviation [K]. Shape (nHours). */
  readonly sdK: Float64Array;
  readonly probes: readonly ProbeAtSeed[];
  readonly model: ModelledBed | null;
  /** The same doubt on days after the record's last, were their air known; null: the bed has no model to say it. */
  readonly sdAheadK: ((nDays: number) => Float64Array) | null;
  /** The hour of the record's clock at which the model begins. */
  readonly modelFromH: number;
  readonly assumptions: readonly Note[];
  readonly warnings: readonly Note[];
}

/** Soil that was last read so long before is of no use [ms]. */
const LONGEST_BACK_MS = 400 * DAY_MS;
/** A probe's own readings teach the model for so long after them [ms]. */
const LESSON_MS = 365 * DAY_MS;
/** A probe's day errs by this much [K]: the sensor, and where it lies. */
const PROBE_SD_K = 0.2;
/** And by this much more where its readings were moved up or down: 10 cm brought to 5 cm, 5 cm to 10 cm. */
const MOVED_SD_K = { 'not-moved': 0, down: 0.15, up: 0.4, 'too-far': 1.8, 'too-short': 0.6 } as const;
/** A difference from the room that is more than a thermometer's [K]. */
const FELT_K = 0.5;
/** A room's soil differs from what the grower says of the room [K]: our judgement. */
const ROOM_SD_K = 1;

/**
 * Joins everything sent into the soil's temperature at one depth: a probe's hours as they are or moved there; where it is
 * silent, the model that runs on the air, corrected by what the probe has taught; indoors, the room.
 *
 * @param series  Soil and air, in the order sent. Measured values win over forecast ones, later over earlier, probes near
 * the depth over others.
 * @param bedding The place, the bed and the depth.
 * @param wanted  Which hours matter; the clock begins earlier, as far back as the soil remembers.
 * @param shouldStop Asked once a year of hours.
 */
export function soilRecord(
  series: readonly ReadSeries[],
  bedding: Bedding,
  wanted: Wanted,
  shouldStop: ShouldStop = neverStop,
): SoilRecord {
  const { site, bed } = bedding;
  const depthCm = tellableDepthCm(bedding.depthCm);
  const soil = surestLast(
    series.filter((one) => one.medium === 'soil'),
    depthCm,
  );
  const air = surestLast(
    series.filter((one) => one.medium === 'air'),
    depthCm,
  );
  const isIndoors = bed.kind === 'indoors';
  if (air.length > 0 && !isIndoors && site.latitude === null) refuseNoLatitude();
  const above = air.length > 0 && !isIndoors ? airAboveBed(air, site, wanted) : null;
  const clock = clockOf(soil, above?.startMs ?? null, above?.record.hourlyC.length ?? 0, isIndoors, wanted);
  const surface = surfaceOf(bed, above?.climate ?? null);
  const measuredM2s = measuredDiffusivityM2s(soil, site, clock, depthCm);
  const conductivity = measuredM2s === null ? surface.conductivity : measuredM2s * surface.heatCapacity;
  const ground = { ...surface, conductivity, bottomCm: containerOf(bed.kind)?.depthCm ?? Infinity };
  const probes = soil.map((one) => probeAtSeed(one, site, clock, depthCm, ground));
  const modelFromH = above ? (above.startMs - clock.startMs) / HOUR_MS : 0;
  const known = blank(clock);

  let model: ModelledBed | null = null;
  let lesson: BedLesson | null = null;
  if (above) {
    const depths = [
      ...new Set([...probes.map((probe) => probe.depthCm).filter((cm) => cm <= ground.bottomCm), depthCm]),
    ];
    const before = probes.findLast(
      ({ depthCm: cm, atProbe }) => cm <= ground.bottomCm && lastWholeStretch(atProbe.hourlyC, modelFromH),
    );
    model = modelledBed(
      above,
      site.latitude!,
      bed,
      depths.sort((a, b) => Number(a === depthCm) - Number(b === depthCm)),
      {
        ...(bed.wettedOn
          ? { wetFromH: Math.round((instantAt(bed.wettedOn, '12:00', site.zone) - above.startMs) / HOUR_MS) }
          : {}),
        ...(before
          ? { knownStart: (ground) => profileFromProbe(ground, before, modelFromH, site, clock.startMs) }
          : {}),
      },
      shouldStop,
    );
    lesson = bedLesson(model, depths, probes, {
      clock,
      modelFromH,
      site,
      startSdK: before ? Math.hypot(PROBE_SD_K, MOVED_SD_K[before.moved]) : null,
    });
    layModel(known, model, lesson, modelFromH);
  } else if (isIndoors && bed.roomC !== null) {
    known.hourlyC.fill(bed.roomC);
    known.basis.fill(basisCode('modelled'));
    known.swings.fill(1);
    known.sdK.fill(ROOM_SD_K);
  }
  const modelledC = model || isIndoors ? known.hourlyC.slice() : null;
  layUsualSwing(known, probes, bedding, clock);
  for (const probe of probes) layProbe(known, probe, modelledC);
  if (modelledC) fillFromProbeAndModel(known, modelledC, probes);
  const fromH = above ? Math.floor((wanted.fromMs - above.startMs) / HOUR_MS) : 0;
  const findings = { bedding, depthCm, model, probes, isIndoors, hasAir: air.length > 0, fromH };
  const roomNotes = isIndoors && bed.roomC !== null ? holdRoom(known, probes, bed.roomC) : [];
  return {
    ...clock,
    ...known,
    probes,
    model,
    sdAheadK: lesson?.sdAheadK ?? null,
    modelFromH,
    assumptions: soilAssumptions(findings),
    warnings: [
      ...series.flatMap((one) => one.warnings),
      ...(lesson?.warnings ?? []),
      ...soilWarnings(findings),
      ...roomNotes,
    ],
  };
}

function refuseNoLatitude(): never {
  throw new RequestError(
    'no-latitude',
    'How warm the sun makes the soil under this air depends on the latitude: send where.place.latitude.',
    [{ path: ['where', 'place', 'latitude'], detail: 'Is needed to work out soil from air.' }],
  );
}

type Laid = Pick<SoilRecord, 'hourlyC' | 'basis' | 'swings' | 'sdK'>;

const blank = ({ nHours }: Clock): Laid => ({
  hourlyC: new Float64Array(nHours).fill(NaN),
  basis: new Uint8Array(nHours),
  swings: new Uint8Array(nHours),
  sdK: new Float64Array(nHours),
});

/** Forecast before measured, far probes before near ones; otherwise in the order sent. What is laid later stands. */
function surestLast(series: readonly ReadSeries[], depthCm: number): ReadSeries[] {
  const distance = (one: ReadSeries): number => Math.abs((one.probeDepthCm ?? depthCm) - depthCm);
  return [...series].sort(
    (a, b) =>
      Number(b.origin === 'forecast') - Number(a.origin === 'forecast') ||
      (a.medium === 'soil' ? distance(b) - distance(a) : 0),
  );
}

/** Whole hours from as far back as matters to the last value that does. */
function clockOf(
  soil: readonly ReadSeries[],
  airFromMs: number | null,
  airHours: number,
  isIndoors: boolean,
  { phaseMs, fromMs, toMs }: Wanted,
): Clock {
  const extents = soil.map(extentOf);
  const soilFirstMs = Math.min(...extents.map((extent) => extent.firstMs));
  const soilLastMs = Math.max(...extents.map((extent) => extent.lastMs));
  const levelMs = Math.max(fromMs - LONGEST_BACK_MS, Math.min(fromMs, soilLastMs) - (LEVEL_DAYS + 1) * DAY_MS);
  const lookBackMs = airFromMs === null ? levelMs : Math.min(levelMs, fromMs - LESSON_MS);
  const firstMs = Math.min(
    soil.length > 0 ? Math.max(soilFirstMs, lookBackMs) : Infinity,
    airFromMs ?? Infinity,
    isIndoors ? fromMs - (LEVEL_DAYS + 1) * DAY_MS : Infinity,
  );
  const lastMs = Math.max(
    soil.length > 0 ? soilLastMs : -Infinity,
    airFromMs === null ? -Infinity : airFromMs + airHours * HOUR_MS,
    isIndoors ? toMs : -Infinity,
  );
  const startMs = phaseMs - Math.max(0, Math.ceil((phaseMs - firstMs) / DAY_MS)) * DAY_MS;
  return { startMs, nHours: Math.max(0, Math.floor((Math.min(lastMs, toMs) - startMs) / HOUR_MS)) };
}

function layModel(known: Laid, model: ModelledBed, lesson: BedLesson, fromH: number): void {
  const modelC = model.hourlyC.at(-1)!;
  const dayC = lesson.swingFactor === 1 ? modelC : runningDay(modelC);
  const atSeedC = modelC.map((tempC, hour) => dayC[hour]! + lesson.swingFactor * (tempC - dayC[hour]!));
  const corrected = basisCode('corrected');
  const modelled = basisCode('modelled');
  for (let hour = 0; hour < atSeedC.length && fromH + hour < known.hourlyC.length; hour++) {
    const at = fromH + hour;
    const basis = model.air.basis[hour]!;
    known.hourlyC[at] = atSeedC[hour]! + lesson.correctionK[at]!;
    known.basis[at] = lesson.isTaught && basis === modelled ? corrected : basis;
    known.swings[at] = model.air.swings[hour]!;
    known.sdK[at] = lesson.sdK[at]!;
  }
}

function layProbe(known: Laid, { atProbe, atSeedC, moved }: ProbeAtSeed, modelledC: Float64Array | null): void {
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

/** Where a probe lies too deep and no air tells more: its daily mean, with the swing that a usual day would have. */
function layUsualSwing(known: Laid, probes: readonly ProbeAtSeed[], bedding: Bedding, clock: Clock): void {
  const isBare = (hour: number, { atProbe }: ProbeAtSeed): boolean =>
    Number.isNaN(known.hourlyC[hour]) && !Number.isNaN(atProbe.hourlyC[hour]);
  const deep = probes.filter(
    (probe) => probe.moved === 'too-far' && known.hourlyC.some((_, hour) => isBare(hour, probe)),
  );
  if (deep.length === 0) return;
  const swingC = usualSwingC(bedding, clock);
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
function holdRoom(known: Laid, probes: readonly ProbeAtSeed[], roomC: number): Note[] {
  const probe = probes.at(-1);
  const endH = probe ? probe.atSeedC.findLastIndex((tempC) => !Number.isNaN(tempC)) + 1 : 0;
  if (endH < 24) return [];
  const lastDay = known.hourlyC.subarray(endH - 24, endH);
  const heldC = lastDay.reduce((sum, tempC) => sum + tempC, 0) / 24;
  if (Math.abs(heldC - roomC) < FELT_K) return [];
  known.hourlyC.fill(heldC, endH);
  known.basis.fill(basisCode('corrected'), endH);
  return [
    {
      code: 'room-as-measured',
      text: `The probe's last day was ${heldC.toFixed(1)} °C on average and the room is said to be ${roomC} °C: after the readings the probe's is held.`,
    },
  ];
}

/** Hours within the probes' record that no probe knows: filled by the model, brought to the readings on either side. */
function fillFromProbeAndModel(known: Laid, modelledC: Float64Array, probes: readonly ProbeAtSeed[]): void {
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
