import { fixedWorkMs, REFERENCE_MS } from './fixed-work.js';
import type { Beside } from './run-beside.js';

/** One line of the table. */
export interface Row {
  readonly name: string;
  readonly unit: 'ms' | 's' | 'MB' | 'x' | '/s';
  /** null: it could not be measured, and `note` says why. */
  readonly measured: number | null;
  /** null: told for comparison, and not judged. */
  readonly target: number | null;
  readonly goal: number | null;
  readonly note?: string;
}

export const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1]!;

/** A figure in CPU time as it would be on the machine on which the targets were set. */
export async function scaled(measure: () => Promise<number>): Promise<number> {
  const before = fixedWorkMs();
  const measured = await measure();
  return (measured * REFERENCE_MS) / ((before + fixedWorkMs()) / 2);
}

export interface CostOptions {
  readonly rounds?: number;
  /** Questions asked before the first round. */
  readonly warmUp?: number;
  /** A round ends when it has cost so much [ms]: the clock of the process ticks every 10 ms. */
  readonly leastMs?: number;
  readonly mostAsked?: number;
}

/**
 * CPU of a service per question [ms]: the middle one of several rounds, each scaled by the speed of the machine.
 *
 * @param ask Asks once, and throws unless the answer is the one to be measured; given how often it was asked before.
 */
export async function costOf(
  service: Beside,
  ask: (number: number) => Promise<unknown>,
  { rounds = 5, warmUp = 3, leastMs = 250, mostAsked = 2000 }: CostOptions = {},
): Promise<number> {
  let asked = 0;
  for (; asked < warmUp; asked++) await ask(asked);
  const costs: number[] = [];
  for (let round = 0; round < rounds; round++) {
    costs.push(
      await scaled(async () => {
        const before = service.cpuMs();
        let [spentMs, inRound] = [0, 0];
        while (spentMs < leastMs && inRound < mostAsked) {
          await ask(asked++);
          inRound++;
          spentMs = service.cpuMs() - before;
        }
        return spentMs / inRound;
      }),
    );
  }
  return median(costs);
}

/** The table, and how many of its lines are over their target or could not be measured. */
export function tableOf(rows: readonly Row[]): { text: string; over: number } {
  const said = (value: number | null, unit: string): string =>
    value === null
      ? '-'
      : `${value >= 100 ? value.toFixed(0) : value >= 10 ? value.toFixed(1) : value.toFixed(2)} ${unit}`;
  const verdictOf = ({ measured, target, goal }: Row): string => {
    if (target === null) return '';
    if (measured === null) return 'not measured';
    if (measured > target) return 'OVER';
    return goal !== null && measured <= goal ? 'within, goal met' : 'within';
  };
  const lines = rows.map((row) => [
    row.name,
    said(row.measured, row.unit),
    said(row.target, row.unit),
    said(row.goal, row.unit),
    verdictOf(row),
    row.note ?? '',
  ]);
  const all = [['request', 'measured', 'target', 'goal', 'verdict', ''], ...lines];
  const widths = all[0]!.map((_, column) => Math.max(...all.map((line) => line[column]!.length)));
  const text = all
    .map((line) =>
      line
        .map((cell, i) => (i >= 1 && i <= 3 ? cell.padStart(widths[i]!) : cell.padEnd(widths[i]!)))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
  const over = rows.map(verdictOf).filter((verdict) => verdict === 'OVER' || verdict === 'not measured').length;
  return { text: `${text}\n`, over };
}
