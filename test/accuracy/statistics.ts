/** Median of some numbers; NaN of none. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  if (sorted.length === 0) return NaN;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

export const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** Root of the mean square, and mean, of some differences. */
export function errorsOf(differences: readonly number[]): { rmse: number; bias: number; mae: number; n: number } {
  return {
    rmse: Math.sqrt(mean(differences.map((one) => one * one))),
    bias: mean(differences),
    mae: mean(differences.map(Math.abs)),
    n: differences.length,
  };
}

/** A table in plain text, its columns aligned. */
export function table(header: readonly string[], rows: readonly (readonly (string | number)[])[]): string {
  const cells = [header, ...rows.map((row) => row.map((cell) => (typeof cell === 'number' ? cell.toFixed(2) : cell)))];
  const widths = header.map((_, column) => Math.max(...cells.map((row) => (row[column] ?? '').length)));
  const line = (row: readonly string[]): string =>
    row
      .map((cell, column) => (column === 0 ? cell.padEnd(widths[column]!) : cell.padStart(widths[column]!)))
      .join('  ');
  return cells.map(line).join('\n');
}
