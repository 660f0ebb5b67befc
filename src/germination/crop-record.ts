import type { Caution, FrostClass, Maturity, Span } from './crop.js';
import type { Growth, PlantingOut } from './growth.js';
import type { ViabilitySet } from './storage/viability-sets.js';

// The values of all crops, unless a crop's own file says otherwise:
// Days and percent: Harrington & Minges 1954, as printed in Knott's Handbook, 4th ed. 1997. One lot of seed for each
// crop, sown 1.3 cm deep at constant temperature; days are whole, so every one is good to about a day. Cells that
// copies print differently, and why one was chosen, are listed with the golden table.
// Soil temperatures: Oregon State University Extension; lima bean, celery, lettuce and okra Alabama Cooperative
// Extension System.
// Sowing depths: common practice, no source. Frost classes: common practice, no source; lists differ, chiefly on
// parsley and parsnip. Which crops cold harms as wet seed: evidence for maize, lima bean and snap bean, assumed for
// the cucurbits and okra (wet watermelon seed bore 0 °C for ten days in one study).
// Maturity: "UC Napa" is the University of California Master Gardeners of Napa County, "1918" a list of that year; the
// others are from memory, and which day seed packets count from is common practice, no source.
// Storage years: Knott's Handbook, 4th ed. 1997, as given by Iowa State University.
// Field: Bralewski & Holubowicz 2008 for onion, carrot, lettuce, radish and cabbage; otherwise assumed.
// Bed time factor: derived for onion, lettuce and carrot from Bierhuizen & Wagenvoort 1974 (from memory); beans and pea, which
// beds bring up sooner than the chart, in their own files; otherwise assumed.
// Growth and planting out: see `growth.ts`.
// Most days to half: 1.2 times the chart's days at the low end of the best soil temperatures, held within 12 to 21;
// more for crops that are slow at their best.
// Weeks in trays: common practice, no source; near what handbooks print from sowing, from memory. Carrot, parsnip, radish and
// turnip are not moved, as their roots fork or their stems run to seed: common practice, no source.
// Days of picking: snap bean and beet are sown every two weeks (seed sellers' lists); the others common practice, no source.
// Thinning and feeding: common practice, no source. Peas and beans feed themselves; roots grow leaves or fork where they are fed.
// Viability: the table of constants in the R package viabilitymetrics (Aravind and others), read as data; beet and maize from
// the abstract of Ellis & Hong 2007. None were found for asparagus, bunching onion, carrot, celery, lima bean, parsley, parsnip,
// radish and spinach. Those published for eggplant (Daniel and others 2011) are left out: their temperature terms are three to
// four times those of every other crop.

/** `'none'`: timed, and none or too few came. `null`: never tested. */
export type Cell = number | 'none' | null;

/** All that is known of a crop, as the publications named above give it. A crop that lacks a field does not compile. */
export interface CropRecord {
  readonly id: string;
  readonly name: string;
  readonly latinName: string;
  /** Days from sowing until half of those that come are up, at each of `handbookTemperaturesC`. */
  readonly days: readonly Cell[];
  /** Normal seedlings in a hundred seeds, at each of `handbookTemperaturesC`. */
  readonly percent: readonly (number | null)[];
  /** Soil temperatures for germination as printed [°F]. */
  readonly soilF: {
    readonly minimum: number;
    readonly optimumFrom: number;
    readonly optimumTo: number;
    readonly maximum: number;
  };
  readonly frost: FrostClass;
  /** Does soil below 10 °C harm the wet seed, rather than only delay it? */
  readonly chillingSensitive: boolean;
  readonly sowingDepthCm: number;
  readonly maturity: Maturity | null;
  /** Years in good storage after which seed should be tested before use. */
  readonly storageYears: number;
  /** Share of a laboratory's stand that beds have given, 0 to 1. */
  readonly field: Span;
  /** How many times longer than the chart beds have taken. */
  readonly bedTimeFactor: Span;
  /** Days within which half should be up for a sowing to be worth making. */
  readonly maxHalfDays: number;
  /** Spread among seeds: standard deviation of log10 of the time to emergence; null: none is published. */
  readonly sigmaLog10: number | null;
  /** Where the crop's own row is a poor guide to heat: the threshold published elsewhere [°C]; null: the row's own holds. */
  readonly ownHotThresholdC: number | null;
  /** From emergence until it is fit to plant out [weeks]; null: it does not bear to be moved. */
  readonly weeksInTrays: number | null;
  /** How long one sowing is picked before it is over, or past its best [d]; null: its harvest is not told. */
  readonly pickingDays: number | null;
  /** From emergence to harvest. */
  readonly growth: Growth;
  /** Its needs when planted out of a tray; null: it is sown in place, or nothing is known of it. */
  readonly plantingOut: PlantingOut | null;
  /** Is it sown thickly, in rows, and thinned until those left have room? */
  readonly isThinned: boolean;
  /** Is it fed as it grows? */
  readonly isFed: boolean;
  /** Published constants of the viability equation, the ones to use first; several sets disagree. */
  readonly viability: readonly ViabilitySet[];
  readonly cautions: readonly Caution[];
}

/** The constant temperatures of the handbook's table [°C]. */
export const handbookTemperaturesC = [0, 5, 10, 15, 20, 25, 30, 35, 40] as const;
