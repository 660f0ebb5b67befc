import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { Client } from 'undici';

const CLOCK_TICKS_A_SECOND = 100;
const READY_WITHIN_MS = 30_000;

/** A server in a process of its own, and what that process costs. */
export interface Beside {
  readonly address: string;
  /** User and system time of all its threads so far [ms], in steps of 10 ms. */
  cpuMs(): number;
  /** The same of its main thread alone, which answers requests [ms]. */
  mainMs(): number;
  /** What it has handed to the system to be written, to files and connections [bytes]. */
  writtenBytes(): number;
  /** Resident memory [MB]. */
  memoryMB(): number;
  ask(asked: Asked): Promise<Got>;
  stop(): Promise<void>;
}

export interface Asked {
  readonly method?: 'GET' | 'PUT' | 'POST';
  readonly path: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string | Uint8Array | object;
  /** The status that the answer must have: a refusal is never measured in an answer's place. */
  readonly status?: number;
  /** The fewest bytes that the answer must have. */
  readonly leastBytes?: number;
}

export interface Got {
  readonly status: number;
  readonly text: string;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
}

/** Starts a script of Node.js and waits for the address in what it writes. Its output is read and dropped afterwards. */
export async function startBeside(args: readonly string[], environment: Record<string, string>): Promise<Beside> {
  const root = new URL('../../', import.meta.url);
  const child = spawn(process.execPath, args, {
    cwd: root,
    env: { PATH: process.env.PATH, PORT: '0', ...environment },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  // A bench that fails leaves nothing running.
  const end = (): void => void child.kill('SIGKILL');
  process.once('exit', end);
  child.once('exit', () => process.off('exit', end));
  const address = await addressOf(child);
  const client = new Client(address, { pipelining: 1, headersTimeout: 120_000, bodyTimeout: 120_000 });
  const statusOf = (field: string): number =>
    Number(new RegExp(`^${field}:\\s+(\\d+)`, 'm').exec(readFileSync(`/proc/${child.pid}/status`, 'utf8'))![1]);
  return {
    address,
    cpuMs: () => cpuMsIn(`/proc/${child.pid}/stat`),
    mainMs: () => cpuMsIn(`/proc/${child.pid}/task/${child.pid}/stat`),
    writtenBytes: () => Number(/^wchar: (\d+)/m.exec(readFileSync(`/proc/${child.pid}/io`, 'utf8'))![1]),
    memoryMB: () => statusOf('VmRSS') / 1024,
    async ask({ method = 'GET', path, headers = {}, body, status = 200, leastBytes = 0 }) {
      const isJson = typeof body === 'object' && !(body instanceof Uint8Array);
      const answer = await client.request({
        method,
        path,
        headers: { ...(isJson ? { 'content-type': 'application/json' } : {}), ...headers },
        body: isJson ? JSON.stringify(body) : (body ?? null),
      });
      const text = await answer.body.text();
      if (answer.statusCode !== status || text.length < leastBytes) {
        throw new Error(`${method} ${path}: ${answer.statusCode}, ${text.length} characters: ${text.slice(0, 200)}`);
      }
      return { status: answer.statusCode, text, headers: answer.headers };
    },
    async stop() {
      await client.close();
      if (child.exitCode !== null) return;
      child.kill('SIGTERM');
      await once(child, 'exit');
    },
  };
}

function cpuMsIn(file: string): number {
  const stat = readFileSync(file, 'utf8');
  // The name of the command stands in brackets and may hold blanks.
  const [userTicks, systemTicks] = stat
    .slice(stat.lastIndexOf(')') + 2)
    .split(' ')
    .slice(11, 13);
  return ((Number(userTicks) + Number(systemTicks)) * 1000) / CLOCK_TICKS_A_SECOND;
}

async function addressOf(child: ChildProcess): Promise<string> {
  const signal = AbortSignal.timeout(READY_WITHIN_MS);
  let written = '';
  for (;;) {
    const [piece] = (await once(child.stdout!, 'data', { signal })) as [Buffer];
    written += piece;
    const address = /http:\/\/[\d.:]+\d/.exec(written)?.[0];
    if (!address) continue;
    child.stdout!.resume();
    return address;
  }
}
