// The values of all crops, unless a crop's own file says otherwise. "Assumed" is our assumption; "tuned" was fitted on published
// planting windows of seven places, and is judged on those of others.
// Seedling frost: tender crops 0 °C; the others by published ranges of harm, 0 to -2 °C bean, maize and melon, -2 to -4 °C spring pea,
// spring lettuce and cauliflower curds, -4 to -7 °C cabbage, onion, beet, carrot, parsnip and winter lettuce, -7 to -10 °C spinach
// (PMC10202904, table 2); hardened lettuce -5 to -7 °C and carrot -9 °C (Canadian Department of Agriculture).
// Base temperatures: 4.4 °C for turnip, cabbage and pea, 10 °C for bean and maize (Peet, North Carolina State University); others the
// lowest monthly mean for growth in Knott's Handbook. Ceilings: the highest monthly mean there, and near it.
// Heat units: the days of `maturity`, six tenths of the way from early to late kinds, less those to emergence at its best, times the
// kelvins above the base of the temperature at which such days are counted: 18 °C; spinach and parsnip 15, pea 16, cabbage 19, carrot,
// bunching onion, bean, maize and cucumber 20, melons 21, okra 23 °C (tuned). Checks from elsewhere: snap bean 444 to 644 °C·d
// from sowing at Corvallis; pea 694 °C·d for the fastest kinds in Delaware; sweet corn 'Jubilee' 855 °C·d from sowing.
// End by frost: what a crop bears as it ripens, 0 °C for tender ones; the others assumed, by the classes above.
// Heat at harvest: Knott's Handbook, 4th ed. 1997, highest monthly mean for quality: 24 °C beet, cabbage, cauliflower, carrot, lettuce,
// pea, radish, spinach and turnip, 27 °C beans; of beet and carrot 25 °C and of spinach 21 °C (tuned).
// Least soil for sowing: 15.6 °C snap bean, lima bean and maize, 18.3 °C the others that are tender (Knott's Handbook; Texas A&M
// AgriLife Extension, on cucumber, melon, watermelon and okra).
// Bed factor: snap bean from some 70 plantings at Corvallis (Oregon Vegetable Digest, July 1969), lima bean by likeness (assumed);
// pea from 31 to 56 °C·d above -1 °C to germination (PubMed 40596089).
// Patience: assumed, tuned.
// Planting out: weeks from tables of several extension services (tomato 5 to 7, pepper 6 to 8, eggplant 6 to 9, cucumber and melons 2
// to 4, celery 10 to 12, cabbage and cauliflower 5 to 7, lettuce 3 to 7); nights of 10 to 13 °C and soil of 18 °C for pepper, eggplant and
// melon, and nights of 12 to 15 °C for cucumber, several extension services; celery's ten cold nights the same, and
// Sachs & Rylski 1980. Frost: the seedling's own, and common practice, no source.

/** Limits and needs of a crop from its emergence to its harvest. */
export interface Growth {
  /** A minimum of the air at or below it harms the seedling, hardened by growing in the cold [°C]. */
  readonly seedlingFrostC: number;
  /** It is sown in soil, at 5 cm, of so much or more as a mean of a week [°C]; null: colder soil only delays it. */
  readonly leastSoilC: number | null;
  /** Emergence delay factor in beds: times the chart's days, the middle of those observed [1]. */
  readonly bedFactor: number;
  /** Half must be up within so many times the crop's `maxDays` [1]. */
  readonly patienceFactor: number;
  /** The rule that dates its harvest; null: none, as it takes years. */
  readonly harvest: HeatHarvest | BulbHarvest | null;
  /** Days of so many hours or more from sunrise to sunset make it bolt [h]; null: day length does not. */
  readonly boltingDayLengthH: number | null;
}

/** Ripe by the heat that it gets. */
export interface HeatHarvest {
  readonly by: 'heat';
  /** Days count by their mean above the base, none above the ceiling [°C]. */
  readonly baseTempC: number;
  readonly ceilingTempC: number;
  /** To the first harvest of middling kinds [°C·d]. */
  readonly heatUnitsCDays: number;
  readonly countedFrom: 'emergence' | 'planting-out';
  /** It has to be left alone for so long from the first harvest on, or it was not worth sowing [d]. */
  readonly leastPickingDays: number;
  /** A minimum of the air at or below it, from half of the heat units on, ends the crop [°C]; null: none does. */
  readonly endFrostC: number | null;
  /** A mean of the air above it, from 14 days before the first harvest to the end of `leastPickingDays`, spoils it [°C]; null: not known. */
  readonly hotHarvestC: number | null;
}

/** Ripe by the length of the days, whenever it was sown: long-day bulb onions (Brewster 2008; Oregon State University Extension). */
export interface BulbHarvest {
  readonly by: 'day-length';
  /** Bulbs swell from so long after the longest day on, and are ripe so long after that [d]. */
  readonly swellsAfterDays: number;
  readonly ripensInDays: number;
  /** Leaves made before, from emergence on, set their size [d]. */
  readonly leastLeafDays: number;
  /** Sown in autumn it stands over winter where no minimum of the air is at or below it [°C]. */
  readonly endFrostC: number;
}

/** When a plant raised in a tray may go out: on the first date from which, in most years, all of it holds. */
export interface PlantingOut {
  /** From its sowing in the tray until it goes out [weeks]. */
  readonly weeksFromSowing: number;
  /** No minimum of the air at or below the limit comes on the days after. */
  readonly frost: { readonly limitC: number; readonly days: number };
  readonly nights: NightRule | null;
  /** Soil at 5 cm as a mean of a week [°C]; null: ground that can be worked. */
  readonly leastSoilC: number | null;
}

/** `mean`: the mean minimum of the 14 days after is at least `fairC`, better `goodC` [°C]. `count`: at most `mostNights` of the
 * `days` after have a minimum below `belowC` [°C]. */
export type NightRule =
  | { readonly by: 'mean'; readonly fairC: number; readonly goodC: number }
  | { readonly by: 'count'; readonly belowC: number; readonly mostNights: number; readonly days: number };
