/** Latent heat of the soil water per kelvin while it freezes between -1 and 0 °C [J m⁻³ K⁻¹]. */
const FREEZING_HEAT = 3e7;
const FREEZES_FROM_C = -1;
/** Relative tolerance on the apparent heat capacity [1]. */
const CAPACITY_TOLERANCE = 0.1;

/** The capacity of soil without freezing over its apparent capacity while water freezes. */
export const frozenCapacityShare = (heatCapacity: number): number => heatCapacity / (heatCapacity + FREEZING_HEAT);

/**
 * Sets each node's share from the temperatures before and after: its capacity without freezing over its apparent one.
 *
 * A node without frost gets its own capacity back regardless of the tolerance. Otherwise soil would keep up to a tenth
 * too much for weeks after a thaw.
 *
 * @param toNode The deepest node to update.
 * @returns The deepest node whose share changed beyond the tolerance, so that the step must be solved again; -1 for
 * none.
 */
export function meetApparentHeatCapacity(
  fromC: Float64Array,
  toC: Float64Array,
  share: Float64Array,
  frostShare: number,
  toNode: number,
): number {
  let changedTo = -1;
  for (let i = 0; i <= toNode; i++) {
    const from = fromC[i]!;
    const to = toC[i]!;
    const low = Math.min(from, to);
    const high = Math.max(from, to);
    let met = 1;
    if (low < 0 && high > FREEZES_FROM_C) {
      const inFrost = Math.min(high, 0) - Math.max(low, FREEZES_FROM_C);
      met = high === low ? frostShare : (high - low) / (high - low - inFrost + inFrost / frostShare);
    }
    const isNear = met === 1 ? share[i] === 1 : Math.abs(met - share[i]!) <= CAPACITY_TOLERANCE * share[i]!;
    if (isNear) continue;
    share[i] = met;
    changedTo = i;
  }
  return changedTo;
}

/** Enthalpy update: sets each node's temperature from the heat that it gained in the step, in place. */
export function updateEnthalpy(fromC: Float64Array, toC: Float64Array, share: Float64Array, frostShare: number): void {
  for (let i = 0; i < toC.length; i++) {
    const from = fromC[i]!;
    const to = toC[i]!;
    if ((from >= 0 && to >= 0) || (from <= FREEZES_FROM_C && to <= FREEZES_FROM_C)) continue;
    const heat = heatOf(from, frostShare) + (to - from) / share[i]!;
    toC[i] = tempOf(heat, frostShare);
  }
}

/** Heat above that of soil just frozen through, over the capacity without freezing [K]; `tempOf` is the inverse. */
function heatOf(tempC: number, frostShare: number): number {
  if (tempC <= FREEZES_FROM_C) return tempC - FREEZES_FROM_C;
  const thawed = Math.min(0, tempC) - FREEZES_FROM_C;
  return thawed / frostShare + Math.max(0, tempC);
}
function tempOf(heat: number, frostShare: number): number {
  if (heat <= 0) return FREEZES_FROM_C + heat;
  const whole = -FREEZES_FROM_C / frostShare;
  return heat < whole ? FREEZES_FROM_C + heat * frostShare : heat - whole;
}
