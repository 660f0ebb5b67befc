/**
 * A day of 100,000 gardens on one machine and on several, simulated from what each thing costs the built service. `--write`
 * keeps the figures for the page about running the service; `--costs-of-the-page` reckons with those that it has.
 */
import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { measuredCosts } from './scale-costs.js';
import { type Assumptions, type Machine, simulate } from './scale-simulation.js';
import { today } from './test-garden.js';

const assumptions: Assumptions = {
  gardens: 100_000,
  furtherLooks: 5,
  peak: 4,
  webhookShare: 0.5,
  probeShare: 0.1,
  calendarShare: 0.25,
  looks: { quiet: 1, probed: 96 },
};

const machines: readonly Machine[] = [
  { name: 'One machine of 8 cores', instances: 1, cores: 8, cacheMB: 64, isSticky: true },
  { name: 'The same with 4 GB of caches', instances: 1, cores: 8, cacheMB: 2048, isSticky: true },
  { name: 'Four of 4 cores, owners to any of them', instances: 4, cores: 4, cacheMB: 64, isSticky: false },
  { name: 'Four of 4 cores, each owner to one', instances: 4, cores: 4, cacheMB: 64, isSticky: true },
];

const costs = await measuredCosts();
const figures = {
  measuredOn: today,
  node: process.version,
  costs,
  assumptions,
  machines: machines.map((machine) => ({ machine, scale: simulate(costs, assumptions, machine) })),
};

process.stdout.write(`${JSON.stringify(costs, null, 2)}\n`);
for (const { machine, scale } of figures.machines) {
  const { coresByHour, walls, ...rest } = scale;
  process.stdout.write(`\n${machine.name}\n  cores wanted by the hour: ${coresByHour.join(' ')}\n`);
  for (const [name, value] of Object.entries(rest)) process.stdout.write(`  ${name}: ${value}\n`);
  process.stdout.write(`  bears: ${walls.map(({ what, gardens }) => `${what} ${gardens}`).join(', ')}\n`);
}

if (process.argv.includes('--write')) {
  const file = new URL('../../src/page/running/scale-figures.ts', import.meta.url).pathname;
  writeFileSync(
    file,
    `/** What \`npm run bench:scale -- --write\` measured and simulated; made by it, not by hand. */
export const scaleFigures = ${JSON.stringify(figures)};
`,
  );
  execFileSync('npm', ['run', '--silent', 'format', '--', file], { stdio: 'ignore' });
}
