/**
 * The longest step that the explicit scheme of heat conduction bears: why ours is another.
 *
 * @param diffusivityM2s Thermal diffusivity [m²/s].
 * @param spacingM       Distance of neighbouring nodes [m].
 * @returns Step [s].
 *
 * Formula: dt = dz² / (2 κ)
 * Source: standard numerical analysis, from memory.
 * @example explicitStepS(5e-7, 0.01) // => 100
 */
export const explicitStepS = (diffusivityM2s: number, spacingM: number): number => spacingM ** 2 / (2 * diffusivityM2s);
