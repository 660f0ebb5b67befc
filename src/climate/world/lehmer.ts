/** Multiplier, and modulus: a prime, 2^31 - 1. */
const MULTIPLIER = 48_271;
const MODULUS = 2_147_483_647;

/**
 * A generator of numbers that look random and are always the same ones after the same seed.
 *
 * @param seed A whole number, 1 to 2^31 - 2.
 * @returns Each call gives the next number, above 0 and below 1.
 * @throws ScienceError never.
 *
 * Formula: x = 48271 x mod (2^31 - 1); the number is x / (2^31 - 1). Products stay below 2^53, so they are exact.
 * Source: Park, Miller, Stockmeyer (1993). Technical correspondence: response. Commun. ACM 36 (7): 108-110.
 * @example lehmer(1)() * (2 ** 31 - 1) // => 48271
 */
export function lehmer(seed: number): () => number {
  let x = seed;
  return () => {
    x = (x * MULTIPLIER) % MODULUS;
    return x / MODULUS;
  };
}

/** The seed of a place: the same for all places that round to the same hundredth of a degree. */
export function seedOfPlace(latitude: number, longitude: number): number {
  const row = Math.round((latitude + 90) * 100);
  const column = Math.round((longitude + 180) * 100);
  return 1 + ((row * 36_001 + column) % (MODULUS - 1));
}
