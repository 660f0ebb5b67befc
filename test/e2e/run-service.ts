import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';

export const root = new URL('../../', import.meta.url);
const children: ChildProcess[] = [];

/** A process of the built service, and all that it has written. */
export interface Run {
  readonly child: ChildProcess;
  output(): string;
}

export function run(args: readonly string[], environment: Record<string, string>): Run {
  const child = spawn(process.execPath, ['dist/main.js', ...args], {
    cwd: root,
    env: { PATH: process.env.PATH, PORT: '0', DATABASE_URL: 'sqlite::memory:', ...environment },
  });
  children.push(child);
  let output = '';
  child.stdout.on('data', (chunk) => (output += chunk));
  child.stderr.on('data', (chunk) => (output += chunk));
  return { child, output: () => output };
}

/** Waits until the process has written something that matches. */
export async function written({ child, output }: Run, pattern: RegExp): Promise<RegExpExecArray> {
  for (;;) {
    const match = pattern.exec(output());
    if (match) return match;
    if (child.exitCode !== null) throw new Error(`ended with ${child.exitCode}: ${output()}`);
    const heard = new AbortController();
    const { signal } = heard;
    const next = [
      once(child.stdout!, 'data', { signal }),
      once(child.stderr!, 'data', { signal }),
      once(child, 'exit', { signal }),
    ];
    await Promise.race(next);
    heard.abort();
    await Promise.allSettled(next);
  }
}

export const addressOf = async (one: Run): Promise<string> => (await written(one, /(http:\/\/[\d.:]+\d)/))[1]!;

export async function endOf({ child }: Run): Promise<number | null> {
  if (child.exitCode === null) await once(child, 'exit');
  return child.exitCode;
}

/** Ends all that were started. */
export function killAll(): void {
  for (const child of children.splice(0)) child.kill('SIGKILL');
}
