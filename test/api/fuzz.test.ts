/*
 * Asks the service more than ten thousand questions made from its own OpenAPI document: most of them sensible, many
 * damaged. A failing question shrinks; FUZZ_SEED=<seed> asks other questions, the same ones for the same seed.
 */
import fc from 'fast-check';
import type { LightMyRequestResponse } from 'fastify';
import { afterAll, describe, expect, test } from 'vitest';
import { errorCodes } from '../../src/basics/errors.js';
import type { CheckAnswer } from '../../src/contract/readings.js';
import { crops } from '../../src/germination/crops.js';
import { app, document, faultsOf, LONGEST_MS, operations, type Sent, timed } from './asked.js';
import { dateAfter, keepQuillmere, keptIds } from './helper.js';
import { broken, type DocumentedOperation, dates, type Schema, strangeTexts, valuesOf } from './openapi-arbitraries.js';

const SEED = Number(process.env.FUZZ_SEED ?? 20270503);
/** How many questions each operation is asked. */
const RUNS: Readonly<Record<string, number>> = {
  forecast: 800,
  soilTemperatures: 450,
  sowingWindows: 10,
  putPlan: 12,
  checkReadings: 1900,
  getCrop: 1500,
  listCrops: 400,
  explainProblem: 5500,
  health: 50,
  ready: 50,
  metrics: 20,
  // Before each of these all is kept anew, which costs more than the question.
  deletePlace: 25,
  deleteAir: 25,
  deleteBed: 25,
  deleteLot: 25,
  deleteSowing: 25,
  deleteCount: 25,
  deletePlan: 25,
  deleteSubscription: 25,
  deleteReadings: 25,
  getReadings: 40,
};
/** How often each operation on what is kept is asked. */
const KEPT_RUNS = 90;

afterAll(() => app.close());

async function send(sent: Sent): Promise<{ readonly ms: number; readonly response: LightMyRequestResponse }> {
  const first = await timed(sent);
  // The machine may be busy with others: what took long is asked once more.
  const ms = first.ms < LONGEST_MS ? first.ms : Math.min(first.ms, (await timed(sent)).ms);
  return { ms, response: first.response };
}

const seasons = fc.record({
  start: fc.oneof(
    { weight: 5, arbitrary: fc.nat({ max: 3000 }).map((day) => dateAfter('2020-01-01', day)) },
    { weight: 1, arbitrary: dates },
    { weight: 1, arbitrary: fc.constantFrom('1900-01-01', '2027-03-27', '2027-10-30', '2028-02-28', '2199-12-20') },
  ),
  nDays: fc.oneof(
    { weight: 15, arbitrary: fc.integer({ min: 2, max: 16 }) },
    { weight: 1, arbitrary: fc.integer({ min: 17, max: 400 }) },
  ),
  sowAfterDays: fc.nat({ max: 400 }),
  levelsC: fc.array(fc.integer({ min: -9, max: 34 }), { minLength: 1, maxLength: 5 }),
  swingC: fc.integer({ min: 0, max: 11 }),
  stepMinutes: fc.constantFrom(60, 60, 60, 10, 30, 120, 240, 720),
  zone: fc.constantFrom(
    'Etc/GMT+2',
    'Europe/Berlin',
    'America/St_Johns',
    'Australia/Lord_Howe',
    'Pacific/Kiritimati',
    'Pacific/Apia',
    'Africa/Casablanca',
    'America/Sao_Paulo',
  ),
  offset: fc.constantFrom('-02:00', 'Z', '+05:45', '+1400', ''),
  cropId: fc.option(fc.constantFrom(...crops.keys()), { freq: 3 }),
});
type Season = typeof seasons extends fc.Arbitrary<infer One> ? One : never;

const MAX_READINGS = 400;
const inUnit: Readonly<Record<string, (tempC: number) => number>> = {
  C: (tempC) => tempC,
  F: (tempC) => tempC * 1.8 + 32,
  K: (tempC) => tempC + 273.15,
};
const written = (tempC: number, unit: string): number => Number(inUnit[unit]!(tempC).toFixed(2));

