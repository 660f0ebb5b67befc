/**
 * Makes `src/climate/world/stations.bin` from `climate/climat-stations.csv` of the open records beside the project:
 * `node --import tsx test/accuracy/make-climate-table.ts`.
 */
import { writeFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import { record } from './records.js';
import { stationTableBytes } from './station-table-bytes.js';

const FILE = new URL('../../src/climate/world/stations.bin', import.meta.url);

writeFileSync(FILE, stationTableBytes(parse(record('climate/climat-stations.csv'), { columns: true })));
