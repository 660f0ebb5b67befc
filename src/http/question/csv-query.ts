import { z } from 'zod';
import { type Fault, notUnderstood } from '../../basics/errors.js';
import type { Fact } from '../../basics/fact.js';
import { fieldFact } from '../../basics/field-facts.js';
import { monthDaySchema } from '../../contract/climate.js';
import { dateSchema, idSchema, timeSchema, timeZoneSchema } from '../../contract/common.js';
import { beyondSchema, climateChoiceSchema, placeSchema, questionShape } from '../../contract/forecast.js';
import { dateOrders } from '../../readings/time/date-order.js';
import { bedKinds, covers, moistures } from '../../seedbed/bed.js';
import type { QueryParameter } from '../openapi/route.js';

/** A query parameter's type, and its path in the JSON question. */
interface Parameter {
  readonly path: readonly string[];
  readonly schema: z.ZodType;
  readonly isNumber?: true;
  readonly isFlag?: true;
}

const text = (path: string, schema: z.ZodType = z.string()): Parameter => ({ path: path.split('.'), schema });
const number = (path: string, schema: z.ZodType = z.number()): Parameter => ({
  path: path.split('.'),
  schema,
  isNumber: true,
});

const flag = (path: string): Parameter => ({ path: path.split('.'), schema: z.boolean(), isFlag: true });

const latitude = number('where.place.latitude', z.number().min(-90).max(90));
const longitude = number('where.place.longitude', z.number().min(-180).max(180));
const timeZone = text('where.place.timeZone', timeZoneSchema);

/** Properties of a bed, by their full names. */
const bedParameters: Parameters = {
  'where.bed.kind': text('where.bed.kind', z.enum(bedKinds)),
  'where.bed.cover': text('where.bed.cover', z.enum(covers)),
  'where.bed.moisture': text('where.bed.moisture', z.enum(moistures)),
  'where.bed.shadePercent': number('where.bed.shadePercent', z.number().min(0).max(100)),
  'where.bed.roomC': number('where.bed.roomC', z.number().min(-10).max(50)),
  'where.bed.wettedOn': text('where.bed.wettedOn', dateSchema),
};

/** Place and bed of a file's question, by full name, or by id if stored. */
const whereParameters: Parameters = {
  'where.place': text('where.place', idSchema),
  'where.bed': text('where.bed', idSchema),
  'where.place.near': text('where.place.near', placeSchema.shape.near.unwrap()),
  'where.place.elevationM': number('where.place.elevationM', placeSchema.shape.elevationM.unwrap()),
  'where.place.lastFrostAround': text('where.place.lastFrostAround', monthDaySchema),
  'where.place.firstFrostAround': text('where.place.firstFrostAround', monthDaySchema),
  'where.place.annualRainMm': number('where.place.annualRainMm', z.number().min(0).max(20_000)),
  ...bedParameters,
};

/** Parameters of a file's question: short names first, the others by their full name. */
export const askingParameters: Parameters = {
  crop: text('crop', idSchema),
  sowing: text('sowing.date', dateSchema),
  depthCm: number('sowing.depthCm', z.number().min(0).max(30)),
  seeds: number('sowing.seeds', z.int().min(1).max(10_000_000)),
  timeZone,
  latitude,
  longitude,
  beyond: text('beyond', beyondSchema),
  'sowing.time': text('sowing.time', timeSchema),
  ...whereParameters,
  'lot.germinationPercent': number('lot.germinationPercent', z.number().min(0).max(100)),
  'lot.testedOn': text('lot.testedOn', dateSchema),
  'lot.hotLimitShiftC': number('lot.hotLimitShiftC', z.number().min(-8).max(8)),
  timeFactor: number('timeFactor', questionShape.timeFactor.unwrap()),
  standFactor: number('standFactor', z.number().min(0).max(1)),
  'standFactor.from': number('standFactor.from', z.number().min(0).max(1)),
  'standFactor.to': number('standFactor.to', z.number().min(0).max(1)),
  countDays: number('countDays', questionShape.countDays.unwrap()),
  climate: text('climate', climateChoiceSchema),
};

