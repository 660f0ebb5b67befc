/**
 * The share of the way from yesterday's soil to today's air that the soil goes in a day, by Kang and others.
 *
 * @param depthCm        Depth in the soil [cm], >= 0.
 * @param diffusivityM2s Thermal diffusivity [m²/s], > 0.
 * @param cover          What lies over the soil: leaves and litter when it warms, litter alone when it cools [m²/m²], >= 0.
 * @param extinction     How much of the sky a layer of it hides [1].
 * @returns A share, 0 to 1.
 * @throws never.
 *
 * Formula: e^(-z sqrt(π/(κP))) e^(-k cover), P = 86400 s
 * Source: Kang, Kim, Oh, Lee (2000). Predicting spatial and temporal patterns of soil temperature based on topography,
 * surface cover and air temperature. For. Ecol. Manage. 136: 173-184 (from memory).
 * @example kangFactor(10, 5e-7, 0) // => 0.4262
 */
export function kangFactor(depthCm: number, diffusivityM2s: number, cover: number, extinction = 0.45): number {
  const perDampingDepth = (depthCm / 100) * Math.sqrt(Math.PI / (diffusivityM2s * 86_400));
  return Math.exp(-perDampingDepth - extinction * cover);
}
