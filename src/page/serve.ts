import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import compress from '@fastify/compress';
import multipart from '@fastify/multipart';
import type { FastifyInstance, FastifyPluginAsync, FastifyReply, FastifyRequest } from 'fastify';
import { isOwnOrigin } from '../http/own-origin.js';
import { styles } from '../plot/theme.js';
import { askedIn, sendAgain, withTried } from './act.js';
import { isRefused, type Problem, type Send } from './api.js';
import { colours } from './colours.js';
import { html } from './html.js';
import { type Files, keyPage, page } from './page.js';
import { problemNote } from './problem-note.js';
import { linkTo, questionFrom } from './question.js';
import { formLimits, readForm } from './read-form.js';
import { loadShelf, type Shelf } from './shelf.js';
import type { Answered, FileGiven } from './view.js';
import { viewOf } from './views.js';

/** Widths at which pictures are drawn where the reader's screen is not known [px]. */
const WIDTHS = [344, 860];

const POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "connect-src 'self'",
  "form-action 'self'",
  "base-uri 'none'",
  "frame-ancestors 'none'",
].join('; ');

const FOREIGN: Problem = {
  status: 403,
  code: 'foreign-origin',
  title: 'From another site',
  detail: 'A page of another site sent this, so nothing was changed. If it was you, enter it here.',
};

const NO_SHELF: Shelf = { crops: [], beds: [], places: [], nowMs: 0 };

/**
 * The page at `/` and its files: the same document whether its form is posted or its script runs, made from the
 * service's own answers.
 *
 * @param folder Where the build put the page's script and style sheet.
 */
export function servePage(folder: URL): FastifyPluginAsync {
  const script = readFileSync(new URL('page.js', folder));
  const style = Buffer.from(`${colours()}${styles('auto')}${readFileSync(new URL('page.css', folder), 'utf8')}`);
  const files: Files = { script: `/page.js?${versionOf(script)}`, style: `/page.css?${versionOf(style)}` };
  return async (app) => {
    await app.register(compress, { global: false });
    await app.register(multipart, { limits: formLimits });
    app.get('/', async (request, reply) => {
      const said = new URLSearchParams(request.url.split('?').slice(1).join('?'));
      return show(app, files, request, reply, said, null);
    });
    app.post('/', async (request, reply) => {
      if (!isOwnOrigin(request)) return show(app, files, request, reply, new URLSearchParams(), null, FOREIGN);
      const { said, file, problem } = await readForm(request);
      return show(app, files, request, reply, said, file, problem);
    });
    app.get('/page.js', async ({ url }, reply) =>
      sendFile(reply, 'text/javascript; charset=utf-8', script, url === files.script),
    );
    app.get('/page.css', async ({ url }, reply) =>
      sendFile(reply, 'text/css; charset=utf-8', style, url === files.style),
    );
  };
}

const versionOf = (file: Buffer): string => createHash('sha256').update(file).digest('base64url').slice(0, 12);

/** Under the address with its digest it never changes; another build's, asked for while instances are renewed, it is not. */
const sendFile = (reply: FastifyReply, type: string, file: Buffer, isOwnAddress: boolean): FastifyReply => {
  reply.type(type).header('cache-control', isOwnAddress ? 'public, max-age=31536000, immutable' : 'no-cache');
  reply.compress(file);
  return reply;
};

async function show(
  app: FastifyInstance,
  files: Files,
  request: FastifyRequest,
  reply: FastifyReply,
  said: URLSearchParams,
  file: FileGiven | null,
  refused?: Problem,
): Promise<FastifyReply> {
  const send = sendFor(app, request);
  const loaded = await loadShelf(send);
  reply.headers({
    'content-security-policy': POLICY,
    'cache-control': 'private, no-cache',
    vary: 'Accept-Language, Cookie',
  });
  reply.type('text/html; charset=utf-8').code(refused?.status ?? 200);
  if (isRefused(loaded) && loaded.problem.status === 401) {
    reply.compress(keyPage(files, said.get('key') === 'refused'));
    return reply;
  }
  const shelf = isRefused(loaded) ? NO_SHELF : loaded.value;
  const isAct = request.method === 'POST' && said.has('act');
  const question = questionFrom(isAct ? askedIn(said) : said, shelf);
  const view = viewOf(question.view);
  const asked = {
    question,
    file,
    shelf,
    reader: { locale: localeOf(request), degrees: question.degrees },
    send,
    widths: WIDTHS,
  };
  const problem = refused ?? (isRefused(loaded) ? loaded.problem : undefined);
  const done = isAct && !problem ? await view.act?.(said, asked) : undefined;
  if (done && !isRefused(done)) return reply.redirect(`${linkTo(question)}#${encodeURIComponent(done.value.at)}`, 303);
  const tried = done && { said, problem: done.problem };
  const wrong = tried?.problem ?? (isAct ? problem : refused);
  if (wrong) reply.code(wrong.status || 503);
  const answered: Answered | null = problem
    ? { shown: html`${problemNote(problem, asked.reader)}${isAct && sendAgain(said)}` }
    : await view.answer({ ...asked, tried });
  const shown = tried ? { ...answered, shown: withTried(answered?.shown, tried, asked.reader) } : answered;
  const as = said.get('as');
  if (as === 'svg' && answered?.picture)
    return sendToKeep(reply, 'image/svg+xml', `${view.fileName}.svg`, answered.picture());
  if (as === 'csv' && answered?.table)
    return sendToKeep(reply, 'text/csv; charset=utf-8', `${view.fileName}.csv`, answered.table());
  if (request.method === 'POST' && !file && !problem && !tried) return reply.redirect(linkTo(question), 303);
  const hasKey = request.headers.cookie !== undefined && /(^|;\s*)session=/.test(request.headers.cookie);
  const later = (await shown?.later?.()) ?? null;
  reply.compress(page({ question, view, form: view.form(asked), answered: shown, later, hasKey, files }));
  return reply;
}

const sendToKeep = (reply: FastifyReply, type: string, name: string, text: string): FastifyReply =>
  reply.type(type).header('content-disposition', `attachment; filename="${name}"`).send(text);

/** Asks the service as whoever asks for the page. */
const sendFor =
  (app: FastifyInstance, { headers, ip }: FastifyRequest): Send =>
  async ({ method, path, json, file }) => {
    const response = await app.inject({
      method,
      url: path,
      remoteAddress: ip,
      headers: {
        ...(headers.cookie === undefined ? {} : { cookie: headers.cookie }),
        ...(headers.authorization === undefined ? {} : { authorization: headers.authorization }),
        ...(file ? { 'content-type': 'text/csv' } : {}),
      },
      ...(file ? { payload: Buffer.from(file as Uint8Array) } : json === undefined ? {} : { payload: json as object }),
    });
    return { status: response.statusCode, body: response.body === '' ? undefined : JSON.parse(response.body) };
  };

/** No language's tag is longer; it stands beside every date. */
const LONGEST_TAG = 35;

/** The first language that the reader's browser names, where it is one. */
function localeOf({ headers }: FastifyRequest): string {
  const tag = headers['accept-language']?.split(',')[0]?.split(';')[0]?.trim() ?? '';
  try {
    return tag === '' || tag === '*' || tag.length > LONGEST_TAG
      ? 'en-GB'
      : (Intl.getCanonicalLocales(tag)[0] ?? 'en-GB');
  } catch {
    return 'en-GB';
  }
}
