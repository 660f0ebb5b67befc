import type { FastifyRequest } from 'fastify';
import { needsPast } from '../../answers/beyond.js';
import { type Forecast, forecast } from '../../answers/forecast.js';
import { seedDepthCm } from '../../answers/question.js';
import { lessonsOf } from '../../garden/known-sowing.js';
import { answerLinked, answerPosted, type Form, type Service } from '../asking.js';
import { askingParameters, documented, fileParameters, linkParameters } from '../csv-query.js';
import { forecastDrawn } from '../drawn.js';
import { exampleCsv, exampleQuestion } from '../examples.js';
import { precisionOf } from '../file-request.js';
import { signed } from '../model.js';
import { ownerOf } from '../owner.js';
import { asPicture, pictureOf, pictureParameters, wantsPicture } from '../picture.js';
import { type Known, questionOf, type Read } from '../question.js';
import type { Route } from '../route.js';
import { precisionSchema } from '../schemas/common.js';
import {
  type Asking,
  askingSchema,
  type ForecastAnswer,
  forecastAnswerSchema,
  forecastBodySchema,
} from '../schemas/forecast.js';
import { bedProblems, bodyProblems, linkProblems } from '../usual-problems.js';
import { forecastOnWire } from '../wire-forecast.js';

const form: Form<Asking> = { body: forecastBodySchema, asking: askingSchema, parameters: askingParameters };
const linkForm = { asking: askingSchema, parameters: linkParameters(askingParameters) };

/** What will this sowing do? */
export const forecastRoutes = (service: Service): Route[] => [
  {
    method: 'POST',
    url: '/v1/forecasts',
    operation: {
      id: 'forecast',
      summary: 'What a sowing will do: when it comes up, how much of it, and what heat does to it',
      description:
        'The body is the question as JSON, or a logger’s file as CSV with the question in the query: what loggers, stations and archives write is understood as it comes, and what cannot be known is asked. A kept bed’s readings and its place’s air are used; what is sent is laid over them. The query parameters but `precision` go only with a file.',
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
      const answered = await answerPosted(service, request, query, form, (asking, read, known) =>
        forecastOf(service, request, asking, read, known),
      );
      return signed(forecastOnWire(answered, rounding), service.clock());
    },
  },
  {
    method: 'GET',
    url: '/v1/beds/:id/forecast',
    operation: {
      id: 'bedForecast',
      summary: 'The same question as a link: what a sowing in a kept bed will do, as JSON or as a picture',
      query: [
        { name: 'precision', schema: precisionSchema },
        ...pictureParameters,
        ...documented(linkForm.parameters, ['crop', 'sowing']),
      ],
      answer: { schema: forecastAnswerSchema, picture: true },
      problems: [...linkProblems, 'starts-after-sowing'],
    },
    handler(request, reply) {
      const { rounding, query: rest } = precisionOf(request);
      const { options, query } = pictureOf(rest);
      const { id } = request.params as { id: string };
      return answerLinked(service, request, reply, linkForm, { bed: id }, query, async (asking, read, known) => {
        const answered = await forecastOf(service, request, asking, read, known);
        return wantsPicture(request)
          ? asPicture(reply, forecastDrawn(answered, known, options))
          : signed(forecastOnWire(answered, rounding), known.now);
      });
    },
  },
];

/** Past years take seconds, as what a bed's counts have taught may; anything else takes milliseconds. */
async function forecastOf(
  { work, store }: Service,
  request: FastifyRequest,
  asking: Asking,
  read: readonly Read[],
  known: Known,
): Promise<Forecast> {
  const question = questionOf(asking, read, known);
  const bed = known.kept?.bed;
  const others = bed ? await lessonsOf(store, ownerOf(request), bed.id, { crop: asking.crop, method: 'direct' }) : [];
  if (others.length > 0) {
    return (await work.ask('growing', { ...question, lotId: null, counts: [], others })).forecast;
  }
  return needsPast({ ...question, depthCm: seedDepthCm(question) })
    ? work.ask('forecast', question)
    : forecast(question);
}
