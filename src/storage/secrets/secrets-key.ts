import { randomBytes } from 'node:crypto';
import { open, readFile } from 'node:fs/promises';
import { setTimeout } from 'node:timers/promises';

const KEY_BYTES = 32;
/** Time for another process to finish the file that it has just created [ms]. */
const WRITTEN_WITHIN_MS = 2000;
const NAP_MS = 50;

/** Path of the key file of an SQLite database. */
export const keyPathOf = (file: string): string => `${file}.key`;

/** The key in a file; undefined when the file is missing. @throws Error when it holds something else. */
export async function readKeyFile(path: string): Promise<Uint8Array | undefined> {
  for (let waitedMs = 0; ; waitedMs += NAP_MS) {
    const text = await readFile(path, 'utf8').catch((error: NodeJS.ErrnoException) => {
      if (error.code === 'ENOENT') return undefined;
      throw new Error(`the key file ${path} cannot be read: ${error.message}`);
    });
    if (text === undefined) return undefined;
    const key = Buffer.from(text.trim(), 'base64');
    if (key.length === KEY_BYTES) return key;
    if (waitedMs >= WRITTEN_WITHIN_MS)
      throw new Error(`the key file ${path} holds no key of ${KEY_BYTES} bytes in base64`);
    await setTimeout(NAP_MS);
  }
}

/** The key in a file that only its owner can read. A missing file is created, and is on disk once this resolves. */
export async function keyFromFile(path: string): Promise<Uint8Array> {
  const known = await readKeyFile(path);
  if (known) return known;
  const key = randomBytes(KEY_BYTES);
  const file = await open(path, 'wx', 0o600).catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'EEXIST') return undefined;
    throw new Error(`the key file ${path} cannot be made: ${error.message}`);
  });
  if (!file) return keyFromFile(path);
  try {
    await file.writeFile(`${key.toString('base64')}\n`);
    await file.sync();
  } finally {
    await file.close();
  }
  return key;
}
