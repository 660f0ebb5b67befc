import { readdir, readFile } from 'node:fs/promises';
import { posix } from 'node:path';
import { describe, expect, test } from 'vitest';

const ROOT = new URL('../../', import.meta.url);
const textOf = (path: string): Promise<string> => readFile(new URL(path, ROOT), 'utf8');

const developers = await textOf('DEVELOPERS.md');
const entries = await readdir(new URL('src/', ROOT), { recursive: true, withFileTypes: true });
const under = (parentPath: string): string => parentPath.slice(ROOT.pathname.length);
const folders = entries
  .filter((one) => one.isDirectory())
  .map(({ parentPath, name }) => posix.join(under(parentPath), name));
const files = entries.filter((one) => one.isFile()).map(({ parentPath, name }) => posix.join(under(parentPath), name));
const sources: readonly (readonly [path: string, text: string])[] = await Promise.all(
  files.filter((path) => path.endsWith('.ts')).map(async (path) => [path, await textOf(path)] as const),
);
const rooms = folders.filter((path) => path.split('/').length === 2).map((path) => path.slice('src/'.length));

/** The lines between a heading and the next one. */
function linesUnder(heading: string): string[] {
  const lines = developers.split('\n');
  const start = lines.indexOf(heading);
  if (start < 0) throw new Error(`no heading ${heading}`);
  const rest = lines.slice(start + 1);
  const end = rest.findIndex((line) => line.startsWith('## '));
  return rest.slice(0, end < 0 ? undefined : end);
}

const cellsOf = (line: string): string[] =>
  line
    .split('|')
    .slice(1, -1)
    .map((cell) => cell.trim().replace(/^`(.*)`$/, '$1'));

describe('the map of the code', () => {
  const map = linesUnder('## The tree');

  test('draws every room and every folder in it, and no other', () => {
    const tree = map.slice(map.indexOf('src/') + 1);
    const drawn: string[] = [];
    let room = '';
    for (const line of tree.slice(0, tree.indexOf('```'))) {
      const begun = /^ {2}([a-z-]+)\/ +(.*)$/.exec(line);
      if (begun) {
        room = begun[1]!;
        drawn.push(`src/${room}`);
      }
      const told = (begun?.[2] ?? line).replaceAll(/\([^)]*\)/g, '');
      for (const [, folder] of told.matchAll(/(?<=^|[ ;])([a-z-]+)\//g)) {
        if (room !== '') drawn.push(`src/${room}/${folder}`);
      }
    }
    const there = folders.filter((path) => path.split('/').length <= 3);
    expect(drawn.sort()).toEqual(there.sort());
  });

  test('says of every room what it imports of ours, as it does', () => {
    const imports = (room: string): string[] => {
      const found = sources
        .filter(([path]) => path.startsWith(`src/${room}/`))
        .flatMap(([path, text]) =>
          [...text.matchAll(/\b(?:from|import)\s*\(?\s*'(\.[^']+)'/g)].map(
            ([, specifier]) => posix.join(posix.dirname(path), specifier!).split('/')[1]!,
          ),
        );
      return [...new Set(found)].filter((other) => other !== room).sort();
    };
    const rows = map.filter((line) => line.startsWith('| `src/')).map(cellsOf);
    expect(rows.map(([path]) => path!.slice('src/'.length)).sort()).toEqual([...rooms].sort());
    for (const [path, , named] of rows) {
      expect(
        named!.split(', ').filter((one) => one !== ''),
        path,
      ).toEqual(imports(path!.slice('src/'.length)));
    }
  });

  test('walks four requests in few lines', () => {
    const walks = linesUnder('## Four walks');
    expect(walks.filter((line) => /^\*\*.*\*\*/.test(line)).length).toBe(4);
    expect(walks.length).toBeLessThanOrEqual(31);
  });
});

test('every npm script has its line, with the seconds it takes', async () => {
  const { scripts } = JSON.parse(await textOf('package.json')) as { scripts: Record<string, string> };
  const rows = linesUnder('## First ten minutes')
    .filter((line) => line.startsWith('| `npm '))
    .map(cellsOf);
  const named = rows.map(([command]) => /^npm (?:run )?([\w:-]+)/.exec(command!)![1]!);
  expect(named.sort()).toEqual(Object.keys(scripts).sort());
  for (const [command, seconds] of rows) expect(seconds, command).toMatch(/^((over )?\d+(\.\d)?|—)$/);
});

describe('what is named in the documents is there', () => {
  const documents = ['DEVELOPERS.md', ...files.filter((path) => path.endsWith('.md'))];

  test.each(documents)('every file that %s writes in code', async (document) => {
    const tests = (await readdir(new URL('test/', ROOT), { recursive: true })).map((path) => `test/${path}`);
    const all = [...files, ...tests].map((path) => `/${path}`);
    const named = [...(await textOf(document)).matchAll(/`([\w./-]+\.(?:ts|css|mjs))`/g)].map(([, path]) => path!);
    expect(named.filter((path) => !all.some((one) => one.endsWith(`/${path}`)))).toEqual([]);
  });

  test('every name in the code of the nomenclature', async () => {
    const rows = (await textOf('src/basics/nomenclature.md'))
      .split('\n')
      .filter((line) => line.startsWith('| ') && !line.startsWith('| Symbol'));
    const names = rows.flatMap((row) => [...row.split('|')[2]!.matchAll(/`([^`…]+)`/g)].map(([, name]) => name!));
    expect(names.length).toBeGreaterThanOrEqual(50);
    const code = sources.map(([, text]) => text).join('\n');
    expect(names.filter((name) => !new RegExp(`(?<![\\w-])${name}(?![\\w-])`).test(code))).toEqual([]);
  });
});
