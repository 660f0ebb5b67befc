import { describe, expect, it } from 'vitest';
import { distanceWeights } from '../../src/climate/world/distance-weights.js';
import { type MonthlyTemperatures, temperaturesAtHeight } from '../../src/climate/world/months-at-height.js';
import { nearestStations, type Spot } from '../../src/climate/world/nearest-stations.js';
import { placeClimate } from '../../src/climate/world/place-climate.js';
import { MONTHS } from '../../src/climate/world/station-table.js';
import { climateTable } from '../../src/climate-table.js';
import { median, table } from './statistics.js';
import { tell } from './tell.js';

const stations = climateTable();
/** Beyond it no garden is asked about, and stations are few. */
const MAX_LATITUDE = 62;

interface Errors {
  readonly index: number;
  readonly nearestKm: number;
  /** Of the months [K]. */
  readonly maxK: Float64Array;
  readonly minK: Float64Array;
  readonly meanK: Float64Array;
}

const spotOf = (index: number, isHeightKnown: boolean): Spot => ({
  latitude: stations.latitudeHundredths[index]! / 100,
  longitude: stations.longitudeHundredths[index]! / 100,
  elevationM: isHeightKnown ? stations.elevationM[index]! : null,
});

function errorsAt(index: number, { meanMaxC, meanMinC }: MonthlyTemperatures, nearestKm: number): Errors {
  const cell = index * MONTHS;
  const maxK = meanMaxC.map((max, month) => max - stations.maxTenths[cell + month]! / 10);
  const minK = meanMinC.map(
    (min, month) => min - (stations.maxTenths[cell + month]! - stations.rangeTenths[cell + month]!) / 10,
  );
  return { index, nearestKm, maxK, minK, meanK: maxK.map((error, month) => (error + minK[month]!) / 2) };
}

const leftOut = (isHeightKnown: boolean, step: number): Errors[] =>
  judged(step).map((index) => {
    const climate = placeClimate(stations, spotOf(index, isHeightKnown), index);
    return errorsAt(index, climate, climate.nearestKm);
  });

/** Five stations weighted by their distance alone. */
const byDistance = (step: number): Errors[] =>
  judged(step).map((index) => {
    const near = nearestStations(stations, spotOf(index, true), 5, index);
    return errorsAt(index, temperaturesAtHeight(stations, near, distanceWeights(near)), 0);
  });

const judged = (step: number): number[] =>
  Array.from({ length: Math.ceil(stations.count / step) }, (_, i) => i * step).filter(
    (index) => Math.abs(stations.latitudeHundredths[index]! / 100) <= MAX_LATITUDE,
  );

const rmse = (errors: readonly Errors[], of: (one: Errors) => Float64Array): number => {
  const all = errors.flatMap((one) => [...of(one)]);
  return Math.sqrt(all.reduce((sum, error) => sum + error * error, 0) / all.length);
};
const middle = (errors: readonly Errors[], of: (one: Errors) => Float64Array): number =>
  median(errors.map((one) => rmse([one], of)));
/** Half the width of the middle 80 %. */
const half80 = (errors: readonly Errors[]): number => {
  const all = errors.flatMap(({ meanK }) => [...meanK]).sort((a, b) => a - b);
  return (all[Math.floor(0.9 * all.length)]! - all[Math.floor(0.1 * all.length)]!) / 2;
};

const EACH = [({ maxK }: Errors) => maxK, ({ minK }: Errors) => minK, ({ meanK }: Errors) => meanK];
const rowOf = (name: string, errors: readonly Errors[]) => [
  name,
  String(errors.length),
  ...EACH.map((of) => rmse(errors, of)),
  ...EACH.map((of) => middle(errors, of)),
  half80(errors),
];
const HEADER = ['', 'n', 'max', 'min', 'mean', 'max', 'min', 'mean', '80 % half'];

const CONTINENTS: readonly (readonly [string, (latitude: number, longitude: number) => boolean])[] = [
  ['Europe', (la, lo) => la >= 35 && lo >= -25 && lo < 45],
  ['Asia', (la, lo) => (lo >= 45 && la >= -10) || (la >= 12 && la < 35 && lo >= 35 && lo < 45)],
  ['Africa', (la, lo) => la < 35 && lo >= -20 && lo < 52],
  ['North and Central America', (la, lo) => la >= 8 && lo < -25],
  ['South America', (la, lo) => la < 8 && lo >= -90 && lo < -25],
  ['Oceania', () => true],
];
const BY_KM = [0, 30, 60, 120, 250, 400, 5000];

describe('the climate of stations, each left out in turn', () => {
  const known = leftOut(true, 1);
  const unknown = leftOut(false, 1);
  const everySecond = known.filter(({ index }) => index % 2 === 0);

  it('errs by less than the distances alone make it err', () => {
    const old = byDistance(2);
    const continentOf = ({ index }: Errors): string => {
      const { latitude, longitude } = spotOf(index, true);
      return CONTINENTS.find(([, isIn]) => isIn(latitude, longitude))![0];
    };
    const within = (errors: readonly Errors[], i: number) =>
      errors.filter(({ nearestKm }) => nearestKm >= BY_KM[i]! && nearestKm < BY_KM[i + 1]!);
    tell(
      'climate-left-out',
      'Monthly means of stations, each left out in turn: root mean square error, and that of the middle station [K]',
      table(HEADER, [
        rowOf('five by distance, every second', old),
        rowOf('as the service, every second', everySecond),
        rowOf('all', known),
        rowOf('all, heights not told', unknown),
        ...CONTINENTS.map(([name]) =>
          rowOf(
            name,
            known.filter((one) => continentOf(one) === name),
          ),
        ),
        ...BY_KM.slice(0, -1).map((from, i) => rowOf(`nearest from ${from} km`, within(known, i))),
        ...BY_KM.slice(0, -1).map((from, i) => rowOf(`no height, from ${from} km`, within(unknown, i))),
      ]),
    );
    const [max, min, mean] = EACH.map((of) => rmse(everySecond, of));
    expect(max).toBeLessThanOrEqual(1.7);
    expect(min).toBeLessThanOrEqual(1.55);
    expect(mean).toBeLessThanOrEqual(1.3);
    const [maxMiddle, minMiddle, meanMiddle] = EACH.map((of) => middle(everySecond, of));
    expect(maxMiddle).toBeLessThanOrEqual(0.85);
    expect(minMiddle).toBeLessThanOrEqual(0.95);
    expect(meanMiddle).toBeLessThanOrEqual(0.7);
    for (const of of EACH) expect(rmse(everySecond, of)).toBeLessThan(0.95 * rmse(old, of));
  });
});
