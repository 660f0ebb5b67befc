import type { Crop, CropRow, SoilLimits, Span } from './crop.js';
import { DEFAULT_SPREAD_LOG10 } from './crops.js';
import { hotThreshold } from './curve/hot-threshold.js';

/** A curve of the caller's own, as sent. */
export interface OwnCrop {
  readonly name?: string | undefined;
  readonly rows: readonly {
    readonly temperatureC: number;
    readonly tested?: boolean | undefined;
    readonly days: number | null;
    readonly percent: number | null;
  }[];
  readonly soil?: SoilLimits | undefined;
  readonly hotThresholdC?: number | undefined;
  readonly chillingSensitive?: boolean | undefined;
  readonly sowingDepthCm?: number | undefined;
  readonly field?: Span | undefined;
  readonly bedTimeFactor?: Span | undefined;
}

/** What beds give of a laboratory's stand [1], how many times longer they take than the chart [1], and for how long a sowing is
 * worth making [d], where nothing is published of the crop: as the middle one of the handbook's crops. */
const ANY_CROP_FIELD: Span = { from: 0.4, to: 0.9 };
const ANY_CROP_BED_TIME: Span = { from: 1, to: 1.2 };
const ANY_CROP_MAX_DAYS = 26;
/** Weeks until it is fit to plant out, and days of picking, where nothing is known of the crop: our assumptions. */
const ANY_CROP_WEEKS_IN_TRAYS = 4;
const ANY_CROP_PICKING_DAYS = 14;

/** Why rows make no curve, in words for the caller; null where they do. */
export function faultOfRows(rows: OwnCrop['rows']): string | null {
  const temperatures = rows.map((row) => row.temperatureC);
  const twice = temperatures.find((tempC, i) => temperatures.indexOf(tempC) !== i);
  if (twice !== undefined) return `Two rows are at ${twice} °C; keep one row for each temperature.`;
  if (rows.filter((row) => row.days !== null).length < 2) {
    return 'A curve needs days at two temperatures or more; fill in "days" where seed came up.';
  }
  const counted = rows.filter((row) => row.percent !== null);
  if (counted.length > 0 && counted.every((row) => row.percent === 0)) {
    return 'No row has a percent above 0, so nothing would ever come up; fill in "percent" where seed came up, or leave all of them null.';
  }
  return null;
}

/**
 * A crop from the caller's own rows. Rows without any percent are taken to give every seed wherever days are noted.
 *
 * @param own Rows in any order, for which `faultOfRows` finds nothing.
 */
export function ownCrop(own: OwnCrop): Crop {
  const noneCounted = own.rows.every((row) => row.percent === null);
  const rows = own.rows
    .map((row): CropRow => {
      const tested = row.tested ?? (row.days !== null || row.percent === 0);
      const isNone = tested && row.days === null;
      const percent = row.percent ?? (isNone ? 0 : noneCounted && row.days !== null ? 100 : null);
      return { temperatureC: row.temperatureC, tested: tested || row.days !== null, days: row.days, percent };
    })
    .sort((a, b) => a.temperatureC - b.temperatureC);
  const warmestTimedC = Math.max(...rows.filter((row) => row.days !== null).map((row) => row.temperatureC));
  return {
    id: 'own-rows',
    name: own.name ?? 'Own rows',
    latinName: null,
    rows,
    soil: own.soil ?? null,
    hotThresholdC: own.hotThresholdC ?? hotThreshold(rows) ?? own.soil?.maximumC ?? warmestTimedC,
    frost: null,
    chillingSensitive: own.chillingSensitive ?? false,
    sowingDepthCm: own.sowingDepthCm ?? null,
    maturity: null,
    storageYears: null,
    field: own.field ?? ANY_CROP_FIELD,
    bedTimeFactor: own.bedTimeFactor ?? ANY_CROP_BED_TIME,
    maxDays: ANY_CROP_MAX_DAYS,
    spreadLog10: DEFAULT_SPREAD_LOG10,
    weeksInTrays: ANY_CROP_WEEKS_IN_TRAYS,
    pickingDays: ANY_CROP_PICKING_DAYS,
    isThinned: false,
    isFed: true,
    viability: [],
    cautions: [],
    source: "the caller's own rows",
  };
}
