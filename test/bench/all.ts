/** Every bench, one after another, each to its end: one that is over its limit keeps none from being told. */
import { spawnSync } from 'node:child_process';

for (const name of ['files', 'soil', 'windows', 'forecast', 'bench', 'storage', 'targets']) {
  const script = new URL(`${name}.ts`, import.meta.url).pathname;
  const { status } = spawnSync(process.execPath, ['--import', 'tsx', script, ...process.argv.slice(2)], {
    stdio: 'inherit',
  });
  if (status !== 0) process.exitCode = 1;
}
