import { z } from 'zod';
import { type ErrorCode, errorCodes } from '../../basics/errors.js';
import { paramsSchema } from '../../contract/common.js';
import { SESSION_COOKIE } from '../../contract/request/session-cookie.js';
import { quotaNames } from '../../garden/store/quotas.js';
import { SVG } from '../negotiation/picture.js';
import { readerParameters } from '../negotiation/reader.js';
import { problemStatuses } from '../problems/problems.js';
import { FORM } from '../server/form-body.js';
import { model } from './model.js';
import type { Operation, Route } from './route.js';

const problemSchema = z.strictObject({
  type: z.string().meta({ format: 'uri-reference' }),
  title: z.string(),
  status: z.number(),
  detail: z.string(),
  instance: z.string(),
  code: z.enum(errorCodes),
  messages: z.array(z.string()).optional().describe('The messages of GET /v1/messages in `detail`, in order.'),
  params: paramsSchema.optional().describe('The parameters of those messages.'),
  quota: z.enum(quotaNames).optional().describe('For quota-full: the quota.'),
  limit: z.number().optional().describe('For quota-full: its limit.'),
  used: z.number().optional().describe('For quota-full: the amount stored.'),
  errors: z
    .array(
      z.strictObject({
        pointer: z.string().optional().describe('Location in the JSON body, as a JSON pointer.'),
        parameter: z.string().optional().describe('Name of the query parameter.'),
        line: z.number().optional().describe('Line of the file.'),
        detail: z.string(),
        code: z.string().optional().describe('The message of GET /v1/messages in `detail`.'),
        params: paramsSchema.optional(),
        choices: z
          .array(
            z.strictObject({
              value: z.string().describe('Value to send as the parameter.'),
              reads: z.string(),
              consequence: z.string(),
              code: z.string().describe('With `.reads` and `.consequence` appended, the codes of those two messages.'),
              params: paramsSchema,
            }),
          )
          .optional(),
      }),
    )
    .optional(),
  'violated-policies': z
    .array(z.string())
    .optional()
    .describe('The exceeded limits, by their names in RateLimit-Policy.'),
  retryAfterS: z.number().optional().describe('As the Retry-After header: seconds to wait before the next try.'),
});

/** Describes the service's routes as an OpenAPI 3.1 document. */
export function openApiDocument(routes: readonly Route[], version: string): Record<string, unknown> {
  const paths: Record<string, Record<string, unknown>> = {};
  for (const { method, url, operation, open } of routes) {
    const path = url.replaceAll(/:(\w+)/g, '{$1}');
    paths[path] ??= {};
    paths[path][method.toLowerCase()] = describe(operation, url, open !== undefined);
  }
  return {
    openapi: '3.1.1',
    info: {
      title: 'germination-forecaster',
      version,
      summary: 'Tells a grower when a sowing will come up, how much of it, and what heat will do to it.',
      description: `Dates are calendar dates at the place, instants are RFC 3339, temperatures are in °C unless a unit is sent. Model ${model.name} ${model.version}. The guide, with examples that work: [/docs/guide](/docs/guide). How to run the service: [/docs/running](/docs/running).`,
    },
    servers: [{ url: '/' }],
    paths,
    components: {
      schemas: { Problem: schemaOf(problemSchema, 'output') },
      securitySchemes: {
        key: { type: 'http', scheme: 'bearer', description: 'Only if the service was started with API_KEYS.' },
        session: {
          type: 'apiKey',
          in: 'cookie',
          name: SESSION_COOKIE,
          description:
            'The cookie that POST /session sets for a key. Changes are accepted only from pages of this service.',
        },
      },
    },
  };
}

