import { declinationDeg, equationOfTimeMin, sunriseMinUtc } from '../../src/seedbed/sun/solar-position.js';
import type { Runners } from './out.js';

interface OnDay {
  readonly dayOfYear: number;
}
interface AtHour extends OnDay {
  readonly hourUtc: number;
}

export const solarRunners: Runners = {
  'seedbed/solar-position declinationDeg': ({ dayOfYear, hourUtc }: AtHour) => declinationDeg(dayOfYear, hourUtc),
  'seedbed/solar-position equationOfTimeMin': ({ dayOfYear, hourUtc }: AtHour) => equationOfTimeMin(dayOfYear, hourUtc),
  'seedbed/solar-position sunriseMinUtc': (given: OnDay & { latitudeDeg: number; longitudeDeg: number }) =>
    sunriseMinUtc(given.latitudeDeg, given.longitudeDeg, given.dayOfYear),
};
