import { existsSync } from 'node:fs';
import { readdir, readFile } from 'node:fs/promises';
import type { LightMyRequestResponse } from 'fastify';
import { afterAll, describe, expect, test } from 'vitest';
import type { z } from 'zod';
import { configSchema } from '../../src/config.js';
import { startApp } from '../api/helper.js';

const ROOT = new URL('../../', import.meta.url);
const app = await startApp();
afterAll(() => app.close());

const textOf = (path: string): Promise<string> => readFile(new URL(path, ROOT), 'utf8');
const readme = await textOf('README.md');
const roomReadmes = (await readdir(new URL('src/', ROOT), { recursive: true }))
  .filter((path) => path.endsWith('README.md'))
  .map((path) => `src/${path}`);
const documents = Object.fromEntries(
  await Promise.all(
    ['README.md', 'DEVELOPERS.md', ...roomReadmes].map(async (path) => [path, await textOf(path)] as const),
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

  /** What a setting is where nobody sets it, as one would write it into the environment. */
  const unset = (schema: z.ZodType): string => {
    let inner: z.core.$ZodType = schema;
    while (!('defaultValue' in inner._zod.def)) {
      const { in: before, innerType } = inner._zod.def as { in?: z.core.$ZodType; innerType?: z.core.$ZodType };
      const next = innerType ?? before;
      if (!next) throw new Error('a setting without a default');
      inner = next;
    }
    return String(inner._zod.def.defaultValue);
  };

  test('is what the configuration says: names, defaults and meanings, in order', () => {
    const known = Object.entries(configSchema.shape).map(([name, schema]) => [
      name,
      unset(schema),
      schema.description ?? '',
    ]);
    expect(known.length).toBeGreaterThanOrEqual(5);
    expect(tableUnder('| Variable | Default | What it does |', readme)).toEqual(known);
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

describe('what the README shows works', () => {
  const shown = [...readme.matchAll(/^```sh\n([\s\S]*?)^```$/gm)]
    .map(([, block]) => block!.trim())
    .filter((block) => block.startsWith('curl '));

  test('there is a question in JSON and one as a file', () => {
    expect(shown.some((command) => /\s-d\s/.test(command))).toBe(true);
    expect(shown.some((command) => /--data-binary @/.test(command))).toBe(true);
  });

  test.each(shown.map((command) => [command.split('\n', 1)[0]!, command] as const))('%s', async (_, command) => {
    const response = await sent(command);
    expect([200, 201], response.body).toContain(response.statusCode);
  });

  test('a command that asks wrongly would be found', async () => {
    const response = await sent(`curl http://127.0.0.1:8080/v1/forecasts -H 'content-type: application/json' -d '{}'`);
    expect(response.statusCode).toBe(422);
  });
});

/** Sends to the service what a curl command would: its method, its address, its headers and its body. */
async function sent(command: string): Promise<LightMyRequestResponse> {
  const words = [...command.replaceAll('\\\n', ' ').matchAll(/'([^']*)'|"([^"]*)"|(\S+)/g)].map(
    ([, single, double, bare]) => single ?? double ?? bare ?? '',
  );
  const valuesAfter = (...options: string[]): string[] =>
    words.filter((_, i) => i > 0 && options.includes(words[i - 1]!));
  const address = words.find((word) => /^https?:/.test(word));
  if (!address) throw new Error(`no address in ${command}`);
  const { pathname, search } = new URL(address);
  const headers = Object.fromEntries(
    valuesAfter('-H', '--header').map((line) => {
      const [name, ...value] = line.split(':');
      return [name!.toLowerCase(), value.join(':').trim()];
    }),
  );
  const [data] = valuesAfter('-d', '--data', '--data-binary');
  const payload = data?.startsWith('@') ? await textOf(data.slice(1)) : data;
  return app.inject({
    method: (valuesAfter('-X', '--request')[0] ?? (payload === undefined ? 'GET' : 'POST')) as 'GET',
    url: pathname + search,
    headers,
    ...(payload === undefined ? {} : { payload }),
  });
}
