import { execFile } from 'node:child_process';
import { chown, mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';

const run = promisify(execFile);
const PROGRAMS = '/usr/lib/postgresql';

/** A PostgreSQL that a test may start, stop and kill. */
export interface OwnPostgres {
  readonly url: string;
  /** Its folder, owned by the user it runs as. */
  readonly folder: string;
  start(): Promise<void>;
  /** Ends it at once, as a crash does: it has to recover at its next start. */
  crash(): Promise<void>;
  remove(): Promise<void>;
}

/** A server of one's own on a free port; undefined where its programs are not installed. */
export async function ownPostgres(port: number): Promise<OwnPostgres | undefined> {
  const versions = await readdir(PROGRAMS).catch(() => []);
  if (versions.length === 0) return undefined;
  const programs = join(PROGRAMS, versions.sort().at(-1)!, 'bin');
  const folder = await mkdtemp(join(tmpdir(), 'own-postgres-'));
  const data = join(folder, 'data');
  // It refuses to run as root; Debian's package brings a user for it.
  const isRoot = process.getuid?.() === 0;
  const say = (command: string) => (isRoot ? run('su', ['postgres', '-c', command]) : run('sh', ['-c', command]));
  if (isRoot) {
    const { stdout } = await run('id', ['-u', 'postgres']);
    await chown(folder, Number(stdout), -1);
  }
  await say(`${programs}/initdb -D ${data} -A trust -U postgres -E UTF8 --locale=C.UTF-8`);
  const options = `-p ${port} -k ${folder} -c listen_addresses=127.0.0.1`;
  const own: OwnPostgres = {
    url: `postgres://postgres@127.0.0.1:${port}/postgres`,
    folder,
    start: async () => void (await say(`${programs}/pg_ctl -D ${data} -o "${options}" -l ${folder}/log -w start`)),
    async crash() {
      const pid = Number((await readFile(join(data, 'postmaster.pid'), 'utf8')).split('\n')[0]);
      process.kill(pid, 'SIGKILL');
      // Its children notice, and let go of the data before it can be started again.
      await say(`${programs}/pg_ctl -D ${data} status`).catch(() => {});
    },
    async remove() {
      await say(`${programs}/pg_ctl -D ${data} -m immediate -w stop`).catch(() => {});
      await rm(folder, { recursive: true });
    },
  };
  await own.start();
  return own;
}
