import { MISSING_RAIN, MISSING_SD } from '../../src/climate/world/station-table.js';

/** The licence, CC BY 4.0, asks for it where data were changed. */
const CREDIT = 'Data basis: Deutscher Wetterdienst, own processing';
const MONTHS = Array.from({ length: 12 }, (_, month) => month + 1);

/** Rows of the table of climate stations, as text cells, in the bytes that `decodeStationTable` reads. */
export function stationTableBytes(rows: readonly Readonly<Record<string, string>>[]): Buffer {
  const countries = [...new Set(rows.map(({ country }) => country!))].sort();
  const tenths = (cell: string): number => Math.round(Number(cell) * 10);
  const monthly = (one: (row: Readonly<Record<string, string>>, month: number) => number): number[] =>
    rows.flatMap((row) => MONTHS.map((month) => one(row, month)));
  const orMissing = (cell: string, missing: number, value: (cell: string) => number): number =>
    cell === '' ? missing : value(cell);
  const int16 = [
    rows.length,
    ...rows.map(({ latitude }) => Math.round(Number(latitude) * 100)),
    ...rows.map(({ longitude }) => Math.round(Number(longitude) * 100)),
    ...rows.map(({ elevation_m }) => Number(elevation_m)),
    ...monthly((row, month) => tenths(row[`tmax_${month}`]!)),
    ...monthly((row, month) => orMissing(row[`rain_mm_${month}`]!, MISSING_RAIN, Number)),
  ];
  const uint8 = [
    ...monthly((row, month) => tenths(row[`tmax_${month}`]!) - tenths(row[`tmin_${month}`]!)),
    ...monthly((row, month) => orMissing(row[`sd_${month}`]!, MISSING_SD, tenths)),
    ...rows.map(({ country }) => countries.indexOf(country!)),
  ];
  const text = [CREDIT, countries.join('\t'), ...rows.map(({ wmo, name }) => `${wmo}${name}`)].join('\n');
  const cells = Buffer.alloc(2 * int16.length);
  int16.forEach((cell, i) => {
    cells.writeInt16LE(cell, 2 * i);
  });
  return Buffer.concat([cells, Buffer.from(uint8), Buffer.from(text)]);
}
