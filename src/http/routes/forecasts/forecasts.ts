import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { needsPast } from '../../../answers/forecast/extrapolation.js';
import { type Forecast, forecast } from '../../../answers/forecast/forecast.js';
import { type Question, seedDepthCm } from '../../../answers/question.js';
import { hourReadings } from '../../../answers/soil/hour-readings.js';
import type { Zone } from '../../../basics/calendar.js';
import { precisionSchema } from '../../../contract/common.js';
import {
  type ForecastAnswer,
  type ForecastQuery,
  forecastAnswerSchema,
  forecastBodySchema,
  forecastQuerySchema,
} from '../../../contract/forecast.js';
import { lessonsOf } from '../../../garden/sowing/known-sowing.js';
import { ownerOf } from '../../auth/owner.js';
import { asPicture, pictureOf, pictureParameters, wantsPicture } from '../../negotiation/picture.js';
import { renderForecast } from '../../negotiation/render-svg.js';
import type { Rounding } from '../../negotiation/rounding.js';
import type { Unworded } from '../../negotiation/worded.js';
import { asJson } from '../../negotiation/written.js';
import { signed } from '../../openapi/model.js';
import type { QueryParameter, Route } from '../../openapi/route.js';
import { bedProblems, bodyProblems, linkProblems, localeProblems } from '../../problems/common-problems.js';
import {
  askingParameters,
  documented,
  fileParameters,
  freeLinkParameters,
  linkParameters,
} from '../../question/csv-query.js';
import { answerLink, answerPost, type EndpointDefinition, type Linked, type Service } from '../../question/endpoint.js';
import { exampleCsv, exampleQuestion } from '../../question/examples.js';
import { precisionOf } from '../../question/file-request.js';
import { located } from '../../question/located.js';
import { type Known, questionOf } from '../../question/question.js';
import { read } from '../../question/read.js';
import { serializeHours } from '../soil/soil-serializer.js';
import { serializeForecast } from './forecast-serializer.js';

const form: EndpointDefinition<ForecastQuery> = {
  body: forecastBodySchema,
  asking: forecastQuerySchema,
  parameters: askingParameters,
};
const linkForm = { asking: forecastQuerySchema, parameters: linkParameters(askingParameters) };
/** Of a link that names its place itself. */
const freeForm = { asking: forecastQuerySchema, parameters: freeLinkParameters(askingParameters) };

/** Parameters that say how any answer is written. */
const writtenParameters: readonly QueryParameter[] = [
  { name: 'precision', schema: precisionSchema },
  {
    name: 'hourly',
    schema: z.boolean().default(false),
    description: 'true: include hourly temperatures at the seed.',
  },
];

/** The routes of forecasts. */
export const forecastRoutes = (service: Service): Route[] => [
  {
    method: 'POST',
    url: '/v1/forecasts',
    operation: {
      id: 'forecast',
      summary: 'Forecast of a sowing: when it comes up, how much of it, and the effect of heat',
      description:
        'The body is the question as JSON, or a logger’s file as CSV with the question in the query. Files of loggers, stations and archives are read as they are, and the service asks about what they leave open. A stored bed’s readings and its place’s air are used; temperatures sent overlay them. Query parameters except `precision` and `hourly` are only for a file.',
      query: [...writtenParameters, ...documented({ ...askingParameters, ...fileParameters })],
      json: { schema: forecastBodySchema, example: exampleQuestion },
      csv: { example: exampleCsv },
      answer: { schema: forecastAnswerSchema },
      problems: [...bodyProblems, ...bedProblems, 'starts-after-sowing'],
    },
    async handler(request): Promise<Unworded<ForecastAnswer>> {
      const { write, query, rounding } = writtenAs(request);
      const answered = await answerPost(service, request, query, form, async (asking, sent, known) => {
        const question = questionOf(asking, sent, known);
        const content = write(await forecastOf(service, request, asking, question, known), question.site.zone);
        return located(content, question, known, rounding);
      });
      return signed(answered, service.clock());
    },
  },
  {
    method: 'GET',
    url: '/v1/beds/:id/forecast',
    operation: {
      id: 'bedForecast',
      summary: 'The same question as a link, for a stored bed, as JSON or as a picture',
      query: [...writtenParameters, ...pictureParameters, ...documented(linkForm.parameters, ['crop', 'sowing'])],
      answer: { schema: forecastAnswerSchema, picture: true },
      problems: [...linkProblems, 'starts-after-sowing'],
    },
    handler: (request, reply) =>
      byLink(service, request, reply, linkForm, { bed: (request.params as { id: string }).id }),
  },
  {
    method: 'GET',
    url: '/v1/forecasts',
    operation: {
      id: 'forecastByLink',
      summary:
        'The same question as a link, for a town, coordinates, or a stored place or bed, as JSON or as a picture',
      query: [...writtenParameters, ...pictureParameters, ...documented(freeForm.parameters, ['crop', 'sowing'])],
      answer: { schema: forecastAnswerSchema, picture: true },
      problems: [...linkProblems, ...localeProblems, 'starts-after-sowing'],
    },
    handler: (request, reply) => byLink(service, request, reply, freeForm, null),
  },
];

function byLink(
  service: Service,
  request: FastifyRequest,
  reply: FastifyReply,
  linked: typeof linkForm,
  named: Linked | null,
): Promise<FastifyReply> {
  const { write, query: rest, rounding } = writtenAs(request);
  const { options, query } = pictureOf(rest, request.reader);
  return answerLink(service, request, reply, linked, named, query, async (asking, sent, known) => {
    const question = questionOf(asking, sent, known);
    const answered = await forecastOf(service, request, asking, question, known);
    if (wantsPicture(request)) return asPicture(renderForecast(answered, known, options));
    const content = located(write(answered, question.site.zone), question, known, rounding);
    return asJson(signed(content, known.now), request);
  });
}

/** The serializer that the query requests, and the rest of the query. */
function writtenAs(request: FastifyRequest) {
  const { rounding, query } = precisionOf(request);
  const { hourly, ...rest } = query;
  const isHourly = read(z.enum(['true', 'false']).default('false'), hourly, () => ({ parameter: 'hourly' })) === 'true';
  const write = (answered: Forecast, zone: Zone): ForecastContent => ({
    ...serializeForecast(answered, rounding),
    ...(isHourly ? { hourly: serializeHourly(answered, zone, rounding) } : {}),
  });
  return { write, query: rest, rounding };
}

type ForecastContent = Omit<Unworded<ForecastAnswer>, 'model' | 'issuedAt'>;

const serializeHourly = (
  { hours, sowing }: Forecast,
  zone: Zone,
  rounding: Rounding,
): Unworded<ForecastAnswer>['hourly'] => hours && serializeHours(sowing.depthCm, hourReadings(hours), zone, rounding);

/** Past years take seconds, and so may a bed with counts; anything else takes milliseconds. */
async function forecastOf(
  { work, store }: Service,
  request: FastifyRequest,
  asking: ForecastQuery,
  question: Question,
  known: Known,
): Promise<Forecast> {
  const bed = known.kept?.bed;
  const others = bed ? await lessonsOf(store, ownerOf(request), bed.id, { crop: asking.crop, method: 'direct' }) : [];
  if (others.length > 0) {
    return (await work.ask('growing', { ...question, lotId: null, counts: [], others }, request.askedBy())).forecast;
  }
  return needsPast({ ...question, depthCm: seedDepthCm(question) })
    ? work.ask('forecast', question, request.askedBy())
    : forecast(question);
}