const levelOn = ({ levelsC }: Season, day: number): number => levelsC[day % levelsC.length]!;

/** Stamps and temperatures, every so many minutes from the midnight that the season starts with. */
function readingsIn(season: Season): { at: string; tempC: number }[] {
  const { start, nDays, stepMinutes, swingC, offset } = season;
  const n = Math.max(2, Math.min(MAX_READINGS, Math.floor((nDays * 1440) / stepMinutes)));
  return Array.from({ length: n }, (_, i) => {
    const hours = (i * stepMinutes) / 60;
    const wallClock = new Date(Date.parse(`${start}T00:00Z`) + hours * 3_600_000).toISOString().slice(0, 16);
    const tempC = levelOn(season, Math.floor(hours / 24)) + swingC * Math.sin((Math.PI * (hours - 9)) / 12);
    return { at: `${wallClock}${offset}`, tempC };
  });
}

/** The date of sowing: one that the readings or days of the season reach. */
function sowingIn({ start, nDays, stepMinutes, sowAfterDays }: Season, byTheDay: boolean): string {
  const reach = byTheDay ? nDays : Math.min(nDays, Math.ceil((MAX_READINGS * stepMinutes) / 1440));
  return dateAfter(start, sowAfterDays % reach);
}

interface Row {
  readonly temperatureC: number;
  readonly days: number | null;
  readonly percent: number | null;
}
interface Span {
  readonly from: number;
  readonly to: number;
}
interface DayRow {
  readonly min?: number;
  readonly mean?: number;
  readonly max?: number;
  readonly [other: string]: unknown;
}
interface Series {
  readonly medium?: string;
  readonly unit?: string;
  readonly probeDepthCm?: number;
  readonly daily?: readonly DayRow[];
  readonly readings?: readonly { readonly basis?: string }[];
}
interface Bed {
  readonly kind?: string;
  readonly moisture?: string;
  readonly wettedOn?: string;
  readonly roomC?: number | null;
}
interface Body {
  readonly crop: string | { readonly rows: readonly Row[]; readonly field?: Span; readonly bedTimeFactor?: Span };
  readonly where?: { readonly place?: string | { readonly latitude?: number }; readonly bed?: string | Bed };
  readonly sowing: { readonly date: string; readonly depthCm?: number };
  readonly depthCm?: number;
  readonly standFactor?: number | Span;
  readonly countDays?: number;
  readonly beyond?: string;
  readonly temperatures?: readonly Series[];
}

/** A series of the document's shape, laid onto a season: its fields stay, its dates and temperatures follow the weather. */
function seriesIn(season: Season, series: Series): Record<string, unknown> {
  const { daily, readings, ...shape } = series;
  const unit = series.unit ?? 'C';
  if (daily) {
    const days = Array.from({ length: season.nDays }, (_, day) => {
      const { min, mean, max, ...rest } = daily[day % daily.length]!;
      const level = levelOn(season, day);
      const swings = min !== undefined || max !== undefined;
      return {
        ...rest,
        date: dateAfter(season.start, day),
        ...(swings ? { min: written(level - season.swingC, unit), max: written(level + season.swingC, unit) } : {}),
        ...(mean !== undefined || !swings ? { mean: written(level, unit) } : {}),
        ...('complete' in rest ? { complete: rest.complete === true || day % 3 > 0 } : {}),
      };
    });
    return { ...shape, medium: series.medium ?? 'soil', daily: days };
  }
  const rows = readingsIn(season).map(({ at, tempC }, i) => ({
    ...(readings ? readings[i % readings.length] : {}),
    at,
    value: written(tempC, unit),
  }));
  return { ...shape, medium: series.medium ?? 'soil', readings: rows };
}

