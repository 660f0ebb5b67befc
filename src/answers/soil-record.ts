import { DAY_MS, dateAt, HOUR_MS, instantAt } from '../basics/calendar.js';
import { type Note, RequestError } from '../basics/errors.js';
import { basisCode } from '../basics/series.js';
import type { ReadSeries } from '../readings/read-series.js';
import { containerOf } from '../seedbed/bed.js';
import { LEVEL_DAYS } from '../seedbed/seasonal-drift.js';
import { isChecked, surfaceOf } from '../seedbed/surface.js';
import { type AirAboveBed, airAboveBed, type Wanted } from './air-above-bed.js';
import { type BedLesson, bedLesson } from './bed-lesson.js';
import { fillFromModel, missingHours } from './fill-gaps.js';
import { extentOf } from './known-hours.js';
import { type ModelledBed, modelledBed } from './modelled-bed.js';
import {
  type Clock,
  lastWholeStretch,
  type ProbeAtSeed,
  probeAtSeed,
  profileFromProbe,
  tellableDepthCm,
} from './probe-at-seed.js';
import type { Bed, Bedding } from './question.js';
import { runningDay } from './running-day.js';
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
 */
export function soilRecord(series: readonly ReadSeries[], bedding: Bedding, wanted: Wanted): SoilRecord {
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
  const ground = { ...surface, bottomCm: containerOf(bed.kind)?.depthCm ?? Infinity };
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
  const roomNotes = isIndoors && bed.roomC !== null ? holdRoom(known, probes, bed.roomC) : [];
  return {
    ...clock,
    ...known,
    probes,
    model,
    modelFromH,
    assumptions: [
      ...assumptionsOf(model, bedding, isIndoors),
      ...movedNotes(probes, depthCm),
      ...supposedNotes(probes),
    ],
    warnings: [
      ...series.flatMap((one) => one.warnings),
      ...(lesson?.warnings ?? []),
      ...movedWarnings(probes, depthCm, modelledC !== null),
      ...(isIndoors && air.length > 0 ? [AIR_NOT_USED] : []),
      ...roomNotes,
      ...airWarnings(above),
      ...snowNotes(model),
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

/** Of snow, which nobody has told of. */
function snowNotes(model: ModelledBed | null): Note[] {
  if (!model?.snowCover.some((cover) => cover > 0.5)) return [];
  return [
    {
      code: 'snow-supposed',
      text: 'After days of frost snow is taken to lie, which keeps the soil from the air: under it there is hardly a swing, and the soil stays warmer than frost. Where the ground is bare of snow it is colder than this.',
    },
  ];
}

/** Of air that is known by its means alone. */
function airWarnings(above: AirAboveBed | null): Note[] {
  const meansOnly = above?.swings.some((swings, hour) => swings === 0 && above.basis[hour] !== basisCode('filled'));
  if (!meansOnly) return [];
  return [
    {
      code: 'air-means-only',
      text: 'Some days of the air are known by their mean alone. Their sunshine and their swing are told from how far the other days swing, or 10 °C where none does: the soil can come out degrees off. Send each day’s minimum and maximum.',
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

const AIR_NOT_USED: Note = {
  code: 'air-not-used',
  text: 'The bed stands indoors, so the air temperatures sent are not used: the room’s own temperature (roomC) is.',
};

function assumptionsOf(model: ModelledBed | null, { site, bed }: Bedding, isIndoors: boolean): Note[] {
  if (isIndoors) {
    return [
      {
        code: 'room',
        text: `Soil in a covered tray is taken to be as warm as the room, ${bed.roomC} °C by day and night; in an open wet tray it lies about a degree below, over a heat mat above.`,
      },
    ];
  }
  if (!model) return [];
  const { air } = model;
  const first = dateAt(air.startMs, site.zone);
  const notes: Note[] = [
    {
      code: 'soil-from-air',
      text: `The soil is worked out from the air by heat conduction below ${surfaceWords(bed)}${containerWords(bed)}. ${
        bed.cover === 'grass' && bed.kind === 'open-ground'
          ? 'Daily means at 5 cm erred by 1.4 °C (root mean square, the middle one of 99 grass-covered stations); the swing of day and night is not checked there.'
          : 'On bare ground this was compared with one plot in one dry year: at 5 cm daily means erred by 1.4 °C and daily maxima by 2.1 °C (root mean square).'
      }${isChecked(bed) ? '' : ' This bed’s own kind, cover, water or shade has not been compared with measurements.'}`,
    },
    {
      code: 'soil-before',
      text: `The soil remembers the weeks before: it is followed from ${first}, and before that the usual course of the year is supposed${
        air.daysOfYear.length < 60 ? ', which can still be felt; send air temperatures of two months before' : ''
      }.`,
    },
  ];
  if (bed.cover === 'grass' && bed.kind === 'open-ground' && air.climate?.humidity == null) {
    notes.push({
      code: 'climate-unknown',
      text: `${
        air.climate ? 'The annual rain is not known' : 'Less than a year of air temperatures is known'
      }: an average climate stands in. ${air.climate ? 'Send where.place.annualRainMm' : 'Send a year or more, and where.place.annualRainMm,'} for a better estimate.`,
    });
  }
  return notes;
}

function containerWords({ kind }: Bed): string {
  const container = containerOf(kind);
  if (!container) return '';
  return `, taken to be ${container.depthCm} cm deep and ${
    container.radiusCm === null ? 'to stand among others' : `${2 * container.radiusCm} cm wide, its sides in the sun`
  }`;
}

function surfaceWords({ kind, cover, moisture, shadePercent }: Bed): string {
  const body = kind === 'open-ground' ? 'open ground' : `a ${kind.replace('-', ' ')}`;
  const skin = cover === 'bare' ? 'bare soil' : cover === 'grass' ? 'short grass' : cover.replace('-', ' ');
  const water = { rain: 'as the rain leaves it', moist: 'kept moist', wet: 'kept wet', dry: 'dry until it is watered' }[
    moisture
  ];
  return `the surface of ${body}: ${skin}, ${water}, ${shadePercent === 0 ? 'unshaded' : `${shadePercent} % shaded`}`;
}

/** Of a soil series that is itself worked out: an answer of ours sent back, or another's. */
function supposedNotes(probes: readonly ProbeAtSeed[]): Note[] {
  const isSupposed = probes.some(({ atProbe }) =>
    atProbe.basis.some((basis, hour) => basis !== basisCode('measured') && !Number.isNaN(atProbe.hourlyC[hour])),
  );
  if (!isSupposed) return [];
  return [
    {
      code: 'soil-not-measured',
      text: 'Part of the soil series sent says itself that it was not measured: it is used as it is, as unsure as it says or as such values usually are.',
    },
  ];
}

function movedNotes(probes: readonly ProbeAtSeed[], depthCm: number): Note[] {
  return probes.flatMap(({ moved, depthCm: probeCm }) => {
    if (moved !== 'up' && moved !== 'down') return [];
    return {
      code: 'depth-moved',
      text:
        moved === 'down'
          ? `The probe reads at ${probeCm} cm and the seed lies at ${depthCm} cm: its readings are carried down by heat conduction.`
          : `The probe reads at ${probeCm} cm and the seed lies at ${depthCm} cm: the swing that the waves of day and night lost on the way down is given back to them. The hours so found err by 0.6 to 1.1 °C (10 to 5 cm, one bare plot).`,
    };
  });
}

function movedWarnings(probes: readonly ProbeAtSeed[], depthCm: number, hasModel: boolean): Note[] {
  const notes: Note[] = [];
  for (const { moved, depthCm: probeCm } of probes) {
    if (moved === 'too-short' && !hasModel) {
      notes.push({
        code: 'depth-not-moved',
        text: `The probe reads at ${probeCm} cm and the seed lies at ${depthCm} cm; under two days of readings in a row are too few to tell the one from the other, and they are used as they are.`,
      });
    }
    if (moved === 'too-far') {
      notes.push({
        code: 'probe-too-deep',
        text: hasModel
          ? `The probe at ${probeCm} cm is too deep to show the swing of day and night at ${depthCm} cm: it corrects the level of what the air gives.`
          : `The probe at ${probeCm} cm is too deep to show the swing of day and night at ${depthCm} cm: its daily mean is used, with the swing of a usual day. Put a probe nearer to the seed, or send air temperatures.`,
      });
    }
  }
  return notes.filter((note, i) => notes.findIndex(({ text }) => text === note.text) === i);
}