/** Parameters of soil temperatures. */
export const soilParameters: Parameters = {
  crop: text('crop', idSchema),
  depthCm: number('depthCm', z.number().min(0).max(30)),
  from: text('from', dateSchema),
  to: text('to', dateSchema),
  step: text('step', z.enum(['day', 'hour'])),
  timeZone,
  latitude,
  longitude,
  beyond: text('beyond', beyondSchema),
  climate: text('climate', climateChoiceSchema),
  ...whereParameters,
};

/** Parameters of sowing windows. */
export const windowParameters: Parameters = {
  crop: text('crop', idSchema),
  depthCm: number('sowing.depthCm', z.number().min(0).max(30)),
  seeds: number('sowing.seeds', z.int().min(1).max(10_000_000)),
  'sowing.time': text('sowing.time', timeSchema),
  from: text('from', dateSchema),
  to: text('to', dateSchema),
  share: number('share', z.number().min(0.01).max(1)),
  shareIfHeld: number('shareIfHeld', z.number().min(0.01).max(1)),
  maxDays: number('maxDays', z.int().min(1).max(120)),
  sureness: number('sureness', z.number().min(0.01).max(1)),
  prefer: text('prefer', z.enum(['earliest', 'surest'])),
  judge: text('judge', z.enum(['harvest', 'emergence'])),
  dates: flag('dates'),
  timeZone,
  latitude,
  longitude,
  ...whereParameters,
  'lot.germinationPercent': number('lot.germinationPercent', z.number().min(0).max(100)),
  'lot.hotLimitShiftC': number('lot.hotLimitShiftC', z.number().min(-8).max(8)),
  timeFactor: number('timeFactor', questionShape.timeFactor.unwrap()),
  climate: text('climate', climateChoiceSchema),
};

/** Parameters of a question by link, without the place, and without the bed unless the link `describesBed`. */
export function linkParameters(parameters: Parameters, { describesBed = false } = {}): Parameters {
  return Object.fromEntries(
    Object.entries(parameters).filter(
      ([name, { path }]) => path[0] !== 'where' || (describesBed && Object.hasOwn(bedParameters, name)),
    ),
  );
}

/** Short names of the place and the bed in a link; all others go by their full name. */
const SHORT: Readonly<Record<string, string>> = {
  bed: 'where.bed',
  place: 'where.place',
  near: 'where.place.near',
  elevationM: 'where.place.elevationM',
  lastFrostAround: 'where.place.lastFrostAround',
  firstFrostAround: 'where.place.firstFrostAround',
  annualRainMm: 'where.place.annualRainMm',
  kind: 'where.bed.kind',
  cover: 'where.bed.cover',
  moisture: 'where.bed.moisture',
  shadePercent: 'where.bed.shadePercent',
  roomC: 'where.bed.roomC',
  wettedOn: 'where.bed.wettedOn',
};

/** A place that a link describes. */
export const localeParameters: Parameters = {
  ...Object.fromEntries(
    ['near', 'elevationM', 'lastFrostAround', 'firstFrostAround', 'annualRainMm'].map((name) => [
      name,
      whereParameters[SHORT[name]!]!,
    ]),
  ),
  latitude,
  longitude,
  timeZone,
};

/** Parameters of a question by link that names its place itself: short names beside the full ones. */
export const freeLinkParameters = (parameters: Parameters): Parameters => ({
  // Short names first, as faults are told by the first name of a field.
  ...Object.fromEntries(Object.entries(SHORT).map(([name, full]) => [name, whereParameters[full]!])),
  ...parameters,
});

/** Parameters of a file's place if nothing is forecast. */
export const placeParameters: Parameters = { timeZone, latitude, longitude };