/** The series of a question and the place that they need. */
function weatherIn(
  season: Season,
  { temperatures: shaped = [], where, beyond }: Pick<Body, 'temperatures' | 'where' | 'beyond'>,
) {
  const bedShape = typeof where?.bed === 'object' ? where.bed : undefined;
  const isEmpty = shaped.length === 0 && bedShape?.kind === 'indoors';
  const shapes = isEmpty ? [] : shaped.length === 0 ? [{ daily: [{}] }] : shaped.slice(0, 2);
  const byTheDay = shapes[0]?.daily !== undefined;
  const date = sowingIn(season, byTheDay);
  const needsPlace = where !== undefined || byTheDay || season.offset === '' || beyond === 'seasonal-drift';
  const needsLatitude = beyond === 'seasonal-drift' || shapes.some(({ medium }) => medium === 'air');
  const latitude = needsLatitude ? { latitude: 44 } : {};
  const place = { ...latitude, ...(typeof where?.place === 'object' ? where.place : {}), timeZone: season.zone };
  const bed = bedShape ? { bed: bedIn(bedShape, date) } : {};
  return {
    date,
    /** How deep at most: a tray is five centimetres deep, a pot fifteen. */
    within: (depthCm: number): number => depthCm / ({ tray: 6, pot: 2 }[bedShape?.kind ?? ''] ?? 1),
    shared: {
      ...(needsPlace || needsLatitude || isEmpty ? { where: { place, ...bed } } : {}),
      ...(beyond === undefined || beyond === 'past-years' ? {} : { beyond }),
      temperatures: shapes.map((series) => seriesIn(season, series)),
    },
  };
}

/** A question of the document's shape, made to hang together. */
function questionIn(season: Season, body: Body): Record<string, unknown> {
  const { date, shared, within } = weatherIn(season, body);
  const { where: _, beyond, temperatures: __, standFactor, countDays, ...rest } = body;
  return {
    ...rest,
    crop: season.cropId ?? (typeof body.crop === 'string' ? 'lettuce' : ownRows(body.crop)),
    sowing: shallow({ ...body.sowing, date }, within),
    ...(standFactor === undefined
      ? {}
      : { standFactor: typeof standFactor === 'number' ? standFactor : rising(standFactor) }),
    // Long counts take long: only long seasons have them.
    ...(countDays === undefined ? {} : { countDays: season.nDays > 16 ? countDays : 1 + (countDays % 40) }),
    ...(beyond === 'refuse' ? { countDays: 1 } : {}),
    ...shared,
  };
}

/** A sowing no deeper than its bed. */
const shallow = <Sowing extends { readonly depthCm?: number }>(sowing: Sowing, within: (depthCm: number) => number) =>
  sowing.depthCm === undefined ? sowing : { ...sowing, depthCm: within(sowing.depthCm) };

/** A question about the soil, made to hang together. */
function soilQuestionIn(season: Season, body: Body): Record<string, unknown> {
  const { date, shared, within } = weatherIn(season, body);
  const { where: _, beyond: __, temperatures: ___, crop, standFactor: ____, sowing, depthCm, ...rest } = body;
  const from = dateAfter(season.start, season.sowAfterDays % 3);
  const to = dateAfter(date, (season.sowAfterDays * 7) % 30);
  return {
    ...rest,
    ...(crop === undefined ? {} : { crop: season.cropId ?? 'lettuce' }),
    ...(sowing === undefined ? {} : { sowing: shallow({ ...sowing, date }, within) }),
    ...(depthCm === undefined ? {} : { depthCm: within(depthCm) }),
    from,
    to: shared.beyond === 'refuse' || to < from ? from : to,
    ...shared,
  };
}

/** A question about sowing windows, made to hang together: three years of a season that comes again. */
function windowQuestionIn(season: Season, body: Body): Record<string, unknown> {
  const { where, temperatures: _, crop, lot, ...rest } = body as Body & { lot?: object };
  const daily = Array.from({ length: 3 * 366 }, (_, day) => {
    const level = 10 - season.swingC * Math.cos((2 * Math.PI * day) / 365) + levelOn(season, day) / 4;
    return { date: dateAfter('2020-01-01', day), min: written(level - 4, 'C'), max: written(level + 5, 'C') };
  });
  const bed = typeof where?.bed === 'object' ? { bed: bedIn(where.bed, '2027-04-01') } : {};
  const place = { latitude: 44, ...(typeof where?.place === 'object' ? where.place : {}), timeZone: season.zone };
  return {
    ...rest,
    ...(lot === undefined ? {} : { lot }),
    crop: season.cropId ?? (typeof crop === 'string' ? 'lettuce' : ownRows(crop)),
    where: { place, ...bed },
    from: '2027-04-01',
    to: dateAfter('2027-04-01', season.nDays % 90),
    maxDays: 1 + (season.nDays % 30),
    temperatures: [{ medium: 'air', daily }],
  };
}

