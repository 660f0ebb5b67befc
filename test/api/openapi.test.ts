import { Ajv2020 } from 'ajv/dist/2020.js';
import ajvFormats from 'ajv-formats';
import { afterAll, describe, expect, test } from 'vitest';
import { errorCodes } from '../../src/basics/errors.js';
import type { CropList } from '../../src/contract/crop.js';
import { problemStatuses } from '../../src/http/problems/problems.js';
import { examplePastAir } from '../../src/http/question/examples.js';
import { FORM } from '../../src/http/server/form-body.js';
import { de } from '../../src/words/de.js';
import { en } from '../../src/words/en.js';
import { keepQuillmere, keptIds, lettuceQuestion, linkQueries, post, startApp } from './helper.js';
import { type DocumentedOperation, type OpenApiDocument, operationsOf } from './openapi-arbitraries.js';

const app = await startApp();
await app.ready();
const document: OpenApiDocument = (await app.inject('/openapi.json')).json();
const operations = operationsOf(document);
afterAll(() => app.close());

const ajv = new Ajv2020({ strict: false });
ajvFormats.default(ajv);

/** What OpenAPI 3.1 asks of a document, as far as this one goes. */
const openApiRules = {
  type: 'object',
  required: ['openapi', 'info', 'paths'],
  properties: {
    openapi: { type: 'string', pattern: '^3\\.1\\.\\d+$' },
    info: {
      type: 'object',
      required: ['title', 'version'],
      properties: { title: { type: 'string', minLength: 1 }, version: { type: 'string', minLength: 1 } },
    },
    servers: { type: 'array', items: { type: 'object', required: ['url'] } },
    paths: {
      type: 'object',
      minProperties: 1,
      propertyNames: { pattern: '^/' },
      additionalProperties: {
        type: 'object',
        propertyNames: { enum: ['get', 'put', 'post', 'delete', 'options', 'head', 'patch', 'trace'] },
        additionalProperties: { $ref: '#/$defs/operation' },
      },
    },
    components: {
      type: 'object',
      properties: {
        schemas: { type: 'object', propertyNames: { pattern: '^[\\w.-]+$' } },
        securitySchemes: { type: 'object', additionalProperties: { type: 'object', required: ['type'] } },
      },
    },
  },
  $defs: {
    operation: {
      type: 'object',
      required: ['operationId', 'summary', 'responses'],
      properties: {
        operationId: { type: 'string', pattern: '^\\w+$' },
        summary: { type: 'string', minLength: 1 },
        parameters: { type: 'array', items: { $ref: '#/$defs/parameter' } },
        requestBody: { type: 'object', required: ['content'], properties: { content: { $ref: '#/$defs/content' } } },
        responses: {
          type: 'object',
          minProperties: 1,
          propertyNames: { pattern: '^([1-5](\\d\\d|XX)|default)$' },
          additionalProperties: {
            type: 'object',
            required: ['description'],
            properties: { content: { $ref: '#/$defs/content' } },
          },
        },
        security: { type: 'array', items: { type: 'object' } },
      },
    },
    parameter: {
      type: 'object',
      required: ['name', 'in', 'schema'],
      properties: { in: { enum: ['query', 'header', 'path', 'cookie'] }, required: { type: 'boolean' } },
      anyOf: [
        { not: { properties: { in: { const: 'path' } } } },
        { required: ['required'], properties: { required: { const: true } } },
      ],
    },
    content: {
      type: 'object',
      minProperties: 1,
      propertyNames: { pattern: '^[\\w.+-]+/[\\w.+*-]+$' },
      additionalProperties: { type: 'object', required: ['schema'] },
    },
  },
};

/** Everything in a value, at any depth, that stands under a key. */
function allUnder(wanted: string, value: unknown): unknown[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, one]) => [...(key === wanted ? [one] : []), ...allUnder(wanted, one)]);
}

