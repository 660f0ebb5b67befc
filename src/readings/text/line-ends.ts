/**
 * Makes every line of a text end in LF, whatever it ended in: LF, CR LF, CR alone, or the CR CR LF of a file that was
 * converted twice. Takes the text in pieces; a CR at the end of a piece is held until it is known what follows.
 *
 * @example unifyLineEnds()('a\r\nb\rc', true).length // => 5
 */
export function unifyLineEnds(): (text: string, isLast: boolean) => string {
  let held = '';
  return (text, isLast) => {
    let all = held + text;
    held = '';
    if (!isLast) {
      const end = /\r{1,2}$/.exec(all);
      if (end) {
        held = end[0];
        all = all.slice(0, end.index);
      }
    }
    return all.includes('\r') ? all.replace(/\r\r\n|\r\n|\r/g, '\n') : all;
  };
}
