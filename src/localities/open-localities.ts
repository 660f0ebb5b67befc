import { readFile } from 'node:fs/promises';
import { type LocalityIndex, localityIndex } from './locality-index.js';

/** The towns of the world, and the time zone of any point. */
export interface Localities {
  readonly index: LocalityIndex;
  readonly zoneAt: (latitude: number, longitude: number) => string;
}

/** Reads an index file at the first question, once. */
export function openLocalities(file: URL): () => Promise<Localities> {
  let opened: Promise<Localities> | undefined;
  return () => {
    opened ??= readLocalities(file).catch((error) => {
      // The next question tries again.
      opened = undefined;
      throw error;
    });
    return opened;
  };
}

async function readLocalities(file: URL): Promise<Localities> {
  const [bytes, { default: zoneAt }] = await Promise.all([readFile(file), import('@photostructure/tz-lookup')]);
  return { index: localityIndex(bytes), zoneAt };
}
