import type { Fact } from '../basics/fact.js';
import { fieldFact } from '../basics/field-facts.js';
import type { Crop, CropRow, SoilLimits, Span } from './crop.js';
import { DEFAULT_SIGMA_LOG10 } from './crops.js';
import { thermoinhibitionThreshold } from './curve/thermoinhibition-threshold.js';

/** A curve of the caller's own, as sent. */
export interface CustomCrop {
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

const CUSTOM_CROP_ID = 'own-rows';
const CUSTOM_CROP_NAME = 'Own rows';

/** How facts name a crop: by its id, or, where it is the caller's own and has a name, by that. */
export const cropInFacts = ({ id, name }: Pick<Crop, 'id' | 'name'>): string =>
  id === CUSTOM_CROP_ID && name !== CUSTOM_CROP_NAME ? name : id;

/** What beds give of a laboratory's stand [1], how many times longer they take than the chart [1], and for how long a sowing is
 * worth making [d], where nothing is published of the crop: as the middle one of the handbook's crops. */
const ANY_CROP_FIELD: Span = { from: 0.4, to: 0.9 };
const ANY_CROP_BED_TIME: Span = { from: 1, to: 1.2 };
const ANY_CROP_MAX_DAYS = 26;
/** Weeks until it is fit to plant out, and days of picking, where nothing is known of the crop: our assumptions. */
const ANY_CROP_WEEKS_IN_TRAYS = 4;
const ANY_CROP_PICKING_DAYS = 14;

/** Why rows make no curve, in words for the caller; null where they do. */
export function faultOfRows(rows: CustomCrop['rows']): Fact | null {
  const temperatures = rows.map((row) => row.temperatureC);
  const twice = temperatures.find((tempC, i) => temperatures.indexOf(tempC) !== i);
  if (twice !== undefined) return fieldFact('field.rows-at-once', { atC: twice });
  if (rows.filter((row) => row.days !== null).length < 2) {
    return fieldFact('field.rows-without-days');
  }
  const counted = rows.filter((row) => row.percent !== null);
  if (counted.length > 0 && counted.every((row) => row.percent === 0)) {
    return fieldFact('field.rows-without-percent');
  }
  return null;
}

/**
 * A crop from the caller's own rows. Rows without any percent are taken to give every seed wherever days are noted.
 *
 * @param own Rows in any order, for which `faultOfRows` finds nothing.
 */
export function customCrop(own: CustomCrop): Crop {
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
    id: CUSTOM_CROP_ID,
    name: own.name ?? CUSTOM_CROP_NAME,
    latinName: null,
    rows,
    soil: own.soil ?? null,
    hotThresholdC: own.hotThresholdC ?? thermoinhibitionThreshold(rows) ?? own.soil?.maximumC ?? warmestTimedC,
    frost: null,
    chillingSensitive: own.chillingSensitive ?? false,
    sowingDepthCm: own.sowingDepthCm ?? null,
    maturity: null,
    storageYears: null,
    field: own.field ?? ANY_CROP_FIELD,
    bedTimeFactor: own.bedTimeFactor ?? ANY_CROP_BED_TIME,
    maxDays: ANY_CROP_MAX_DAYS,
    sigmaLog10: DEFAULT_SIGMA_LOG10,
    weeksInTrays: ANY_CROP_WEEKS_IN_TRAYS,
    pickingDays: ANY_CROP_PICKING_DAYS,
    growth: null,
    plantingOut: null,
    isThinned: false,
    isFed: true,
    viability: [],
    cautions: [],
    source: "the caller's own rows",
  };
}
