import { mkdirSync, writeFileSync } from 'node:fs';

/** Where the report's tables are kept, beside being printed; not part of the project. */
const FOLDER = new URL('../../accuracy-report/', import.meta.url);

/** Prints a table of the accuracy report, and keeps it under a name. */
export function tell(name: string, title: string, text: string): void {
  mkdirSync(FOLDER, { recursive: true });
  writeFileSync(new URL(`${name}.txt`, FOLDER), `${title}\n\n${text}\n`);
  console.log(`\n${title}\n\n${text}`);
}
