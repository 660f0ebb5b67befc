import type { ViabilityConstants } from './viability.js';

/** One published set of constants of the viability equation. */
export interface ViabilitySet extends ViabilityConstants {
  readonly source: string;
  /** The seed it was measured on, where that is not the crop's own. */
  readonly measuredOn: string | null;
}

/** Temperature terms that fitted many species alike: Dickie and others 1990. */
const common = { ch: 0.0329, cq: 0.000478 };

const set = (
  source: string,
  { ke, cw, ch, cq }: ViabilityConstants,
  measuredOn: string | null = null,
): ViabilitySet => ({ ke, cw, ch, cq, source, measuredOn });

/** No set was found for cabbages themselves: rape and brown mustard, of the same genus, stand in. */
const kinOfCabbage: readonly ViabilitySet[] = [
  set('Ellis and others 1989', { ke: 7.718, cw: 4.54, ...common }, 'rape (Brassica napus)'),
  set('Ellis and others 1989', { ke: 7.768, cw: 4.56, ...common }, 'brown mustard (Brassica juncea)'),
];

// Values: the table of constants in the R package viabilitymetrics (Aravind and others), read as data; beet and maize from
// the abstract of Ellis & Hong 2007. None were found for asparagus, bunching onion, carrot, celery, lima bean, parsley,
// parsnip, radish and spinach. Those published for eggplant (Daniel and others 2011) are left out: their temperature terms
// are three to four times those of every other crop.
/** Published constants of the viability equation, by crop; of some crops more than one set, which disagree. */
export const viabilitySets: ReadonlyMap<string, readonly ViabilitySet[]> = new Map([
  [
    'onion',
    [
      set('Ellis, Roberts 1981', { ke: 6.975, cw: 3.47, ch: 0.04, cq: 0.000428 }),
      set('Ellis and others 1990, at one temperature', { ke: 9.083, cw: 5.81, ...common }),
    ],
  ],
  [
    'lettuce',
    [
      set('Ellis and others 1989', { ke: 7.938, cw: 5.25, ...common }),
      set('Kraak, Vos 1987, with the terms of Dickie and others 1990', { ke: 6.895, cw: 4.2, ...common }),
    ],
  ],
  ['pea', [set('Ellis and others 1989', { ke: 9.858, cw: 5.39, ...common })]],
  ['snap-bean', [set('Ellis and others 1990', { ke: 9.09, cw: 4.761, ...common })]],
  ['cabbage', kinOfCabbage],
  ['cauliflower', kinOfCabbage],
  ['turnip', kinOfCabbage],
  ['beet', [set('Ellis, Hong 2007', { ke: 8.988, cw: 4.969, ch: 0.0322, cq: 0.000454 }, 'sugar beet')]],
  ['sweet-corn', [set('Ellis, Hong 2007', { ke: 9.993, cw: 5.993, ch: 0.0322, cq: 0.000454 }, 'maize for grain')]],
  ['tomato', [set('Kruse and others 2005', { ke: 6.5017, cw: 3.1807, ch: 0.0324, cq: 0.000431 })]],
  ['pepper', [set('Demir and others 2009', { ke: 7.767, cw: 4.67, ...common })]],
  ['cucumber', [set('Demir and others 2011', { ke: 5.35, cw: 2.03, ...common })]],
  ['muskmelon', [set('Kuo 1991', { ke: 7.299, cw: 3.707, ch: 0.0367, cq: 0.000473 })]],
  ['watermelon', [set('Demir and others 2011', { ke: 4.86, cw: 1.59, ...common })]],
  ['okra', [set('Daniel and others 2013', { ke: 6.659, cw: 2.448, ...common })]],
]);
