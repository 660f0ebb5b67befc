/** What a golden table expects of a function: numbers, words, lists and records of these. */
export type Out = number | string | null | readonly Out[] | { readonly [field: string]: Out };

/** Functions by the name that a golden table gives them. */
export type Runners = Record<string, (given: never) => Out>;
