/** The mean over the day around each hour, of as many of its hours as are known [°C]; NaN where fewer than `least` are. */
export function runningDay(hourlyC: Float64Array, least = 1): Float64Array {
  const n = hourlyC.length;
  const sums = new Float64Array(n + 1);
  const counts = new Int32Array(n + 1);
  for (let hour = 0; hour < n; hour++) {
    const isKnown = !Number.isNaN(hourlyC[hour]);
    sums[hour + 1] = sums[hour]! + (isKnown ? hourlyC[hour]! : 0);
    counts[hour + 1] = counts[hour]! + Number(isKnown);
  }
  return Float64Array.from({ length: n }, (_, hour) => {
    const from = Math.max(0, Math.min(hour - 12, n - 24));
    const to = Math.min(n, Math.max(hour + 12, 24));
    const known = counts[to]! - counts[from]!;
    return known < least ? NaN : (sums[to]! - sums[from]!) / known;
  });
}
