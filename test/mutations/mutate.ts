/** One small change to a file of source: a number moved by a tenth, or a comparison turned. */
export interface Mutation {
  /** Path of the file from the root. */
  readonly file: string;
  /** What is changed, as the report names it. */
  readonly name: string;
  readonly source: string;
}

/** What is changed in one file, and the tests that must notice. */
export interface MutatedFile {
  readonly file: string;
  /** Test files, the likeliest to notice first. */
  readonly tests: readonly string[];
  /** Constants by name; `NAME.key` is a number of a record, `NAME[0]` one of a list. Each is moved up and down. */
  readonly numbers?: readonly string[];
  /** Code that stands in the file exactly once, and what it becomes. */
  readonly changes?: readonly (readonly [from: string, to: string])[];
  /** Why a mutation may survive, by its name. */
  readonly survives?: Readonly<Record<string, string>>;
}

/** All mutations of one file. Throws where a name or a piece of code is gone, or is there twice. */
export function mutationsOf({ file, numbers = [], changes = [] }: MutatedFile, source: string): Mutation[] {
  return [
    ...numbers.flatMap((name) => {
      const { from, to } = numberAt(source, name, file);
      const expression = source.slice(from, to);
      return (['up', 'down'] as const).map((way) => ({
        file,
        name: `${name} ${way}`,
        source: source.slice(0, from) + moved(expression, way) + source.slice(to),
      }));
    }),
    ...changes.map(([code, becomes]) => {
      const parts = source.split(code);
      if (parts.length !== 2) throw new Error(`${file} has "${code}" ${parts.length - 1} times, not once`);
      return { file, name: `${code} -> ${becomes}`, source: parts.join(becomes) };
    }),
  ];
}

/** Where a constant's number, or the expression that gives it, begins and ends. */
function numberAt(source: string, name: string, file: string): { from: number; to: number } {
  const [, constant, key, index] = /^(\w+)(?:\.([\w-]+)|\[(\d+)\])?$/.exec(name)!;
  const declared = [...source.matchAll(new RegExp(`^(?:export )?const ${constant}\\b[\\s\\S]*?\\s=\\s+`, 'gm'))];
  if (declared.length !== 1) throw new Error(`${file} declares ${constant} ${declared.length} times, not once`);
  const from = declared[0]!.index + declared[0]![0].length;
  const to = source.indexOf(';\n', from);
  if (key === undefined && index === undefined) return { from, to };
  const number =
    key !== undefined
      ? new RegExp(`(?:'${key}'|\\b${key}): (-?[\\d.]+(?:e-?\\d+)?)`, 'g')
      : /(?<![\w.])(-?[\d.]+(?:e-?\d+)?)/g;
  const found = [...source.slice(from, to).matchAll(number)];
  const one =
    key !== undefined && found.length === 1 ? found[0] : index !== undefined ? found[Number(index)] : undefined;
  if (!one) throw new Error(`${file} has no single number ${name}`);
  const start = from + one.index + one[0].length - one[1]!.length;
  return { from: start, to: start + one[1]!.length };
}

/** A number moved by a tenth: a whole one by one at least, and 0 by one. */
function moved(expression: string, way: 'up' | 'down'): string {
  const sign = way === 'up' ? 1 : -1;
  const value = Number(expression.replaceAll('_', ''));
  if (Number.isInteger(value) && Math.abs(value) < 1e6) {
    return String(value + sign * Math.max(1, Math.round(Math.abs(value) / 10)));
  }
  return `(${expression}) * ${way === 'up' ? 1.1 : 0.9}`;
}
