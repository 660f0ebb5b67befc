/**
 * Moves the numbers that decide, one after another, and reports those whose move no test notices.
 *
 * `--sample=N` takes N of them by the date, others each day; `--only=TEXT` those whose file or name holds it; `--json=FILE`
 * writes the results in the form of a run of tests. It works in a copy of the tree.
 */
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { createVitest, type Vitest } from 'vitest/node';
import { type MutatedFile, type Mutation, mutationsOf } from './mutate.js';
import { mutatedFiles } from './mutated-files.js';

interface Planned extends Mutation {
  readonly tests: readonly string[];
  /** Why it may survive; undefined: it may not. */
  readonly reason: string | undefined;
}

const ROOT = new URL('../../', import.meta.url).pathname;
const DAY_MS = 86_400_000;

const plan = (mutated: MutatedFile): Planned[] => {
  const mutations = mutationsOf(mutated, readFileSync(join(ROOT, mutated.file), 'utf8'));
  const strange = Object.keys(mutated.survives ?? {}).find((name) => mutations.every((one) => one.name !== name));
  if (strange) throw new Error(`${mutated.file} has no mutation "${strange}" that could survive`);
  return mutations.map((one) => ({ ...one, tests: mutated.tests, reason: mutated.survives?.[one.name] }));
};

/** So many of a list, other ones each day, each as often as the others. */
function sampleOfDay<T>(all: readonly T[], size: number): T[] {
  const rounds = Math.ceil(all.length / size);
  const round = Math.floor(Date.now() / DAY_MS) % rounds;
  return all.filter((_, i) => i % rounds === round);
}

function copyOfTree(): string {
  const copy = mkdtempSync(join(tmpdir(), 'mutations-'));
  for (const name of [
    'src',
    'test',
    'fixtures',
    'package.json',
    'tsconfig.json',
    'README.md',
    'DEVELOPERS.md',
    '.ci',
  ]) {
    cpSync(join(ROOT, name), join(copy, name), { recursive: true });
  }
  symlinkSync(join(ROOT, 'node_modules'), join(copy, 'node_modules'));
  return copy;
}

/** The first test that fails, and why; null: none does. */
async function failingOf(vitest: Vitest, copy: string, tests: readonly string[]): Promise<string | null> {
  for (const test of tests) {
    const path = join(copy, test);
    const specifications = vitest.getModuleSpecifications(path);
    if (specifications.length === 0) throw new Error(`there is no test file ${test}`);
    const { testModules } = await vitest.runTestSpecifications(specifications);
    // Those of earlier runs are among them.
    const ran = testModules.find(({ moduleId }) => moduleId === path);
    if (!ran) throw new Error(`${test} did not run`);
    if (ran.ok()) continue;
    const [failed] = ran.children.allTests('failed');
    const why = failed?.result().errors?.[0]?.message ?? ran.errors()[0]?.message ?? '';
    return `${test} "${failed?.fullName ?? ''}": ${why.split('\n', 1)[0]!.slice(0, 150)}`;
  }
  return null;
}

const { values } = parseArgs({
  options: { sample: { type: 'string' }, only: { type: 'string' }, json: { type: 'string' } },
});
const all = mutatedFiles.flatMap(plan);
const asked = all.filter(({ file, name }) => `${file} ${name}`.includes(values.only ?? ''));
const chosen = values.sample ? sampleOfDay(asked, Number(values.sample)) : asked;
const copy = copyOfTree();
const vitest = await createVitest('test', {
  root: copy,
  config: join(copy, 'test/vitest.config.ts'),
  project: ['unit'],
  // Of a file that has changed nothing is left from the run before.
  isolate: true,
  watch: false,
  maxWorkers: 1,
  reporters: [{}],
});
async function mustPass(): Promise<void> {
  for (const test of new Set(chosen.flatMap(({ tests }) => tests))) {
    const failing = await failingOf(vitest, copy, [test]);
    if (failing) throw new Error(`with nothing changed there fails ${failing}`);
  }
}
const survivors: { readonly mutation: Planned; readonly isExplained: boolean }[] = [];
try {
  await vitest.standalone();
  await mustPass();
  for (const mutation of chosen) {
    const path = join(copy, mutation.file);
    const original = readFileSync(path, 'utf8');
    writeFileSync(path, mutation.source);
    vitest.invalidateFile(path);
    const killer = await failingOf(vitest, copy, mutation.tests);
    writeFileSync(path, original);
    vitest.invalidateFile(path);
    if (killer === null) survivors.push({ mutation, isExplained: mutation.reason !== undefined });
    console.log(
      `${killer === null ? 'SURVIVED' : 'killed  '} ${mutation.file} ${mutation.name}${killer ? ` by ${killer}` : ''}`,
    );
  }
  // A failure that a run hands on to the next would pass for a kill.
  await mustPass();
} finally {
  await vitest.close();
  rmSync(copy, { recursive: true, force: true });
}

const unexplained = survivors.filter(({ isExplained }) => !isExplained);
for (const { mutation } of survivors) {
  console.log(`survived: ${mutation.file} ${mutation.name}${mutation.reason ? `, because ${mutation.reason}` : ''}`);
}
console.log(`${chosen.length - survivors.length} killed, ${survivors.length} survived`);
if (values.json) {
  const failures = unexplained.map(({ mutation }) => ({
    status: 'failed',
    fullName: `${mutation.file} ${mutation.name}`,
    failureMessages: ['no test notices'],
  }));
  const results = {
    numPassedTests: chosen.length - unexplained.length,
    numFailedTests: unexplained.length,
    testResults: [{ name: 'mutations', status: failures.length > 0 ? 'failed' : 'passed', assertionResults: failures }],
  };
  writeFileSync(values.json, JSON.stringify(results));
}
process.exitCode = unexplained.length > 0 ? 1 : 0;
