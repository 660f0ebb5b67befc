import { readFileSync } from 'node:fs';
import { decodeStationTable, type StationTable } from './climate/world/station-table.js';

/** The build copies the file, so that it lies at the same place beside the sources and beside the bundle. */
const FILE = new URL('./climate/world/stations.bin', import.meta.url);

let table: StationTable | undefined;

/** The table of the world's climate stations; read when it is first asked for. */
export function climateTable(): StationTable {
  // A copy of its own begins at an even offset; a small file's buffer may lie anywhere in a shared one.
  table ??= decodeStationTable(new Uint8Array(readFileSync(FILE)));
  return table;
}