function describe(operation: Operation, url: string, open: boolean) {
  const pathParameters = [...url.matchAll(/:(\w+)/g)].map(([, name]) => ({
    name,
    in: 'path',
    required: true,
    schema: { type: 'string', maxLength: 100 },
  }));
  const isWorded = typeof operation.answer === 'object' && 'schema' in operation.answer;
  const queryParameters = [...(operation.query ?? []), ...(isWorded ? readerParameters : [])].map(
    ({ name, schema, required, description }) => ({
      name,
      in: 'query',
      required: required ?? false,
      ...(description ? { description } : {}),
      schema: schemaOf(schema, 'input'),
    }),
  );
  const json = operation.json && {
    schema: withReadOnly(schemaOf(operation.json.schema, 'input'), operation.json.readOnly ?? []),
    example: operation.json.example,
  };
  const content = {
    ...(json ? { 'application/json': json } : {}),
    ...(json && operation.form ? { [FORM]: json } : {}),
    ...(operation.csv ? { 'text/csv': { schema: { type: 'string' }, example: operation.csv.example } } : {}),
  };
  return {
    operationId: operation.id,
    summary: operation.summary,
    ...(operation.description ? { description: operation.description } : {}),
    parameters: [
      ...pathParameters,
      ...queryParameters,
      ...(operation.ifMatch ? [IF_MATCH] : []),
      ...(operation.ifNoneMatch ? [IF_NONE_MATCH] : []),
    ],
    ...(operation.json || operation.csv ? { requestBody: { required: true, content } } : {}),
    security: open ? [] : [{ key: [] }, { session: [] }, {}],
    responses: {
      ...successes(operation.answer),
      ...(operation.form ? { 303: { description: 'For a form: redirect to the page.' } } : {}),
      '4XX': {
        description: problemList(operation.problems),
        content: { 'application/problem+json': { schema: { $ref: '#/components/schemas/Problem' } } },
      },
    },
  };
}

/** A body's schema with further fields that are accepted and ignored. */
const withReadOnly = (schema: Record<string, unknown>, names: readonly string[]): Record<string, unknown> => ({
  ...schema,
  ...(names.length === 0
    ? {}
    : {
        properties: {
          ...(schema.properties as object),
          ...Object.fromEntries(
            names.map((name) => [name, { readOnly: true, description: 'Accepted but not stored.' }]),
          ),
        },
      }),
});

const IF_MATCH = {
  name: 'If-Match',
  in: 'header',
  required: false,
  description:
    "The resource's revision in quotes, or an ETag from a GET or a change: the change is made only if it still matches, otherwise 412.",
  schema: { type: 'string' },
};

const IF_NONE_MATCH = {
  name: 'If-None-Match',
  in: 'header',
  required: false,
  description: '`*`: create only; 412 if the name is taken.',
  schema: { type: 'string' },
};

function successes(answer: Operation['answer']) {
  if (answer === 'none') return { 204: { description: 'Done.' } };
  const content =
    'schema' in answer
      ? {
          'application/json': { schema: schemaOf(answer.schema, 'output') },
          ...(answer.picture ? { [SVG]: { schema: { type: 'string' } } } : {}),
        }
      : {
          [answer.mediaType]: { schema: { type: 'string' } },
          ...(answer.orJson ? { 'application/json': { schema: schemaOf(answer.orJson, 'output') } } : {}),
        };
  const created = 'schema' in answer && answer.mayCreate ? { 201: { description: 'Created.', content } } : {};
  const accepted = 'schema' in answer && answer.mayTakeLonger ? { 202: { description: 'Under way.', content } } : {};
  return { 200: { description: 'The answer.', content }, ...created, ...accepted };
}

/** Problems that any route may answer with. */
const anywhere = ['unauthorized', 'too-many-requests', 'stopping'] as const satisfies readonly ErrorCode[];

const problemList = (codes: readonly ErrorCode[]): string =>
  `A problem: ${[...codes, ...anywhere, ...(codes.includes('busy') ? (['too-much-at-once'] as const) : [])].map((code) => `${problemStatuses[code]} ${code}`).join(', ')}.`;

function schemaOf(schema: z.ZodType, io: 'input' | 'output'): Record<string, unknown> {
  const { $schema: _, ...rest } = z.toJSONSchema(schema, { io, target: 'draft-2020-12' });
  return rest;
}
