import { readFile } from 'node:fs/promises';
import type { FastifyInstance, LightMyRequestResponse } from 'fastify';

const ROOT = new URL('../../', import.meta.url);

/** Sends to the service what a curl command would: its method, its address, its headers and its body. */
export async function sentByCurl(app: FastifyInstance, command: string): Promise<LightMyRequestResponse> {
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
  const payload = data?.startsWith('@') ? await readFile(new URL(data.slice(1), ROOT), 'utf8') : data;
  return app.inject({
    method: (valuesAfter('-X', '--request')[0] ?? (payload === undefined ? 'GET' : 'POST')) as 'GET',
    url: pathname + search,
    headers,
    ...(payload === undefined ? {} : { payload }),
  });
}
