/** Plurals and slips differ at the end: so many letters at the start of a word are compared. */
const START_LETTERS = 4;

/**
 * The crops that may be meant by a name that is none of their ids: a plural, a capital, a slip at the end of a word.
 *
 * @param name What was asked for.
 * @param ids  Ids of the crops, their words joined by `-`.
 * @returns Those of `ids` of which a word begins as a word of the name does, in their order; none for most other words.
 * @throws ScienceError never.
 *
 * Source: our rule.
 * @example cropsLike('Beans', ['lima-bean', 'beet', 'snap-bean']) // => ['lima-bean', 'snap-bean']
 */
export function cropsLike(name: string, ids: readonly string[]): string[] {
  const starts = name
    .toLowerCase()
    .split(/[^a-z]+/)
    .filter((word) => word.length >= 3)
    .map((word) => word.slice(0, START_LETTERS));
  return ids.filter((id) =>
    id.split('-').some((word) => starts.some((start) => start.startsWith(word) || word.startsWith(start))),
  );
}
