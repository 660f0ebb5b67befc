/** The lines of the file that rows came from. */
export interface LineRuns {
  /** Adds rows whose lines follow one another. */
  add(firstRow: number, firstLine: number, rows: number): void;
  /** Ends the run: the next rows begin one of their own. */
  end(): void;
  /** The line of a row. Cost: O(log n) in the number of runs. */
  lineOf(row: number): number;
}

/** Keeps only the places where lines do not follow one another, as they mostly do. */
export function lineRuns(): LineRuns {
  const rowAt: number[] = [];
  const lineAt: number[] = [];
  let nextLine = -1;
  return {
    add(firstRow, firstLine, rows) {
      if (firstLine !== nextLine) {
        rowAt.push(firstRow);
        lineAt.push(firstLine);
      }
      nextLine = firstLine + rows;
    },
    end() {
      nextLine = -1;
    },
    lineOf(row) {
      let [low, high] = [0, rowAt.length - 1];
      while (low < high) {
        const middle = (low + high + 1) >> 1;
        if (rowAt[middle]! <= row) low = middle;
        else high = middle - 1;
      }
      return lineAt[low]! + row - rowAt[low]!;
    },
  };
}
