/**
 * Runs a command beside a PostgreSQL of its own, which TEST_DATABASE_URL names to it:
 * `node --import tsx with-postgres.ts COMMAND ARGUMENT...`. Fails where PostgreSQL is not installed.
 */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { freePort } from './free-port.js';
import { ownPostgres } from './own-postgres.js';

const [command, ...args] = process.argv.slice(2);
const server = await ownPostgres(await freePort());
if (!server) throw new Error('PostgreSQL is not installed');
try {
  const env = { ...process.env, TEST_DATABASE_URL: server.url };
  const [status] = await once(spawn(command!, args, { stdio: 'inherit', env }), 'close');
  process.exitCode = status ?? 1;
} finally {
  await server.remove();
}
