export type TemperatureUnit = 'C' | 'F' | 'K';

/** Rounds to 1e-9 K, so that 70.34 °F and 21.3 °C are the same number whichever unit they came in. */
const toNanokelvin = (tempC: number): number => Math.round(tempC * 1e9) / 1e9;

/** A temperature in °C from one in °F. Differences need {@link celsiusDeltaFromFahrenheit}. */
export const celsiusFromFahrenheit = (tempF: number): number => toNanokelvin(((tempF - 32) * 5) / 9);

/** A temperature difference in K from one in °F. */
export const celsiusDeltaFromFahrenheit = (deltaF: number): number => (deltaF * 5) / 9;

/** A temperature in °C from one in K. */
export const celsiusFromKelvin = (tempK: number): number => toNanokelvin(tempK - 273.15);

/** Conversion to °C from each unit that a caller may send. */
export const celsiusFrom: Record<TemperatureUnit, (value: number) => number> = {
  C: toNanokelvin,
  F: celsiusFromFahrenheit,
  K: celsiusFromKelvin,
};
