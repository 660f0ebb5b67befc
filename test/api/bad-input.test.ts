import type { InjectOptions } from 'fastify';
import { describe, expect, it } from 'vitest';
import { type ErrorCode, errorCodes } from '../../src/basics/errors.js';
import { keyring } from '../../src/http/auth/keys.js';
import { type BadRequest, expectProblem, refused } from './bad-request.js';
import { dailySeries, hourlySeries, lettuceQuestion, mildMay, post, quillmere, startApp } from './helper.js';

// Whatever is wrong with a request, the answer is a problem that tells a gardener what to change.

/** Understood as a request, but something in it cannot be used. */
const unusable = (name: string, ask: InjectOptions, says: string | RegExp, at?: string): BadRequest =>
  refused(422, 'not-understood', name, ask, says, at);

const FORECASTS = '/v1/forecasts';
const CHECK = '/v1/readings/check';

const get = (url: string, headers: Record<string, string> = {}): InjectOptions => ({ method: 'GET', url, headers });
const json = (payload: object, url = FORECASTS): InjectOptions => ({ method: 'POST', url, payload });
const lettuce = (overrides: Record<string, unknown>): InjectOptions => json(lettuceQuestion(overrides));
/** A question at a place that does not say where it is. */
const nowhere = (overrides: Record<string, unknown>): InjectOptions =>
  json({ ...lettuceQuestion(overrides), temperatures: [], where: { place: { timeZone: 'Etc/GMT+2' } } });
const without = (field: string): InjectOptions => json({ ...lettuceQuestion(), [field]: undefined });
const text = (payload: string, type = 'application/json', url = FORECASTS): InjectOptions => ({
  method: 'POST',
  url,
  headers: { 'content-type': type },
  payload,
});

const at = (place: Record<string, unknown>) => lettuce({ where: { place: { ...quillmere, ...place } } });
const bed = (bed: Record<string, unknown>) => lettuce({ where: { place: quillmere, bed } });
const sown = (sowing: Record<string, unknown>) => lettuce({ sowing: { date: '2027-05-03', ...sowing } });
const soil = (...series: Record<string, unknown>[]) =>
  lettuce({ temperatures: series.map((one) => ({ medium: 'soil', ...one })) });
const day = (row: Record<string, unknown>) => soil({ daily: [{ date: '2027-05-03', min: 10, max: 20, ...row }] });
const stamp = (at: unknown) =>
  soil({
    readings: [
      { at, value: 12 },
      { at: '2027-05-04T12:00-02:00', value: 12 },
    ],
  });
const mild = (days: number, start: string) =>
  dailySeries(
    Array.from({ length: days }, () => [10, 20] as const),
    { start },
  );

/** Own rows: temperature, days, percent. */
type Row = readonly [temperatureC: unknown, days: unknown, percent?: unknown];
const rows = (...cells: Row[]) => cells.map(([temperatureC, days, percent]) => ({ temperatureC, days, percent }));
const own = (crop: Record<string, unknown>) => lettuce({ crop: { rows: rows([10, 10, 90], [20, 5, 95]), ...crop } });
const ownRows = (...cells: Row[]) => own({ rows: rows(...cells) });

const fileQuestion: Record<string, string> = {
  crop: 'lettuce',
  sowing: '2027-05-03',
  medium: 'soil',
  timeZone: 'Etc/GMT+2',
  latitude: '44',
};
const queryOf = (overrides: Record<string, string | null>): string =>
  new URLSearchParams(
    Object.entries({ ...fileQuestion, ...overrides }).filter((pair): pair is [string, string] => pair[1] !== null),
  ).toString();
const file = (csv: string, query: Record<string, string | null> = {}, more = ''): InjectOptions =>
  text(csv, 'text/csv', `${FORECASTS}?${queryOf(query)}${more}`);

/** Three days by the hour under a header; `T` in the row stands for the stamp's date and time. */
const logged = (header: string, row: string, hours = 72, start = '2027-05-03T00:00'): string =>
  `${header}\n${hourlySeries(new Array(hours).fill(0), { start, offset: '' })
    .readings.map(({ at }) => row.replace('T', at))
    .join('\n')}\n`;
const plainFile = logged('time,soil (C)', 'T-02:00,12.5');

