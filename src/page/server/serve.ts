import { readFileSync } from 'node:fs';
import multipart from '@fastify/multipart';
import type { FastifyPluginAsync, FastifyReply, FastifyRequest } from 'fastify';
import { digestOf } from '../../basics/digest.js';
import { isOwnOrigin, needsKey } from '../../contract/own-origin.js';
import { styles } from '../../plot/theme.js';
import { type Language, languages } from '../../words/reader.js';
import { RUNNING_POLICY, runningPage } from '../running/page.js';
import type { Problem } from '../shell/api.js';
import { colours } from '../shell/colours.js';
import type { Files } from '../shell/page.js';
import { messagesModule } from './messages.js';
import { formLimits, readForm } from './read-form.js';
import { showPage } from './show-page.js';

const FOREIGN: Problem = {
  status: 403,
  code: 'foreign-origin',
  title: '',
  detail: '',
};

type Handle = (request: FastifyRequest, reply: FastifyReply) => Promise<FastifyReply>;

/** Makes a handler of an answer that never changes. */
type ReadyAnswer = (answer: { type: string; body: Buffer; headers?: Readonly<Record<string, string>> }) => Handle;

/**
 * The page at `/` and its files: the same document whether its form is posted or its script runs, made from the
 * service's own answers.
 *
 * @param folder Where the build put the page's script and style sheet.
 * @param readyAnswer How the service packs and tags what never changes; main hands it in.
 */
export function servePage(folder: URL, readyAnswer: ReadyAnswer): FastifyPluginAsync {
  const script = readFileSync(new URL('page.js', folder));
  const style = Buffer.from(`${colours()}${styles('auto')}${readFileSync(new URL('page.css', folder), 'utf8')}`);
  const files = { script: `/page.js?${versionOf(script)}`, style: `/page.css?${versionOf(style)}` };
  const modules = languages.map((language) => {
    const body = Buffer.from(messagesModule(language));
    return { language, body, path: `/page-${language}.js`, address: `/page-${language}.js?${versionOf(body)}` };
  });
  const filesIn = (language: Language): Files => ({
    ...files,
    messages: modules.find((one) => one.language === language)!.address,
  });
  return async (app) => {
    await app.register(multipart, { limits: formLimits });
    app.get('/', async (request, reply) => {
      const said = new URLSearchParams(request.url.split('?').slice(1).join('?'));
      return showPage({ app, filesIn, request, reply }, { said, file: null });
    });
    app.post('/', async (request, reply) => {
      const form = isOwnOrigin(request)
        ? // A stranger is asked for a key, whatever the file holds.
          await readForm(request, { isFileWanted: !needsKey(request) })
        : { said: new URLSearchParams(), file: null, problem: FOREIGN };
      return showPage({ app, filesIn, request, reply }, form);
    });
    app.get(
      '/docs/running',
      readyAnswer({
        type: 'text/html; charset=utf-8',
        body: runningPage,
        headers: { 'content-security-policy': RUNNING_POLICY, 'cache-control': 'no-cache' },
      }),
    );
    const text = (kind: string, body: Buffer): Handle => readyAnswer({ type: `text/${kind}; charset=utf-8`, body });
    app.get('/page.js', underOwnAddress(files.script, text('javascript', script)));
    for (const { path, address, body } of modules) app.get(path, underOwnAddress(address, text('javascript', body)));
    app.get('/page.css', underOwnAddress(files.style, text('css', style)));
  };
}

const versionOf = (file: Buffer): string => digestOf(file, 12);

/** Under its own address a file never changes; another build's, asked for while instances are renewed, it is not. */
const underOwnAddress =
  (ownAddress: string, send: Handle): Handle =>
  (request, reply) =>
    send(
      request,
      reply.header('cache-control', request.url === ownAddress ? 'public, max-age=31536000, immutable' : 'no-cache'),
    );
