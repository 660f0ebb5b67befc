/**
 * Heat units of a day: degrees above a base, counted up to a ceiling.
 *
 * @param meanC       Mean of the day's air, (min + max)/2 [°C].
 * @param baseTempC   Below it nothing grows [°C].
 * @param ceilingTempC More warmth than this adds nothing [°C].
 * @returns Heat units [°C·d], 0 or more.
 *
 * Formula: max(0, min(T, Tc) - Tb)
 * Source: common form of growing degree days (McMaster & Wilhelm 1997, their second way).
 * @example dayUnits(18, 4.4, 24) // => 13.6
 */
export const dayUnits = (meanC: number, baseTempC: number, ceilingTempC: number): number =>
  Math.max(0, Math.min(meanC, ceilingTempC) - baseTempC);