let count = 1000;
const badRequests: readonly BadRequest[] = [
  // What is no question at all.
  refused(
    400,
    'not-json',
    'JSON with a comma too many',
    text('{"crop": "lettuce",}'),
    'Check quotes, commas and brackets',
  ),
  refused(400, 'not-json', 'JSON broken off', text('{"crop": "lett'), 'cannot be parsed as JSON'),
  refused(
    400,
    'not-json',
    'NaN, which JSON has not',
    text(JSON.stringify(lettuceQuestion()).replace('10', 'NaN')),
    'cannot be parsed as JSON',
  ),
  refused(400, 'not-json', 'an empty body', text(''), 'The body is empty. Send the question as JSON'),
  unusable('no body', { method: 'POST', url: FORECASTS }, 'is missing', '#'),
  unusable('a list for a question', text('[]'), 'must be an object', '#'),
  unusable('null for a question', text('null'), 'must be an object', '#'),
  unusable('a text for a question, said to be JSON', text('"time,soil C"'), 'must be an object', '#'),
  refused(
    415,
    'unsupported-media-type',
    'XML',
    text('<crop>lettuce</crop>', 'application/xml'),
    'Set Content-Type to application/json, or to text/csv',
  ),
  refused(
    415,
    'unsupported-media-type',
    'a form',
    text('crop=lettuce', 'application/x-www-form-urlencoded'),
    'Set Content-Type',
  ),
  refused(415, 'unsupported-media-type', 'a content type that is none', text('{}', 'garbage'), 'Set Content-Type'),
  refused(
    413,
    'too-large',
    'five megabytes of JSON',
    text(JSON.stringify({ crop: 'x'.repeat(5 * 1024 * 1024) })),
    'Send fewer days or hourly readings',
  ),

  // Fields unknown, at each level.
  unusable(
    'a misspelt crop field',
    lettuce({ corp: 'onion' }),
    'corp is not a field known here; check the spelling',
    '#/corp',
  ),
  unusable('an unknown field of the place', at({ lat: 44 }), 'where.place.lat is not a field', '#/where/place/lat'),
  unusable(
    'an unknown field of the bed',
    bed({ colour: 'dark' }),
    'where.bed.colour is not a field',
    '#/where/bed/colour',
  ),
  unusable('an unknown field of the sowing', sown({ hour: 18 }), 'sowing.hour is not a field', '#/sowing/hour'),
  unusable(
    'an unknown field of the lot',
    lettuce({ lot: { percent: 88 } }),
    'lot.percent is not a field',
    '#/lot/percent',
  ),
  unusable(
    'an unknown field of a series',
    soil({ ...mildMay, depth: 5 }),
    'temperatures[0].depth is not a field',
    '#/temperatures/0/depth',
  ),
  unusable(
    'an unknown field of a day',
    day({ avg: 15 }),
    'temperatures[0].daily[0].avg is not a field',
    '#/temperatures/0/daily/0/avg',
  ),
  unusable(
    'an unknown field of a reading',
    soil({
      readings: [
        { at: '2027-05-03T00:00Z', value: 12, quality: 'good' },
        { at: '2027-05-03T01:00Z', value: 12 },
      ],
    }),
    'temperatures[0].readings[0].quality is not a field',
    '#/temperatures/0/readings/0/quality',
  ),
  unusable(
    'an unknown field of an own row',
    own({ rows: [{ temperatureC: 10, days: 10, percent: 90, n: 50 }, ...rows([20, 5, 95])] }),
    'crop.rows[0].n is not a field',
    '#/crop/rows/0/n',
  ),

  // Fields missing.
  unusable('no crop', without('crop'), 'crop is missing; it must be the id of a crop of GET /v1/crops', '#/crop'),
  unusable('no sowing', without('sowing'), 'sowing is missing', '#/sowing'),
  unusable('no temperatures', nowhere({}), 'temperatures must have at least one series', '#/temperatures'),
  unusable('no date of sowing', lettuce({ sowing: { seeds: 200 } }), 'sowing.date is missing', '#/sowing/date'),
  unusable(
    'neither soil nor air',
    lettuce({ temperatures: [{ daily: mildMay.daily }] }),
    'medium is missing; it must be one of soil, air',
    '#/temperatures/0/medium',
  ),
  unusable(
    'a day without its date',
    day({ date: undefined }),
    'daily[0].date is missing',
    '#/temperatures/0/daily/0/date',
  ),
  unusable(
    'a reading without its value',
    soil({ readings: [{ at: '2027-05-03T00:00Z' }, { at: '2027-05-03T01:00Z', value: 12 }] }),
    'readings[0].value is missing',
    '#/temperatures/0/readings/0/value',
  ),
  unusable(
    'a where that is empty',
    lettuce({ where: {} }),
    'where must have a place, or the id of a stored bed',
    '#/where',
  ),

  // Of the wrong kind.
  unusable('a number for a crop', lettuce({ crop: 7 }), 'in JSON an object with rows of your own; it was 7', '#/crop'),
  refused(422, 'unknown-crop', 'a crop in capitals', lettuce({ crop: 'Lettuce' }), 'no crop "Lettuce" here', '#/crop'),
  unusable(
    'a text for a number of seeds',
    sown({ seeds: '200' }),
    'sowing.seeds must be a number; it was "200"',
    '#/sowing/seeds',
  ),
  unusable(
    'a text for a temperature',
    day({ min: '10' }),
    'daily[0].min must be a number; it was "10"',
    '#/temperatures/0/daily/0/min',
  ),
  unusable(
    'null for a temperature',
    day({ max: null }),
    'daily[0].max must be a number; it was null',
    '#/temperatures/0/daily/0/max',
  ),
  unusable(
    'a number too large for any computer',
    text(JSON.stringify(lettuceQuestion()).replace('10', '1e999')),
    /must be a number(?!.*null)/,
    '#/temperatures/0/daily/0/min',
  ),
  unusable(
    'one series for a list of series',
    lettuce({ temperatures: mildMay }),
    'temperatures must be a list',
    '#/temperatures',
  ),
  unusable('a text for a where', lettuce({ where: 'north' }), 'where must be an object', '#/where'),
  unusable(
    'a bed’s id beside a place',
    lettuce({ where: { place: quillmere, bed: 'north' } }),
    'where.bed must be an object',
    '#/where/bed',
  ),
  unusable('a stamp as a number', stamp(1780000000), 'readings[0].at must be text', '#/temperatures/0/readings/0/at'),

  // The place and the bed.
  unusable(
    'latitude 91',
    at({ latitude: 91 }),
    'where.place.latitude must be at most 90; it was 91',
    '#/where/place/latitude',
  ),
  unusable('longitude -181', at({ longitude: -181 }), 'must be at least -180', '#/where/place/longitude'),
  unusable(
    'rain below nothing',
    at({ annualRainMm: -1 }),
    'annualRainMm must be at least 0',
    '#/where/place/annualRainMm',
  ),
  unusable(
    'a zone that does not exist',
    at({ timeZone: 'Etc/Quillmere' }),
    'must be an IANA zone such as "Etc/GMT+2"',
    '#/where/place/timeZone',
  ),
  unusable('a zone by its abbreviation', at({ timeZone: 'CEST' }), '"Europe/Berlin"', '#/where/place/timeZone'),
  refused(
    422,
    'unknown-bed',
    'a stored bed that is not there',
    lettuce({ where: { bed: 'north' } }),
    'No bed is kept under "north". PUT it to /v1/beds/north first, or send where.place',
    '#/where/bed',
  ),
  refused(
    422,
    'unknown-place',
    'a stored place that is not there',
    lettuce({ where: { place: 'quillmere' } }),
    'or send the place itself',
    '#/where/place',
  ),
  refused(
    422,
    'unknown-bed',
    'a stored bed that is not there, with stamps that carry an offset',
    lettuce({ where: { bed: 'north' }, temperatures: [hourlySeries(new Array(72).fill(12))] }),
    'or send where.place',
    '#/where/bed',
  ),
  unusable(
    'a bed of no known kind',
    bed({ kind: 'greenhouse' }),
    'must be one of open-ground, raised-bed, pot, tray, indoors',
    '#/where/bed/kind',
  ),
  unusable(
    'a cover of no known kind',
    bed({ cover: 'straw' }),
    'must be one of bare, grass, mulch',
    '#/where/bed/cover',
  ),
  unusable(
    'shade over 100 %',
    bed({ shadePercent: 120 }),
    'shadePercent must be at most 100',
    '#/where/bed/shadePercent',
  ),
  unusable(
    'indoors without the room’s temperature',
    bed({ kind: 'indoors' }),
    'how warm is the room?',
    '#/where/bed/roomC',
  ),
  unusable('a dry bed never watered', bed({ moisture: 'dry' }), 'on which day is it watered?', '#/where/bed/wettedOn'),
  unusable(
    'a dry bed watered before the sowing',
    bed({ moisture: 'dry', wettedOn: '2027-05-02' }),
    'before the sowing on 3 May 2027',
    '#/where/bed/wettedOn',
  ),
  unusable(
    'a day of watering in a moist bed',
    bed({ moisture: 'moist', wettedOn: '2027-05-05' }),
    'goes only with "moisture": "dry"',
    '#/where/bed/wettedOn',
  ),

  unusable(
    'a dry bed watered after the count',
    lettuce({ countDays: 5, where: { place: quillmere, bed: { moisture: 'dry', wettedOn: '2027-05-20' } } }),
    'Count later (countDays), or wet it earlier',
    '#/countDays',
  ),

  // The sowing, the lot, the grower's own factors.
  unusable(
    '30 February',
    sown({ date: '2027-02-30' }),
    'sowing.date must be a date such as 2027-08-03',
    '#/sowing/date',
  ),
  unusable('the year 1800', sown({ date: '1800-05-03' }), 'in the years 1900 to 2199', '#/sowing/date'),
  unusable('the year 2300', sown({ date: '2300-05-03' }), 'in the years 1900 to 2199', '#/sowing/date'),
  unusable('a date as Germans write it', sown({ date: '03.05.2027' }), 'such as 2027-08-03', '#/sowing/date'),
  unusable('a date as Americans write it', sown({ date: '05/03/2027' }), 'such as 2027-08-03', '#/sowing/date'),
  unusable(
    '24 o’clock',
    sown({ time: '24:00' }),
    'must be a clock time such as 18:00; it was "24:00"',
    '#/sowing/time',
  ),
  unusable('6pm', sown({ time: '6pm' }), 'clock time such as 18:00', '#/sowing/time'),
  unusable('seed above the ground', sown({ depthCm: -1 }), 'depthCm must be at least 0', '#/sowing/depthCm'),
  unusable('seed half a metre deep', sown({ depthCm: 50 }), 'depthCm must be at most 30', '#/sowing/depthCm'),
  unusable('no seeds', sown({ seeds: 0 }), 'seeds must be at least 1; it was 0', '#/sowing/seeds'),
  unusable('half a seed', sown({ seeds: 1.5 }), 'seeds must be a whole number; it was 1.5', '#/sowing/seeds'),
  unusable(
    'a lot better than all',
    lettuce({ lot: { germinationPercent: 101 } }),
    'germinationPercent must be at most 100',
    '#/lot/germinationPercent',
  ),
  unusable(
    'a lot tested last year',
    lettuce({ lot: { testedOn: 'last year' } }),
    'lot.testedOn must be a date',
    '#/lot/testedOn',
  ),
  unusable(
    'a lot that bears 9 K more',
    lettuce({ lot: { hotLimitShiftC: 9 } }),
    'hotLimitShiftC must be at most 8; it was 9',
    '#/lot/hotLimitShiftC',
  ),
  unusable(
    'a lot that bears 9 K less',
    lettuce({ lot: { hotLimitShiftC: -9 } }),
    'hotLimitShiftC must be at least -8',
    '#/lot/hotLimitShiftC',
  ),
  unusable('no time at all', lettuce({ timeFactor: 0 }), 'timeFactor must be at least 0.1', '#/timeFactor'),
  unusable(
    'a stand over the laboratory’s',
    lettuce({ standFactor: 1.5 }),
    'standFactor must be at most 1',
    '#/standFactor',
  ),
  unusable(
    'a stand from much to little',
    lettuce({ standFactor: { from: 0.8, to: 0.2 } }),
    'must not have from above to',
    '#/standFactor',
  ),
  unusable(
    'half a stand’s ends',
    lettuce({ standFactor: { from: 0.2 } }),
    'standFactor.to is missing',
    '#/standFactor/to',
  ),
  unusable('a count on the day of sowing', lettuce({ countDays: 0 }), 'countDays must be at least 1', '#/countDays'),
  unusable('a count after 367 days', lettuce({ countDays: 367 }), 'countDays must be at most 366', '#/countDays'),
  unusable(
    'a count after a day and a half',
    lettuce({ countDays: 1.5 }),
    'countDays must be a whole number',
    '#/countDays',
  ),

  // The crop.
  refused(
    422,
    'unknown-crop',
    'a crop nobody knows',
    lettuce({ crop: 'lettuse' }),
    'There is no crop "lettuse" here; lettuce or head-lettuce may be meant. Choose one of asparagus',
    '#/crop',
  ),
  unusable('own rows, none', own({ rows: [] }), 'crop.rows must have at least 2 entries', '#/crop/rows'),
  unusable('own rows, one', ownRows([10, 10, 90]), 'must have at least 2 entries', '#/crop/rows'),
  unusable(
    'own rows, two at one temperature',
    ownRows([10, 10, 90], [10, 5, 95]),
    'Two rows are at 10 °C; keep one row for each temperature',
    '#/crop/rows',
  ),
  unusable(
    'own rows, days at one temperature only',
    ownRows([10, 10, 90], [20, null, 95]),
    'A curve needs days at two temperatures or more',
    '#/crop/rows',
  ),
  unusable(
    'own rows of which nothing comes',
    ownRows([10, 10, 0], [20, 5, 0]),
    'nothing would ever come up',
    '#/crop/rows',
  ),
  unusable(
    'own rows, up in no time',
    ownRows([10, 0, 90], [20, 5, 95]),
    'crop.rows[0].days must be at least 0.1',
    '#/crop/rows/0/days',
  ),
  unusable(
    'own rows, over 100 %',
    ownRows([10, 10, 101], [20, 5, 95]),
    'crop.rows[0].percent must be at most 100',
    '#/crop/rows/0/percent',
  ),
  unusable(
    'own rows, in Fahrenheit',
    ownRows([50, 10, 90], [68, 5, 95]),
    'crop.rows[1].temperatureC must be at most 60',
    '#/crop/rows/1/temperatureC',
  ),
  unusable(
    'own rows, "none" for days',
    ownRows([10, 'none', 0], [20, 5, 95]),
    'crop.rows[0].days must be a number',
    '#/crop/rows/0/days',
  ),
  unusable(
    'own rows without a percent',
    ownRows([10, 10], [20, 5, 95]),
    'crop.rows[0].percent is missing',
    '#/crop/rows/0/percent',
  ),
  unusable(
    'own rows, 101 of them',
    ownRows(...Array.from({ length: 101 }, (_, i): Row => [i / 4, 5, 50])),
    'crop.rows must have at most 100 entries',
    '#/crop/rows',
  ),
  unusable(
    'own rows with half the soil’s limits',
    own({ soil: { minimumC: 5, maximumC: 30 } }),
    'crop.soil.optimumFromC is missing',
    '#/crop/soil/optimumFromC',
  ),
  unusable(
    'own rows with the soil’s limits upside down',
    own({ soil: { minimumC: 35, optimumFromC: 30, optimumToC: 10, maximumC: 5 } }),
    'crop.soil',
    '#/crop/soil',
  ),
  unusable(
    'own rows with a field from much to little',
    own({ field: { from: 0.9, to: 0.1 } }),
    'must not have from above to',
    '#/crop/field',
  ),
  unusable(
    'own rows with a heat limit over 60 °C',
    own({ hotThresholdC: 99 }),
    'hotThresholdC must be at most 60',
    '#/crop/hotThresholdC',
  ),

  // The temperatures.
  unusable('no series', nowhere({ temperatures: [] }), 'temperatures must have at least one series', '#/temperatures'),
  unusable(
    '21 series',
    lettuce({ temperatures: new Array(21).fill(mildMay) }),
    'temperatures must have at most 20',
    '#/temperatures',
  ),
  unusable(
    'days and readings in one series',
    soil({ ...mildMay, ...hourlySeries([12, 12]) }),
    'needs either "daily" or "readings", and not both',
    '#/temperatures/0',
  ),
  unusable('neither days nor readings', soil({}), 'needs either "daily" or "readings"', '#/temperatures/0'),
  unusable('a series of no days', soil({ daily: [] }), 'daily must have at least one entry', '#/temperatures/0/daily'),
  unusable(
    'a series of one reading',
    soil({ readings: [{ at: '2027-05-03T00:00-02:00', value: 12 }] }),
    'readings must have at least 2',
    '#/temperatures/0/readings',
  ),
  unusable(
    'a minimum above the maximum',
    day({ min: 20, max: 10 }),
    'On 3 May 2027 the min, mean and max are not in rising order',
    '#/temperatures/0/daily/0',
  ),
  unusable(
    'a mean above the maximum',
    day({ mean: 25 }),
    'not in rising order; check for a swapped column',
    '#/temperatures/0/daily/0',
  ),
  unusable(
    'a minimum alone',
    day({ max: undefined }),
    '3 May 2027 needs a mean, or both a min and a max',
    '#/temperatures/0/daily/0',
  ),
  unusable(
    'a mean and a maximum without the minimum',
    day({ min: undefined, mean: 15 }),
    'send both, or the mean alone',
    '#/temperatures/0/daily/0',
  ),
  unusable(
    'a date twice, with different temperatures',
    soil({ daily: [...mildMay.daily, { date: '2027-05-03', min: 11, max: 20 }] }),
    '3 May 2027 comes twice with different temperatures; keep the right one',
    '#/temperatures/0/daily/30',
  ),
  unusable(
    '30 February among the days',
    day({ date: '2027-02-30' }),
    'must be a date such as 2027-08-03',
    '#/temperatures/0/daily/0/date',
  ),
  unusable(
    '-9999 for no value, by the day',
    day({ min: -9999 }),
    '"no value" must be left out',
    '#/temperatures/0/daily/0/min',
  ),
  unusable(
    '-9999 for no value, by the hour',
    lettuce({ temperatures: [hourlySeries([12, -9999, 12])] }),
    '-9999 °C is no temperature of soil or air',
    '#/temperatures/0/readings/1/value',
  ),
  unusable(
    'a stamp in words',
    stamp('yesterday'),
    'Write it as 2027-08-03T14:30:00-02:00',
    '#/temperatures/0/readings/0/at',
  ),
  unusable(
    'a stamp on 30 February',
    stamp('2027-02-30T10:00-02:00'),
    'is no date and time',
    '#/temperatures/0/readings/0/at',
  ),
  unusable(
    'a stamp at 25 o’clock',
    stamp('2027-05-03T25:00-02:00'),
    'is no date and time',
    '#/temperatures/0/readings/0/at',
  ),
  unusable(
    'a stamp with an offset of 99 hours',
    stamp('2027-05-03T10:00+99:00'),
    'is no date and time',
    '#/temperatures/0/readings/0/at',
  ),
  unusable(
    'a stamp of 50 letters',
    stamp('x'.repeat(50)),
    'must have at most 40 characters',
    '#/temperatures/0/readings/0/at',
  ),
  refused(
    422,
    'time-zone-needed',
    'stamps without an offset, and no zone',
    lettuce({ where: undefined, temperatures: [hourlySeries(new Array(72).fill(12), { offset: '' })] }),
    'says no offset from UTC. Add one, as in 2027-05-01T00:00-02:00, or send where.place.timeZone',
    '#/temperatures/0/readings/0/at',
  ),
  refused(
    422,
    'time-zone-needed',
    'days, and no zone',
    lettuce({ where: undefined }),
    'send where.place.timeZone, for example "Etc/GMT+2"',
    '#/where/place/timeZone',
  ),
  unusable(
    'a unit by its name',
    soil({ ...mildMay, unit: 'celsius' }),
    'unit must be one of C, F, K; it was "celsius"',
    '#/temperatures/0/unit',
  ),
  refused(
    422,
    'choose-unit',
    'Fahrenheit sent as Celsius',
    lettuce({ temperatures: [dailySeries(new Array(30).fill([50, 68]))] }),
    'Send "unit": "F"',
    '#/temperatures/0/unit',
  ),
  unusable(
    'kelvin sent as Celsius',
    lettuce({ temperatures: [dailySeries(new Array(30).fill([283, 293]))] }),
    'Is the unit K?',
    '#/temperatures/0/daily/0/min',
  ),
  unusable('Celsius sent as kelvin', soil({ ...mildMay, unit: 'K' }), 'Is the unit C', '#/temperatures/0/daily/0/min'),
  unusable(
    'a medium that is neither',
    soil({ ...mildMay, medium: 'water' }),
    'must be one of soil, air; it was "water"',
    '#/temperatures/0/medium',
  ),
  unusable(
    'a probe above the ground',
    soil({ ...mildMay, probeDepthCm: -5 }),
    'probeDepthCm must be at least 0',
    '#/temperatures/0/probeDepthCm',
  ),
  refused(
    422,
    'no-latitude',
    'air without a latitude',
    lettuce({
      where: { place: { timeZone: 'Etc/GMT+2' } },
      temperatures: [mildMay, { ...mildMay, medium: 'air' }],
    }),
    'send where.place.latitude',
    '#/where/place/latitude',
  ),
  refused(
    422,
    'starts-after-sowing',
    'temperatures that begin after the sowing',
    soil(mild(20, '2027-05-06')),
    'The temperatures begin on 6 May 2027',
    '#/sowing/date',
  ),
  refused(
    422,
    'gap-too-long',
    'a gap of over 14 days',
    soil({ daily: [...mild(4, '2027-05-01').daily, ...mild(4, '2027-05-25').daily] }),
    'Send the missing days, or only what follows the gap',
  ),
  refused(
    422,
    'too-few-readings',
    'under a day of readings, from the sowing on',
    lettuce({ temperatures: [hourlySeries(new Array(20).fill(12), { start: '2027-05-03T12:00' })] }),
    'send at least 24 hours in a row',
  ),
  refused(
    422,
    'too-few-readings',
    'two readings before the sowing',
    lettuce({ temperatures: [hourlySeries([12, 12], { start: '2027-05-03T11:00' })] }),
    'send at least 24 hours in a row',
  ),
  refused(
    422,
    'too-few-readings',
    'two readings a year apart',
    soil({
      readings: [
        { at: '2027-05-01T00:00-02:00', value: 12 },
        { at: '2028-05-01T00:00-02:00', value: 12 },
      ],
    }),
    'send at least 24 hours in a row',
  ),
  refused(
    422,
    'too-few-readings',
    'days none of which is complete',
    soil({ daily: mildMay.daily.map((row) => ({ ...row, complete: false })) }),
    'No day of the series is complete; send more of each day',
  ),
  refused(
    422,
    'ends-too-early',
    'temperatures of over a year ago',
    sown({ date: '2029-05-03' }),
    'over a year before the seed is wetted; send newer ones',
  ),

  // What comes after the last value.
  unusable(
    'a hope for what comes after',
    lettuce({ beyond: 'hope' }),
    'must be one of past-years, climate-table, seasonal-drift, repeat-last-week, refuse',
    '#/beyond',
  ),
  refused(
    422,
    'no-past-years',
    'past years that are not kept',
    lettuce({ beyond: 'past-years' }),
    'or let "beyond" be seasonal-drift, repeat-last-week or refuse',
    '#/beyond',
  ),
  refused(
    422,
    'no-latitude',
    'the season’s drift without a latitude',
    lettuce({ beyond: 'seasonal-drift', where: { place: { timeZone: 'Etc/GMT+2' } } }),
    'send where.place.latitude',
    '#/where/place/latitude',
  ),
  refused(
    422,
    'ends-too-early',
    'nothing supposed, and too few days',
    lettuce({ beyond: 'refuse', temperatures: [mild(6, '2027-05-01')] }),
    'The temperatures end on 6 May 2027, and the count is on 24 May 2027',
    '#/beyond',
  ),

  // The address, the headers, the query.
  refused(
    405,
    'method-not-allowed',
    'a question that is got',
    get('/v1/seeds-needed'),
    '/v1/seeds-needed takes POST, not GET',
  ),
  refused(
    405,
    'method-not-allowed',
    'a crop deleted',
    { method: 'DELETE', url: '/v1/crops/onion' },
    '/v1/crops/onion takes GET',
  ),
  refused(404, 'not-found', 'an address that is none', get('/v1/forcasts'), 'There is nothing at /v1/forcasts'),
  refused(404, 'not-found', 'a crop that is none', get('/v1/crops/lettuse'), 'GET /v1/crops lists those there are'),
  refused(404, 'not-found', 'a problem that is none', get('/problems/lost'), 'There is no problem of the name "lost"'),
  refused(
    400,
    'bad-request',
    'an address with a stray %',
    get('/v1/crops/%E0%A4%A'),
    'a % in it is not followed by two hex digits',
  ),
  refused(
    406,
    'not-acceptable',
    'an answer in XML',
    get('/v1/crops', { accept: 'application/xml' }),
    'This route answers in application/json',
  ),
  unusable(
    'numbers of a third kind',
    get('/v1/crops?precision=high'),
    'precision must be one of rounded, full; it was "high"',
    'precision',
  ),
  unusable('a page of no crops', get('/v1/crops?limit=0'), 'limit must be at least 1', 'limit'),
  unusable('an unknown parameter of the crops', get('/v1/crops?colour=red'), 'colour is not', 'colour'),
  unusable(
    'a question in JSON, with a part of it in the query',
    json(lettuceQuestion(), `${FORECASTS}?crop=onion`),
    /crop .*body/,
    'crop',
  ),
  unusable(
    'a check with latitude 95',
    json(mildMay, `${CHECK}?latitude=95`),
    'latitude must be at most 90',
    'latitude',
  ),

  // A logger's file.
  {
    name: 'an empty file',
    ask: file(''),
    status: 400,
    code: 'not-csv',
    says: 'Send the rows of readings under a header',
  },
  refused(
    422,
    'no-readings',
    'a header and nothing under it',
    file('time,soil (C)\n'),
    'no rows under its header line',
  ),
  refused(
    422,
    'choose-column',
    'a file without a header, of two columns of numbers',
    file(logged('', 'T-02:00,12.5,13.1').slice(1), { unit: 'C' }),
    'Say which with column',
    'column',
  ),
  refused(
    422,
    'no-readings',
    'a file without times',
    file(logged('probe,soil (C)', '7,12.5')),
    'No column holds dates and times such as 2027-08-03',
    'timeColumn',
  ),
  refused(
    422,
    'no-readings',
    'a file without numbers',
    file(logged('time,soil (C)', 'T-02:00,warm')),
    'No column holds numbers that could be temperatures',
    'column',
  ),
  refused(
    422,
    'choose-column',
    'a file with two columns of numbers',
    file(logged('time,soil (C),soil (C)', 'T-02:00,12.5,13.1')),
    'Say which with column',
    'column',
  ),
  refused(
    422,
    'choose-column',
    'a file with two columns of times',
    file(
      logged('time,sent,soil (C)', 'T-02:00,TZ,12.5')
        .replaceAll('TZ', '2027-06-01T00:00Z')
        .replace('2027-06-01', '2027-06-02'),
    ),
    'Say which with timeColumn',
    'timeColumn',
  ),
  refused(
    422,
    'choose-unit',
    'a file that says no unit',
    file(logged('time,soil', 'T-02:00,12.5')),
    'Send unit=C or unit=F',
    'unit',
  ),
  refused(
    422,
    'choose-unit',
    'a file in Fahrenheit, said to be in Celsius',
    file(logged('time,soil', 'T-02:00,59.0'), { unit: 'C' }),
    'hotter than any soil stays',
    'unit',
  ),
  refused(
    422,
    'choose-medium',
    'a file that says neither soil nor air',
    file(logged('time,probe (C)', 'T-02:00,12.5'), { medium: null }),
    'Send medium=soil or medium=air',
    'medium',
  ),
  refused(
    422,
    'no-latitude',
    'a file of air without a latitude',
    file(logged('time,air (C)', 'T-02:00,12.5'), { medium: null, latitude: null }),
    'send where.place.latitude',
    'latitude',
  ),
  unusable(
    'a column that is not there',
    file(plainFile, { column: '9' }),
    'There is no column "9" in the file',
    'column',
  ),
  unusable(
    'a time column that is not there',
    file(plainFile, { timeColumn: 'when' }),
    'There is no column "when" in the file',
    'timeColumn',
  ),
  refused(422, 'no-readings', 'the times for the temperatures', file(plainFile, { column: '1' }), 'temperature'),
  refused(
    422,
    'no-readings',
    'the temperatures for the times',
    file(plainFile, { timeColumn: '2' }),
    'no dates and times',
  ),
  refused(
    400,
    'not-csv',
    'lines of a letter',
    file('Dear society,\nplease find the readings of my probe\nyours\n'),
    'No table',
  ),
  refused(400, 'not-csv', 'a page for a file', file('<!doctype html><p>Sign in</p>\n'), 'a web page'),
  refused(400, 'not-csv', 'JSON sent as a file', file('[{"at": "2027-05-03T01:00-02:00", "value": 12}]\n'), 'is JSON'),
  refused(
    400,
    'not-csv',
    'a line of two megabytes',
    file('x'.repeat(2 * 1024 * 1024)),
    'longer than a million characters',
  ),
  refused(
    422,
    'no-readings',
    'seconds since the logger was started',
    file(logged('uptime s,soil (C)', '#,12.5').replaceAll('#', () => String(count++))),
    'counts from when the logger was started',
    'timeColumn',
  ),
  refused(
    422,
    'choose-date-order',
    'dates that may be of March or of April',
    file(`time,soil (C)\n${Array.from({ length: 24 }, (_, hour) => `03/04/2027 ${hour}:00,12.5`).join('\n')}\n`),
    'Send dateOrder=dmy or dateOrder=mdy',
    'dateOrder',
  ),
  refused(
    422,
    'choose-clock',
    'a clock that runs on where those of the place change',
    file(logged('time,soil (C)', 'T,12.5', 72, '2027-03-27T00:00'), {
      timeZone: 'Europe/Berlin',
      sowing: '2027-03-27',
    }),
    'Send clock=standard',
    'clock',
  ),
  refused(
    422,
    'choose-decimal-mark',
    'commas that may part cells or digits',
    file(logged('time,soil (C)', 'T-02:00,12,5')),
    'Send decimalMark=, or decimalMark=.',
    'decimalMark',
  ),
  refused(
    400,
    'not-csv',
    'a picture for a file',
    file('\u0089PNG\r\n\u001a\n\u0000\u0000\u0000\rIHDR\u0000\u0000\u0001\u0000\n"'),
    'is not text',
  ),
  refused(
    422,
    'no-readings',
    'a file of nothing but -9999',
    file(logged('time,soil (C)', 'T-02:00,-9999')),
    'Line 2 ("-9999") is the first that was left out',
  ),
  refused(
    422,
    'too-few-readings',
    'a file of one row',
    file(logged('time,soil (C)', 'T-02:00,12.5', 1)),
    'at least 24 hours',
  ),
  refused(
    422,
    'time-zone-needed',
    'a file of local times, and no zone',
    file(logged('time,soil (C)', 'T,12.5'), { timeZone: null }),
    'have no offset from UTC, and the file names no zone. Send timeZone',
    'timeZone',
    2,
  ),
  unusable('a file, and no crop', file(plainFile, { crop: null }), 'crop is missing', 'crop'),
  unusable(
    'a file, and no date of sowing',
    file(plainFile, { sowing: null }),
    'sowing is missing; it must be a date',
    'sowing',
  ),
  refused(
    422,
    'unknown-crop',
    'a file, and a crop nobody knows',
    file(plainFile, { crop: 'lettuse' }),
    'Choose one of asparagus',
    'crop',
  ),
  unusable(
    'a file, and a date in words',
    file(plainFile, { sowing: '3 May' }),
    'sowing must be a date such as 2027-08-03',
    'sowing',
  ),
  unusable(
    'a file, and a latitude in words',
    file(plainFile, { latitude: 'north' }),
    'latitude must be a number; it was "north"',
    'latitude',
  ),
  unusable(
    'a file, and an unknown parameter',
    file(plainFile, { colour: 'red' }),
    'colour is no parameter known here',
    'colour',
  ),
  unusable(
    'a file, and a parameter twice',
    file(plainFile, {}, '&crop=onion'),
    'crop is given twice; send it once',
    'crop',
  ),
  unusable(
    'a file, and two stand factors',
    file(plainFile, { standFactor: '0.5', 'standFactor.from': '0.2' }),
    'send one of the two',
    'standFactor.from',
  ),
  unusable(
    'a file, and a bed indoors of unknown warmth',
    file(plainFile, { 'where.bed.kind': 'indoors' }),
    'how warm is the room?',
    'where.bed.roomC',
  ),
  refused(
    422,
    'no-latitude',
    'a file, and the drift without a latitude',
    file(plainFile, { latitude: null, beyond: 'seasonal-drift' }),
    'latitude',
    'latitude',
  ),
  refused(
    422,
    'starts-after-sowing',
    'a file that begins after the sowing',
    file(plainFile, { sowing: '2027-04-03' }),
    'Send earlier ones, or a later sowing date',
    'sowing',
  ),
  refused(
    422,
    'too-few-readings',
    'a file of two readings',
    file(logged('time,soil (C)', 'T-02:00,12.5', 2, '2027-05-03T11:00')),
    'send at least 24 hours in a row',
  ),
  refused(
    413,
    'too-large',
    'a file of 257 megabytes',
    {
      ...file('time,soil (C)\n'),
      headers: { 'content-type': 'text/csv', 'content-length': String(257 * 1024 * 1024) },
    },
    'larger than 256 MB',
  ),
];

