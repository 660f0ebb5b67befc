import type { Crop, CropRow } from './crop.js';
import { type CropEntry, cropEntries, handbookTemperaturesC } from './crop-entries.js';
import { hotThreshold } from './hot-threshold.js';

/** Spread among seeds where no crop's own is published: our assumption, between the 0.05 and 0.2 that lots show. */
export const DEFAULT_SPREAD_LOG10 = 0.1;
/** 80 % of a lot takes about 1.21 times as long as half of it, so a whole sowing is given 1.25 times as long. */
const SOWING_TO_HALF = 1.25;

const HANDBOOK_SOURCE =
  "Harrington, Minges (1954), as printed in Lorenz, Maynard: Knott's Handbook for Vegetable Growers, 4th ed. (1997); " +
  'percent normal seedlings from later copies of the same tables';

const celsius = (tempF: number): number => ((tempF - 32) * 5) / 9;

/** The handbook's crops by id. */
export const crops: ReadonlyMap<string, Crop> = new Map(cropEntries.map((entry) => [entry.id, cropOf(entry)]));

function cropOf(entry: CropEntry): Crop {
  const rows = handbookTemperaturesC.map((temperatureC, i): CropRow => {
    const days = entry.days[i] ?? null;
    return {
      temperatureC,
      tested: days !== null,
      days: days === 'none' ? null : days,
      percent: entry.percent[i] ?? null,
    };
  });
  const soil = {
    minimumC: celsius(entry.soilF.minimum),
    optimumFromC: celsius(entry.soilF.optimumFrom),
    optimumToC: celsius(entry.soilF.optimumTo),
    maximumC: celsius(entry.soilF.maximum),
  };
  return {
    id: entry.id,
    name: entry.name,
    latinName: entry.latinName,
    rows,
    soil,
    hotThresholdC: entry.ownHotThresholdC ?? hotThreshold(rows) ?? soil.maximumC,
    frost: entry.frost,
    chillingSensitive: entry.chillingSensitive,
    sowingDepthCm: entry.sowingDepthCm,
    maturity: entry.maturity,
    storageYears: entry.storageYears,
    field: entry.field,
    bedTimeFactor: entry.bedTimeFactor,
    maxDays: Math.round(SOWING_TO_HALF * entry.maxHalfDays),
    spreadLog10: entry.spreadLog10 ?? DEFAULT_SPREAD_LOG10,
    cautions: entry.cautions,
    source: HANDBOOK_SOURCE,
  };
}
