/**
 * Remembers what was worked out under a key, the last so many times; who asks meanwhile waits for the same. What fails is
 * not remembered.
 *
 * @param most How many are remembered, >= 1; the one not asked for the longest is forgotten first.
 */
export function remembered<T>(most: number): (key: string, workOut: () => Promise<T>) => Promise<T> {
  const known = new Map<string, Promise<T>>();
  return (key, workOut) => {
    const found = known.get(key) ?? workOut();
    // Deleted first: the order of a map is that of its insertions.
    known.delete(key);
    known.set(key, found);
    if (known.size > most) known.delete(known.keys().next().value!);
    found.catch(() => {
      if (known.get(key) === found) known.delete(key);
    });
    return found;
  };
}
