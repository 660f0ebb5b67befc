import { type ErrorCode, errorCodes, RequestError } from '../../../basics/errors.js';
import { problemFact } from '../../../contract/request/problem-facts.js';
import { keptRefusal } from '../../../contract/request/refusal-facts.js';
import type { Store } from '../../../garden/store/store.js';
import type { Reader } from '../../../words/reader.js';
import { sayer } from '../../../words/say.js';
import type { Metrics } from '../../metrics/metrics.js';
import { readyAnswer, type SendReady } from '../../negotiation/ready-answer.js';
import type { Route } from '../../openapi/route.js';
import { storageProblems } from '../../problems/common-problems.js';
import { problemStatuses } from '../../problems/problems.js';

/** Health, readiness, metrics and the pages about problems. */
export const serviceRoutes = (store: Store, metrics: Metrics): Route[] => [
  {
    method: 'GET',
    url: '/healthz',
    open: true,
    operation: { id: 'health', summary: 'Is the process alive?', answer: { mediaType: 'text/plain' }, problems: [] },
    handler: (_, reply) => reply.type('text/plain').send('alive\n'),
  },
  {
    method: 'GET',
    url: '/readyz',
    open: true,
    operation: {
      id: 'ready',
      summary: 'Ready to answer questions, with its storage reachable?',
      answer: { mediaType: 'text/plain' },
      problems: [...storageProblems],
    },
    async handler(_, reply) {
      await store.ready();
      return reply.type('text/plain').send('ready\n');
    },
  },
  {
    method: 'GET',
    url: '/metrics',
    operation: {
      id: 'metrics',
      summary:
        'Requests, refusals, queues, caches, sources, deliveries, database, event loop and memory, as Prometheus reads them',
      answer: { mediaType: 'text/plain' },
      problems: ['not-acceptable'],
    },
    handler: async (_, reply) => reply.type('text/plain; version=0.0.4; charset=utf-8').send(await metrics.text()),
  },
  {
    method: 'GET',
    url: '/problems/:code',
    open: true,
    operation: {
      id: 'explainProblem',
      summary: 'The meaning of a problem, and how to mend it',
      answer: { mediaType: 'text/html' },
      problems: ['not-found'],
    },
    handler(request, reply) {
      const { code } = request.params as { code: string };
      const known = errorCodes.find((one) => one === code);
      if (!known) throw new RequestError('not-found', keptRefusal('not-found.problem', { name: code.slice(0, 60) }));
      return pageOf(known, request.reader)(request, reply);
    },
  },
];

/** A problem's page, rendered on its first request in a language. */
const pageOf = (code: ErrorCode, reader: Reader): SendReady => {
  const key = `${reader.language} ${code}`;
  const page =
    pages.get(key) ??
    readyAnswer({
      type: 'text/html; charset=utf-8',
      body: explained(code, reader),
      headers: { 'cache-control': 'no-cache', vary: 'Accept-Encoding, Accept-Language' },
    });
  pages.set(key, page);
  return page;
};
const pages = new Map<string, SendReady>();

function explained(code: ErrorCode, reader: Reader): string {
  const say = sayer(reader);
  const title = say(problemFact(`title.${code}`));
  const status = { problem: code, status: problemStatuses[code] };
  return `<!doctype html>
<html lang="${reader.language}">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<title>${title}</title>
<style>body { font: 1.1rem/1.5 Georgia, serif; max-width: 34em; margin: 3em auto; padding: 0 1em; color: #222; background: #fdfcf8 }</style>
<h1>${title}</h1>
<p>${say({ code: 'problem-page.status', params: status })}</p>
<h2>${say({ code: 'problem-page.cause', params: {} })}</h2>
<p>${say(problemFact(`cause.${code}`))}</p>
<h2>${say({ code: 'problem-page.cure', params: {} })}</h2>
<p>${say(problemFact(`cure.${code}`))}</p>
</html>
`;
}
