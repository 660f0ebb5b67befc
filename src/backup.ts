import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import { configSchema } from './config.js';
import { sqlitePath } from './storage/database-url.js';
import { keyPathOf } from './storage/secrets/secrets-key.js';
import { backUp } from './storage/sqlite/back-up.js';

const [name] = process.argv.slice(2);
const { DATABASE_URL, INIT_CWD = '.' } = process.env;
const configured = configSchema.pick({ DATABASE_URL: true }).safeParse(DATABASE_URL ? { DATABASE_URL } : {});

if (!name) end('Name the file to write the copy to: npm run backup -- garden-backup.db');
if (!configured.success) end('DATABASE_URL must be sqlite: and the path of a file, or postgres:// and an address.');
try {
  // npm changes to the folder of package.json and passes the caller's folder as INIT_CWD.
  const file = resolve(INIT_CWD, name);
  const bytes = backUp(configured.data.DATABASE_URL, file);
  process.stdout.write(`${file} is a whole copy of the database (${Math.ceil(bytes / 1024)} kB).\n`);
  const keyFile = keyPathOf(sqlitePath(configured.data.DATABASE_URL) ?? '');
  if (existsSync(keyFile)) {
    process.stdout.write(`It opens only with the key in ${keyFile}: keep a copy of that file too, in another place.\n`);
  }
} catch (error) {
  end(`There is no copy: ${(error as Error).message}.`);
}

function end(sentence: string): never {
  process.stderr.write(`${sentence}\n`);
  process.exit(1);
}
