import { describe, expect, test } from 'vitest';
import { distanceWeights } from '../../../../src/climate/world/distance-weights.js';
import { krigingWeights } from '../../../../src/climate/world/kriging-weights.js';
import { nearestStations } from '../../../../src/climate/world/nearest-stations.js';
import { decodeStationTable, type StationTable } from '../../../../src/climate/world/station-table.js';
import { weightedMonths } from '../../../../src/climate/world/weighted-months.js';
import { stationTableBytes } from '../../../accuracy/station-table-bytes.js';

/** Stations at some places, all with the same months. */
function stationsAt(places: readonly (readonly [latitude: number, longitude: number, elevationM: number])[]) {
  const months = Object.fromEntries(
    Array.from({ length: 12 }, (_, month) => [
      [`tmax_${month + 1}`, '20'],
      [`tmin_${month + 1}`, '10'],
      [`sd_${month + 1}`, '3'],
      [`rain_mm_${month + 1}`, '50'],
    ]).flat(),
  );
  const rows = places.map(([latitude, longitude, elevationM], i) => ({
    wmo: `0000${i}`,
    name: `Station ${i}`,
    country: 'Quill',
    latitude: String(latitude),
    longitude: String(longitude),
    elevation_m: String(elevationM),
    ...months,
  }));
  return decodeStationTable(new Uint8Array(stationTableBytes(rows)));
}
const SPOT = { latitude: 45, longitude: 0, elevationM: 100 };
const weightsOf = (table: StationTable): number[] => {
  const near = nearestStations(table, SPOT, table.count);
  const weights = krigingWeights(table, SPOT, near);
  return near
    .map(({ index }, i) => [index, weights[i]!] as const)
    .sort(([a], [b]) => a - b)
    .map(([, weight]) => weight);
};

describe('nearest stations', () => {
  const table = stationsAt([
    [45.2, 0, 100],
    [45, 0.1, 900],
    [45, 3, 100],
  ]);

  test('count 100 m of height as 30 km', () => {
    const near = nearestStations(table, SPOT, 2);
    expect(near.map(({ index }) => index)).toEqual([0, 2]);
    const [first] = near;
    expect(first!.km).toBeCloseTo(22.239, 2);
    expect(first!.apartKm).toBeCloseTo(Math.hypot(22.239, 5), 2);
    expect(nearestStations(table, SPOT, 3)[2]!.apartKm).toBeCloseTo(Math.hypot(7.863, 240, 5), 1);
  });

  test('go by the map alone where the height is not known, and leave one out', () => {
    expect(nearestStations(table, { ...SPOT, elevationM: null }, 1)[0]).toMatchObject({ index: 1, aboveM: 0 });
    expect(nearestStations(table, SPOT, 3, 0).map(({ index }) => index)).toEqual([2, 1]);
  });
});

test('weights by distance fall with its square', () => {
  const weights = distanceWeights([{ apartKm: 10 }, { apartKm: 20 }]);
  expect(weights[0]).toBeCloseTo(0.8, 12);
  expect(weights[1]).toBeCloseTo(0.2, 12);
});

describe('kriging weights', () => {
  test('make one together; stations as far away on either side weigh alike', () => {
    const weights = weightsOf(
      stationsAt([
        [45, -1, 100],
        [45, 1, 100],
        [46, 0, 100],
      ]),
    );
    expect(weights.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 12);
    expect(weights[0]).toBeCloseTo(weights[1]!, 9);
  });

  test('three stations side by side share the weight of one', () => {
    const weights = weightsOf(
      stationsAt([
        [46, 0, 100],
        [46, 0.01, 100],
        [46, -0.01, 100],
        [44, 0, 100],
      ]),
    );
    expect(weights[0]! + weights[1]! + weights[2]!).toBeLessThan(0.6);
    expect(weights[3]).toBeGreaterThan(0.4);
  });

  test('carry a gradient on to a place beside the stations', () => {
    const weights = weightsOf(
      stationsAt([
        [46, 0, 100],
        [48, 0, 100],
      ]),
    );
    expect(weights[0]).toBeGreaterThan(1);
    expect(weights[1]).toBeLessThan(0);
  });
});

describe('weighted months', () => {
  test('leave missing values out, and make the other weights one again', () => {
    const months = weightedMonths(
      (station, month) => (station === 1 && month === 3 ? NaN : [10, 20][station]!),
      [0.8, 0.2],
    );
    expect(months[0]).toBeCloseTo(12, 12);
    expect(months[3]).toBeCloseTo(10, 12);
    expect(weightedMonths(() => NaN, [1])[0]).toBeNaN();
  });
});
