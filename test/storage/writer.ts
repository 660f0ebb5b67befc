/**
 * Writes on and on until it is killed: `node --import tsx writer.ts ADDRESS OWNER FROM`.
 * Line after line it says up to which batch all is acknowledged.
 */
import { openStore } from '../../src/storage/open-store.js';
import { batch } from './batches.js';
import { probe } from './make.js';

const [, , address, owner, from] = process.argv;
const store = await openStore(address!);
for (let n = Number(from); ; n++) {
  await store.putReadings(owner!, 'north', probe, batch(n));
  process.stdout.write(`${n}\n`);
}
