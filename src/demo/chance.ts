const MULTIPLIER = 48_271;
const MODULUS = 2 ** 31 - 1;

/**
 * Pseudo-random numbers that are the same in every run.
 *
 * @param seed A whole number from 1 to 2³¹ - 2.
 * @returns A function that gives the next number, above 0 and below 1.
 *
 * Formula: s' = 48271 s mod (2³¹ - 1); the number is s' / (2³¹ - 1). All products stay below 2⁵³.
 * Validity: good enough for invented weather; not for secrets.
 * Source: Park, Miller, Stockmeyer (1993). Technical correspondence: remarks on choosing and implementing random number
 * generators. Commun. ACM 36(7): 105-110, from memory.
 */
export function chance(seed: number): () => number {
  let state = seed;
  return () => {
    state = (MULTIPLIER * state) % MODULUS;
    return state / MODULUS;
  };
}
