import type { WindowAnswer } from '../http/schemas/windows.js';
import type { WhyClosed } from '../plot/season-strip.js';
import { daysFrom, daysLater } from './words.js';

/** A spell that is closed to sowing, for one reason on most of its days. */
export interface ClosedSpell {
  readonly from: string;
  readonly to: string;
  readonly why: WhyClosed;
  /** Short spells of other reasons are told with it. */
  readonly isMixed: boolean;
}

/** Dates on end in no window, and what closes them; what is good in too many years to be closed has no spell. */
export interface Gap {
  readonly from: string;
  readonly to: string;
  readonly spells: readonly ClosedSpell[];
}

export type Season = Pick<WindowAnswer, 'windows' | 'closed' | 'dates' | 'best'>;

/** A spell shorter than this, next to others, is told with the longest of them [d]. */
const SHORT_DAYS = 14;

/** Spells that follow on one another in slices of a few days, as winter has them, in as many as are worth telling. */
export function joinedSpells(closed: WindowAnswer['closed']): ClosedSpell[] {
  const spells: ClosedSpell[] = closed.map((spell) => ({ ...spell, isMixed: false }));
  for (;;) {
    const next = shortest(spells);
    if (next === null) return spells;
    const before = touches(spells[next - 1], spells[next]) ? spells[next - 1]! : null;
    const after = touches(spells[next], spells[next + 1]) ? spells[next + 1]! : null;
    const isBefore = before !== null && (after === null || lengthOf(before) >= lengthOf(after));
    const at = isBefore ? next - 1 : next;
    spells.splice(at, 2, joined(spells[at]!, spells[at + 1]!));
  }
}

/** The index of the shortest spell that has to be told with another; spells of one reason are so whatever their length. */
function shortest(spells: readonly ClosedSpell[]): number | null {
  const same = spells.findIndex((spell, i) => touches(spells[i - 1], spell) && spells[i - 1]!.why === spell.why);
  if (same > 0) return same;
  const short = spells
    .map((_, i) => i)
    .filter(
      (i) =>
        lengthOf(spells[i]!) < SHORT_DAYS && (touches(spells[i - 1], spells[i]) || touches(spells[i], spells[i + 1])),
    );
  return short.sort((a, b) => lengthOf(spells[a]!) - lengthOf(spells[b]!))[0] ?? null;
}

function joined(first: ClosedSpell, second: ClosedSpell): ClosedSpell {
  const longer = lengthOf(first) >= lengthOf(second) ? first : second;
  return {
    from: first.from,
    to: second.to,
    why: longer.why,
    isMixed: first.isMixed || second.isMixed || first.why !== second.why,
  };
}

const touches = (first: ClosedSpell | undefined, second: ClosedSpell | undefined): boolean =>
  first !== undefined && second !== undefined && daysFrom(first.to, second.from) === 1;

export const lengthOf = ({ from, to }: { readonly from: string; readonly to: string }): number =>
  daysFrom(from, to) + 1;

/** The dates between the windows, before the first and after the last. */
export function gapsOf({ windows, closed, dates }: Omit<Season, 'best'>): Gap[] {
  const [first, last] = [dates[0]?.date, dates.at(-1)?.date];
  if (first === undefined || last === undefined) return [];
  const starts = [first, ...windows.map(({ to }) => daysLater(to, 1))];
  const ends = [...windows.map(({ from }) => daysLater(from, -1)), last];
  return starts.flatMap((from, i) => {
    const to = ends[i]!;
    if (to < from) return [];
    return [{ from, to, spells: joinedSpells(closed.filter((spell) => spell.from >= from && spell.to <= to)) }];
  });
}

/** What closes a date; null in a window. */
export function closedAt(season: Omit<Season, 'best'>, date: string): { readonly why: WhyClosed | null } | null {
  if (season.windows.some(({ from, to }) => from <= date && date <= to)) return null;
  return { why: season.closed.find(({ from, to }) => from <= date && date <= to)?.why ?? null };
}