const rising = ({ from, to }: Span): Span => ({ from: Math.min(from, to), to: Math.max(from, to) });

/** Rows at temperatures of their own, two of them timed, one of them with seedlings. */
function ownRows({ rows, field, bedTimeFactor, ...rest }: Exclude<Body['crop'], string>) {
  const apart = [...new Map(rows.map((row) => [row.temperatureC, row])).values()];
  const first = apart[0]!;
  const second = apart[1] ?? { ...first, temperatureC: first.temperatureC < 50 ? first.temperatureC + 5 : 20 };
  return {
    ...rest,
    rows: [
      { ...first, days: first.days ?? 9, percent: first.percent === null ? null : Math.max(first.percent, 40) },
      { ...second, days: second.days ?? 4 },
      ...apart.slice(2),
    ],
    ...(field ? { field: rising(field) } : {}),
    ...(bedTimeFactor ? { bedTimeFactor: rising(bedTimeFactor) } : {}),
  };
}

function bedIn({ wettedOn: _, ...bed }: Bed, sowingDate: string): Bed {
  return {
    ...bed,
    ...(bed.kind === 'indoors' ? { roomC: bed.roomC ?? 18 } : {}),
    ...(bed.moisture === 'dry' ? { wettedOn: dateAfter(sowingDate, 2) } : {}),
  };
}

/** A value of every parameter named, as text. */
const textsOf = (operation: DocumentedOperation, names: readonly string[]): fc.Arbitrary<Record<string, string>> =>
  fc
    .record(
      Object.fromEntries(
        operation.parameters
          .filter(({ name }) => names.includes(name))
          .map(({ name, schema }) => [name, valuesOf(schema, document)]),
      ),
      { noNullPrototype: true },
    )
    .map((values) => Object.fromEntries(Object.entries(values).map(([name, value]) => [name, String(value)])));

/** Some of an operation's query parameters. */
function someQuery(operation: DocumentedOperation, most: number, except: readonly string[] = []) {
  const names = operation.parameters.flatMap(({ name, in: where }) =>
    where === 'query' && !except.includes(name) ? [name] : [],
  );
  return fc.subarray(names, { maxLength: Math.min(most, names.length) }).chain((chosen) => textsOf(operation, chosen));
}

const isKept = ({ path }: DocumentedOperation): boolean =>
  /^\/v1\/(places|beds|lots|seeds-needed|subscriptions|plans)/.test(path);

/** Is it asked of a garden, where there has to be one? */
const hasGarden = (operation: DocumentedOperation): boolean =>
  isKept(operation) || /^\/v1\/(sowings|calendar)/.test(operation.path);

/** A place or a part of one, made to hang together. */
function placeIn({ zone }: Season, body: { timeZone?: string; source?: object | null; sources?: unknown }) {
  const sourceIn = (source: object) =>
    'preset' in source ? { preset: 'nasa-power' } : { ...source, url: 'https://weather.example/quillmere.json' };
  return {
    ...body,
    ...(body.timeZone === undefined ? {} : { timeZone: zone }),
    // Sources differ from one another: of a list the first is enough.
    ...(body.source ? { source: sourceIn([body.source].flat()[0] as object) } : {}),
  };
}

/** A bed or a part of one, of a place that there is. */
const keptBedIn = (_: Season, body: Bed & { place?: string }) => ({
  ...body,
  ...(body.place === undefined ? {} : { place: 'quillmere' }),
  ...(body.kind === 'indoors' || body.roomC === null ? { roomC: body.roomC ?? 18 } : {}),
});

interface ToldLot {
  readonly crop?: unknown;
  readonly germinationPercent?: number | null;
  readonly test?: { readonly sown: number; readonly germinated: number } | null;
  readonly testedOn?: string | null;
  readonly packedYear?: number | null;
}

