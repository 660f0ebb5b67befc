import { execFile } from 'node:child_process';
import { copyFile, mkdtemp, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { promisify } from 'node:util';
import { request } from 'undici';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { OPEN_OWNER } from '../../src/http/auth/owner.js';
import { exampleBed, examplePlace } from '../../src/http/question/examples.js';
import { openStore } from '../../src/storage/open-store.js';
import { addressOf, endOf, killAll, root, run } from './run-service.js';

const execute = promisify(execFile);
let folder: string;
let databaseUrl: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'backup-'));
});
afterEach(killAll);
afterAll(() => rm(folder, { recursive: true }));

const put = async (url: string, body: object): Promise<number> => {
  const headers = { 'content-type': 'application/json' };
  const { statusCode, body: answer } = await request(url, { method: 'PUT', headers, body: JSON.stringify(body) });
  await answer.dump();
  return statusCode;
};
const backUp = (...args: string[]) =>
  execute('npm', ['run', '--silent', 'backup', '--', ...args], {
    cwd: root,
    env: { PATH: process.env.PATH, DATABASE_URL: databaseUrl },
  });
const bedsIn = async (file: string): Promise<string[]> => {
  // Secrets in it are sealed with the key beside the first.
  await copyFile(join(folder, 'data.db.key'), `${file}.key`);
  const store = await openStore(`sqlite:${file}`);
  const beds = await store.beds(OPEN_OWNER, { limit: 1000 });
  await store.close();
  return beds.map(({ id }) => id);
};

test('a backup of a running service is whole, private, and as it was at one moment; ended, its file alone is whole', async () => {
  const file = join(folder, 'data.db');
  databaseUrl = `sqlite:${file}`;
  const service = run([], { DATABASE_URL: databaseUrl, RATE_LIMIT: '0' });
  const address = await addressOf(service);
  expect(await put(`${address}/v1/places/quillmere`, examplePlace)).toBe(201);
  const acknowledged: string[] = [];
  let isWriting = true;
  const writing = (async () => {
    for (let n = 1000; isWriting; n++) {
      expect(await put(`${address}/v1/beds/bed-${n}`, exampleBed)).toBe(201);
      acknowledged.push(`bed-${n}`);
      // An owner may keep 500 beds, which a fast machine would write before the copies are made.
      await setTimeout(20);
    }
  })();
  for (let n = 0; n < 3; n++) {
    const before = acknowledged.length;
    const copy = join(folder, `copy-${n}.db`);
    const { stdout } = await backUp(copy);
    expect(stdout).toContain(`${copy} is a whole copy`);
    expect(stdout).toContain(`the key in ${file}.key`);
    // Without that key it says what it needs, and changes nothing.
    await expect(openStore(`sqlite:${copy}`)).rejects.toThrow('sealed with another key');
    expect((await stat(copy)).mode & 0o777).toBe(0o600);
    await expect(stat(`${copy}.part`)).rejects.toThrow('ENOENT');
    const beds = await bedsIn(copy);
    expect(beds.length).toBeGreaterThanOrEqual(before);
    expect(beds).toEqual(acknowledged.slice(0, beds.length));
  }
  isWriting = false;
  await writing;
  service.child.kill('SIGTERM');
  expect(await endOf(service)).toBe(0);
  const alone = join(folder, 'alone.db');
  await copyFile(file, alone);
  expect(await bedsIn(alone)).toEqual(acknowledged);
});

test('a backup overwrites nothing, and says in a sentence why there is none', async () => {
  const there = join(folder, 'there.db');
  await writeFile(there, 'the year before');
  databaseUrl = `sqlite:${join(folder, 'small.db')}`;
  await (await openStore(databaseUrl)).close();
  const refused = async (args: string[], why: RegExp) =>
    expect(backUp(...args)).rejects.toMatchObject({ code: 1, stderr: expect.stringMatching(why) });
  await refused([there], /^There is no copy: .*there\.db is there already, and is not overwritten\.\n$/);
  expect(await readFile(there, 'utf8')).toBe('the year before');
  await refused([], /^Name the file .*\n$/);
  await refused([join(folder, 'no', 'such', 'folder.db')], /^There is no copy: .*\n$/);
  databaseUrl = `sqlite:${join(folder, 'missing.db')}`;
  await refused([join(folder, 'new.db')], /^There is no copy: there is no database file .*\n$/);
  await expect(stat(join(folder, 'missing.db'))).rejects.toThrow('ENOENT');
  databaseUrl = `sqlite:${there}`;
  await refused([join(folder, 'new.db')], /^There is no copy: file is not a database\.\n$/);
  await expect(stat(join(folder, 'new.db'))).rejects.toThrow('ENOENT');
  databaseUrl = 'postgres://nobody@127.0.0.1:1/none';
  await refused([join(folder, 'new.db')], /pg_dump/);
});

test('a service started on what is no database says so in one line', async () => {
  const broken = join(folder, 'broken.db');
  await writeFile(broken, 'Sow in March, under glass.\n'.repeat(500));
  const damaged = join(folder, 'damaged.db');
  const store = await openStore(`sqlite:${damaged}`);
  await store.close();
  const bytes = await readFile(damaged);
  await writeFile(damaged, Buffer.concat([bytes.subarray(0, 4096), Buffer.alloc(bytes.length - 4096, 7)]));
  for (const path of [folder, broken, damaged]) {
    const service = run([], { DATABASE_URL: `sqlite:${path}` });
    expect(await endOf(service)).toBe(1);
    expect(service.output()).toMatch(/^The database named by DATABASE_URL cannot be opened: [^\n]+\.\n$/);
  }
});
