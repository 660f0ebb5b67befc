/** What the work below takes on a quiet machine like the one on which the targets were set (two shared cores, Node 20) [ms]. */
export const REFERENCE_MS = 45;

const WARM_UP = 5;
const NUMBERS = 250_000;
const ROWS = 11_000;

/** Sums over typed arrays, and JSON of small objects: the two kinds of work that the service does most. */
function work(): number {
  const values = new Float64Array(NUMBERS);
  for (let i = 0; i < NUMBERS; i++) values[i] = Math.exp(-i / NUMBERS) * Math.sin(i);
  let sum = 0;
  for (let round = 0; round < 20; round++) for (const value of values) sum += value * round;
  const rows = Array.from({ length: ROWS }, (_, i) => ({ date: `day-${i}`, min: i / 10, max: i / 5 }));
  return sum + (JSON.parse(JSON.stringify(rows)) as unknown[]).length;
}

let isWarm = false;

/** CPU that the fixed work takes now [ms]: how fast the machine is at this moment. */
export function fixedWorkMs(): number {
  for (let i = 0; i < WARM_UP && !isWarm; i++) work();
  isWarm = true;
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}
