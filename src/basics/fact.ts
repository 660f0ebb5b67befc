/**
 * The type and unit of a fact's parameter, which decide how it is formatted. `count` is a whole number that a word
 * agrees with (`1 day`, `2 days`); `anyOf` a list of alternatives, separated by commas; `crops` several crops, one a
 * line; a list of codes allows one of them; a `?` after a kind allows null.
 */
export type ParamKind =
  | 'celsius'
  | 'kelvin'
  | 'cm'
  | 'mm'
  | 'number'
  | 'count'
  | 'date'
  | 'crop'
  | 'crops'
  | 'text'
  | 'anyOf'
  | `${'celsius' | 'kelvin' | 'cm' | 'mm' | 'number' | 'count' | 'date' | 'crop' | 'text' | 'anyOf'}?`
  | readonly string[];

type ValueOf<K extends ParamKind> = K extends readonly string[]
  ? K[number]
  : K extends `${infer Sure extends Exclude<ParamKind, readonly string[]>}?`
    ? ValueOf<Sure> | null
    : K extends 'date' | 'crop' | 'crops' | 'text' | 'anyOf'
      ? string
      : number;

/** The parameter kinds of each fact code. */
export type FactKinds = Readonly<Record<string, Readonly<Record<string, ParamKind>>>>;

/** A statement as data. Only the room `words` turns it into a sentence. */
export interface Fact {
  readonly code: string;
  readonly params: Params;
  /** Another fact that follows it in the same text. */
  readonly also?: Fact;
}

/** Turns a fact into one or more sentences. */
export type Say = (fact: Fact) => string;

export type Params = Readonly<Record<string, string | number | null>>;

/** One of the facts that some kinds declare, such as `FactOf<typeof forecastFacts>`. */
export type FactOf<F extends FactKinds> = {
  [Code in keyof F & string]: {
    readonly code: Code;
    readonly params: { readonly [P in keyof F[Code]]: ValueOf<F[Code][P]> };
  };
}[keyof F & string];

type ParamsOf<F extends FactKinds, Code extends keyof F & string> = {
  readonly [P in keyof F[Code]]: ValueOf<F[Code][P]>;
};

/** Makes a constructor of facts: the compiler checks that each code gets its parameters. */
export const factsOf =
  <F extends FactKinds>(_kinds: F) =>
  <Code extends keyof F & string>(
    code: Code,
    ...[params]: keyof F[Code] extends never ? [] : [params: ParamsOf<F, Code>]
  ): Fact => ({ code, params: params ?? {} });

type ChoiceCode<F extends FactKinds> = {
  [K in keyof F & string]: K extends `${infer Code}.reads`
    ? `${Code}.consequence` extends keyof F
      ? Code
      : never
    : never;
}[keyof F & string];

/** Makes choices whose two messages, `<code>.reads` and `<code>.consequence`, some kinds declare. */
export const choicesOf =
  <F extends FactKinds>(_kinds: F) =>
  <Code extends ChoiceCode<F>>(
    value: string,
    code: Code,
    params: ParamsOf<F, `${Code}.reads`> & ParamsOf<F, `${Code}.consequence`>,
  ): { readonly value: string; readonly code: string; readonly params: Params } => ({ value, code, params });
/** A fact with `next` following it; `next` may be a ready sentence. */
export const followedBy = (fact: Fact, next: Fact | string | undefined): Fact =>
  next === undefined ? fact : { ...fact, also: asFact(next) };

/** A ready sentence that passes through as it is. */
export const saidFacts = { 'as-said': { words: 'text' } } as const satisfies FactKinds;
export const asFact = (one: Fact | string): Fact =>
  typeof one === 'string' ? { code: 'as-said', params: { words: one } } : one;