/** A lot, its percent told once, and found in the past. */
function toldLotIn({ start }: Season, { germinationPercent, test, testedOn, packedYear, ...body }: ToldLot) {
  return {
    ...body,
    ...(test ? { test: { ...test, germinated: test.germinated % (test.sown + 1) } } : { germinationPercent }),
    ...(testedOn && start < '2027' ? { testedOn: start } : {}),
    ...(packedYear ? { packedYear: Math.min(2027, packedYear) } : {}),
  };
}

const cropIn = ({ cropId }: Season, crop: unknown) =>
  cropId ?? (typeof crop === 'string' ? 'lettuce' : ownRows(crop as never));

/** A subscription to an address, for what there is. */
const subscriptionIn = ({ cropId }: Season, body: object) => ({
  ...body,
  url: 'https://shed.example/alerts',
  beds: ['north'],
  crops: [cropId ?? 'lettuce'],
});

const lotIn = (season: Season, body: ToldLot) => ({ ...toldLotIn(season, body), crop: cropIn(season, body.crop) });

/** A plan for a bed that there is, its harvest of some weeks. */
const planIn = (season: Season, { crop, harvest }: { crop: unknown; harvest: { perWeek: number } }) => ({
  bed: keptIds.beds,
  crop: cropIn(season, crop),
  harvest: { ...harvest, from: season.start, to: dateAfter(season.start, Math.min(365, season.nDays)) },
});

const seedsIn = (season: Season, { crop, lot, ...body }: { crop: unknown; lot?: string | ToldLot }) => ({
  ...body,
  crop: typeof lot === 'string' ? 'onion' : cropIn(season, crop),
  ...(lot === undefined ? {} : { lot: typeof lot === 'string' ? keptIds.lots : toldLotIn(season, lot) }),
});

const normalsIn = (season: Season, _: unknown) => ({
  meanMaxC: Array.from({ length: 12 }, (_, month) => levelOn(season, month) + season.swingC),
  meanMinC: Array.from({ length: 12 }, (_, month) => levelOn(season, month)),
});

/** Measured air, by the day or by the hour. */
function airIn(season: Season, { origin: _, ...series }: Series & { origin?: string }) {
  const daily = series.daily?.map(({ basis: __, ...day }) => day);
  return seriesIn(season, { ...series, medium: 'air', ...(daily ? { daily } : {}) });
}

const comingIn = (season: Season, series: Series) => ({ ...airIn(season, series), origin: 'forecast' });

/** Measured readings, in soil or air. */
const keptReadingsIn = (season: Season, { daily: _, origin: __, ...series }: Series & { origin?: string }) =>
  seriesIn(season, { readings: [{}], ...series });

/** Lone halves of surrogate pairs cannot be written in UTF-8. */
const inPath = (text: string): string => encodeURIComponent(Buffer.from(text).toString());
const urlOf = (path: string, query: Readonly<Record<string, string>>): string => {
  const search = new URLSearchParams(query).toString();
  return search === '' ? path : `${path}?${search}`;
};

function filesIn(
  season: Season,
  shape: FileShape,
  operation: DocumentedOperation,
): { text: string; query: Record<string, string> } {
  const { unit, unitInHeader, mediumInHeader, extraColumns, lineEnd, quoted, marks } = shape;
  const cell = (text: string): string => (quoted ? `"${text}"` : text);
  const extra = extraColumns.map((name) => cell(name));
  const rows = readingsIn(season).map(({ at, tempC }, i) =>
    [at, String(written(tempC, unit)), ...extra.map((_, column) => `note ${column + i}`)].map(cell),
  );
  for (const { row, column, text } of marks) rows[row % rows.length]![column % 2] = cell(text);
  const medium = operation.operationId === 'addAir' ? 'air' : 'soil';
  const column = mediumInHeader ? { air: 'air', soil: 'soil 5 cm' }[medium] : 'probe';
  const header = [`time`, `${column}${unitInHeader ? ` (${unit})` : ''}`].map(cell);
  return {
    text: [[...header, ...extra], ...rows].map((cells) => cells.join(',')).join(lineEnd) + lineEnd,
    query: {
      ...(mediumInHeader ? {} : { medium }),
      ...(unitInHeader ? {} : { unit }),
      ...(season.offset === '' && !isKept(operation) ? { timeZone: season.zone } : {}),
    },
  };
}