/** Where the service was started with keys. */
const keyless: readonly BadRequest[] = [
  refused(
    401,
    'unauthorized',
    'no key',
    get('/v1/crops'),
    'Send the header "Authorization: Bearer" followed by your key',
  ),
  refused(
    401,
    'unauthorized',
    'a key of nobody’s',
    get('/v1/crops', { authorization: 'Bearer guessed' }),
    'followed by your key',
  ),
  refused(
    401,
    'unauthorized',
    'a password for a key',
    get('/v1/crops', { authorization: 'Basic cXVpbGxtZXJl' }),
    'Bearer',
  ),
  refused(401, 'unauthorized', 'no key, and the address in disguise', get('/%76%31/crops'), 'your key'),
  refused(
    401,
    'unauthorized',
    'no key for a question, and the address in disguise',
    json(lettuceQuestion(), '/%761/forecasts'),
    'your key',
  ),
];

const app = await startApp();
const keyed = await startApp({ findOwner: keyring(new Map([['s3cret', 'quillmere']])) });

describe('a bad request is refused in words that help', () => {
  it.each(badRequests)('$name: $status $code', (request) => expectProblem(app, request));
});

describe('where keys are set, a caller without one is refused', () => {
  it.each(keyless)('$name: $status $code', (request) => expectProblem(keyed, request));
});

