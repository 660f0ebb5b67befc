import { deserialize, serialize } from 'node:v8';
import type { PastSoil } from '../answers/past-soil.js';

/** Past soil as bytes, for another thread or another process of the same program. */
export const packPastSoil = (past: PastSoil): Uint8Array => serialize(past);

/** Past soil from the bytes that `packPastSoil` made. @throws where they are none. */
export const unpackPastSoil = (bytes: Uint8Array): PastSoil => deserialize(bytes) as PastSoil;
