import type { FastifyInstance } from 'fastify';
import { questionFrom } from '../../../src/page/form/question.js';
import { type Send, wordedFor } from '../../../src/page/shell/api.js';
import { loadInventory } from '../../../src/page/shell/inventory.js';
import type { AskedQuestion } from '../../../src/page/shell/view.js';
import { readerIn } from './readers.js';

/** Asks a service as the page does. */
export const sendTo =
  (app: FastifyInstance): Send =>
  async ({ method, path, json, file, isNew }) => {
    const { statusCode, body } = await app.inject({
      method,
      url: path,
      headers: { ...(file && { 'content-type': 'text/csv' }), ...(isNew && { 'if-none-match': '*' }) },
      ...(json === undefined ? {} : { payload: json as object }),
      ...(file && { payload: Buffer.from(file as Uint8Array) }),
    });
    return { status: statusCode, body: body === '' ? undefined : JSON.parse(body) };
  };

/** What a reader in England asks with a link. */
export async function askedOf(send: Send, link = ''): Promise<AskedQuestion> {
  const loaded = await loadInventory(send);
  if ('problem' in loaded) throw new Error(loaded.problem.detail);
  const question = questionFrom(new URLSearchParams(link), loaded.value);
  const reader = readerIn('en', question.degrees);
  return {
    question,
    file: null,
    shelf: loaded.value,
    reader,
    send: (request) => send({ ...request, path: wordedFor(request.path, reader) }),
    widths: [600],
  };
}
