/**
 * The depth at which a wave of temperature has lost all but 1/e of its swing.
 *
 * @param diffusivityM2s Thermal diffusivity κ, conductivity over heat capacity [m²/s]; 0.5e-7 to 15e-7 in beds.
 * @param periodH        Length of the wave [h]; 24 for the day's.
 * @returns Damping depth D [cm].
 *
 * Formula: D = sqrt(2 κ / ω), ω = 2π / period
 * Source: Carslaw, Jaeger (1959). Conduction of Heat in Solids, 2.6; Campbell, Norman (1998). An Introduction to
 * Environmental Biophysics, ch. 2. It holds in ground that is alike at all depths.
 * @example dampingDepthCm(5e-7, 24) // => 11.73
 */
export function dampingDepthCm(diffusivityM2s: number, periodH: number): number {
  return 100 * Math.sqrt((diffusivityM2s * periodH * 3600) / Math.PI);
}

/**
 * How far a wave swings at one depth, from its swing at another, above or below.
 *
 * @param swingK         Swing at `fromCm`, half or whole [K].
 * @param fromCm         Where it was measured [cm], positive downward.
 * @param toCm           Where it is wanted [cm].
 * @param diffusivityM2s Thermal diffusivity [m²/s].
 * @param periodH        Length of the wave [h].
 * @returns The same kind of swing at `toCm` [K].
 *
 * Formula: A' = A exp((from - to) / D)
 * Source: as `dampingDepthCm`.
 * @example diurnalAmplitudeAtDepthK(3, 10, 1, 5e-7, 24) // => 6.46
 */
export function diurnalAmplitudeAtDepthK(
  swingK: number,
  fromCm: number,
  toCm: number,
  diffusivityM2s: number,
  periodH: number,
): number {
  return swingK * Math.exp((fromCm - toCm) / dampingDepthCm(diffusivityM2s, periodH));
}

/**
 * How much later a wave comes at one depth than at another.
 *
 * @param fromCm         The one depth [cm].
 * @param toCm           The other [cm]; above the first the wave is earlier, and the lag negative.
 * @param diffusivityM2s Thermal diffusivity [m²/s].
 * @param periodH        Length of the wave [h].
 * @returns Lag [h].
 *
 * Formula: lag = (to - from) / D / ω
 * Source: as `dampingDepthCm`.
 * @example lagH(0, 5, 5e-7, 24) // => 1.629
 */
export function lagH(fromCm: number, toCm: number, diffusivityM2s: number, periodH: number): number {
  return ((toCm - fromCm) / dampingDepthCm(diffusivityM2s, periodH)) * (periodH / (2 * Math.PI));
}
