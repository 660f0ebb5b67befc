import type { FastifyRequest } from 'fastify';
import { needsPast } from '../../answers/beyond.js';
import { type Forecast, forecast } from '../../answers/forecast.js';
import { type Question, seedDepthCm } from '../../answers/question.js';
import { askedByQuery, askingParameters, documented, fileParameters } from '../csv-query.js';
import { exampleCsv, exampleQuestion } from '../examples.js';
import { readFileBody } from '../file-body.js';
import { askedOfFile, inParameters, isFile, precisionOf } from '../file-request.js';
import type { LongWork } from '../long-work.js';
import { signed } from '../model.js';
import { questionOfBody, questionOfFile, zoneAsked } from '../question.js';
import { read } from '../read.js';
import type { Route } from '../route.js';
import { precisionSchema } from '../schemas/common.js';
import { askingSchema, type ForecastAnswer, forecastAnswerSchema, forecastBodySchema } from '../schemas/forecast.js';
import { bedProblems, bodyProblems } from '../usual-problems.js';
import { forecastOnWire } from '../wire-forecast.js';

/** What will this sowing do? */
export const forecastRoutes = (clock: () => Date, work: LongWork): Route[] => [
  {
    method: 'POST',
    url: '/v1/forecasts',
    operation: {
      id: 'forecast',
      summary: 'What a sowing will do: when it comes up, how much of it, and what heat does to it',
      description:
        'The body is the question as JSON, or a logger’s file as CSV with the question in the query: what loggers, stations and archives write is understood as it comes, and what cannot be known is asked. The query parameters but `precision` go only with a file.',
      query: [
        { name: 'precision', schema: precisionSchema },
        ...documented({ ...askingParameters, ...fileParameters }),
      ],
      json: { schema: forecastBodySchema, example: exampleQuestion },
      csv: { example: exampleCsv },
      answer: { schema: forecastAnswerSchema },
      problems: [...bodyProblems, ...bedProblems, 'starts-after-sowing'],
    },
    async handler(request): Promise<ForecastAnswer> {
      const { rounding, query } = precisionOf(request);
      const answered = await (isFile(request)
        ? forecastOfFile(request, query, work)
        : forecastOfBody(request, query, work));
      return signed(forecastOnWire(answered, rounding), clock());
    },
  },
];

/** Past years take seconds, anything else milliseconds. */
export const forecastOf = async (question: Question, work: LongWork): Promise<Forecast> =>
  needsPast({ ...question, depthCm: seedDepthCm(question) }) ? work.ask('forecast', question) : forecast(question);

function forecastOfBody(request: FastifyRequest, query: Record<string, unknown>, work: LongWork): Promise<Forecast> {
  askedByQuery(query, {});
  return forecastOf(questionOfBody(read(forecastBodySchema, request.body)), work);
}

async function forecastOfFile(request: FastifyRequest, query: Record<string, unknown>, work: LongWork) {
  const { asked, hints } = askedOfFile(askingSchema, askingParameters, query);
  return inParameters(askingParameters, async () =>
    forecastOf(questionOfFile(asked, await readFileBody(request, hints, zoneAsked(asked))), work),
  );
}
