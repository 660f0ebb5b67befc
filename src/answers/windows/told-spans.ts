import type { DateInYears } from './dates-in-years.js';
import type { GradedRun } from './grades.js';
import type { Run } from './sureness.js';
import type { WhyNot } from './why-nots.js';

/** Shorter parts are not told by themselves [d]. */
const MIN_PART_DAYS = 7;
/** The reason of a date is that of the week around it: so many days to either side [d]. */
const BESIDE_DAYS = 3;

/**
 * Runs of one grade, cut where the reason that spoils most years becomes another, so that each tells one story of its own days.
 *
 * @param dates In their order.
 * @param runs  Every date in exactly one.
 * @returns The same; what is cut is a week or more on both sides.
 */
export const spansOf = (dates: readonly DateInYears[], runs: readonly GradedRun[]): GradedRun[] =>
  runs.flatMap((run) =>
    run.grade === 'good' ? [run] : partsOf(dates, run).map((part) => ({ ...part, grade: run.grade })),
  );

interface Part extends Run {
  readonly why: WhyNot | null;
}

function partsOf(dates: readonly DateInYears[], run: GradedRun): Part[] {
  const parts: Part[] = [];
  for (let day = run.from; day <= run.to; day++) {
    const why = mainReason(dates, {
      from: Math.max(run.from, day - BESIDE_DAYS),
      to: Math.min(run.to, day + BESIDE_DAYS),
    });
    parts.push({ from: day, to: day, why });
  }
  let left = joined(parts);
  for (;;) {
    const shortest = left.filter((part) => lengthOf(part) < MIN_PART_DAYS).sort((a, b) => lengthOf(a) - lengthOf(b))[0];
    if (!shortest || left.length === 1) break;
    const at = left.indexOf(shortest);
    const beside = [left[at - 1], left[at + 1]].filter((part) => part !== undefined);
    const longer = beside.sort((a, b) => lengthOf(b) - lengthOf(a))[0]!;
    left = joined(left.with(at, { ...shortest, why: longer.why }));
  }
  return joined(left.map((part) => ({ ...part, why: mainReason(dates, part) })));
}

const lengthOf = ({ from, to }: Run): number => to - from + 1;

function joined(parts: readonly Part[]): Part[] {
  const all: Part[] = [];
  for (const part of parts) {
    const last = all.at(-1);
    if (last && last.why === part.why) all[all.length - 1] = { ...last, to: part.to };
    else all.push(part);
  }
  return all;
}

/** What spoilt most years of the dates of a run; null: nothing did. */
function mainReason(dates: readonly DateInYears[], { from, to }: Run): WhyNot | null {
  const counts = new Map<WhyNot, number>();
  for (let day = from; day <= to; day++) {
    for (const [why, years] of dates[day]!.causes) counts.set(why, (counts.get(why) ?? 0) + years);
  }
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? null;
}
