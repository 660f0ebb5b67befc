/** Missing hours up to this many are bridged by a straight line [h]. */
const BRIDGED_H = 3;

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
