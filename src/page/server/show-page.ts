import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { sessionIn } from '../../contract/request/session-cookie.js';
import { type Language, readerOf } from '../../words/reader.js';
import { askedIn, sendAgain, withRejected } from '../form/action.js';
import { linkTo, MAX_LINK, type PageQuestion, questionFrom, readingOf } from '../form/question.js';
import { isFailure, type ProblemBody, type Send, type WordsFor, wordedFor } from '../shell/api.js';
import { html } from '../shell/html.js';
import { type Inventory, loadInventory, todayAt } from '../shell/inventory.js';
import { opening } from '../shell/opening.js';
import { type Files, keyPage, page } from '../shell/page.js';
import { SHEET_PX } from '../shell/pictures.js';
import { problemNote } from '../shell/problem-note.js';
import type { AnsweredView, AskedQuestion, Rejected, View } from '../shell/view.js';
import { viewOf } from '../shell/views.js';
import type { PageReader } from '../shell/words.js';
import { welcome } from '../week/week-view.js';
import { speech } from './messages.js';
import type { PostedForm } from './read-form.js';

/** One request for the page, and what the page needs to answer it. */
export interface Visit {
  readonly app: FastifyInstance;
  readonly filesIn: (language: Language) => Files;
  readonly isDemo: boolean;
  readonly request: FastifyRequest;
  readonly reply: FastifyReply;
}

/** Widths of pictures for an unknown screen [px]. */
const WIDTHS = [344, SHEET_PX];

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

const NO_SHELF: Inventory = { crops: [], beds: [], places: [], nowMs: 0 };

/** Answers a link or a form with the page, made from the service's answers; runs the form's action first. */
export async function showPage(visit: Visit, { said, file, problem: unread }: PostedForm): Promise<FastifyReply> {
  const { app, filesIn, isDemo, request, reply } = visit;
  const isPosted = request.method === 'POST';
  const isAct = isPosted && said.has('act');
  // A question ends when its reader is gone; an action always runs to its end.
  const readBy = readingOf(isAct ? askedIn(said) : said);
  const speaking = readerOf(request.headers['accept-language'], readBy.lang || undefined);
  const readers = { ...speech(speaking.language, speaking.locale), ...speaking, degrees: readBy.degrees };
  const files = filesIn(readers.language);
  const send = sendFor(app, request, readers, isAct ? undefined : endOf(reply));
  const loaded = await loadInventory(send);
  reply.type('text/html; charset=utf-8').headers({
    'content-security-policy': POLICY,
    'cache-control': 'private, no-cache',
    vary: 'Accept-Language, Authorization, Cookie',
  });
  const shelf = isFailure(loaded) ? NO_SHELF : loaded.value;
  const question = questionFrom(isAct ? askedIn(said) : said, shelf);
  if (isFailure(loaded) && loaded.problem.status === 401) {
    return reply.send(keyPage(files, askedBy(said), said.get('key') === 'refused', readers));
  }
  const view = viewOf(question.view);
  const isOpening = !isPosted && [...said.keys()].every((name) => name === 'lang');
  const today = todayAt(shelf, question.bed, question.timeZone);
  const reader: PageReader = { ...readers, today };
  const asked: AskedQuestion = { question, file, shelf, reader, send, widths: WIDTHS };
  const finish = (
    answered: AnsweredView | null,
    wrong?: ProblemBody,
    later = null as Awaited<ReturnType<typeof laterOf>>,
  ) => {
    if (wrong) reply.code(wrong.status || 503);
    if (wrong?.retryAfterS !== undefined) reply.header('retry-after', wrong.retryAfterS);
    const form = view.form(asked);
    return reply.send(
      page({
        question,
        reader,
        view,
        asked: view.summary(asked),
        form,
        answered,
        opening: answered ? null : openingOf(question, { shelf, reader, isOpening }),
        later,
        hasKey: hasKey(request),
        isDemo,
        files,
      }),
    );
  };

  const problem = unread ?? (isFailure(loaded) ? loaded.problem : undefined);
  if (problem)
    return finish(
      { shown: html`${problemNote(problem, reader)}${isAct && sendAgain({ said, file }, reader)}` },
      problem,
    );
  let tried: Rejected | undefined;
  if (isAct) {
    const done = await view.runAction(said, asked);
    if (!isFailure(done)) {
      const { at, goesOn } = done.value;
      return reply.redirect(`${linkTo({ ...question, ...goesOn })}#${encodeURIComponent(at)}`, 303);
    }
    tried = { said, file, problem: done.problem };
  } else if (isPosted && !file && !said.has('as') && linkTo(question).length <= MAX_LINK) {
    // A reader who posts has no script that would request the rest.
    return reply.redirect(`${linkTo(question)}&whole=1`, 303);
  }
  // A visitor without a question gets the form, and nothing is worked out.
  if (isOpening) return finish(null);
  const answered = await view.answer({ ...asked, tried });
  const kept = keptAs(said.get('as'), answered, view);
  if (kept) return sendKept(reply, kept);
  const shown = tried ? { ...answered, shown: withRejected(answered?.shown, tried, reader) } : answered;
  return finish(shown, tried?.problem, isPosted || said.has('whole') ? await laterOf(shown) : null);
}

