import type { FastifyReply, FastifyRequest } from 'fastify';
import { precisionSchema } from '../../../contract/common.js';
import {
  type WindowQuery,
  type WindowReply,
  windowAnswerSchema,
  windowBodySchema,
  windowQuerySchema,
} from '../../../contract/windows.js';
import { sayer } from '../../../words/say.js';
import { asPicture, pictureOf, pictureParameters, wantsPicture } from '../../negotiation/picture.js';
import { renderWindows } from '../../negotiation/render-svg.js';
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
  windowParameters,
} from '../../question/csv-query.js';
import { answerLink, answerPost, type EndpointDefinition, type Linked, type Service } from '../../question/endpoint.js';
import { exampleWindowQuestion, exampleYearsCsv } from '../../question/examples.js';
import { precisionOf } from '../../question/file-request.js';
import { located } from '../../question/located.js';
import { windowQuestionOf } from '../../question/question.js';
import { serializeWindows } from './windows-serializer.js';

type LinkForm = Omit<EndpointDefinition<WindowQuery>, 'body'>;

const bedForm: LinkForm = {
  asking: windowQuerySchema,
  parameters: linkParameters(windowParameters),
  isAlwaysLong: true,
};
/** Of a place the bed is described. */
const placeForm: LinkForm = { ...bedForm, parameters: linkParameters(windowParameters, { describesBed: true }) };
const form: EndpointDefinition<WindowQuery> = {
  ...bedForm,
  body: windowBodySchema,
  parameters: windowParameters,
  usesTable: true,
};
/** Of a link that names its place itself. */
const freeForm: LinkForm = { ...bedForm, parameters: freeLinkParameters(windowParameters) };

/** When should I sow? */
export const sowingWindowRoutes = (service: Service): Route[] => [
  {
    method: 'POST',
    url: '/v1/sowing-windows',
    operation: {
      id: 'sowingWindows',
      summary: "When to sow: the dates of a season, judged by each date's sowing in past years",
      description:
        'The body is the question as JSON, or a file of several years as CSV with the question in the query. It needs at least three years of daily air or soil temperatures, stored or sent, or a stored place’s normals. Query parameters except `precision` are only for a file.',
      query: [
        { name: 'precision', schema: precisionSchema },
        ...documented({ ...windowParameters, ...fileParameters }),
      ],
      json: { schema: windowBodySchema, example: exampleWindowQuestion },
      csv: { example: exampleYearsCsv },
      answer: { schema: windowAnswerSchema },
      problems: [...bodyProblems, ...bedProblems],
    },
    async handler(request): Promise<Unworded<WindowReply>> {
      const { rounding, query } = precisionOf(request);
      const content = await answerPost(service, request, query, form, async (asking, read, known) => {
        const question = windowQuestionOf(asking, read, known);
        const found = await service.work.ask('windows', question, request.askedBy());
        return located(serializeWindows(found, rounding, asking.dates), question, known, rounding);
      });
      return signed(content, service.clock());
    },
  },
  {
    method: 'GET',
    url: '/v1/sowing-windows',
    operation: {
      id: 'sowingWindowsByLink',
      summary:
        'The same question as a link, for a town, coordinates, or a stored place or bed, as JSON or as a picture',
      query: [
        { name: 'precision', schema: precisionSchema },
        ...pictureParameters,
        ...documented(freeForm.parameters, ['crop']),
      ],
      answer: { schema: windowAnswerSchema, picture: true },
      problems: [...linkProblems, ...localeProblems],
    },
    handler: (request, reply) => byLink(service, request, reply, freeForm, null),
  },
  {
    method: 'GET',
    url: '/v1/beds/:id/sowing-windows',
    operation: {
      id: 'bedSowingWindows',
      summary: 'The same question as a link, for a stored bed, as JSON or as a picture',
      query: [
        { name: 'precision', schema: precisionSchema },
        ...pictureParameters,
        ...documented(bedForm.parameters, ['crop']),
      ],
      answer: { schema: windowAnswerSchema, picture: true },
      problems: linkProblems,
    },
    handler: (request, reply) => byLink(service, request, reply, bedForm, { bed: idOf(request) }),
  },
  {
    method: 'GET',
    url: '/v1/places/:id/sowing-windows',
    operation: {
      id: 'placeSowingWindows',
      summary:
        'The same question as a link, for a stored place with open ground or a described bed, as JSON or as a picture',
      query: [
        { name: 'precision', schema: precisionSchema },
        ...pictureParameters,
        ...documented(placeForm.parameters, ['crop']),
      ],
      answer: { schema: windowAnswerSchema, picture: true },
      problems: linkProblems,
    },
    handler: (request, reply) => byLink(service, request, reply, placeForm, { place: idOf(request) }),
  },
];

const idOf = (request: FastifyRequest): string => (request.params as { id: string }).id;

function byLink(
  service: Service,
  request: FastifyRequest,
  reply: FastifyReply,
  linkForm: LinkForm,
  linked: Linked | null,
): Promise<FastifyReply> {
  const { rounding, query: rest } = precisionOf(request);
  const { options, query } = pictureOf(rest, request.reader);
  return answerLink(service, request, reply, linkForm, linked, query, async (asking, read, known) => {
    const question = windowQuestionOf(asking, read, known);
    const found = await service.work.ask('windows', question, request.askedBy());
    if (wantsPicture(request)) return asPicture(renderWindows(found, known, options, sayer(request.reader)));
    const content = located(serializeWindows(found, rounding, asking.dates), question, known, rounding);
    return asJson(signed(content, known.now), request);
  });
}
