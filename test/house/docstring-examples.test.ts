import { readdir, readFile } from 'node:fs/promises';
import { describe, expect, test } from 'vitest';
import { crops } from '../../src/germination/crops.js';

const ROOT = new URL('../../', import.meta.url);
const ROOMS = ['basics', 'germination', 'seedbed', 'climate', 'readings', 'growth', 'answers', 'garden'];

interface Example {
  readonly file: string;
  readonly call: string;
  readonly value: string;
}

const sources = (
  await Promise.all(
    ROOMS.map(async (room) => {
      const names = (await readdir(new URL(`src/${room}/`, ROOT), { recursive: true })).filter((name) =>
        name.endsWith('.ts'),
      );
      const files = names.map((name) => `src/${room}/${name}`);
      return Promise.all(files.map(async (file) => ({ file, text: await readFile(new URL(file, ROOT), 'utf8') })));
    }),
  )
).flat();

const examples: Example[] = sources.flatMap(({ file, text }) =>
  [...text.matchAll(/@example (.+?) \/\/ => (.+?)\s*(?:\*\/)?$/gm)].map(([, call, value]) => ({
    file,
    call: call!,
    value: value!,
  })),
);

/** A literal in code (numbers, texts, lists, records) as the value it stands for; undefined where it is none. */
function literal(text: string): unknown {
  const json = text
    .replaceAll(/'([^']*)'/g, '"$1"')
    .replaceAll(/([{,]\s*)([A-Za-z]\w*):/g, '$1"$2":')
    .replaceAll(/(\d)_(\d)/g, '$1$2');
  try {
    return JSON.parse(json);
  } catch {
    return undefined;
  }
}

/** What can be said in an example: a value, or a call by name of such things. */
type Term = { readonly value: unknown } | { readonly name: string; readonly args: readonly Term[] };

/** An example's text as something to run: literals, crops (`onion`), their rows (`onionRows`), calls of these. */
function termOf(text: string): Term | undefined {
  const value = literal(text) ?? cropsByName.get(text);
  if (value !== undefined) return { value };
  const [, name, inner] = /^(\w+)\((.*)\)$/.exec(text.replace(/^(\w+) of (\w+)'s rows$/, '$1($2Rows)')) ?? [];
  if (name === undefined || inner === undefined) return undefined;
  const args = splitAtCommas(inner).map(termOf);
  return args.every((one) => one !== undefined) ? { name, args } : undefined;
}

const cropsByName = new Map<string, unknown>(
  [...crops.values()].flatMap((crop) => {
    const name = crop.id.replaceAll(/-(\w)/g, (_, letter: string) => letter.toUpperCase());
    return [
      [name, crop],
      [`${name}Rows`, crop.rows],
    ] as const;
  }),
);

/** Splits at the commas that stand in no bracket. */
function splitAtCommas(text: string): string[] {
  const parts = [''];
  let depth = 0;
  for (const letter of text) {
    if ('([{'.includes(letter)) depth++;
    if (')]}'.includes(letter)) depth--;
    if (letter === ',' && depth === 0) parts.push('');
    else parts[parts.length - 1] += letter;
  }
  return parts.map((part) => part.trim());
}

/** What a term gives, its functions taken from a module. */
function run(term: Term, module: Readonly<Record<string, unknown>>): unknown {
  if ('value' in term) return term.value;
  const called = module[term.name];
  if (typeof called !== 'function') throw new Error(`there is no function ${term.name}`);
  return called(...term.args.map((one) => run(one, module)));
}

/** Every number in a value or in its text, with how far it may be off: half of the last digit printed. */
const tolerancesIn = (text: string): number[] =>
  [...text.matchAll(/-?\d+(?:\.(\d+))?(?:e([+-]?\d+))?/g)].map(
    ([, decimals = '', exponent = '0']) => 0.5 * 10 ** (Number(exponent) - decimals.length) * (1 + 1e-9),
  );

function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  if (typeof value !== 'object' || value === null) return [];
  return Object.values(value).flatMap(numbersIn);
}

/** The value with its numbers left out: lists, records and texts must be the same. */
function shapeOf(value: unknown): unknown {
  if (typeof value === 'number') return 'a number';
  if (ArrayBuffer.isView(value)) return Array.from(value as Float64Array, shapeOf);
  if (Array.isArray(value)) return value.map(shapeOf);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, shapeOf(one)]));
}

/** Is a value what was printed, to the digits that were printed? Whole numbers must be met exactly. */
function isAsPrinted(value: unknown, printed: string): boolean {
  const wanted = literal(printed);
  if (JSON.stringify(shapeOf(value)) !== JSON.stringify(shapeOf(wanted))) return false;
  const tolerances = tolerancesIn(printed.replaceAll(/'[^']*'|[A-Za-z]\w*:/g, ''));
  const got = numbersIn(value);
  return numbersIn(wanted).every(
    (one, i) => Math.abs(got[i]! - one) <= (Number.isInteger(one) ? 1e-9 : tolerances[i]!),
  );
}

const runnable = examples.flatMap((example) => {
  const term = termOf(example.call);
  return term && 'name' in term ? [{ ...example, term }] : [];
});

describe('the worked examples in the docstrings', () => {
  test.each(runnable)('$call gives $value', async ({ file, term, value }) => {
    const result = run(term, await import(new URL(file, ROOT).href));
    expect(isAsPrinted(result, value), `it gives ${JSON.stringify(result)}`).toBe(true);
  });

  test('are many: eight or more can be run as they stand, and the others, in words, give a number too', () => {
    const inWords = examples.filter(({ call }) => !termOf(call));
    expect(runnable.length).toBeGreaterThanOrEqual(8);
    expect(runnable.length + inWords.length).toBe(examples.length);
    expect(inWords.filter(({ value }) => !/\d/.test(value))).toEqual([]);
  });

  test('are each read: none is written in another form', () => {
    expect(examples.length).toBe(sources.flatMap(({ text }) => text.match(/@example/g) ?? []).length);
  });

  test('would be found wrong where a printed digit is', () => {
    expect(isAsPrinted(15.0162, '15.016')).toBe(true);
    expect(isAsPrinted(15.0162, '15.017')).toBe(false);
    expect(isAsPrinted([0, 1.26], '[0, 1.3]')).toBe(true);
    expect(isAsPrinted([0, 1.26], '[0, 1.2]')).toBe(false);
    expect(isAsPrinted({ a: 1 }, '{ a: 1, b: 2 }')).toBe(false);
    expect(isAsPrinted(0.4, '0')).toBe(false);
  });
});
