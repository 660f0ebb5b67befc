import { DAY_MS, HOUR_MS, instantAt } from '../../basics/calendar.js';
import { type Note, RequestError } from '../../basics/errors.js';
import { basisCode } from '../../basics/series.js';
import { neverStop, type ShouldStop } from '../../basics/stop.js';
import type { ReadSeries } from '../../readings/read-series.js';
import { containerOf } from '../../seedbed/bed.js';
import { LEVEL_DAYS } from '../../seedbed/surface/seasonal-persistence.js';
import { type Surface, surfaceOf } from '../../seedbed/surface/surface.js';
import type { Bedding } from '../question.js';
import { answerRefusal } from '../refusal-facts.js';
import { type AirAboveBed, airAboveBed, type WantedAir } from './air-above-bed.js';
import { extentOf, type KnownHours, knownHours, type Site } from './known-hours.js';
import { measuredDiffusivityM2s } from './measured-diffusivity.js';
import { type ModelledBed, modelledBed } from './modelled-bed.js';
import {
  blank,
  fillFromProbeAndModel,
  forget,
  holdRoom,
  MOVED_SD_K,
  type OverlaidSoil,
  overlayClimatologicalRange,
  overlayModel,
  overlayProbe,
} from './overlay-soil.js';
import {
  type Clock,
  lastWholeStretch,
  type ProbeAtSeed,
  probeAtSeed,
  profileFromProbe,
  tellableDepthCm,
} from './probe-at-seed.js';
import { type ProbeCalibration, probeCalibration } from './probe-calibration.js';
import { soilAssumptions, soilWarnings } from './soil-notes.js';

