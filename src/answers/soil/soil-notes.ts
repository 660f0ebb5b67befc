import { dateAt } from '../../basics/calendar.js';
import { basisCode } from '../../basics/series.js';
import { containerOf } from '../../seedbed/bed.js';
import { isChecked } from '../../seedbed/surface/surface.js';
import { CLIMATOLOGICAL_RANGE_K } from '../ahead/climatological-air.js';
import type { Bedding } from '../question.js';
import type { AirAboveBed } from './air-above-bed.js';
import type { ModelledBed } from './modelled-bed.js';
import type { ProbeAtSeed } from './probe-at-seed.js';
import type { SoilAssumption, SoilWarning } from './soil-facts.js';

/** Findings that the notes report. */
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
export const soilAssumptions = ({ bedding, depthCm, model, probes, isIndoors }: SoilFindings): SoilAssumption[] => [
  ...originNotes(model, bedding, isIndoors),
  ...movedNotes(probes, depthCm),
  ...supposedNotes(probes),
];

/** What should be heeded of them. */
export const soilWarnings = ({ depthCm, model, probes, isIndoors, hasAir, fromH }: SoilFindings): SoilWarning[] => [
  ...movedWarnings(probes, depthCm, model !== null || isIndoors),
  ...(isIndoors && hasAir ? [{ code: 'air-not-used' as const, params: {} }] : []),
  ...airWarnings(model?.air ?? null),
  ...snowNotes(model, fromH),
];

/** The code of the note that says so. */
export const SNOW_SUPPOSED = 'snow-supposed';

/** True if the model assumes snow in any hour from one on. */
export const isUnderSnow = ({ snowCover }: ModelledBed, fromH: number): boolean =>
  snowCover.subarray(Math.max(0, fromH)).some((cover) => cover > 0.5);

/** Note on snow, which the service assumes from frost alone. */
const snowNotes = (model: ModelledBed | null, fromH: number): SoilWarning[] =>
  model && isUnderSnow(model, fromH) ? [{ code: SNOW_SUPPOSED, params: {} }] : [];

/** Note on air known by its means alone. */
function airWarnings(above: AirAboveBed | null): SoilWarning[] {
  const meansOnly = above?.swings.some((swings, hour) => swings === 0 && above.basis[hour] !== basisCode('filled'));
  return meansOnly ? [{ code: 'air-means-only', params: { swingK: CLIMATOLOGICAL_RANGE_K } }] : [];
}

function originNotes(model: ModelledBed | null, { site, bed }: Bedding, isIndoors: boolean): SoilAssumption[] {
  if (isIndoors) return [{ code: 'room', params: { roomC: bed.roomC!, belowK: WET_TRAY_BELOW_K } }];
  if (!model) return [];
  const { air } = model;
  const { kind, cover, moisture, shadePercent } = bed;
  const container = containerOf(kind);
  const isGrassland = cover === 'grass' && kind === 'open-ground';
  const notes: SoilAssumption[] = [
    {
      code: 'soil-from-air',
      params: {
        kind,
        cover,
        moisture,
        shadePercent,
        containerDepthCm: container?.depthCm ?? null,
        containerWidthCm: container?.radiusCm ? 2 * container.radiusCm : null,
        checkedOn: isGrassland ? 'grassland' : 'bare-ground',
        ...COMPARED,
        isChecked: isChecked(bed) ? 'yes' : 'no',
      },
    },
    {
      code: 'soil-before',
      params: { fromDate: dateAt(air.startMs, site.zone), isShort: air.daysOfYear.length < 60 ? 'yes' : 'no' },
    },
  ];
  if (isGrassland && air.climate?.logAridity == null) {
    notes.push({ code: 'climate-unknown', params: { lacks: air.climate ? 'rain' : 'year' } });
  }
  return notes;
}

/** Errors of soil worked out from air, from the accuracy report [cm, K]. */
const COMPARED = { checkedDepthCm: 5, meanErrorK: 1.4, maxErrorK: 2.1 } as const;
/** An open wet tray lies about so far below the room [K]. */
const WET_TRAY_BELOW_K = 1;

/** Note on a soil series that is itself worked out: an answer of ours sent back, or another program's. */
function supposedNotes(probes: readonly ProbeAtSeed[]): SoilAssumption[] {
  const isSupposed = probes.some(({ atProbe }) =>
    atProbe.basis.some((basis, hour) => basis !== basisCode('measured') && !Number.isNaN(atProbe.hourlyC[hour])),
  );
  return isSupposed ? [{ code: 'soil-not-measured', params: {} }] : [];
}

/** Errors of hours moved up from a probe, compared on one bare plot [K, cm]. */
const MOVED_UP = { errorFromK: 0.6, errorToK: 1.1, checkedFromCm: 10, checkedToCm: 5 } as const;

const movedNotes = (probes: readonly ProbeAtSeed[], depthCm: number): SoilAssumption[] =>
  probes.flatMap(({ moved, depthCm: probeDepthCm }) =>
    moved === 'up' || moved === 'down'
      ? { code: 'depth-moved', params: { probeDepthCm, depthCm, direction: moved, ...MOVED_UP } }
      : [],
  );

function movedWarnings(probes: readonly ProbeAtSeed[], depthCm: number, hasModel: boolean): SoilWarning[] {
  const notes: SoilWarning[] = [];
  for (const { moved, depthCm: probeDepthCm } of probes) {
    if (moved === 'too-short' && !hasModel) notes.push({ code: 'depth-not-moved', params: { probeDepthCm, depthCm } });
    if (moved === 'too-far') {
      notes.push({ code: 'probe-too-deep', params: { probeDepthCm, depthCm, isLevelUsed: hasModel ? 'yes' : 'no' } });
    }
  }
  return notes.filter((note, i) => notes.findIndex((one) => JSON.stringify(one) === JSON.stringify(note)) === i);
}