describe('the OpenAPI document', () => {
  test('is one of OpenAPI 3.1', () => {
    ajv.validate(openApiRules, document);
    expect(ajv.errors).toBeNull();
  });

  test('would not be one without its version, or with a path parameter that may be left out', () => {
    const { openapi: _, ...without } = document;
    const { get, ...rest } = document.paths['/v1/crops/{id}']!;
    const parameters = get!.parameters.map((parameter) => ({ ...parameter, required: false }));
    const loose = { ...document, paths: { '/v1/crops/{id}': { ...rest, get: { ...get, parameters } } } };
    expect([without, loose].map((broken) => ajv.validate(openApiRules, broken))).toEqual([false, false]);
  });

  test('holds only schemas that are JSON Schema 2020-12, and references that lead somewhere', () => {
    const schemas = allUnder('schema', document.paths).concat(Object.values(document.components.schemas));
    expect(schemas.length).toBeGreaterThan(40);
    for (const schema of schemas) expect(ajv.validateSchema(schema as object), ajv.errorsText()).toBe(true);
    const known = Object.keys(document.components.schemas).map((name) => `#/components/schemas/${name}`);
    expect(known).toEqual(expect.arrayContaining(allUnder('$ref', document)));
  });

  test('gives every operation a name of its own, and its path every parameter it speaks of', () => {
    const names = operations.map(({ operationId }) => operationId);
    expect(new Set(names).size).toBe(names.length);
    for (const { path, parameters } of operations) {
      const listed = parameters.filter(({ in: where }) => where === 'path').map(({ name }) => name);
      expect(listed).toEqual([...path.matchAll(/\{(\w+)\}/g)].map(([, name]) => name));
      expect(new Set(parameters.map(({ name }) => name)).size).toBe(parameters.length);
    }
  });

  test('has an operation for every route under /v1', () => {
    const served = routesOf(app.printRoutes({ commonPrefix: false })).filter((route) => route.includes(' /v1/'));
    const described = operations.map(({ method, path }) => `${method} ${path}`).filter((one) => one.includes(' /v1/'));
    expect(served.length).toBeGreaterThanOrEqual(4);
    expect(described.toSorted()).toEqual(served.toSorted());
  });
});

/** "GET /a/{id}" for each line of a tree of routes; HEAD, which goes with every GET, is left out. */
function routesOf(tree: string): string[] {
  const above: string[] = [];
  return tree.split('\n').flatMap((line) => {
    const [, indent, part, methods] = /^([│ ]*[├└]── )(\S+)(?: \((.*)\))?$/.exec(line) ?? [];
    if (indent === undefined || part === undefined) return [];
    const depth = indent.length / 4;
    above.splice(depth - 1, Infinity, part);
    const path = above
      .join('/')
      .replaceAll(/\/{2,}/g, '/')
      .replaceAll(/:(\w+)/g, '{$1}');
    return (methods ?? '')
      .split(', ')
      .filter((method) => method !== '' && method !== 'HEAD')
      .map((method) => `${method} ${path}`);
  });
}

/** Where an operation finds something. A place that is to be deleted must not have beds. */
function addressOf({ path, operationId }: DocumentedOperation): string {
  const [, id = 'lettuce'] = Object.entries(keptIds).find(([kind]) => path.startsWith(`/v1/${kind}/`)) ?? [];
  const known: Readonly<Record<string, string>> = {
    id: operationId === 'deletePlace' ? 'fallow' : id,
    code: 'not-json',
    date: '2027-08-03',
  };
  return path.replaceAll(/\{(\w+)\}/g, (_, name: string) => known[name]!);
}