describe('the table of bad requests', () => {
  it('tells each kind once, and at least 75', () => {
    const names = [...badRequests, ...keyless].map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    expect(names.length).toBeGreaterThanOrEqual(75);
  });

  it('has every code there is', () => {
    const elsewhere: Partial<Record<ErrorCode, string>> = {
      'unsupported-coding': 'test/e2e/attacks-bodies.test.ts',
      'key-in-address': 'needs a key: session.test.ts',
      misdirected: 'needs hosts: test/e2e/attacks-hosts.test.ts',
      'too-slow': 'takes a real connection: test/e2e/attacks-connections.test.ts',
      'foreign-origin': 'needs a session: session.test.ts',
      'precondition-failed': 'needs something kept: kept-bad-input.test.ts',
      'has-beds': 'needs something kept: kept-bad-input.test.ts',
      'has-sowings': 'needs something kept: beds.test.ts',
      'quota-full': 'needs a garden that is full: quotas.test.ts',
      'too-many-requests': 'takes many requests: limits.test.ts',
      'too-much-at-once': 'takes many long questions at once: limits.test.ts',
      'storage-unavailable': 'needs a database that fails: limits.test.ts',
      'storage-full': 'needs a full disk: test/storage/trouble.test.ts',
      'storage-damaged': 'needs a file that is gone: limits.test.ts',
      busy: 'needs many long questions at once: sowing-windows.test.ts',
      stopping: 'takes a process that is told to stop: test/e2e/stopping.test.ts',
      'unknown-lot': 'of seed: lots.test.ts',
      'unknown-locality': 'of towns: test/unit/localities/near.test.ts',
      'too-many-seeds': 'of seed: lots.test.ts',
      'no-climate-near': 'of a place: locale.test.ts',
      'unknown-preset': 'of a place: sources.test.ts',
      'contact-needed': 'of a place: sources.test.ts',
      'private-address': 'of a place: sources.test.ts',
      'no-source': 'of a place: sources.test.ts',
      'too-soon': 'of a place: sources.test.ts',
      'choose-locality': 'of towns: test/unit/localities/near.test.ts',
      internal: 'a fault of ours: nothing that a caller sends may bring it about',
    };
    const covered = new Set([...badRequests, ...keyless].map(({ code }) => code));
    expect(errorCodes.filter((code) => !covered.has(code))).toEqual(Object.keys(elsewhere));
  });
});

