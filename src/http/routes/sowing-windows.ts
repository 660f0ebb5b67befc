import type { FastifyRequest } from 'fastify';
import type { SowingWindows } from '../../answers/sowing-windows.js';
import { askedByQuery, documented, fileParameters, windowParameters } from '../csv-query.js';
import { exampleWindowQuestion, exampleYearsCsv } from '../examples.js';
import { readFileBody } from '../file-body.js';
import { askedOfFile, inParameters, isFile, precisionOf } from '../file-request.js';
import type { LongWork } from '../long-work.js';
import { signed } from '../model.js';
import { windowQuestionOfBody, windowQuestionOfFile, zoneAsked } from '../question.js';
import { read } from '../read.js';
import type { Route } from '../route.js';
import { precisionSchema } from '../schemas/common.js';
import { type WindowAnswer, windowAnswerSchema, windowAskingSchema, windowBodySchema } from '../schemas/windows.js';
import { bedProblems, bodyProblems } from '../usual-problems.js';
import { windowsOnWire } from '../wire-windows.js';

/** When should I sow? */
export const sowingWindowRoutes = (clock: () => Date, work: LongWork): Route[] => [
  {
    method: 'POST',
    url: '/v1/sowing-windows',
    operation: {
      id: 'sowingWindows',
      summary: 'When to sow: the dates of a season, judged by what each would have done in past years',
      description:
        'The body is the question as JSON, or a file of several years as CSV with the question in the query. Three years or more of daily air temperatures are needed, or of soil. The query parameters but `precision` go only with a file.',
      query: [
        { name: 'precision', schema: precisionSchema },
        ...documented({ ...windowParameters, ...fileParameters }),
      ],
      json: { schema: windowBodySchema, example: exampleWindowQuestion },
      csv: { example: exampleYearsCsv },
      answer: { schema: windowAnswerSchema },
      problems: [...bodyProblems, ...bedProblems],
    },
    async handler(request): Promise<WindowAnswer> {
      const { rounding, query } = precisionOf(request);
      const now = clock();
      const found = await (isFile(request) ? ofFile(request, query, now, work) : ofBody(request, query, now, work));
      return signed(windowsOnWire(found, rounding), now);
    },
  },
];

function ofBody(
  request: FastifyRequest,
  query: Record<string, unknown>,
  now: Date,
  work: LongWork,
): Promise<SowingWindows> {
  askedByQuery(query, {});
  return work.ask('windows', windowQuestionOfBody(read(windowBodySchema, request.body), now));
}

async function ofFile(
  request: FastifyRequest,
  query: Record<string, unknown>,
  now: Date,
  work: LongWork,
): Promise<SowingWindows> {
  const { asked, hints } = askedOfFile(windowAskingSchema, windowParameters, query);
  return inParameters(windowParameters, async () =>
    work.ask('windows', windowQuestionOfFile(asked, await readFileBody(request, hints, zoneAsked(asked)), now)),
  );
}
