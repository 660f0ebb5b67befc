/** Missing hours up to this many are bridged by a straight line [h]. */
export const BRIDGED_H = 3;

/** A stretch of hours without a value: from the first missing hour up to, not including, the next known one. */
export interface MissingHours {
  readonly fromH: number;
  readonly toH: number;
}

/** The stretches of NaN between known hours. */
export function missingHours(hourlyC: Float64Array): MissingHours[] {
  const gaps: MissingHours[] = [];
  let lastKnown = -1;
  for (let hour = 0; hour < hourlyC.length; hour++) {
    if (Number.isNaN(hourlyC[hour])) continue;
    if (lastKnown >= 0 && hour - lastKnown > 1) gaps.push({ fromH: lastKnown + 1, toH: hour });
    lastKnown = hour;
  }
  return gaps;
}

/**
 * Fills one stretch of missing hours, in place.
 *
 * Up to three hours run straight. Longer stretches take the same hour of the days on either side, the nearer side
 * counting more; this knows nothing of the weather in between, and says so in the answer.
 *
 * @param hourlyC Hourly temperatures [°C], known on either side of the gap.
 * @param gap     Which hours are missing.
 */
export function fillGap(hourlyC: Float64Array, { fromH, toH }: MissingHours): void {
  const length = toH - fromH;
  const left = hourlyC[fromH - 1]!;
  const right = hourlyC[toH]!;
  const filled = Float64Array.from({ length }, (_, i) => {
    const share = (i + 1) / (length + 1);
    const straight = left + (right - left) * share;
    if (length <= BRIDGED_H) return straight;
    const hour = fromH + i;
    const dayBefore = hourlyC[hour - 24 * Math.ceil((i + 1) / 24)] ?? NaN;
    const dayAfter = hourlyC[hour + 24 * Math.ceil((length - i) / 24)] ?? NaN;
    if (Number.isNaN(dayBefore)) return Number.isNaN(dayAfter) ? straight : dayAfter;
    return Number.isNaN(dayAfter) ? dayBefore : dayBefore + (dayAfter - dayBefore) * share;
  });
  hourlyC.set(filled, fromH);
}

/** Up to this many missing hours the difference from the model runs straight across the gap [h]. */
const BLENDED_H = 24;
/** Longer gaps than this are the model's alone [h]. */
const MAX_FROM_MODEL_H = 14 * 24;
/** Share of a side's difference that remains after a day. */
const LEFT_AFTER_DAY = 0.85;

/**
 * Fills one stretch of missing hours from a model, in place, by its length: up to 3 h straight; up to a day the model's
 * course, brought to the readings on either side; up to 14 days the model with the last day's difference on either side,
 * blended straight and fading by 0.85 a day away from the nearer.
 *
 * @param hourlyC Hourly temperatures [°C], known on either side of the gap.
 * @param gap     Which hours are missing.
 * @param modelC  The model's [°C]; NaN where it does not reach. Shape of `hourlyC`.
 * @returns False, and nothing filled, where the gap is longer or the model does not reach.
 */
export function fillFromModel(hourlyC: Float64Array, gap: MissingHours, modelC: Float64Array): boolean {
  const { fromH, toH } = gap;
  const length = toH - fromH;
  if (length > MAX_FROM_MODEL_H) return false;
  if (length <= BRIDGED_H) {
    fillGap(hourlyC, gap);
    return true;
  }
  const isShort = length <= BLENDED_H;
  const reach = isShort ? 1 : 24;
  const left = meanDifference(hourlyC, modelC, fromH - reach, fromH);
  const right = meanDifference(hourlyC, modelC, toH, toH + reach);
  if (Number.isNaN(left + right)) return false;
  for (let hour = fromH; hour < toH; hour++) {
    if (Number.isNaN(modelC[hour])) return false;
  }
  for (let hour = fromH; hour < toH; hour++) {
    const [since, until] = [hour - fromH + 1, toH - hour];
    const blended = left + ((right - left) * since) / (length + 1);
    const difference = isShort ? blended : blended * LEFT_AFTER_DAY ** (Math.min(since, until) / 24);
    hourlyC[hour] = modelC[hour]! + difference;
  }
  return true;
}

function meanDifference(hourlyC: Float64Array, modelC: Float64Array, fromH: number, toH: number): number {
  let [sum, known] = [0, 0];
  for (let hour = Math.max(0, fromH); hour < Math.min(toH, hourlyC.length); hour++) {
    const difference = hourlyC[hour]! - modelC[hour]!;
    if (Number.isNaN(difference)) continue;
    sum += difference;
    known++;
  }
  return sum / known;
}