describe('what the document shows works', () => {
  const examples = operations.flatMap((operation) =>
    Object.entries(operation.requestBody?.content ?? {})
      // Of forms: session.test.ts.
      .filter(([mediaType]) => mediaType !== FORM)
      .map(([mediaType, { example }]) => [`${operation.operationId} as ${mediaType}`, operation, example] as const),
  );
  /** What a file's example leaves to the query. */
  const asked: Readonly<Record<string, string>> = {
    forecast: '?crop=lettuce&sowing=2027-05-03',
    soilTemperatures: '?latitude=44&timeZone=Etc/GMT%2B2',
    sowingWindows: '?crop=lettuce&latitude=44&timeZone=Etc/GMT%2B2&from=2027-04-01&to=2027-06-30',
  };

  test('there are examples of JSON and of files', () => {
    expect(examples.map(([name]) => name)).toEqual(
      expect.arrayContaining(['forecast as application/json', 'forecast as text/csv', 'checkReadings as text/csv']),
    );
  });

  test.each(examples)(
    'the example of %s is answered, and the answer is as described',
    async (_, operation, example) => {
      expect(['string', 'object']).toContain(typeof example);
      const body = example as string | object;
      const query = typeof body === 'string' ? (asked[operation.operationId] ?? '') : '';
      await keepQuillmere(app);
      const response = await app.inject({
        method: operation.method,
        url: addressOf(operation) + query,
        payload: body,
        ...(typeof body === 'string' ? { headers: { 'content-type': 'text/csv' } } : {}),
      });
      if (!operation.responses['200']) {
        expect([response.statusCode, response.body]).toEqual([204, '']);
        return;
      }
      expect(response.statusCode, response.body).toBe(200);
      ajv.validate(operation.responses['200']!.content['application/json']!.schema, response.json());
      expect(ajv.errors).toBeNull();
    },
  );

  test('every operation without a body is answered as described', async () => {
    // A session is begun with a key alone, and here are none; nor does a place have a source to ask.
    const elsewhere = ['deleteSession', 'refreshAir'];
    const asked = operations.filter(({ requestBody, operationId }) => !requestBody && !elsewhere.includes(operationId));
    let isKept = false;
    for (const operation of asked) {
      const { method, responses, operationId } = operation;
      if (!isKept) {
        await keepQuillmere(app);
        // The days that lead up to the readings: a gap of a season is not filled.
        await app.inject({ method: 'POST', url: '/v1/places/quillmere/air', payload: examplePastAir });
      }
      isKept = method === 'GET';
      const url =
        operationId === 'bedCalendar'
          ? (await app.inject('/v1/beds/north')).json().calendarUrl
          : addressOf(operation) + (linkQueries[operationId] ?? '');
      const response = await app.inject({ method, url });
      if (!responses['200']) {
        expect([response.statusCode, response.body], url).toEqual([204, '']);
        continue;
      }
      expect(response.statusCode, `${url}: ${response.body}`).toBe(200);
      const [mediaType, content] = Object.entries(responses['200']!.content)[0]!;
      expect(response.headers['content-type'], url).toContain(mediaType);
      const answer: unknown = mediaType === 'application/json' ? response.json() : response.body;
      expect(ajv.validate(content.schema, answer), ajv.errorsText()).toBe(true);
    }
    // It asks thirty questions, and keeps a garden anew after each that deletes.
  }, 120_000);

  test('every crop that is listed can be asked about', async () => {
    const { crops }: CropList = (await app.inject('/v1/crops')).json();
    expect(crops.length).toBe(26);
    for (const { id } of crops) {
      const response = await post(app, '/v1/forecasts', lettuceQuestion({ crop: id }));
      expect(response.statusCode, response.body).toBe(200);
      expect(response.json().crop).toBe(id);
    }
  });

  test('every problem that an operation names has its page', async () => {
    for (const code of errorCodes) {
      const response = await app.inject(`/problems/${code}`);
      expect(response.statusCode, code).toBe(200);
      expect(response.headers['content-type']).toContain('text/html');
      expect(response.body).toContain(en[`title.${code}`]);
      expect(response.body).toContain(en[`cure.${code}`]);
    }
  });

  test('and its explanation as JSON, in the language asked for', async () => {
    const explained = (accept: string) =>
      app.inject({ url: '/problems/choose-unit', headers: { accept, 'accept-language': 'de' } });
    const response = await explained('application/json');
    expect(response.headers['content-type']).toContain('application/json');
    expect(response.headers.vary).toContain('Accept,');
    expect(response.json()).toEqual({
      type: '/problems/choose-unit',
      code: 'choose-unit',
      status: problemStatuses['choose-unit'],
      title: de['title.choose-unit'],
      cause: de['cause.choose-unit'],
      cure: de['cure.choose-unit'],
    });
    // A browser takes anything, and a page first.
    const page = await explained('text/html,application/xhtml+xml,application/json;q=0.5,*/*;q=0.8');
    expect(page.headers['content-type']).toContain('text/html');
  });
});

describe('the documentation page', () => {
  const elsewhere = (text: string): string[] =>
    (text.match(/https?:\/\/[^\s"'<>)]+/g) ?? []).filter((url) => !/^https?:\/\/www\.w3\.org\//.test(url));

  test.each(['/docs', '/docs/'])('%s and all it is made of come from here', async (url) => {
    const page = await app.inject(url);
    expect(page.statusCode).toBe(200);
    expect(page.headers['content-type']).toContain('text/html');
    expect(elsewhere(page.body)).toEqual([]);
    const assets = [...page.body.matchAll(/(?:src|href)="([^"]+)"/g)].map(([, address]) => address!);
    expect(assets.length).toBeGreaterThanOrEqual(6);
    for (const asset of assets) {
      const response = await app.inject(new URL(asset, 'http://here/docs/').pathname);
      expect(response.statusCode, asset).toBe(200);
      if (asset.endsWith('.css')) expect(elsewhere(response.body), asset).toEqual([]);
    }
  });

  test('reads the document from here, and asks no validator elsewhere', async () => {
    const { body } = await app.inject('/docs/static/swagger-initializer.js');
    expect(body).toContain("url: resolveUrl('./json')");
    expect(body).toContain('validatorUrl: null');
    expect((await app.inject('/docs/json')).json()).toEqual(document);
  });

  test('would be caught if it named another host', () => {
    expect(elsewhere('<img src="https://elsewhere.example/a.png"> xmlns="http://www.w3.org/2000/svg"')).toEqual([
      'https://elsewhere.example/a.png',
    ]);
  });
});