/** Parameters that describe the file. */
export const fileParameters: Parameters = {
  medium: text('medium', z.enum(['soil', 'air'])),
  probeDepthCm: number('probeDepthCm', z.number().min(0).max(100)),
  unit: text('unit', z.enum(['C', 'F', 'K'])),
  column: text(
    'column',
    z.string().max(200).describe("The column's number (the first is 1), its name, or the name of a sensor."),
  ),
  timeColumn: text('timeColumn', z.string().max(200)),
  dateOrder: text('dateOrder', z.enum(dateOrders).describe('The order of day, month and year.')),
  clock: text(
    'clock',
    z.enum(['local', 'standard', 'utc']).describe('The logger’s clock: local time, standard time all year, or UTC.'),
  ),
  decimalMark: text('decimalMark', z.enum(['.', ','])),
};

/** Parameters in the form of the OpenAPI document. */
export const documented = (parameters: Parameters, required: readonly string[] = []): QueryParameter[] =>
  Object.entries(parameters).map(([name, { schema }]) => ({ name, schema, required: required.includes(name) }));

export type Parameters = Readonly<Record<string, Parameter>>;

/**
 * Builds the JSON question from query parameters.
 *
 * @throws {RequestError} naming every unknown or repeated parameter.
 */
export function askedByQuery(
  query: Readonly<Record<string, unknown>>,
  parameters: Parameters,
): Record<string, unknown> {
  const faults: Fault[] = [];
  const asked: Record<string, unknown> = {};
  for (const [name, value] of Object.entries(query)) {
    const parameter = Object.hasOwn(parameters, name) ? parameters[name]! : undefined;
    if (!parameter) {
      faults.push({ parameter: name, detail: unknownParameter(name, parameters) });
    } else if (typeof value !== 'string') {
      faults.push({ parameter: name, detail: fieldFact('field.sent-twice') });
    } else if (!place(asked, parameter.path, readAs(parameter, value))) {
      faults.push({ parameter: name, detail: fieldFact('field.contradicts') });
    }
  }
  if (parameters.sowing) asked.sowing ??= {};
  // A bed described without a place still has one.
  const where = asked.where as Record<string, unknown> | undefined;
  if (where && where.place === undefined && typeof where.bed !== 'string') where.place = {};
  if (faults.length > 0) throw notUnderstood(faults);
  return asked;
}

/** The parameter of a path in the question, or of the nearest path above it. */
export function parameterAt(path: readonly (string | number)[], parameters: Parameters): Pick<Fault, 'parameter'> {
  // A file is the only series, so a fault of the series belongs to a parameter of the file.
  const own = path[0] === 'temperatures' ? path.slice(2) : path;
  for (let length = own.length; length > 0; length--) {
    const wanted = own.slice(0, length).join('.');
    const name = Object.keys(parameters).find((key) => parameters[key]!.path.join('.') === wanted);
    if (name) return { parameter: name };
  }
  return own.length > 0 ? { parameter: own.join('.') } : {};
}

/** Writes a value into nested records; false if another value is in the way. */
function place(target: Record<string, unknown>, path: readonly string[], value: unknown): boolean {
  const [key, ...rest] = path as [string, ...string[]];
  if (rest.length === 0) {
    if (target[key] !== undefined) return false;
    target[key] = value;
    return true;
  }
  target[key] ??= {};
  const inner = target[key];
  return typeof inner === 'object' && inner !== null && place(inner as Record<string, unknown>, rest, value);
}

const readAs = ({ isNumber, isFlag }: Parameter, value: string): string | number | boolean => {
  if (isFlag && (value === 'true' || value === 'false')) return value === 'true';
  return isNumber ? numberOrText(value) : value;
};

/** A number as people write it; other text stays text, for the schema to refuse. */
const numberOrText = (value: string): number | string =>
  /^[+-]?\d+(\.\d+)?$/.test(value.trim()) ? Number(value) : value;

function unknownParameter(name: string, parameters: Parameters): Fact {
  if (Object.keys(parameters).length === 0) {
    return Object.hasOwn({ ...askingParameters, ...fileParameters }, name)
      ? fieldFact('field.goes-into-body')
      : fieldFact('field.not-beside-json');
  }
  const alike = Object.keys(parameters).find(
    (known) => known.toLowerCase().replace(/^.*\./, '') === name.toLowerCase().replace(/^.*\./, ''),
  );
  return fieldFact('field.unknown-parameter', { meant: alike ?? null });
}
