import { z } from 'zod';
import { type ErrorCode, errorCodes, RequestError } from '../../../basics/errors.js';
import { problemFact } from '../../../contract/request/problem-facts.js';
import { keptRefusal } from '../../../contract/request/refusal-facts.js';
import type { Store } from '../../../garden/store/store.js';
import type { Reader } from '../../../words/reader.js';
import { sayer } from '../../../words/say.js';
import type { Metrics } from '../../metrics/metrics.js';
import { negotiatedType } from '../../negotiation/content-negotiation.js';
import { readyAnswer, type SendReady } from '../../negotiation/ready-answer.js';
import { asJson } from '../../negotiation/written.js';
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
      answer: { mediaType: 'text/html', orJson: explanationSchema },
      problems: ['not-found'],
    },
    handler(request, reply) {
      const { code } = request.params as { code: string };
      const known = errorCodes.find((one) => one === code);
      if (!known) throw new RequestError('not-found', keptRefusal('not-found.problem', { name: code.slice(0, 60) }));
      const isJson = negotiatedType(request.headers.accept, ['text/html', JSON_TYPE]) === JSON_TYPE;
      return explanationOf(known, request.reader, isJson)(request, reply);
    },
  },
];

const JSON_TYPE = 'application/json';

const explanationSchema = z.strictObject({
  type: z.string().describe('The address of this explanation, as in a problem.'),
  code: z.enum(errorCodes),
  status: z.int(),
  title: z.string(),
  cause: z.string(),
  cure: z.string(),
});

/** A problem's explanation as a page or as JSON, made on its first request in a language. */
function explanationOf(code: ErrorCode, reader: Reader, isJson: boolean): SendReady {
  const key = `${reader.language} ${code} ${isJson}`;
  const made =
    explanations.get(key) ??
    readyAnswer({
      ...(isJson
        ? asJson(explanation(code, reader))
        : { type: 'text/html; charset=utf-8', body: explained(code, reader) }),
      headers: { 'cache-control': 'no-cache', vary: 'Accept, Accept-Encoding, Accept-Language' },
    });
  explanations.set(key, made);
  return made;
}
const explanations = new Map<string, SendReady>();

function explanation(code: ErrorCode, reader: Reader): z.infer<typeof explanationSchema> {
  const say = sayer(reader);
  return {
    type: `/problems/${code}`,
    code,
    status: problemStatuses[code],
    title: say(problemFact(`title.${code}`)),
    cause: say(problemFact(`cause.${code}`)),
    cure: say(problemFact(`cure.${code}`)),
  };
}

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