/** Known soil at a depth, hour by hour, before anything is assumed. */
export interface SoilRecord extends Clock, OverlaidSoil {
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
const MAX_BACK_MS = 400 * DAY_MS;
/** A probe's own readings teach the model for so long after them [ms]. */
const LESSON_MS = 365 * DAY_MS;
/** A probe's day errs by this much [K]: the sensor, and where it lies. */
const PROBE_SD_K = 0.2;
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
export const soilRecord = (
  series: readonly ReadSeries[],
  { depthCm, ...place }: Bedding,
  wanted: WantedAir,
  shouldStop?: ShouldStop,
): SoilRecord => soilRecords(series, place, [depthCm], wanted, (record) => record, shouldStop)[0]!;

/**
 * The same at several depths, the model run once for all of them.
 *
 * @param take Copies what it needs of a record: the arrays by the hour are those of the next depth afterwards, as twenty of
 * them, of thirty years each, would need 40 MB.
 */
export function soilRecords<T>(
  series: readonly ReadSeries[],
  place: Omit<Bedding, 'depthCm'>,
  askedCm: readonly number[],
  wanted: WantedAir,
  take: (record: SoilRecord) => T,
  shouldStop: ShouldStop = neverStop,
): T[] {
  const { site, bed } = place;
  const soil = series.filter((one) => one.medium === 'soil');
  const air = surestLast(
    series.filter((one) => one.medium === 'air'),
    0,
  );
  const isIndoors = bed.kind === 'indoors';
  if (air.length > 0 && !isIndoors && site.latitude === null) refuseNoLatitude();
  const above = air.length > 0 && !isIndoors ? airAboveBed(air, site, wanted) : null;
  const clock = clockOf(soil, above?.startMs ?? null, above?.record.hourlyC.length ?? 0, isIndoors, wanted);
  const surface = surfaceOf(bed, above?.climate ?? null);
  const modelFromH = above ? (above.startMs - clock.startMs) / HOUR_MS : 0;
  const atProbes = new Map(soil.map((one) => [one, knownHours(one, site, clock.startMs, clock.nHours)]));
  const atDepths = askedCm.map((asked) =>
    atDepth(asked, {
      site,
      soil,
      surface,
      bottomCm: containerOf(bed.kind)?.depthCm ?? Infinity,
      clock,
      atProbes,
      modelFromH,
    }),
  );
  const models = above ? modelsAt(atDepths, { above, place, clock, modelFromH }, shouldStop) : null;
  const known = blank(clock);
  return atDepths.map(({ asked, depthCm, probes }, i) => {
    const bedding = { ...place, depthCm: asked };
    forget(known);
    const { model, calibration } = models?.[i] ?? { model: null, calibration: null };
    if (model) overlayModel(known, model, calibration!, modelFromH);
    else if (isIndoors && bed.roomC !== null) {
      known.hourlyC.fill(bed.roomC);
      known.basis.fill(basisCode('modelled'));
      known.swings.fill(1);
      known.sdK.fill(ROOM_SD_K);
    }
    const modelledC = (model && probes.length > 0) || isIndoors ? known.hourlyC.slice() : null;
    overlayClimatologicalRange(known, probes, bedding, clock);
    for (const probe of probes) overlayProbe(known, probe, modelledC);
    if (modelledC) fillFromProbeAndModel(known, modelledC, probes);
    const fromH = above ? Math.floor((wanted.fromMs - above.startMs) / HOUR_MS) : 0;
    const findings = { bedding, depthCm, model, probes, isIndoors, hasAir: air.length > 0, fromH };
    const roomNotes = isIndoors && bed.roomC !== null ? holdRoom(known, probes, bed.roomC) : [];
    return take({
      ...clock,
      ...known,
      probes,
      model,
      sdAheadK: calibration?.sdAheadK ?? null,
      modelFromH,
      assumptions: soilAssumptions(findings),
      warnings: [
        ...series.flatMap((one) => one.warnings),
        ...(calibration?.warnings ?? []),
        ...soilWarnings(findings),
        ...roomNotes,
      ],
    });
  });
}

/** The probes' readings at one depth. */
interface AtDepth {
  readonly asked: number;
  readonly depthCm: number;
  /** The surest last. */
  readonly probes: readonly ProbeAtSeed[];
  /** The depths that its model is wanted at, its own last. */
  readonly depthsCm: readonly number[];
  /** The probe that tells how the soil lay before the air's record. */
  readonly before: ProbeAtSeed | undefined;
}

/** The part of the record that all depths share. */
interface Seen {
  readonly site: Site;
  readonly soil: readonly ReadSeries[];
  readonly surface: Surface;
  readonly bottomCm: number;
  readonly clock: Clock;
  readonly atProbes: ReadonlyMap<ReadSeries, KnownHours>;
  readonly modelFromH: number;
}

/** Brings every probe to one depth. */
function atDepth(asked: number, { site, soil, surface, bottomCm, clock, atProbes, modelFromH }: Seen): AtDepth {
  const depthCm = tellableDepthCm(asked);
  const ordered = surestLast(soil, depthCm);
  const measuredM2s = measuredDiffusivityM2s(ordered, site, clock, depthCm);
  const conductivity = measuredM2s === null ? surface.conductivity : measuredM2s * surface.heatCapacity;
  const ground = { ...surface, conductivity, bottomCm };
  const probes = ordered.map((one) => probeAtSeed(one, site, clock, depthCm, ground, atProbes.get(one)!));
  const within = probes.filter((probe) => probe.depthCm <= bottomCm);
  return {
    asked,
    depthCm,
    probes,
    depthsCm: [...new Set(within.map((probe) => probe.depthCm))].filter((cm) => cm !== depthCm).concat(depthCm),
    before: within.findLast(({ atProbe }) => lastWholeStretch(atProbe.hourlyC, modelFromH)),
  };
}

interface Run {
  readonly above: AirAboveBed;
  readonly place: Omit<Bedding, 'depthCm'>;
  readonly clock: Clock;
  readonly modelFromH: number;
}

/** The model at each depth and what the probes teach it: one run for all depths before which the same probe read. */
function modelsAt(
  atDepths: readonly AtDepth[],
  run: Run,
  shouldStop: ShouldStop,
): { model: ModelledBed; calibration: ProbeCalibration }[] {
  const runs = new Map<KnownHours | undefined, ModelledBed>();
  const calibrations = new Map<string, ProbeCalibration>();
  const {
    above,
    place: { site, bed },
    clock,
    modelFromH,
  } = run;
  return atDepths.map(({ depthCm, probes, depthsCm, before }) => {
    const together = atDepths.filter((one) => one.before?.atProbe === before?.atProbe);
    const allCm = [...new Set(together.flatMap((one) => one.depthsCm))];
    const whole =
      runs.get(before?.atProbe) ??
      modelledBed(
        above,
        site.latitude!,
        bed,
        allCm,
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
    runs.set(before?.atProbe, whole);
    const model = { ...whole, hourlyC: depthsCm.map((cm) => whole.hourlyC[allCm.indexOf(cm)]!) };
    const startSdK = before ? Math.hypot(PROBE_SD_K, MOVED_SD_K[before.moved]) : null;
    // Without a probe, and mostly with one, all depths have one calibration.
    const key = JSON.stringify([startSdK, before && depthCm, probes.map((probe) => [probe.depthCm, probe.moved])]);
    const calibration =
      calibrations.get(key) ?? probeCalibration(model, depthsCm, probes, { clock, modelFromH, site, startSdK });
    calibrations.set(key, calibration);
    return { model, calibration };
  });
}

function refuseNoLatitude(): never {
  throw new RequestError('no-latitude', answerRefusal('no-latitude.soil'), [
    { path: ['where', 'place', 'latitude'], detail: answerRefusal('no-latitude.soil.field') },
  ]);
}

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
  { phaseMs, fromMs, toMs }: WantedAir,
): Clock {
  const extents = soil.map(extentOf);
  const soilFirstMs = Math.min(...extents.map((extent) => extent.firstMs));
  const soilLastMs = Math.max(...extents.map((extent) => extent.lastMs));
  const levelMs = Math.max(fromMs - MAX_BACK_MS, Math.min(fromMs, soilLastMs) - (LEVEL_DAYS + 1) * DAY_MS);
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
