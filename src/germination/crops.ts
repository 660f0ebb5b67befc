import type { Crop, CropRow } from './crop.js';
import { type CropRecord, handbookTemperaturesC } from './crop-record.js';
import { allCrops } from './crops/all.js';
import { thermoinhibitionThreshold } from './curve/thermoinhibition-threshold.js';

/** Spread among seeds where no crop's own is published: our assumption, between the 0.05 and 0.2 that lots show. */
export const DEFAULT_SIGMA_LOG10 = 0.1;
/** 80 % of a lot takes about 1.21 times as long as half of it, so a whole sowing is given 1.25 times as long. */
const SOWING_TO_HALF = 1.25;

const HANDBOOK_SOURCE =
  "Harrington, Minges (1954), as printed in Lorenz, Maynard: Knott's Handbook for Vegetable Growers, 4th ed. (1997); " +
  'percent normal seedlings from later copies of the same tables';

const celsius = (tempF: number): number => ((tempF - 32) * 5) / 9;

/** The handbook's crops by id. */
export const crops: ReadonlyMap<string, Crop> = new Map(allCrops.map((record) => [record.id, cropOf(record)]));

function cropOf(record: CropRecord): Crop {
  const rows = handbookTemperaturesC.map((temperatureC, i): CropRow => {
    const days = record.days[i] ?? null;
    return {
      temperatureC,
      tested: days !== null,
      days: days === 'none' ? null : days,
      percent: record.percent[i] ?? null,
    };
  });
  const soil = {
    minimumC: celsius(record.soilF.minimum),
    optimumFromC: celsius(record.soilF.optimumFrom),
    optimumToC: celsius(record.soilF.optimumTo),
    maximumC: celsius(record.soilF.maximum),
  };
  return {
    id: record.id,
    name: record.name,
    latinName: record.latinName,
    rows,
    soil,
    hotThresholdC: record.ownHotThresholdC ?? thermoinhibitionThreshold(rows) ?? soil.maximumC,
    frost: record.frost,
    chillingSensitive: record.chillingSensitive,
    sowingDepthCm: record.sowingDepthCm,
    maturity: record.maturity,
    storageYears: record.storageYears,
    field: record.field,
    bedTimeFactor: record.bedTimeFactor,
    maxDays: Math.round(SOWING_TO_HALF * record.maxHalfDays),
    sigmaLog10: record.sigmaLog10 ?? DEFAULT_SIGMA_LOG10,
    weeksInTrays: record.weeksInTrays,
    pickingDays: record.pickingDays,
    growth: record.growth,
    plantingOut: record.plantingOut,
    isThinned: record.isThinned,
    isFed: record.isFed,
    viability: record.viability,
    cautions: record.cautions,
    source: HANDBOOK_SOURCE,
  };
}
