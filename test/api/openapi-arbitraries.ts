import fc from 'fast-check';

/** The part of JSON Schema that the service's OpenAPI document uses. */
export interface Schema {
  readonly $ref?: string;
  readonly type?: string | readonly string[];
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly anyOf?: readonly Schema[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: false;
  readonly items?: Schema;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly exclusiveMinimum?: number;
  readonly exclusiveMaximum?: number;
  readonly minLength?: number;
  readonly maxLength?: number;
  readonly pattern?: string;
  readonly format?: string;
  readonly default?: unknown;
  readonly examples?: readonly unknown[];
  readonly description?: string;
  readonly readOnly?: true;
}

/** A query or path parameter, as the document lists it. */
export interface ParameterObject {
  readonly name: string;
  readonly in: 'path' | 'query' | 'header';
  readonly required: boolean;
  readonly schema: Schema;
}

interface Content {
  readonly schema: Schema;
  readonly example?: unknown;
}

/** One operation of the document, with where it stands. */
export interface DocumentedOperation {
  readonly path: string;
  readonly method: 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE';
  readonly operationId: string;
  readonly summary: string;
  readonly parameters: readonly ParameterObject[];
  readonly requestBody?: { readonly content: Readonly<Record<string, Content>> };
  readonly responses: Readonly<Record<string, { readonly content: Readonly<Record<string, Content>> }>>;
}

export interface OpenApiDocument {
  readonly openapi: string;
  readonly paths: Readonly<Record<string, Readonly<Record<string, Omit<DocumentedOperation, 'path' | 'method'>>>>>;
  readonly components: { readonly schemas: Readonly<Record<string, Schema>> };
}

/** Every operation of the document. */
export const operationsOf = ({ paths }: OpenApiDocument): DocumentedOperation[] =>
  Object.entries(paths).flatMap(([path, byMethod]) =>
    Object.entries(byMethod).map(([method, operation]) => ({
      ...operation,
      path,
      method: method.toUpperCase() as DocumentedOperation['method'],
    })),
  );

const KNOWN_KEYWORDS = new Set<string>([
  '$ref',
  'type',
  'enum',
  'const',
  'anyOf',
  'properties',
  'required',
  'additionalProperties',
  'items',
  'minItems',
  'maxItems',
  'minimum',
  'maximum',
  'exclusiveMinimum',
  'exclusiveMaximum',
  'minLength',
  'maxLength',
  'pattern',
  'format',
  'default',
  'examples',
  'description',
  'readOnly',
]);

/** Without bounds of its own, a number stays within these. */
const LARGEST_NUMBER = 1e6;

/**
 * Values that a schema describes. A keyword not known here is an error: passed over, it would make wrong values.
 *
 * @param schema   The schema.
 * @param document Where its `$ref`s point to; references must not run in circles.
 */
export function valuesOf(schema: Schema, document: unknown = {}): fc.Arbitrary<unknown> {
  const unknown = Object.keys(schema).filter((keyword) => !KNOWN_KEYWORDS.has(keyword));
  if (unknown.length > 0) throw new Error(`no values can be made for the keyword ${unknown.join(', ')}`);
  const plain = plainValuesOf(schema, document);
  const named = [...(schema.examples ?? []), ...('default' in schema ? [schema.default] : [])];
  return named.length === 0
    ? plain
    : fc.oneof({ weight: 3, arbitrary: plain }, { weight: 1, arbitrary: fc.constantFrom(...named) });
}

function plainValuesOf(schema: Schema, document: unknown): fc.Arbitrary<unknown> {
  if (schema.$ref !== undefined) return valuesOf(resolved(schema.$ref, document), document);
  // What is left out may be anything.
  if (schema.readOnly && schema.type === undefined) return fc.constantFrom<unknown>(null, 7, 'sent back', { of: [] });
  if ('const' in schema) return fc.constant(schema.const);
  if (schema.enum) return fc.constantFrom(...schema.enum);
  if (schema.anyOf) return fc.oneof(...schema.anyOf.map((one) => valuesOf(one, document)));
  const types = typeof schema.type === 'string' ? [schema.type] : (schema.type ?? []);
  if (types.length === 0) throw new Error('no values can be made where no type is said');
  return fc.oneof(...types.map((type) => valuesOfType(type, schema, document)));
}

function valuesOfType(type: string, schema: Schema, document: unknown): fc.Arbitrary<unknown> {
  switch (type) {
    case 'null':
      return fc.constant(null);
    case 'boolean':
      return fc.boolean();
    case 'integer':
      return integers(schema);
    case 'number':
      return numbers(schema);
    case 'string':
      return texts(schema);
    case 'array':
      return lists(schema, document);
    case 'object':
      return records(schema, document);
    default:
      throw new Error(`no values can be made for the type ${type}`);
  }
}

function integers({ minimum, maximum, exclusiveMinimum, exclusiveMaximum }: Schema): fc.Arbitrary<number> {
  const min = Math.max(minimum ?? -LARGEST_NUMBER, (exclusiveMinimum ?? -Infinity) + 1);
  const max = Math.min(maximum ?? LARGEST_NUMBER, (exclusiveMaximum ?? Infinity) - 1);
  return fc.integer({ min: Math.ceil(min), max: Math.floor(max) });
}

/** Half of them in tenths, as people write; half of them to the last bit. */
function numbers({ minimum, maximum, exclusiveMinimum, exclusiveMaximum }: Schema): fc.Arbitrary<number> {
  const min = Math.max(minimum ?? -LARGEST_NUMBER, exclusiveMinimum ?? -Infinity);
  const max = Math.min(maximum ?? LARGEST_NUMBER, exclusiveMaximum ?? Infinity);
  const minExcluded = min === exclusiveMinimum;
  const maxExcluded = max === exclusiveMaximum;
  const inTenths = fc
    .integer({ min: Math.ceil(min * 10), max: Math.floor(max * 10) })
    .map((tenths) => tenths / 10)
    .filter((value) => !(minExcluded && value === min) && !(maxExcluded && value === max));
  return fc.oneof(inTenths, fc.double({ min, max, minExcluded, maxExcluded, noNaN: true }));
}

function texts({ pattern, format, minLength, maxLength }: Schema): fc.Arbitrary<string> {
  if (pattern !== undefined) return fc.stringMatching(new RegExp(pattern));
  if (format === 'date') return dates;
  const length = {
    ...(minLength === undefined ? {} : { minLength }),
    ...(maxLength === undefined ? {} : { maxLength }),
  };
  return fc.string({ ...length, unit: 'grapheme-ascii' });
}

/** Calendar dates of the years 1900 to 2199. */
export const dates: fc.Arbitrary<string> = fc
  .integer({ min: Date.UTC(1900, 0, 1) / 86_400_000, max: Date.UTC(2199, 11, 31) / 86_400_000 })
  .map((day) => new Date(day * 86_400_000).toISOString().slice(0, 10));

function lists({ items, minItems, maxItems }: Schema, document: unknown): fc.Arbitrary<unknown[]> {
  if (!items) throw new Error('no list can be made where its items are not described');
  return fc.array(valuesOf(items, document), {
    ...(minItems === undefined ? {} : { minLength: minItems }),
    ...(maxItems === undefined ? {} : { maxLength: maxItems }),
  });
}

function records({ properties = {}, required = [] }: Schema, document: unknown): fc.Arbitrary<Record<string, unknown>> {
  const fields = Object.fromEntries(Object.entries(properties).map(([key, one]) => [key, valuesOf(one, document)]));
  return fc.record(fields, { requiredKeys: [...required], noNullPrototype: true });
}

function resolved(pointer: string, document: unknown): Schema {
  const found = pointer
    .replace(/^#\/?/, '')
    .split('/')
    .map((key) => key.replaceAll('~1', '/').replaceAll('~0', '~'))
    .reduce<unknown>((value, key) => (isRecord(value) ? value[key] : undefined), document);
  if (!isRecord(found)) throw new Error(`${pointer} points to nothing`);
  return found;
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Texts that have tripped programs before. */
export const strangeTexts: fc.Arbitrary<string> = fc.oneof(
  fc.constantFrom(
    '',
    ' ',
    '\0',
    '\uFEFF',
    '\uD800',
    '\u202Etxet',
    '🌱'.repeat(60),
    'é'.repeat(300),
    'x'.repeat(5000),
    '__proto__',
    'constructor',
    'toString',
    '-0',
    'NaN',
    'Infinity',
    '1e400',
    '0x1F',
    '2027-02-30',
    '2027-08-03T24:00Z',
    '+275760-09-13',
    '../../etc/passwd',
    '%00%ff',
    "'; --",
    '<b>',
    '=1+1',
  ),
  fc.string({ unit: 'binary', maxLength: 40 }),
);

/** Numbers at the edges, small and large. */
export const strangeNumbers: fc.Arbitrary<number> = fc.oneof(
  fc.constantFrom(
    0,
    -0,
    -1,
    0.1 + 0.2,
    5e-324,
    -5e-324,
    2 ** 31,
    2 ** 53,
    -(2 ** 53) - 2,
    1e15,
    1e21,
    1e300,
    -1e300,
    Number.MAX_VALUE,
    -Number.MAX_VALUE,
  ),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
);

/** Anything JSON can say, and likely wrong wherever it stands. */
export const strangeValues: fc.Arbitrary<unknown> = fc.oneof(
  strangeTexts,
  strangeNumbers,
  fc.constantFrom<unknown>(null, true, false, [], {}, [[]], [null], { __proto__: null }, JSON.parse('{"__proto__":1}')),
);

/** One thing done to a value: `at` picks where. */
const damages = fc.record({
  at: fc.nat({ max: 10_000 }),
  what: fc.constantFrom('drop', 'add', 'replace', 'repeat'),
  key: fc.oneof(fc.constantFrom('__proto__', 'constructor', 'Crop', 'date ', 'value', ''), strangeTexts),
  value: strangeValues,
});
type Damage = typeof damages extends fc.Arbitrary<infer One> ? One : never;

/** Values of an arbitrary, each damaged in one to three places; what is damaged may by luck still be right. */
export const broken = (values: fc.Arbitrary<unknown>): fc.Arbitrary<unknown> =>
  fc
    .tuple(values, fc.array(damages, { minLength: 1, maxLength: 3 }))
    .map(([value, all]) => all.reduce(damaged, structuredClone(value)));

function damaged(root: unknown, { at, what, key, value: shared }: Damage): unknown {
  const value = structuredClone(shared);
  const places = placesIn(root);
  const place = places[at % places.length]!;
  if (what === 'drop') return place.parent ? without(root, place.parent, place.key) : undefined;
  if (what === 'add' && isRecord(place.value)) {
    Object.defineProperty(place.value, key, { value, enumerable: true, configurable: true, writable: true });
    return root;
  }
  if (what === 'repeat' && Array.isArray(place.value) && place.value.length > 0) {
    place.value.push(structuredClone(place.value[0]));
    return root;
  }
  if (!place.parent) return value;
  Object.defineProperty(place.parent, place.key, { value, enumerable: true, configurable: true, writable: true });
  return root;
}

function without(root: unknown, parent: object, key: string): unknown {
  if (Array.isArray(parent)) parent.splice(Number(key), 1);
  else Reflect.deleteProperty(parent, key);
  return root;
}

interface Place {
  readonly parent: object | null;
  readonly key: string;
  readonly value: unknown;
}

/** Every place in a value: itself first, then all that is within it. */
function placesIn(root: unknown): Place[] {
  const places: Place[] = [{ parent: null, key: '', value: root }];
  for (let i = 0; i < places.length; i++) {
    const { value } = places[i]!;
    if (typeof value !== 'object' || value === null) continue;
    for (const key of Object.keys(value)) places.push({ parent: value, key, value: Reflect.get(value, key) });
  }
  return places;
}
