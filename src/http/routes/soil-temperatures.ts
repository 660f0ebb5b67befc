import type { FastifyRequest } from 'fastify';
import { needsPast } from '../../answers/beyond.js';
import { type SoilQuestion, type SoilTemperatures, soilTemperatures } from '../../answers/soil-temperatures.js';
import type { Zone } from '../../basics/calendar.js';
import { askedByQuery, documented, fileParameters, soilParameters } from '../csv-query.js';
import { exampleAirCsv, exampleSoilQuestion } from '../examples.js';
import { readFileBody } from '../file-body.js';
import { askedOfFile, inParameters, isFile, precisionOf } from '../file-request.js';
import type { LongWork } from '../long-work.js';
import { signed } from '../model.js';
import { soilQuestionOfBody, soilQuestionOfFile, zoneAsked } from '../question.js';
import { read } from '../read.js';
import type { Route } from '../route.js';
import { precisionSchema } from '../schemas/common.js';
import { type SoilAnswer, soilAnswerSchema, soilAskingSchema, soilBodySchema } from '../schemas/soil.js';
import { bedProblems, bodyProblems } from '../usual-problems.js';
import { soilOnWire } from '../wire-soil.js';

/** How warm is it at the seed? */
export const soilTemperatureRoutes = (clock: () => Date, work: LongWork): Route[] => [
  {
    method: 'POST',
    url: '/v1/soil-temperatures',
    operation: {
      id: 'soilTemperatures',
      summary: 'How warm the soil is at a depth of a bed: from air, from probes at any depth, or from both',
      description:
        'The body is the question as JSON, or a logger’s file as CSV with the question in the query. The answer’s series can be sent back as temperatures. The query parameters but `precision` go only with a file.',
      query: [{ name: 'precision', schema: precisionSchema }, ...documented({ ...soilParameters, ...fileParameters })],
      json: { schema: soilBodySchema, example: exampleSoilQuestion },
      csv: { example: exampleAirCsv },
      answer: { schema: soilAnswerSchema },
      problems: [...bodyProblems, ...bedProblems],
    },
    async handler(request): Promise<SoilAnswer> {
      const { rounding, query } = precisionOf(request);
      const { answer, zone } = await (isFile(request) ? ofFile(request, query, work) : ofBody(request, query, work));
      return signed(soilOnWire(answer, zone, rounding), clock());
    },
  },
];

interface Answered {
  readonly answer: SoilTemperatures;
  readonly zone: Zone;
}

/** Past years take seconds, anything else milliseconds. */
export const soilOf = async (question: SoilQuestion, work: LongWork): Promise<Answered> => ({
  answer: needsPast(question) ? await work.ask('soil', question) : soilTemperatures(question),
  zone: question.site.zone,
});

function ofBody(request: FastifyRequest, query: Record<string, unknown>, work: LongWork): Promise<Answered> {
  askedByQuery(query, {});
  return soilOf(soilQuestionOfBody(read(soilBodySchema, request.body)), work);
}

async function ofFile(request: FastifyRequest, query: Record<string, unknown>, work: LongWork): Promise<Answered> {
  const { asked, hints } = askedOfFile(soilAskingSchema, soilParameters, query);
  return inParameters(soilParameters, async () =>
    soilOf(soilQuestionOfFile(asked, await readFileBody(request, hints, zoneAsked(asked))), work),
  );
}
