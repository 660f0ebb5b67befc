import { existsSync, readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';

/** Open records beside the project, which holds none of them; RECORDS names another folder of the same make. */
const FOLDER = process.env.RECORDS
  ? new URL(`${pathToFileURL(process.env.RECORDS).href}/`)
  : new URL('../../../shared/data/', import.meta.url);

export const hasRecords = existsSync(FOLDER);
if (!hasRecords) console.log('skipped: there are no open records (set RECORDS to their folder, else ../shared/data)');

export const record = (path: string): Buffer => readFileSync(new URL(path, FOLDER));

/** Rows of a table with a header line, by column. */
export function tableOf(path: string): Record<string, string>[] {
  const [header, ...rows] = record(path).toString().trim().split('\n');
  const names = header!.split(',');
  return rows.map((row) => Object.fromEntries(row.split(',').map((cell, i) => [names[i]!, cell])));
}