describe('a problem with choices', () => {
  interface Choice {
    readonly value: string;
    readonly consequence: string;
  }
  const choicesOf = async (csv: string, query: Record<string, string | null> = {}): Promise<Choice[]> =>
    (await app.inject(file(csv, query))).json().errors[0].choices;
  const check = async (csv: string, parameter: string, { value }: Choice, more = '') => {
    const response = await post(app, `${CHECK}?timeZone=Etc/GMT%2B2&medium=soil&${parameter}=${value}${more}`, csv);
    expect(response.statusCode, response.body).toBe(200);
    return response.json();
  };
  const swinging = (header: string, hours = 96): string =>
    `${header}\n${hourlySeries(Array.from({ length: hours }, (_, i) => 59 - 9 * Math.cos((Math.PI * i) / 12)))
      .readings.map(({ at, value }) => `${at},${value.toFixed(1)},3.1`)
      .join('\n')}\n`;
  const unitless = swinging('time,soil,battery');

  it('offers each unit with just what the file then says', async () => {
    const choices = await choicesOf(unitless, { column: '2' });
    expect(choices.map(({ value }) => value)).toContain('F');
    for (const choice of choices) {
      const { min, mean, max } = await check(unitless, 'unit', choice, '&column=2');
      expect(choice.consequence).toBe(`minimum ${min} °C, mean ${mean} °C, maximum ${max} °C`);
    }
  });

  it('leaves a mark for "no value" out of what it promises of each unit', async () => {
    const choices = await choicesOf(unitless.replace(/-02:00,[\d.]+/, '-02:00,-9999'), { column: '2' });
    expect(choices.map(({ consequence }) => consequence).join()).not.toContain('9999');
  });

  it('offers each column of numbers, and reads the one that is sent back', async () => {
    const file = swinging('time,soil (F),soil (F)');
    const choices = await choicesOf(file);
    expect(choices.map(({ value }) => value)).toEqual(['2', '3']);
    const [soil, other] = [await check(file, 'column', choices[0]!), await check(file, 'column', choices[1]!)];
    expect(soil).toMatchObject({ column: 2, min: 10, max: 20 });
    expect(other).toMatchObject({ column: 3, min: -16.1, max: -16.1 });
  });

  it('offers soil and air, and takes the file as what is sent back', async () => {
    const file = logged('time,probe (C)', 'T-02:00,12.5');
    const choices = await choicesOf(file, { medium: null });
    expect(choices.map(({ value }) => value)).toEqual(['soil', 'air']);
    for (const { value } of choices) {
      const response = await post(app, `${CHECK}?timeZone=Etc/GMT%2B2&medium=${value}`, file);
      expect(response.json().medium).toBe(value);
    }
  });

  it('offers Fahrenheit for a series too hot to be in Celsius, and takes it', async () => {
    const hot = dailySeries(new Array(30).fill([50, 68]));
    const { errors } = (await app.inject(lettuce({ temperatures: [hot] }))).json();
    expect(errors[0].choices).toMatchObject([
      { value: 'F', reads: 'degrees Fahrenheit', consequence: 'the mean is 15 °C' },
    ]);
    const report = await post(app, `${CHECK}?timeZone=Etc/GMT%2B2`, { ...hot, unit: errors[0].choices[0].value });
    expect(report.json().mean).toBe(15);
  });
});

