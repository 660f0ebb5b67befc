import type { FastifyReply, FastifyRequest } from 'fastify';
import { needsPast } from '../../../answers/forecast/extrapolation.js';
import { type SoilQuestion, soilTemperatures } from '../../../answers/soil/soil-temperatures.js';
import { precisionSchema } from '../../../contract/common.js';
import {
  type SoilAnswer,
  type SoilQuery,
  soilAnswerSchema,
  soilBodySchema,
  soilQuerySchema,
} from '../../../contract/soil.js';
import type { AskedBy, WorkerPool } from '../../../worker/worker-pool.js';
import type { Rounding } from '../../negotiation/rounding.js';
import type { Unworded } from '../../negotiation/worded.js';
import { asJson } from '../../negotiation/written.js';
import { signed } from '../../openapi/model.js';
import type { Route } from '../../openapi/route.js';
import { bedProblems, bodyProblems, linkProblems, localeProblems } from '../../problems/common-problems.js';
import {
  documented,
  fileParameters,
  freeLinkParameters,
  linkParameters,
  soilParameters,
} from '../../question/csv-query.js';
import { answerLink, answerPost, type EndpointDefinition, type Linked, type Service } from '../../question/endpoint.js';
import { exampleAirCsv, exampleSoilQuestion } from '../../question/examples.js';
import { precisionOf } from '../../question/file-request.js';
import { located } from '../../question/located.js';
import { type Known, soilQuestionOf } from '../../question/question.js';
import { serializeSoil } from './soil-serializer.js';

const form: EndpointDefinition<SoilQuery> = {
  body: soilBodySchema,
  asking: soilQuerySchema,
  parameters: soilParameters,
};
const linkForm = { asking: soilQuerySchema, parameters: linkParameters(soilParameters) };
/** Of a link that names its place itself. */
const freeForm = { asking: soilQuerySchema, parameters: freeLinkParameters(soilParameters) };

/** The routes of soil temperatures at a depth. */
export const soilTemperatureRoutes = (service: Service): Route[] => [
  {
    method: 'POST',
    url: '/v1/soil-temperatures',
    operation: {
      id: 'soilTemperatures',
      summary: 'Soil temperatures at a depth in a bed, from air, from probes at any depth, or both',
      description:
        'The body is the question as JSON, or a logger’s file as CSV with the question in the query. The answer’s series can be sent back as temperatures. A stored bed’s readings and its place’s air are used; temperatures sent overlay them. Query parameters except `precision` are only for a file.',
      query: [{ name: 'precision', schema: precisionSchema }, ...documented({ ...soilParameters, ...fileParameters })],
      json: { schema: soilBodySchema, example: exampleSoilQuestion },
      csv: { example: exampleAirCsv },
      answer: { schema: soilAnswerSchema },
      problems: [...bodyProblems, ...bedProblems],
    },
    async handler(request): Promise<Unworded<SoilAnswer>> {
      const { rounding, query } = precisionOf(request);
      const content = await answerPost(service, request, query, form, (asking, read, known) =>
        soilOf(soilQuestionOf(asking, read, known), known, service.work, request.askedBy(), rounding),
      );
      return signed(content, service.clock());
    },
  },
  {
    method: 'GET',
    url: '/v1/beds/:id/soil-temperatures',
    operation: {
      id: 'bedSoilTemperatures',
      summary: 'The same question as a link, for a stored bed',
      query: [{ name: 'precision', schema: precisionSchema }, ...documented(linkForm.parameters)],
      answer: { schema: soilAnswerSchema },
      problems: linkProblems,
    },
    handler(request, reply) {
      const { id } = request.params as { id: string };
      return byLink(service, request, reply, linkForm, { bed: id });
    },
  },
  {
    method: 'GET',
    url: '/v1/soil-temperatures',
    operation: {
      id: 'soilTemperaturesByLink',
      summary: 'The same question as a link, for a town, coordinates, or a stored place or bed',
      query: [{ name: 'precision', schema: precisionSchema }, ...documented(freeForm.parameters)],
      answer: { schema: soilAnswerSchema },
      problems: [...linkProblems, ...localeProblems],
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
  const { rounding, query } = precisionOf(request);
  return answerLink(service, request, reply, linked, named, query, async (asking, read, known) => {
    const question = soilQuestionOf(asking, read, known);
    const content = await soilOf(question, known, service.work, request.askedBy(), rounding);
    return asJson(signed(content, known.now), request);
  });
}

/** Past years take seconds, anything else milliseconds. */
async function soilOf(question: SoilQuestion, known: Known, work: WorkerPool, by: AskedBy, rounding: Rounding) {
  const answer = needsPast(question) ? await work.ask('soil', question, by) : soilTemperatures(question);
  return located(serializeSoil(answer, question.site.zone, rounding), question, known, rounding);
}
