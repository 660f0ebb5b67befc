import { readFileSync } from 'node:fs';
import { LRUCache } from 'lru-cache';
import { type ClimateOf, lastTypicalYear } from './answers/climate/climate-of.js';
import { type TableClimate, tableClimate } from './answers/climate/table-climate.js';
import { decodeStationTable, type StationTable } from './climate/world/station-table.js';

/** The build copies the file, so that it lies at the same place beside the sources and beside the bundle. */
const FILE = new URL('./climate/world/stations.bin', import.meta.url);
/** Places whose typical years stay at hand: thirty years of days take 2 MB. */
const PLACES = 8;

let table: StationTable | undefined;

/** The table of the world's climate stations; read when it is first asked for. */
export function climateTable(): StationTable {
  // A copy of its own begins at an even offset; a small file's buffer may lie anywhere in a shared one.
  table ??= decodeStationTable(new Uint8Array(readFileSync(FILE)));
  return table;
}

/** Finds the climate of places from the table; the last ones stay at hand. */
export function climateFromTable(): ClimateOf {
  const climates = new LRUCache<string, TableClimate>({ max: PLACES });
  return ({ zone, ownAir = null, ...place }, today) => {
    const lastYear = lastTypicalYear(today);
    // Whoever keeps the air remembers its climate too.
    if (ownAir) return tableClimate(climateTable(), { ...place, zone, ownAir }, lastYear);
    const key = JSON.stringify([place, zone.name, lastYear]);
    const found = climates.get(key) ?? tableClimate(climateTable(), { ...place, zone }, lastYear);
    climates.set(key, found);
    return found;
  };
}
