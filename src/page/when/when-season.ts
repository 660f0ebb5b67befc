import type { WindowAnswer } from '../../contract/windows.js';
import type { WhyClosed } from '../../plot/season.js';
import { daysFrom, daysLater } from '../shell/words.js';

/** A closed spell, with the reason of most of its days. */
export interface ClosedSpell {
  readonly from: string;
  readonly to: string;
  readonly why: WhyClosed;
  /** True if short spells with other reasons were merged into it. */
  readonly isMixed: boolean;
}

/** Consecutive dates outside all windows, and what closes them; dates good in too many years have no spell. */
export interface SeasonGap {
  readonly from: string;
  readonly to: string;
  readonly spells: readonly ClosedSpell[];
}

export type SeasonOfWindows = Pick<WindowAnswer, 'windows' | 'closed' | 'dates' | 'best'>;

/** A shorter spell is merged with the longest of its neighbours [d]. */
const SHORT_DAYS = 14;

/** Merges closed spells, which change every few days in winter, into as many as are worth reporting. */
export function joinedSpells(closed: WindowAnswer['closed']): ClosedSpell[] {
  const spells: ClosedSpell[] = closed.map((spell) => ({ ...spell, isMixed: false }));
  for (;;) {
    const first = nextToJoin(spells);
    if (first === null) return spells;
    spells.splice(first, 2, joined(spells[first]!, spells[first + 1]!));
  }
}

/** The index of the first of two spells to merge: of one reason, or else the shortest and its longer neighbour. */
function nextToJoin(spells: readonly ClosedSpell[]): number | null {
  const pairs = spells.slice(1).flatMap((second, i) => (touches(spells[i]!, second) ? [i] : []));
  const alike = pairs.find((i) => spells[i]!.why === spells[i + 1]!.why);
  if (alike !== undefined) return alike;
  const lengths = (i: number): readonly [shorter: number, longer: number] => {
    const [one, other] = [lengthOf(spells[i]!), lengthOf(spells[i + 1]!)];
    return one < other ? [one, other] : [other, one];
  };
  const short = pairs.filter((i) => lengths(i)[0] < SHORT_DAYS);
  return short.sort((a, b) => lengths(a)[0] - lengths(b)[0] || lengths(b)[1] - lengths(a)[1])[0] ?? null;
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

const touches = (first: ClosedSpell, second: ClosedSpell): boolean => daysFrom(first.to, second.from) === 1;

export const lengthOf = ({ from, to }: { readonly from: string; readonly to: string }): number =>
  daysFrom(from, to) + 1;

/** The dates between the windows, before the first and after the last. */
export function gapsOf({ windows, closed, dates }: Omit<SeasonOfWindows, 'best'>): SeasonGap[] {
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

/** The spell that closes a date; null in a window. */
export function closedAt(
  season: Omit<SeasonOfWindows, 'best'>,
  date: string,
): { readonly why: WhyClosed | null } | null {
  if (season.windows.some(({ from, to }) => from <= date && date <= to)) return null;
  return { why: season.closed.find(({ from, to }) => from <= date && date <= to)?.why ?? null };
}