/** The week without a town asks for one; who comes without a question and keeps beds chooses among them. */
function openingOf(
  question: PageQuestion,
  { shelf, reader, isOpening }: { readonly shelf: Inventory; readonly reader: PageReader; readonly isOpening: boolean },
) {
  if (question.view === 'week') return welcome(reader);
  return isOpening && shelf.beds.length > 0 ? opening(question, shelf, reader) : null;
}

/** The question from before the key page, as a link; a form is not sent again by it. */
function askedBy(said: URLSearchParams): string {
  const query = new URLSearchParams(said.has('act') ? askedIn(said) : said);
  query.delete('key');
  return query.size === 0 || `${query}`.length > MAX_LINK ? '/' : `/?${query}`;
}

const laterOf = async (answered: AnsweredView | null) => (await answered?.later?.()) ?? null;

/** True if this browser has a session; whether it still opens anything is checked elsewhere. */
const hasKey = ({ headers }: FastifyRequest): boolean => sessionIn(headers.cookie) !== undefined;

interface Kept {
  readonly type: string;
  readonly name: string;
  readonly text: string;
}

/** The picture or the numbers as a file, if requested. */
function keptAs(form: string | null, answered: AnsweredView | null, { fileName }: View): Kept | null {
  if (form === 'svg' && answered?.picture) {
    return { type: 'image/svg+xml', name: `${fileName}.svg`, text: answered.picture() };
  }
  if (form === 'csv' && answered?.table) {
    return { type: 'text/csv; charset=utf-8', name: `${fileName}.csv`, text: answered.table() };
  }
  return null;
}

const sendKept = (reply: FastifyReply, { type, name, text }: Kept): FastifyReply =>
  reply.type(type).header('content-disposition', `attachment; filename="${name}"`).send(text);

/** Aborted once the page has been sent, or its reader is gone. */
function endOf({ raw }: FastifyReply): AbortSignal {
  const ended = new AbortController();
  if (raw.destroyed) ended.abort();
  raw.once('close', () => ended.abort());
  return ended.signal;
}

/** Sends requests to the service with the rights of the page's reader. */
const sendFor =
  (app: FastifyInstance, { headers, ip }: FastifyRequest, reader: WordsFor, ended: AbortSignal | undefined): Send =>
  async ({ method, path, json, file, isNew }) => {
    const response = await app.inject({
      method,
      url: wordedFor(path, reader),
      remoteAddress: ip,
      ...(ended ? { signal: ended } : {}),
      headers: {
        ...(headers.cookie === undefined ? {} : { cookie: headers.cookie }),
        ...(headers.authorization === undefined ? {} : { authorization: headers.authorization }),
        ...(file ? { 'content-type': 'text/csv' } : {}),
        ...(isNew ? { 'if-none-match': '*' } : {}),
      },
      ...(file ? { payload: Buffer.from(file as Uint8Array) } : json === undefined ? {} : { payload: json as object }),
    });
    return { status: response.statusCode, body: response.body === '' ? undefined : JSON.parse(response.body) };
  };
