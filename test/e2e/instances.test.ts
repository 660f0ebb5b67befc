import { once } from 'node:events';
import { request } from 'undici';
import { afterEach, describe, expect, it } from 'vitest';
import { type EmptyDatabase, emptyPostgres, emptySqlite, postgresServer } from '../storage/databases.js';
import { addressOf, killAll, run } from './run-service.js';

const INSTANCES = 3;
const BATCHES = 30;
const EVERY = 20;
const START_MS = Date.parse('2027-05-01T06:00Z');

const quillmere = { name: 'Quillmere Allotment Society', latitude: 44, longitude: -30, timeZone: 'Etc/GMT+2' };
const bed = (name: string) => ({ place: 'quillmere', name, kind: 'raised-bed' });

interface Reading {
  readonly at: string;
  readonly value: number;
}

/** The minutes of a batch, which lie between those of all others, so that every write meets the rest on one day. */
const batch = (n: number): Reading[] =>
  Array.from({ length: EVERY }, (_, i) => n + i * BATCHES).map((minute) => ({
    at: new Date(START_MS + minute * 60_000).toISOString(),
    value: Math.round(150 + 50 * Math.sin(minute / 100)) / 10,
  }));

const batches = Array.from({ length: BATCHES }, (_, n) => n);
const allReadings = batches.flatMap(batch).sort((a, b) => a.at.localeCompare(b.at));

async function ask(
  address: string,
  method: 'GET' | 'PUT' | 'POST',
  path: string,
  body?: object,
  headers: Record<string, string> = {},
) {
  const answer = await request(address + path, {
    method,
    headers: { ...headers, ...(body && { 'content-type': 'application/json' }) },
    ...(body && { body: JSON.stringify(body) }),
  });
  return { status: answer.statusCode, headers: answer.headers, body: (await answer.body.json()) as never };
}

const post = (address: string, n: number, id = 'north') =>
  ask(address, 'POST', `/v1/beds/${id}/readings`, { medium: 'soil', probeDepthCm: 5, readings: batch(n) });

/** What an instance knows of a bed. */
async function readingsOf(address: string, id = 'north'): Promise<Reading[]> {
  const { body } = await ask(address, 'GET', `/v1/beds/${id}/readings`);
  const [series] = (body as { series: { readings: Reading[] }[] }).series;
  return (series?.readings ?? []).map(({ at, value }) => ({ at: new Date(at).toISOString(), value }));
}

function several(kind: string, emptyDatabase: () => Promise<EmptyDatabase>): void {
  describe(`${INSTANCES} instances over one ${kind}`, () => {
    let database: EmptyDatabase;
    afterEach(async () => {
      killAll();
      await database?.remove();
    });

    /** All started at once over an empty database, which holds a place and a bed then. */
    async function start() {
      database = await emptyDatabase();
      const instances = Array.from({ length: INSTANCES }, () => run([], { DATABASE_URL: database.url }));
      const addresses = await Promise.all(instances.map(addressOf));
      const at = (n: number): string => addresses[n % INSTANCES]!;
      expect((await ask(at(0), 'PUT', '/v1/places/quillmere', quillmere)).status).toBe(201);
      expect((await ask(at(1), 'PUT', '/v1/beds/north', bed('North bed'))).status).toBe(201);
      return { instances, addresses, at };
    }

    it('lose nothing that is written at once, and all of them read the same', async () => {
      const { addresses, at } = await start();
      const answers = await Promise.all(
        batches.flatMap((n) => [
          post(at(n), n).then(({ status, body }) => ({ status, ...(body as object) })),
          ask(at(n + 1), 'PUT', `/v1/beds/bed-${n}`, bed(`Bed ${n}`)).then(({ status }) => ({ status })),
          ask(at(n + 2), 'GET', '/v1/beds/north/readings').then(({ status }) => ({ status })),
        ]),
      );
      expect(answers.map(({ status }) => status)).toEqual(batches.flatMap(() => [200, 201, 200]));
      for (const posted of answers.filter((_, i) => i % 3 === 0)) {
        expect(posted).toMatchObject({ added: EVERY, unchanged: 0, replaced: 0 });
      }
      for (const address of addresses) {
        expect(await readingsOf(address)).toEqual(allReadings);
        const { beds } = (await ask(address, 'GET', '/v1/beds')).body as { beds: { id: string }[] };
        expect(beds).toHaveLength(BATCHES + 1);
      }
      const again = await Promise.all(batches.map((n) => post(at(n + 1), n)));
      for (const { body } of again) expect(body).toMatchObject({ added: 0, unchanged: EVERY, replaced: 0 });
    });

    it('let one of those change a bed who all saw it in the same state', async () => {
      const { addresses } = await start();
      const tag = (await ask(addresses[0]!, 'GET', '/v1/beds/north')).headers.etag as string;
      const changes = await Promise.all(
        addresses.map((address, i) => ask(address, 'PUT', '/v1/beds/north', bed(`Bed of ${i}`), { 'if-match': tag })),
      );
      expect(changes.map(({ status }) => status).sort()).toEqual([200, 412, 412]);
      const winner = changes.findIndex(({ status }) => status === 200);
      for (const address of addresses) {
        expect((await ask(address, 'GET', '/v1/beds/north')).body).toMatchObject({ name: `Bed of ${winner}` });
      }
    });

    it('go on where one of them is killed, and still have what it acknowledged', async () => {
      const { instances, at } = await start();
      const acknowledged: number[] = [];
      const writing = Promise.allSettled(
        batches.map(async (n) => {
          if ((await post(at(n), n)).status === 200) acknowledged.push(n);
        }),
      );
      while (!acknowledged.some((n) => n % INSTANCES === 0)) await new Promise((done) => setTimeout(done, 1));
      instances[0]!.child.kill('SIGKILL');
      await once(instances[0]!.child, 'exit');
      await writing;
      // A new one in its place, started over the same database, knows all of it.
      const successor = await addressOf(run([], { DATABASE_URL: database.url }));
      const kept = new Set((await readingsOf(successor)).map(({ at }) => at));
      for (const n of acknowledged) expect(batch(n).filter(({ at }) => !kept.has(at))).toEqual([]);
      expect(batches.filter((n) => n % INSTANCES !== 0 && !acknowledged.includes(n))).toEqual([]);
      for (const n of batches) await post(successor, n);
      expect(await readingsOf(at(1))).toEqual(allReadings);
    });
  });
}

several('SQLite file', emptySqlite);
if (postgresServer) several('PostgreSQL', () => emptyPostgres(postgresServer!));
else
  describe('several instances over one PostgreSQL', () =>
    it.skipIf(!process.env.CI)('are tested where TEST_DATABASE_URL says on which server', () =>
      expect(postgresServer).toBeDefined(),
    ));
