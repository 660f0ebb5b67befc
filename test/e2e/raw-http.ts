import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { connect, type Socket } from 'node:net';
import { setTimeout as wait } from 'node:timers/promises';

/** A connection of its own, opened. */
export async function dial(address: string): Promise<Socket> {
  const { hostname, port } = new URL(address);
  const socket = connect(Number(port), hostname.replace(/^\[|\]$/g, ''));
  // What the other side breaks off is told by 'close'.
  socket.on('error', () => undefined);
  await once(socket, 'connect');
  return socket;
}

/** All that comes until the other side ends the connection, or the time is over [ms]. */
export async function heard(socket: Socket, forMs: number): Promise<string> {
  let text = '';
  socket.setEncoding('latin1').on('data', (piece: string) => {
    text += piece;
  });
  await Promise.race([once(socket, 'close'), wait(forMs)]);
  socket.destroy();
  return text;
}

/** What comes for these bytes, on a connection that is closed after it. */
export async function answerTo(address: string, bytes: string | Buffer, forMs = 10_000): Promise<string> {
  const socket = await dial(address);
  socket.write(bytes);
  return heard(socket, forMs);
}

/** The status of an answer as it came over the wire. */
export const statusOf = (answer: string): number => Number(/^HTTP\/1\.1 (\d{3}) /.exec(answer)?.[1] ?? 0);

/** A header of such an answer. */
export const headerOf = (answer: string, name: string): string | undefined =>
  new RegExp(`^${name}: (.*)\r$`, 'im').exec(answer.slice(0, answer.indexOf('\r\n\r\n') + 2))?.[1];

/** The body of such an answer, as JSON. */
export const bodyOf = (answer: string): Record<string, unknown> =>
  JSON.parse(answer.slice(answer.indexOf('\r\n\r\n') + 4)) as Record<string, unknown>;

const statusLine = (pid: number, name: string): number =>
  Number(new RegExp(`^${name}:\\s+(\\d+) kB$`, 'm').exec(readFileSync(`/proc/${pid}/status`, 'utf8'))![1]) / 1024;

/** The most memory that a process has had [MB]. */
export const peakOf = (pid: number): number => statusLine(pid, 'VmHWM');
/** The memory that a process has now [MB]. */
export const memoryOf = (pid: number): number => statusLine(pid, 'VmRSS');

/** The processor time that a process has had, of all its threads [ms]; Linux counts it in hundredths of a second. */
export function cpuOf(pid: number): number {
  const fields = readFileSync(`/proc/${pid}/stat`, 'utf8')
    .replace(/^.*\) /s, '')
    .split(' ');
  return (Number(fields[11]) + Number(fields[12])) * 10;
}
