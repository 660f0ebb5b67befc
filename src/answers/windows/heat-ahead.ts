import type { WindowNote } from './window-facts.js';

/** So many hot hours on a day make a spell [h]. */
const MIN_HOURS = 6;
/** Rarer than this it is not told. */
const MIN_SHARE = 0.1;

/**
 * How often heat came in past years before a sowing was up: a mean of years shows none of it.
 *
 * @param members       Hourly means since the wetting [°C], once as in each past year. Shape (nHours) each.
 * @param hotThresholdC Above this heat holds the seed [°C].
 * @param untilH       Until most is up, or the count [h since wetting].
 * @param years        How many years the members stand for.
 * @returns The note; none where it came in fewer than a tenth of them.
 */
export function heatAhead(
  members: readonly Float64Array[],
  hotThresholdC: number,
  untilH: number,
  years: number,
): WindowNote[] {
  const hot = members.filter((member) => hasSpell(member.subarray(0, Math.ceil(untilH)), hotThresholdC)).length;
  const share = hot / members.length;
  if (!(share >= MIN_SHARE)) return [];
  const inYears = Math.round(share * years);
  return [
    {
      code: 'heat-ahead',
      params: {
        isAll: inYears >= years ? 'yes' : 'no',
        inYears: Math.max(1, inYears),
        ofYears: years,
        thresholdC: Math.round(10 * hotThresholdC) / 10,
      },
    },
  ];
}

function hasSpell(hourlyC: Float64Array, hotThresholdC: number): boolean {
  for (let day = 0; day < hourlyC.length; day += 24) {
    let hours = 0;
    for (const tempC of hourlyC.subarray(day, day + 24)) if (tempC > hotThresholdC) hours++;
    if (hours >= MIN_HOURS) return true;
  }
  return false;
}
