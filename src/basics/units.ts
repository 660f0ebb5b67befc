export type TemperatureUnit = 'C' | 'F' | 'K';

/** Drops the last bits, so that 70.34 °F and 21.3 °C are the same number whichever unit they came in. */
const toNanokelvin = (tempC: number): number => Math.round(tempC * 1e9) / 1e9;

/** A temperature in °C from one in °F. Not for differences: see {@link celsiusDeltaFromFahrenheit}. */
export const celsiusFromFahrenheit = (tempF: number): number => toNanokelvin(((tempF - 32) * 5) / 9);

/** A difference of temperatures in K from one in °F. */
export const celsiusDeltaFromFahrenheit = (deltaF: number): number => (deltaF * 5) / 9;

/** A temperature in °C from one in K. */
export const celsiusFromKelvin = (tempK: number): number => toNanokelvin(tempK - 273.15);

/** A temperature in °C, from each unit a caller may send. */
export const celsiusFrom: Record<TemperatureUnit, (value: number) => number> = {
  C: toNanokelvin,
  F: celsiusFromFahrenheit,
  K: celsiusFromKelvin,
};