const fileShapes = fc.record({
  unit: fc.constantFrom('C', 'F', 'K'),
  unitInHeader: fc.boolean(),
  mediumInHeader: fc.boolean(),
  extraColumns: fc.array(fc.constantFrom('battery', 'remark', 'üñï', ''), { maxLength: 2 }),
  lineEnd: fc.constantFrom('\n', '\r\n'),
  quoted: fc.boolean(),
  marks: fc.array(
    fc.record({
      row: fc.nat({ max: 400 }),
      column: fc.nat({ max: 1 }),
      text: fc.constantFrom('', '---', 'NaN', '-999', '85', '1e3', '12,5', '🌱', '2027-02-30T00:00Z'),
    }),
    { maxLength: 1 },
  ),
});
type FileShape = typeof fileShapes extends fc.Arbitrary<infer One> ? One : never;

/** Texts with something strange written into them, or the end cut off. */
const spoilt = (texts: fc.Arbitrary<string>): fc.Arbitrary<string> =>
  fc.tuple(texts, fc.nat({ max: 100_000 }), fc.option(strangeTexts)).map(([text, at, strange]) => {
    const cut = at % (text.length + 1);
    return strange === null ? text.slice(0, cut) : text.slice(0, cut) + strange + text.slice(cut);
  });

const asJson = (values: fc.Arbitrary<unknown>): fc.Arbitrary<string> =>
  values.map((value) => JSON.stringify(value) ?? '');

/** Requests whose body is JSON: sensible ones, damaged ones, any of the document's shape, and text that is hardly JSON. */
function jsonRequests(
  operation: DocumentedOperation,
  schema: Schema,
  inSeason: (season: Season, body: never) => unknown,
) {
  const shaped = valuesOf(schema, document);
  const sensible = fc.tuple(seasons, shaped).map(([season, body]) => inSeason(season, body as never));
  const paths = pathsTo(operation);
  const takesPrecision = operation.parameters.some(({ name }) => name === 'precision');
  const url = fc
    .tuple(paths, fc.constantFrom('rounded', 'full'))
    .map(([path, precision]) => urlOf(path, takesPrecision ? { precision } : {}));
  const to = (payload: fc.Arbitrary<string>, urls: fc.Arbitrary<string> = url): fc.Arbitrary<Sent> =>
    fc.record({
      method: fc.constant(operation.method),
      url: urls,
      contentType: fc.constant('application/json'),
      payload,
    });
  return fc.oneof(
    { weight: 13, arbitrary: to(asJson(sensible)) },
    { weight: 3, arbitrary: to(asJson(broken(sensible))) },
    { weight: 2, arbitrary: to(asJson(shaped)) },
    { weight: 1, arbitrary: to(spoilt(asJson(sensible))) },
    {
      weight: 1,
      arbitrary: to(
        asJson(sensible),
        fc.tuple(paths, someQuery(operation, 2)).map(([path, query]) => urlOf(path, query)),
      ),
    },
  );
}

