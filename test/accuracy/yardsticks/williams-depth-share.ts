/**
 * How far the soil at a depth is from its surface towards the year's mean, by Williams and others.
 *
 * @param depthMm        Depth [mm], >= 0.
 * @param dampingDepthMm Their damping depth [mm], > 0.
 * @returns A share: 0 at the surface, towards 1 far below.
 * @throws never.
 *
 * Formula: F = zd/(zd + e^(-0.867 - 2.08 zd)), zd = z/DD
 * Source: Williams, Jones, Dyke (1984). A modeling approach to determining the relationship between erosion and soil
 * productivity. Trans. ASAE 27: 129-144 (from memory).
 * @example williamsDepthShare(50, 1500) // => 0.0784
 */
export function williamsDepthShare(depthMm: number, dampingDepthMm: number): number {
  const relative = depthMm / dampingDepthMm;
  return relative / (relative + Math.exp(-0.867 - 2.08 * relative));
}
