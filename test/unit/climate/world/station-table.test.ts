import { readFileSync, statSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import {
  decodeStationTable,
  MISSING_RAIN,
  MISSING_SD,
  stationAt,
} from '../../../../src/climate/world/station-table.js';
import { climateTable } from '../../../../src/climate-table.js';
import { stationTableBytes } from '../../../accuracy/station-table-bytes.js';

const monthly = (name: string, cell: (month: number) => string) =>
  Object.fromEntries(Array.from({ length: 12 }, (_, month) => [`${name}_${month + 1}`, cell(month)]));
const row = (wmo: string, name: string, country: string, warmC: number) => ({
  wmo,
  name,
  country,
  latitude: '-44.05',
  longitude: '179.97',
  elevation_m: '-12',
  ...monthly('tmax', (month) => (warmC + month).toFixed(1)),
  ...monthly('tmin', (month) => (warmC + month - 25.2).toFixed(1)),
  ...monthly('sd', (month) => (month === 3 ? '' : '4.2')),
  ...monthly('rain_mm', (month) => (month === 5 ? '' : '1784')),
});

describe('the table of stations', () => {
  test('decodes what was encoded: names with commas, missing cells, cold and warm', () => {
    const bytes = stationTableBytes([
      row('00001', 'Quillmere, North', 'Quill', -45.3),
      row('00002', 'Quillmere/Süd', 'Mere', 20.1),
    ]);
    const table = decodeStationTable(new Uint8Array(bytes));
    expect(table.count).toBe(2);
    expect(stationAt(table, 0)).toEqual({ id: '00001', name: 'Quillmere, North', country: 'Quill', elevationM: -12 });
    expect(stationAt(table, 1).name).toBe('Quillmere/Süd');
    expect([...table.latitudeHundredths, ...table.longitudeHundredths]).toEqual([-4405, -4405, 17_997, 17_997]);
    expect([...table.maxTenths.slice(0, 2), table.maxTenths[23]]).toEqual([-453, -443, 311]);
    expect(table.rangeTenths[0]).toBe(252);
    expect([table.sdTenths[2], table.sdTenths[3]]).toEqual([42, MISSING_SD]);
    expect([table.rainMm[4], table.rainMm[5]]).toEqual([1784, MISSING_RAIN]);
  });

  test('that is shipped has all stations, within its bounds on the disk, with its credit in it', () => {
    const file = new URL('../../../../src/climate/world/stations.bin', import.meta.url);
    expect(statSync(file).size).toBeLessThanOrEqual(300_000);
    expect(readFileSync(file).includes('Data basis: Deutscher Wetterdienst, own processing')).toBe(true);
    const table = climateTable();
    expect(table.count).toBe(2803);
    expect(table.labels).toHaveLength(2803);
    expect(new Set(table.labels.map((label) => label.slice(0, 5))).size).toBe(2803);
    for (let i = 0; i < table.count; i++) expect(stationAt(table, i).country).toMatch(/\w/);
  });

  test('is read once', () => {
    expect(climateTable()).toBe(climateTable());
  });
});
