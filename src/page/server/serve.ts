import { readFileSync } from 'node:fs';
import multipart from '@fastify/multipart';
import type { FastifyPluginAsync } from 'fastify';
import { digestOf } from '../../basics/digest.js';
import { isSameOrigin, needsKey } from '../../contract/request/same-origin.js';
import { styles } from '../../plot/theme.js';
import { type Language, languages } from '../../words/reader.js';
import type { Setting } from '../running/settings.js';
import type { ProblemBody } from '../shell/api.js';
import { colours } from '../shell/colours.js';
import type { Files } from '../shell/page.js';
import { messagesModule } from './messages.js';
import { formLimits, readForm } from './read-form.js';
import { type Handle, type ReadyAnswer, serveDocuments } from './serve-documents.js';
import { showPage } from './show-page.js';

const FOREIGN: ProblemBody = {
  status: 403,
  code: 'foreign-origin',
  title: '',
  detail: '',
};

/**
 * The page at `/` and its files: the same document with and without a script, made from the service's own answers.
 *
 * @param folder The build's folder of script and style sheet.
 * @param readyAnswer The service's way to pack and tag what never changes; main passes it.
 * @param options `isDemo`: every page says that its garden is invented, and leads to a town of the reader's own.
 * @param settings The settings for the page about running the service; without them its table is empty.
 */
export function servePage(
  folder: URL,
  readyAnswer: ReadyAnswer,
  settings: () => readonly Setting[] = () => [],
  { isDemo = false }: { readonly isDemo?: boolean } = {},
): FastifyPluginAsync {
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
      return showPage({ app, filesIn, isDemo, request, reply }, { said, file: null });
    });
    app.post('/', async (request, reply) => {
      const form = isSameOrigin(request)
        ? // A caller without a key is asked for one, whatever the file holds.
          await readForm(request, { isFileWanted: !needsKey(request) })
        : { said: new URLSearchParams(), file: null, problem: FOREIGN };
      return showPage({ app, filesIn, isDemo, request, reply }, form);
    });
    serveDocuments(app, readyAnswer, settings);
    const text = (kind: string, body: Buffer): Handle => readyAnswer({ type: `text/${kind}; charset=utf-8`, body });
    app.get('/page.js', underOwnAddress(files.script, text('javascript', script)));
    for (const { path, address, body } of modules) app.get(path, underOwnAddress(address, text('javascript', body)));
    app.get('/page.css', underOwnAddress(files.style, text('css', style)));
  };
}

const versionOf = (file: Buffer): string => digestOf(file, 12);

/** A file never changes under its own address; during a rolling update another build's address may be requested. */
const underOwnAddress =
  (ownAddress: string, send: Handle): Handle =>
  (request, reply) =>
    send(
      request,
      reply.header('cache-control', request.url === ownAddress ? 'public, max-age=31536000, immutable' : 'no-cache'),
    );