/** Requests whose body is a file, with what it asks in the query. */
function csvRequests(operation: DocumentedOperation) {
  const asks = operation.operationId === 'forecast';
  const kept = ['medium', 'unit', 'timeZone', 'column', 'timeColumn', 'crop', 'sowing', 'where.bed.moisture'];
  const sensible = fc
    .record({
      season: seasons,
      shape: fileShapes,
      // Values that do not depend on one another; the others are for the damaged requests.
      extra: someQuery(operation, 3, [...kept, 'where.bed.kind', 'where.bed.wettedOn', 'beyond', 'standFactor']),
    })
    .map(({ season, shape, extra: { 'standFactor.from': _, 'standFactor.to': __, ...extra } }) => {
      const { text, query } = filesIn(season, shape, operation);
      const asked = asks ? { crop: season.cropId ?? 'onion', sowing: sowingIn(season, false) } : {};
      const zone = 'timeZone' in query ? {} : extra;
      return { text, query: { ...query, ...asked, ...extra, ...zone } };
    });
  const path = operation.path.replace('{id}', () => existingFor(operation)[0]!);
  const to = ({ text, query }: { text: string; query: Record<string, string> }): Sent => ({
    method: 'POST',
    url: urlOf(path, query),
    contentType: 'text/csv',
    payload: text,
  });
  return fc.oneof(
    { weight: 13, arbitrary: sensible.map(to) },
    {
      weight: 3,
      arbitrary: fc
        .tuple(sensible, someQuery(operation, 4))
        .map(([file, query]) => to({ ...file, query: { ...file.query, ...query } })),
    },
    {
      weight: 2,
      arbitrary: sensible.chain((file) => spoilt(fc.constant(file.text)).map((text) => to({ ...file, text }))),
    },
    {
      weight: 1,
      arbitrary: fc
        .tuple(sensible, strangeTexts, strangeTexts)
        .map(([file, name, value]) => to({ ...file, query: { ...file.query, [name]: value } })),
    },
    {
      weight: 1,
      arbitrary: fc.tuple(strangeTexts, someQuery(operation, 4)).map(([text, query]) => to({ text, query })),
    },
  );
}

/** Names that there is something under. */
function existingFor({ operationId, path }: DocumentedOperation): readonly string[] {
  if (operationId === 'explainProblem') return errorCodes;
  if (operationId === 'deletePlace') return ['fallow', 'quillmere'];
  const kept = Object.entries(keptIds).find(([kind]) => path.startsWith(`/v1/${kind}`));
  return kept ? [kept[1]] : [...crops.keys()];
}

/** Addresses of an operation: mostly of what exists. */
function pathsTo(operation: DocumentedOperation): fc.Arbitrary<string> {
  const [parameter] = operation.parameters.filter(({ in: where }) => where === 'path');
  if (!parameter) return fc.constant(operation.path);
  const id = fc.oneof(
    { weight: 4, arbitrary: fc.constantFrom(...existingFor(operation)) },
    { weight: 1, arbitrary: valuesOf(parameter.schema, document).map(String) },
    { weight: 1, arbitrary: strangeTexts },
  );
  // Dots alone would be another address.
  return id.map((text) => operation.path.replace(/\{\w+\}/, () => inPath(text.replace(/^\.+$/, 'dots'))));
}

/** Requests without a body. */
function plainRequests(operation: DocumentedOperation): fc.Arbitrary<Sent> {
  const query = fc.oneof(
    { weight: 5, arbitrary: someQuery(operation, 3) },
    { weight: 1, arbitrary: fc.dictionary(strangeTexts, strangeTexts, { maxKeys: 2, noNullPrototype: true }) },
  );
  return fc.record({
    method: fc.constant(operation.method),
    url: fc.tuple(pathsTo(operation), query).map(([address, asked]) => urlOf(address, asked)),
  });
}

function requestsFor(operation: DocumentedOperation): fc.Arbitrary<Sent> {
  const { operationId, requestBody } = operation;
  const json = requestBody?.content['application/json'];
  const inSeason =
    {
      forecast: questionIn,
      soilTemperatures: soilQuestionIn,
      sowingWindows: windowQuestionIn,
      putPlace: placeIn,
      changePlace: placeIn,
      putBed: keptBedIn,
      changeBed: keptBedIn,
      putLot: lotIn,
      putSubscription: subscriptionIn,
      putPlan: planIn,
      beginSession: (_: Season, body: never) => body,
      seedsNeeded: seedsIn,
      putNormals: normalsIn,
      putComingDays: comingIn,
      addAir: airIn,
      addReadings: keptReadingsIn,
    }[operationId] ?? seriesIn;
  if (json) {
    const asJson = { weight: 2, arbitrary: jsonRequests(operation, json.schema, inSeason) };
    const isFileToo = requestBody?.content['text/csv'] !== undefined;
    return fc.oneof(asJson, ...(isFileToo ? [{ weight: 1, arbitrary: csvRequests(operation) }] : []));
  }
  return plainRequests(operation);
}

