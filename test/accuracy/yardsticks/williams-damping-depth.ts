/**
 * The deepest that the year's wave is damped in, wherever it is wettest, by Williams and others.
 *
 * @param bulkDensity Dry soil [t/m³], about 1 to 1.8.
 * @returns The greatest damping depth [mm].
 * @throws never.
 *
 * Formula: 1000 + 2500 BD/(BD + 686 e^(-5.63 BD))
 * Source: as `williamsDepthShare`.
 * @example williamsDampingDepthMm(1.3) // => 2852.2
 */
export const williamsDampingDepthMm = (bulkDensity: number): number =>
  1000 + (2500 * bulkDensity) / (bulkDensity + 686 * Math.exp(-5.63 * bulkDensity));
