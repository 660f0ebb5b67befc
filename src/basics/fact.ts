/**
 * What a parameter of a fact is: its type, its unit, and how a reader is told it. `count` is a whole number that a word can
 * agree with (`1 day`, `2 days`); a list of codes is one of them; a `?` after a kind: it may be missing, as null.
 */
export type Kind =
  | 'celsius'
  | 'kelvin'
  | 'cm'
  | 'mm'
  | 'number'
  | 'count'
  | 'date'
  | 'crop'
  | 'text'
  | `${'celsius' | 'kelvin' | 'cm' | 'mm' | 'number' | 'count' | 'date' | 'crop' | 'text'}?`
  | readonly string[];

type ValueOf<K extends Kind> = K extends readonly string[]
  ? K[number]
  : K extends `${infer Sure extends Exclude<Kind, readonly string[]>}?`
    ? ValueOf<Sure> | null
    : K extends 'date' | 'crop' | 'text'
      ? string
      : number;

/** The kinds of all parameters, by the codes that they stand beside. */
export type FactKinds = Readonly<Record<string, Readonly<Record<string, Kind>>>>;

/** A fact: what is the case, as data. Only the room `words` makes a sentence of it. */
export interface Fact {
  readonly code: string;
  readonly params: Params;
}

export type Params = Readonly<Record<string, string | number | null>>;

/** Makes a sentence, or several, of a fact: in the reader's language, units and dates. */
export type Say = (fact: Fact) => string;

/** One of the facts that some kinds declare, such as `FactOf<typeof forecastFacts>`. */
export type FactOf<F extends FactKinds> = {
  [Code in keyof F & string]: {
    readonly code: Code;
    readonly params: { readonly [P in keyof F[Code]]: ValueOf<F[Code][P]> };
  };
}[keyof F & string];