interface Tally {
  sent: number;
  good: number;
  slowestMs: number;
  slowest: string;
}

async function tallyOf(operation: DocumentedOperation): Promise<Tally> {
  const tally: Tally = { sent: 0, good: 0, slowestMs: 0, slowest: '' };
  const { method, path } = operation;
  const changes = method !== 'GET' && hasGarden(operation);
  /** What is taken away may take others with it; what is put in another's stead is put back alone. */
  const isToBePutBack = (url: string): boolean =>
    method === 'DELETE' || (url.split('/')[2] === path.split('/')[2] && !/\/(air|readings)$/.test(url));
  if (hasGarden(operation)) await keepQuillmere(app);
  let isChanged = false;
  await fc.assert(
    fc.asyncProperty(requestsFor(operation), async (sent) => {
      // No question finds what the one before it has left, so that one that fails does so alone as well.
      if (isChanged) await keepQuillmere(app, isToBePutBack);
      const { ms, response } = await send(sent);
      isChanged = changes && response.statusCode < 300;
      tally.sent++;
      if (response.statusCode < 300) tally.good++;
      if (ms > tally.slowestMs) Object.assign(tally, { slowestMs: ms, slowest: JSON.stringify(sent).slice(0, 3000) });
      expect(faultsOf(operation, response)).toEqual([]);
    }),
    { numRuns: RUNS[operation.operationId] ?? KEPT_RUNS, seed: SEED },
  );
  return tally;
}

const tallies = new Map<DocumentedOperation, Promise<Tally>>();
/** An operation is asked its questions once, whichever test comes first. */
function asked(operation: DocumentedOperation): Promise<Tally> {
  const tally = tallies.get(operation) ?? tallyOf(operation);
  tallies.set(operation, tally);
  return tally;
}

describe('more than ten thousand questions', () => {
  test.each(operations.map((operation) => [operation.operationId, operation] as const))(
    'to %s are each answered as the document says, or refused in words, and never take long',
    async (_, operation) => {
      const { slowestMs, slowest } = await asked(operation);
      expect(slowestMs, slowest).toBeLessThan(LONGEST_MS);
    },
    60_000,
  );

  test('are asked over every operation, and about half or more are answered', async () => {
    let [sent, good] = [0, 0];
    for (const operation of operations) {
      const tally = await asked(operation);
      sent += tally.sent;
      good += tally.good;
    }
    expect(sent).toBeGreaterThanOrEqual(10_000);
    expect(good / sent).toBeGreaterThanOrEqual(0.45);
    expect(good / sent).toBeLessThan(0.95);
  }, 600_000);
});

describe('what is answered can be sent back', () => {
  const check = operations.find(({ operationId }) => operationId === 'checkReadings')!;
  const files = csvRequests(check);

  test('the days that a check of a file lists are a series themselves, and read the same', async () => {
    let sentBack = 0;
    await fc.assert(
      fc.asyncProperty(files, async (file) => {
        const response = await app.inject({ ...file, headers: { 'content-type': 'text/csv' } });
        if (response.statusCode !== 200) return;
        const { series }: CheckAnswer = response.json();
        const complete = series.daily.filter((day) => day.complete);
        const again = await app.inject({ method: 'POST', url: '/v1/readings/check?precision=full', payload: series });
        if (complete.length === 0) {
          expect(again.statusCode).toBe(422);
          return;
        }
        expect(again.statusCode, again.body).toBe(200);
        const temperatures = ({ date, min, mean, max }: CheckAnswer['series']['daily'][number]) => [
          date,
          ...[min, mean, max].map((tempC) => (tempC === undefined ? null : Math.round(tempC * 1e6) + 0)),
        ];
        expect((again.json() as CheckAnswer).series.daily.map(temperatures)).toEqual(complete.map(temperatures));
        sentBack++;
      }),
      { numRuns: 300, seed: SEED },
    );
    expect(sentBack).toBeGreaterThan(100);
  });
});
