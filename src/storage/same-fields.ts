/** True when two plain records have equal fields, in whatever order. */
export function sameFields(a: unknown, b: unknown): boolean {
  if (a === null || b === null || typeof a !== 'object' || typeof b !== 'object') return a === b;
  const [left, right] = [a as Record<string, unknown>, b as Record<string, unknown>];
  const names = new Set([...Object.keys(left), ...Object.keys(right)]);
  return [...names].every((name) => sameFields(left[name], right[name]));
}
