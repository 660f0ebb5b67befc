import { deflateRawSync, inflateRawSync } from 'node:zlib';
import { foldPast, unfoldPast } from '../answers/packed-past.js';
import type { PastSoil } from '../answers/past-soil.js';

/** Past soil in about a byte an hour, from which `unpackPastSoil` makes the same again, to the bit. */
export const packPastSoil = (past: PastSoil): Uint8Array => deflateRawSync(foldPast(past));

/** The past soil that was packed; null where an older or newer version packed it, and it has to be worked out anew. */
export const unpackPastSoil = (packed: Uint8Array): PastSoil | null => unfoldPast(inflateRawSync(packed));
