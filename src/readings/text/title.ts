/** The title that a line is, without the marks around it; empty where it is none. */
export const titleOf = (line: string): string => line.replace(/^[#\s]+/, '').replace(/[,;\s]+$/, '');

/** The last title of some lines; empty where none is one. */
export const lastTitle = (lines: readonly string[]): string =>
  titleOf([...lines].reverse().find((line) => titleOf(line) !== '') ?? '');
