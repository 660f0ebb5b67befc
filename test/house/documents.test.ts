import { existsSync } from 'node:fs';
import { readdir, readFile } from 'node:fs/promises';
import { afterAll, describe, expect, test } from 'vitest';
import { settings } from '../../src/config.js';
import { startApp } from '../api/helper.js';
import { sentByCurl } from './sent-by-curl.js';

const ROOT = new URL('../../', import.meta.url);
const app = await startApp();
afterAll(() => app.close());

const textOf = (path: string): Promise<string> => readFile(new URL(path, ROOT), 'utf8');
const readme = await textOf('README.md');
const roomDocuments = (await readdir(new URL('src/', ROOT), { recursive: true }))
  .filter((path) => path.endsWith('.md'))
  .map((path) => `src/${path}`);
const documents = Object.fromEntries(
  await Promise.all(
    ['README.md', 'DEVELOPERS.md', ...roomDocuments].map(async (path) => [path, await textOf(path)] as const),
  ),
);

describe('the table of settings in the README', () => {
  /** Cells of the rows under a header line. */
  function tableUnder(header: string, text: string): string[][] {
    const lines = text.split('\n');
    const rows = lines.slice(lines.indexOf(header) + 2);
    const end = rows.findIndex((line) => !line.startsWith('|'));
    return rows.slice(0, end < 0 ? undefined : end).map((line) =>
      line
        .split('|')
        .slice(1, -1)
        .map((cell) => cell.trim().replace(/^`(.*)`$/, '$1')),
    );
  }

  test('has a handful of them as the configuration says: names, defaults and meanings, in order', () => {
    const shown = tableUnder('| Variable | Default | What it does |', readme);
    expect(shown.length).toBeGreaterThanOrEqual(4);
    expect(shown.length).toBeLessThanOrEqual(8);
    const names = shown.map(([name]) => name);
    expect(shown).toEqual(
      settings()
        .map(({ name, defaultText, does }) => [name, defaultText, does])
        .filter(([name]) => names.includes(name)),
    );
  });
});

describe('what the documents name is there', () => {
  test.each(['README.md', 'DEVELOPERS.md'])('every npm script in %s', async (path) => {
    const { scripts } = JSON.parse(await textOf('package.json')) as { scripts: Record<string, string> };
    const known = [...Object.keys(scripts), 'ci'];
    const named = [...documents[path]!.matchAll(/\bnpm (?:run )?(?:--silent )?([a-z][\w:-]*)/g)].map(
      ([, name]) => name!,
    );
    expect(named.length).toBeGreaterThanOrEqual(3);
    expect(named.filter((name) => !known.includes(name))).toEqual([]);
  });

  test.each(Object.keys(documents))('every file that %s links to', (path) => {
    const links = [...documents[path]!.matchAll(/\]\(([^)\s]+)\)/g)].map(([, link]) => link!);
    const files = links.filter((link) => !/^[a-z]+:|^#/.test(link)).map((link) => link.split('#', 1)[0]!);
    expect(files.filter((file) => !existsSync(new URL(file, new URL(path, ROOT))))).toEqual([]);
  });

  test('every file and folder that README and DEVELOPERS write in code', () => {
    const code = ['README.md', 'DEVELOPERS.md'].flatMap((path) => [...documents[path]!.matchAll(/`([^`\n]+)`/g)]);
    const paths = code
      .map(([, text]) => text!)
      .filter((text) => /^(src|test|fixtures|\.ci)\/[\w./-]+$/.test(text) && !text.endsWith('-'));
    expect(paths.length).toBeGreaterThanOrEqual(8);
    expect(paths.filter((path) => !existsSync(new URL(path, ROOT)))).toEqual([]);
  });
});

test('the README is read in ten minutes', () => {
  expect(readme.split('\n').length).toBeLessThanOrEqual(201);
});

describe('what the README shows works', () => {
  const shown = [...readme.matchAll(/^```sh\n([\s\S]*?)^```$/gm)]
    .map(([, block]) => block!.trim())
    .filter((block) => block.startsWith('curl '));

  test('there is a question in JSON and one as a file', () => {
    expect(shown.some((command) => /\s-d\s/.test(command))).toBe(true);
    expect(shown.some((command) => /--data-binary @/.test(command))).toBe(true);
  });

  test.each(shown.map((command) => [command.split('\n', 1)[0]!, command] as const))('%s', async (_, command) => {
    const response = await sentByCurl(app, command);
    expect([200, 201], response.body).toContain(response.statusCode);
  });

  test('a command that asks wrongly would be found', async () => {
    const response = await sentByCurl(
      app,
      `curl http://127.0.0.1:8080/v1/forecasts -H 'content-type: application/json' -d '{}'`,
    );
    expect(response.statusCode).toBe(422);
  });
});
