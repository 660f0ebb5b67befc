import { dateAt } from '../../basics/calendar.js';
import type { Note } from '../../basics/errors.js';
import { basisCode } from '../../basics/series.js';
import { containerOf } from '../../seedbed/bed.js';
import { isChecked } from '../../seedbed/surface/surface.js';
import type { Bed, Bedding } from '../question.js';
import type { AirAboveBed } from './air-above-bed.js';
import type { ModelledBed } from './modelled-bed.js';
import type { ProbeAtSeed } from './probe-at-seed.js';

/** What the notes are about. */
interface SoilFindings {
  readonly bedding: Bedding;
  readonly depthCm: number;
  readonly model: ModelledBed | null;
  readonly probes: readonly ProbeAtSeed[];
  readonly isIndoors: boolean;
  readonly hasAir: boolean;
  /** The first hour of the model that is asked about. */
  readonly fromH: number;
}

/** What the soil's temperatures rest on. */
export const soilAssumptions = ({ bedding, depthCm, model, probes, isIndoors }: SoilFindings): Note[] => [
  ...originNotes(model, bedding, isIndoors),
  ...movedNotes(probes, depthCm),
  ...supposedNotes(probes),
];

/** What should be heeded of them. */
export const soilWarnings = ({ depthCm, model, probes, isIndoors, hasAir, fromH }: SoilFindings): Note[] => [
  ...movedWarnings(probes, depthCm, model !== null || isIndoors),
  ...(isIndoors && hasAir ? [AIR_NOT_USED] : []),
  ...airWarnings(model?.air ?? null),
  ...snowNotes(model, fromH),
];

/** The code of the note that says so. */
export const SNOW_SUPPOSED = 'snow-supposed';

/** Is snow taken to lie in any of the model's hours from one on? */
export const isUnderSnow = ({ snowCover }: ModelledBed, fromH: number): boolean =>
  snowCover.subarray(Math.max(0, fromH)).some((cover) => cover > 0.5);

/** Of snow, which nobody has told of. */
function snowNotes(model: ModelledBed | null, fromH: number): Note[] {
  if (!model || !isUnderSnow(model, fromH)) return [];
  return [
    {
      code: SNOW_SUPPOSED,
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

const AIR_NOT_USED: Note = {
  code: 'air-not-used',
  text: 'The bed stands indoors, so the air temperatures sent are not used: the room’s own temperature (roomC) is.',
};

function originNotes(model: ModelledBed | null, { site, bed }: Bedding, isIndoors: boolean): Note[] {
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
  return notes.filter((note, i) => notes.findIndex((one) => JSON.stringify(one) === JSON.stringify(note)) === i);
}
