/**
 * The depth at which the amplitude of a temperature wave has fallen to 1/e.
 *
 * @param diffusivityM2s Thermal diffusivity κ, conductivity over heat capacity [m²/s]; 0.5e-7 to 15e-7 in beds.
 * @param periodH        Period of the wave [h]; 24 for the diurnal one.
 * @returns Damping depth D [cm].
 *
 * Formula: D = sqrt(2 κ / ω), ω = 2π / period
 * Source: Carslaw, Jaeger (1959). Conduction of Heat in Solids, 2.6; Campbell, Norman (1998). An Introduction to
 * Environmental Biophysics, ch. 2. It assumes ground that is alike at all depths.
 * @example dampingDepthCm(5e-7, 24) // => 11.73
 */
export function dampingDepthCm(diffusivityM2s: number, periodH: number): number {
  return 100 * Math.sqrt((diffusivityM2s * periodH * 3600) / Math.PI);
}

/**
 * The amplitude of a wave at one depth, from its amplitude at another, above or below.
 *
 * @param amplitudeK     Amplitude or range at `fromCm` [K].
 * @param fromCm         Depth of that amplitude [cm], positive downward.
 * @param toCm           Depth wanted [cm].
 * @param diffusivityM2s Thermal diffusivity [m²/s].
 * @param periodH        Period of the wave [h].
 * @returns Amplitude or range, as given, at `toCm` [K].
 *
 * Formula: A' = A exp((from - to) / D)
 * Source: as `dampingDepthCm`.
 * @example diurnalAmplitudeAtDepthK(3, 10, 1, 5e-7, 24) // => 6.46
 */
export function diurnalAmplitudeAtDepthK(
  amplitudeK: number,
  fromCm: number,
  toCm: number,
  diffusivityM2s: number,
  periodH: number,
): number {
  return amplitudeK * Math.exp((fromCm - toCm) / dampingDepthCm(diffusivityM2s, periodH));
}

/**
 * The lag of a wave between two depths.
 *
 * @param fromCm         The one depth [cm].
 * @param toCm           The other [cm]; a depth above the first gives a negative lag.
 * @param diffusivityM2s Thermal diffusivity [m²/s].
 * @param periodH        Period of the wave [h].
 * @returns Lag [h].
 *
 * Formula: lag = (to - from) / D / ω
 * Source: as `dampingDepthCm`.
 * @example lagH(0, 5, 5e-7, 24) // => 1.629
 */
export function lagH(fromCm: number, toCm: number, diffusivityM2s: number, periodH: number): number {
  return ((toCm - fromCm) / dampingDepthCm(diffusivityM2s, periodH)) * (periodH / (2 * Math.PI));
}