describe('a problem over HTTP', () => {
  it('names the methods that an address does take', async () => {
    const response = await app.inject(get('/v1/seeds-needed'));
    expect(response.headers.allow).toBe('POST');
  });

  it('asks for a key by the name of the scheme', async () => {
    const response = await keyed.inject(get('/v1/crops'));
    expect(response.headers['www-authenticate']).toBe('Bearer');
  });

  it('has an instance of its own each time', async () => {
    const [one, other] = [await app.inject(get('/nowhere')), await app.inject(get('/nowhere'))];
    expect(one.json().instance).not.toBe(other.json().instance);
  });

  it('tells all that is wrong at once, the first in full', async () => {
    const { detail, errors } = (await app.inject(lettuce({ countDays: 0, timeFactor: 0, crop: 7 }))).json();
    expect(errors.map(({ pointer }: { pointer: string }) => pointer).sort()).toEqual([
      '#/countDays',
      '#/crop',
      '#/timeFactor',
    ]);
    expect(detail).toContain('2 more under "errors"');
  });

  it('never claims more listed faults than it lists', async () => {
    const { detail, errors } = (await app.inject(soil({ ...mildMay, unit: 'K' }))).json();
    const claimed = Number(/and (\d+) more, listed/.exec(detail)?.[1] ?? 0);
    expect(errors.length).toBeGreaterThanOrEqual(claimed + 1);
  });
});
