/**
 * Keeps readings, tells and delivers messages, and fetches air, all at once and on and on until it is killed. Each line
 * that it writes is a JSON array: what has just been acknowledged, or sent, and which.
 */
import { addDays } from '../../src/basics/calendar.js';
import { openStore } from '../../src/storage/open-store.js';
import { batch } from './batches.js';
import { date, probe } from './make.js';

/** Shorter than the next writer takes to start, so that it is not kept out by a lease of the one before. */
const LEASE_MS = 20;

export interface Start {
  readonly url: string;
  readonly owner: string;
  /** How many batches of readings, and days of air, are kept. */
  readonly batches: number;
  readonly days: number;
}

export type Line =
  /** The nth is kept, and acknowledged. */
  | readonly ['batch' | 'told' | 'day', number]
  /** A message has reached its receiver; whether that is kept is not known. */
  | readonly ['sent', id: string, body: string]
  /** That it was delivered is kept. */
  | readonly ['delivered', id: string];

export const FIRST_DAY = date('1950-01-01');
/** The nth day of air; its values tell it. */
export const airDay = (n: number) => ({ date: addDays(FIRST_DAY, n), min: n / 8, mean: null, max: n });

const start = process.argv[2];
// The test imports what it checks by.
if (start?.startsWith('{')) await write(JSON.parse(start) as Start);

async function write({ url, owner, batches, days }: Start): Promise<void> {
  const store = await openStore(url);
  const say = (line: Line): void => void process.stdout.write(`${JSON.stringify(line)}\n`);

  async function keepReadings(): Promise<void> {
    for (let n = batches; ; n++) {
      await store.putReadings(owner, 'north', probe, batch(n));
      say(['batch', n]);
    }
  }

  async function tellAndDeliver(): Promise<void> {
    for (;;) {
      const nowMs = Date.now();
      const poll = await store.takePoll(owner, 'shed', nowMs, nowMs);
      const before = poll?.marks.get('north') ?? null;
      const n = before === null ? 0 : Number(before) + 1;
      const telling = { subject: 'north', before, mark: String(n), body: `message ${n}` };
      if (poll && (await store.addNotifications(owner, 'shed', [telling], String(n)))) say(['told', n]);
      for (;;) {
        const atMs = Date.now();
        const delivery = await store.leaseDelivery(owner, 'shed', atMs, atMs + LEASE_MS);
        if (!delivery) break;
        say(['sent', delivery.messageId, delivery.body]);
        const isKept = await store.endDelivery(owner, 'shed', delivery, { outcome: 'delivered', atMs });
        if (isKept) say(['delivered', delivery.messageId]);
      }
    }
  }

  async function fetchAir(): Promise<void> {
    for (let n = days; ; ) {
      const atMs = Date.now();
      const lease = await store.leaseSource(owner, 'quillmere', 0, atMs, atMs + LEASE_MS);
      if (!lease) continue;
      await store.putAir(owner, 'quillmere', [airDay(n)]);
      const known = {
        askedUrl: lease.source.url ?? '',
        etag: `"${n}"`,
        lastModified: null,
        notBeforeMs: null,
        days: null,
      };
      await store.endLease(owner, 'quillmere', lease.lease, { outcome: 'fetched', atMs, nextAtMs: atMs, ...known });
      say(['day', n++]);
    }
  }

  await Promise.all([keepReadings(), tellAndDeliver(), fetchAir()]);
}
