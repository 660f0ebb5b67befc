import { execFileSync, spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';

// What is measured is what ships: the built code.
const built = (file: string): URL => new URL(`../../dist/${file}`, import.meta.url);
const { fileReader } = (await import(
  built('readings/read-file.js').href
)) as typeof import('../../src/readings/read-file.js');
const { noHints } = (await import(
  built('readings/text/rows-read.js').href
)) as typeof import('../../src/readings/text/rows-read.js');
const { findZone } = (await import(built('basics/calendar.js').href)) as typeof import('../../src/basics/calendar.js');

const ROUNDS = 5;
const YEAR_OF_MINUTES = 525_600;
const PIECE_BYTES = 65_536;
const BIG_BYTES = 256 * 1024 * 1024 - 1000;
const PORT = 20_000 + (process.pid % 20_000);
/** Two ways to write the same rows: the plainest, and the one with most traps. */
interface Dialect {
  readonly name: string;
  readonly header: string;
  readonly row: (at: string, tempC: string) => string;
  readonly pandas: string;
  readonly format: string;
}
const dialects: readonly Dialect[] = [
  {
    name: 'ISO stamps, commas',
    header: 'time,soil temperature 5 cm (°C)\n',
    row: (at, tempC) => `${at.slice(0, 10)} ${at.slice(11, 16)},${tempC}\n`,
    pandas: 'sep=","',
    format: '%Y-%m-%d %H:%M',
  },
  {
    name: 'day first, semicolons, decimal commas',
    header: 'time;soil temperature 5 cm (°C)\n',
    row: (at, tempC) =>
      `${at.slice(8, 10)}.${at.slice(5, 7)}.${at.slice(0, 4)} ${at.slice(11, 19)};${tempC.replace('.', ',')}\n`,
    pandas: 'sep=";", decimal=","',
    format: '%d.%m.%Y %H:%M:%S',
  },
];
const [plain] = dialects as [Dialect];

/** One-minute rows from a start, with a day's swing and a year's. */
function rowsOf(from: number, count: number, { row }: Dialect = plain): string {
  const rows: string[] = [];
  for (let minute = from; minute < from + count; minute++) {
    const at = new Date(Date.UTC(2005, 0, 1) + minute * 60_000).toISOString();
    const tempC =
      12 - 8 * Math.cos((2 * Math.PI * minute) / YEAR_OF_MINUTES) + 4 * Math.sin((2 * Math.PI * (minute - 540)) / 1440);
    rows.push(row(at, tempC.toFixed(2)));
  }
  return rows.join('');
}

const median = (values: number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1]!;

/** CPU time so far, of all threads [ms]: on a shared machine the clock on the wall says nothing. */
function cpuMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** CPU milliseconds to read, understand and fold a file to days. */
function readMs(bytes: Buffer): number {
  const before = cpuMs();
  const reader = fileReader({ ...noHints, medium: 'soil' }, findZone('Etc/GMT+2'));
  for (let at = 0; at < bytes.length; at += PIECE_BYTES) reader.push(bytes.subarray(at, at + PIECE_BYTES));
  const rest = reader.finish();
  let next = rest.next();
  while (!next.done) next = rest.next();
  if (next.value.series.days.length < 365) throw new Error('the file was not understood');
  return cpuMs() - before;
}

const pandasScript = ({ pandas, format }: Dialect): string => `
import sys, time
import pandas
times = []
for _ in range(${ROUNDS}):
    before = time.process_time()
    frame = pandas.read_csv(sys.argv[1], engine="c", ${pandas})
    frame["time"] = pandas.to_datetime(frame["time"], format="${format}")
    days = frame.set_index("time").resample("D").agg(["min", "mean", "max"])
    times.append(1000 * (time.process_time() - before))
print(sorted(times)[${ROUNDS} // 2])
`;

/** The same of pandas, with an explicit date format and its C engine; undefined where it is not installed. */
function pandasMs(path: string, dialect: Dialect): number | undefined {
  for (const python of ['python3', '/usr/bin/python3']) {
    try {
      const said = execFileSync(python, ['-c', pandasScript(dialect), path], { stdio: ['ignore', 'pipe', 'ignore'] });
      return Number(said);
    } catch {}
  }
  return undefined;
}

async function* bigFile(): AsyncGenerator<Buffer> {
  yield Buffer.from(plain.header);
  let sent = 0;
  for (let minute = 0; ; minute += 20_000) {
    const piece = Buffer.from(rowsOf(minute, 20_000));
    if (sent + piece.length > BIG_BYTES) return;
    sent += piece.length;
    yield piece;
  }
}

/** Sends 256 MB to a running service, and asks it for other things meanwhile. */
async function underLoad(): Promise<{ seconds: number; peakMB: number; p99Ms: number; asked: number; used: number }> {
  const child = spawn(process.execPath, [built('main.js').pathname], {
    env: { ...process.env, PORT: String(PORT), LOG_LEVEL: 'warn', DATABASE_URL: 'sqlite::memory:', RATE_LIMIT: '0' },
    stdio: 'ignore',
  });
  const base = `http://127.0.0.1:${PORT}`;
  try {
    for (let tries = 0; tries < 100; tries++) {
      if (
        await fetch(`${base}/readyz`).then(
          (one) => one.ok,
          () => false,
        )
      )
        break;
      await new Promise((done) => setTimeout(done, 50));
    }
    const pieces: Buffer[] = [];
    for await (const piece of bigFile()) pieces.push(piece);
    const waits: number[] = [];
    let isReading = true;
    const asking = (async () => {
      while (isReading) {
        const before = performance.now();
        await (await fetch(`${base}/v1/crops/lettuce`)).arrayBuffer();
        waits.push(performance.now() - before);
        await new Promise((done) => setTimeout(done, 10));
      }
    })();
    const before = performance.now();
    const answer = await fetch(`${base}/v1/readings/check?medium=soil&timeZone=Etc/GMT%2B2`, {
      method: 'POST',
      headers: { 'content-type': 'text/csv' },
      body: Readable.toWeb(Readable.from(pieces)) as ReadableStream,
      duplex: 'half',
    } as RequestInit);
    const text = await answer.text();
    const seconds = (performance.now() - before) / 1000;
    isReading = false;
    await asking;
    if (!answer.ok) throw new Error(text.slice(0, 500));
    const status = readFileSync(`/proc/${child.pid}/status`, 'utf8');
    waits.sort((a, b) => a - b);
    return {
      seconds,
      peakMB: Number(/VmHWM:\s+(\d+)/.exec(status)![1]) / 1024,
      p99Ms: waits[Math.floor(0.99 * waits.length)]!,
      asked: waits.length,
      used: (JSON.parse(text) as { used: number }).used,
    };
  } finally {
    child.kill();
  }
}

const folder = mkdtempSync(join(tmpdir(), 'readings-'));
try {
  for (const dialect of dialects) {
    const year = Buffer.from(dialect.header + rowsOf(0, YEAR_OF_MINUTES, dialect));
    const path = join(folder, 'year.csv');
    writeFileSync(path, year);
    readMs(year);
    const ours = median(Array.from({ length: ROUNDS }, () => readMs(year)));
    console.log(
      `525,600 rows (${dialect.name}) read, understood and folded to days: ${ours.toFixed(0)} ms of CPU time`,
    );
    const theirs = pandasMs(path, dialect);
    console.log(
      theirs === undefined
        ? '  pandas is not installed here: no comparison (Debian: python3-pandas)'
        : `  pandas reads and resamples the same file in ${theirs.toFixed(0)} ms: ours takes ${(ours / theirs).toFixed(2)} of that`,
    );
  }
  const year = Buffer.from(plain.header + rowsOf(0, YEAR_OF_MINUTES));
  const decade = Buffer.from(plain.header + rowsOf(0, 10 * YEAR_OF_MINUTES));
  const [years, decades]: [number[], number[]] = [[], []];
  for (let round = 0; round < ROUNDS; round++) {
    years.push(readMs(year));
    decades.push(readMs(decade));
  }
  console.log(`ten times the rows take ${(median(decades) / median(years)).toFixed(1)} times as long`);
} finally {
  rmSync(folder, { recursive: true });
}
const { seconds, peakMB, p99Ms, asked, used } = await underLoad();
console.log(
  `256 MB (${used} rows) over HTTP: ${seconds.toFixed(1)} s, at most ${peakMB.toFixed(0)} MB of memory; meanwhile ${asked} other requests, 99 of 100 within ${p99Ms.toFixed(0)} ms`,
);
