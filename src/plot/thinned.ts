/**
 * Thins the points of a line to what a screen can show: the first, lowest, highest and last of each pixel column, in
 * their order, so that no peak is lost.
 *
 * @param corners Points [px], from left to right.
 * @returns At most four points for each column.
 *
 * Source: Jugel, Jerzak, Hackenbroich, Markl (2014), M4, Proc. VLDB Endow. 7: 797-808, from memory.
 * @example thinned([[0, 1], [0.2, 9], [0.4, 2], [0.6, 5], [3, 1]]) // => [[0, 1], [0.2, 9], [0.6, 5], [3, 1]]
 */
export function thinned<Corner extends readonly [x: number, y: number]>(corners: readonly Corner[]): Corner[] {
  const kept: Corner[] = [];
  for (let from = 0; from < corners.length; ) {
    const column = Math.floor(corners[from]![0]);
    let to = from;
    let low = from;
    let high = from;
    for (; to < corners.length && Math.floor(corners[to]![0]) === column; to++) {
      if (corners[to]![1] < corners[low]![1]) low = to;
      if (corners[to]![1] > corners[high]![1]) high = to;
    }
    for (const i of [...new Set([from, low, high, to - 1])].sort((a, b) => a - b)) kept.push(corners[i]!);
    from = to;
  }
  return kept;
}
