import type { InjectOptions } from 'fastify';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { type BadRequest, expectProblem, refused } from './bad-request.js';
import { keepQuillmere, quillmere, startApp } from './helper.js';

// What is wrong with a request about what is kept is told as anywhere else, and changes nothing.

const app = await startApp();
beforeEach(() => keepQuillmere(app));
afterAll(() => app.close());

type Method = 'GET' | 'PUT' | 'PATCH' | 'POST' | 'DELETE';
const ask = (method: Method, url: string, payload?: object, headers: Record<string, string> = {}): InjectOptions => ({
  method,
  url,
  headers,
  ...(payload === undefined ? {} : { payload }),
});
const file = (url: string, csv: string): InjectOptions => ({
  method: 'POST',
  url,
  headers: { 'content-type': 'text/csv' },
  payload: csv,
});
/** Understood as a request, but something in it cannot be used. */
const unusable = (name: string, one: InjectOptions, says: string | RegExp, at?: string): BadRequest =>
  refused(422, 'not-understood', name, one, says, at);
const missing = (name: string, one: InjectOptions, says = 'is kept under "nowhere"'): BadRequest =>
  refused(404, 'not-found', name, one, says);

const PLACE = '/v1/places/quillmere';
const BED = '/v1/beds/north';
const place = { name: 'Quillmere', ...quillmere };
const bed = { place: 'quillmere', name: 'North bed' };
const putPlace = (changes: object) => ask('PUT', PLACE, { ...place, ...changes });
const putBed = (changes: object) => ask('PUT', BED, { ...bed, ...changes });
const source = { format: 'station-day-file', url: 'https://weather.example/a.csv', everyHours: 6 };
const day = { date: '2027-05-01', min: 7, max: 18 };
const air = (changes: object) => ask('POST', `${PLACE}/air`, { medium: 'air', daily: [day], ...changes });
const coming = (changes: object) => ask('PUT', `${PLACE}/coming-days`, { medium: 'air', daily: [day], ...changes });
const months = (value: number) => new Array(12).fill(value);
const readings = [
  { at: '2027-05-03T12:00-02:00', value: 15 },
  { at: '2027-05-03T13:00-02:00', value: 16 },
];
const SUBSCRIPTION = '/v1/subscriptions/shed';
const subscribe = (changes: object) =>
  ask('PUT', SUBSCRIPTION, { url: 'https://shed.example/alerts', events: ['frost'], ...changes });
const soil = (changes: object) => ask('POST', `${BED}/readings`, { medium: 'soil', readings, ...changes });

const badRequests: readonly BadRequest[] = [
  // Places.
  unusable(
    'a place with an id in capitals',
    ask('PUT', '/v1/places/Quillmere', place),
    '1 to 64 of a-z, 0-9 and -',
    'id',
  ),
  unusable('a place with an id of 65 letters', ask('PUT', `/v1/places/${'q'.repeat(65)}`, place), '1 to 64', 'id'),
  unusable('a place that is nothing', ask('PUT', PLACE, {}), 'is missing', '#/name'),
  unusable('a place without a body', { method: 'PUT', url: PLACE }, 'is missing', '#'),
  unusable('a place without a name', putPlace({ name: '' }), 'at least one character', '#/name'),
  unusable('a place with a name of control characters', putPlace({ name: 'a\0b' }), 'plain text', '#/name'),
  unusable('a place with half a character for a name', putPlace({ name: '\ud800' }), 'plain text', '#/name'),
  unusable('a place beyond the pole', putPlace({ latitude: 91 }), 'at most 90', '#/latitude'),
  unusable('a place in no zone', putPlace({ timeZone: 'Quillmere' }), 'must be an IANA zone', '#/timeZone'),
  unusable('a place above the air', putPlace({ elevationM: 12_000 }), 'at most 9000', '#/elevationM'),
  unusable('a place with a colour', putPlace({ colour: 'green' }), 'is not a field known here', '#/colour'),
  unusable('a source of a form unknown', putPlace({ source: { ...source, format: 'x' } }), 'one of', '#/source/format'),
  unusable('a source by ftp', putPlace({ source: { ...source, url: 'ftp://a.example' } }), 'http://', '#/source/url'),
  unusable('a source with a script', putPlace({ source: { ...source, url: 'javascript:1' } }), 'http', '#/source/url'),
  unusable(
    'a source with a long address',
    putPlace({ source: { ...source, url: `https://a.example/${'x'.repeat(2000)}` } }),
    'at most 2,000 characters',
    '#/source/url',
  ),
  unusable(
    'a source every minute',
    putPlace({ source: { ...source, everyHours: 0.02 } }),
    'at least 1',
    '#/source/everyHours',
  ),
  unusable(
    'a source every fortnight',
    putPlace({ source: { ...source, everyHours: 336 } }),
    'at most 168',
    '#/source/everyHours',
  ),
  unusable('a place, and a parameter', ask('PUT', `${PLACE}?precision=full`, place), 'precision', 'precision'),
  unusable('a change of a place to no name', ask('PATCH', PLACE, { name: null }), 'must be text', '#/name'),
  unusable('a change of a place by a list', ask('PATCH', PLACE, []), 'must be an object', '#'),
  unusable('a page of no places', ask('GET', '/v1/places?limit=0'), 'at least 1', 'limit'),
  unusable('a page of too many places', ask('GET', '/v1/places?limit=101'), 'at most 100', 'limit'),
  unusable('a page after no id', ask('GET', '/v1/places?after=%00'), '1 to 64 of a-z', 'after'),
  unusable('a place, in colour', ask('GET', `${PLACE}?colour=red`), 'is not a field known here', 'colour'),
  unusable('to delete a place with all', ask('DELETE', `${PLACE}?with=all`), 'must be beds', 'with'),
  unusable('to delete a bed with all', ask('DELETE', `${BED}?with=all`), 'must be sowings', 'with'),
  refused(409, 'has-beds', 'to delete a place with beds', ask('DELETE', PLACE), 'send ?with=beds'),
  refused(
    400,
    'not-json',
    'a place that breaks off',
    { method: 'PUT', url: PLACE, headers: { 'content-type': 'application/json' }, payload: '{"name"' },
    'breaks at line 1',
  ),
  refused(
    415,
    'unsupported-media-type',
    'a place as a file',
    { method: 'PUT', url: PLACE, headers: { 'content-type': 'text/csv' }, payload: 'name\nQ\n' },
    'application/json',
  ),
  refused(
    406,
    'not-acceptable',
    'a place as XML',
    ask('GET', PLACE, undefined, { accept: 'application/xml' }),
    'application/json',
  ),
  refused(
    405,
    'method-not-allowed',
    'to post a place',
    ask('POST', PLACE, place),
    'PUT, PATCH, GET or DELETE, not POST',
  ),
  refused(
    412,
    'precondition-failed',
    'a place with an old tag',
    ask('PUT', PLACE, place, { 'if-match': 'W/"old"' }),
    'GET it',
  ),
  refused(
    412,
    'precondition-failed',
    'a new place with a tag',
    ask('PUT', '/v1/places/new', place, { 'if-match': '*' }),
    'Nothing is kept here',
  ),
  refused(
    412,
    'precondition-failed',
    'a change of a place with an old tag',
    ask('PATCH', PLACE, { name: 'Q' }, { 'if-match': '"old"' }),
    'GET it',
  ),

  // The air of a place.
  unusable('soil for air', air({ medium: 'soil' }), 'POST /v1/beds/{id}/readings', '#/medium'),
  unusable('a forecast for past air', air({ origin: 'forecast' }), 'coming-days', '#/daily'),
  unusable(
    'readings for past air of which one is a forecast',
    ask('POST', `${PLACE}/air`, {
      medium: 'air',
      readings: Array.from({ length: 25 }, (_, hour) => ({
        at: new Date(Date.UTC(2027, 4, 1, 2 + hour)).toISOString(),
        value: 12,
        ...(hour === 12 ? { basis: 'forecast' } : {}),
      })),
    }),
    'coming-days',
    '#/readings',
  ),
  unusable(
    'a day of a forecast for past air',
    air({ daily: [{ ...day, basis: 'forecast' }] }),
    'coming-days',
    '#/daily',
  ),
  unusable('air upside down', air({ daily: [{ ...day, min: 30 }] }), 'not in rising order', '#/daily/0'),
  unusable(
    'air of a day that is none',
    air({ daily: [{ ...day, date: '2027-02-30' }] }),
    'must be a date',
    '#/daily/0/date',
  ),
  unusable('air of neither days nor readings', air({ daily: undefined }), 'either "daily" or "readings"', '#'),
  unusable(
    'air as JSON with a unit in the query',
    ask('POST', `${PLACE}/air?unit=F`, { medium: 'air', daily: [day] }),
    'goes into the body',
    'unit',
  ),
  unusable(
    'a file of soil for air',
    file(`${PLACE}/air?medium=soil&unit=C`, 'date,min,max\n2027-05-01,7,18\n2027-05-02,7,18\n'),
    'must be air',
    'medium',
  ),
  unusable(
    'a file of air with a zone',
    file(`${PLACE}/air?timeZone=Etc/UTC`, 'date,air (C)\n2027-05-01,7\n'),
    'timeZone is no parameter known here',
    'timeZone',
  ),
  refused(
    422,
    'too-few-readings',
    'two readings of air',
    air({ daily: undefined, readings }),
    'at least 18 of its 24 hours',
  ),
  refused(400, 'not-csv', 'an empty file of air', file(`${PLACE}/air`, ''), /empty/),
  unusable('air backward', ask('GET', `${PLACE}/air?from=2027-05-02&to=2027-05-01`), 'must not be before from', 'to'),
  unusable('air from no day', ask('GET', `${PLACE}/air?from=May`), 'must be a date', 'from'),
  unusable('air without end', ask('GET', `${PLACE}/air?limit=1e9`), 'at most 40000', 'limit'),
  unusable(
    'air in a precision of its own',
    ask('GET', `${PLACE}/air?precision=high`),
    'one of full, rounded',
    'precision',
  ),
  unusable(
    'to delete air backward',
    ask('DELETE', `${PLACE}/air?from=2027-05-02&to=2027-05-01`),
    'must not be before',
    'to',
  ),
  unusable(
    'to delete air after a day',
    ask('DELETE', `${PLACE}/air?after=2027-05-02`),
    'not a field known here',
    'after',
  ),
  unusable(
    'normals of eleven months',
    ask('PUT', `${PLACE}/normals`, { meanMaxC: months(9).slice(1), meanMinC: months(1) }),
    '12 entries; it was a list of 11',
    '#/meanMaxC',
  ),
  unusable(
    'normals upside down',
    ask('PUT', `${PLACE}/normals`, { meanMaxC: months(9), meanMinC: months(10) }),
    'must not be above',
    '#/meanMinC/0',
  ),
  unusable(
    'normals of an oven',
    ask('PUT', `${PLACE}/normals`, { meanMaxC: months(180), meanMinC: months(10) }),
    'that air can have',
    '#/meanMaxC/0',
  ),
  refused(
    412,
    'precondition-failed',
    'normals with an old tag',
    ask('PUT', `${PLACE}/normals`, { meanMaxC: months(9), meanMinC: months(1) }, { 'if-match': '"old"' }),
    'GET it',
  ),
  unusable('a measured forecast', coming({ origin: 'measured' }), 'must be forecast', '#/origin'),
  unusable('a forecast of soil', coming({ medium: 'soil' }), 'must be air', '#/medium'),
  unusable('a forecast without days', coming({ daily: [] }), 'at least one entry', '#/daily'),
  refused(
    422,
    'choose-unit',
    'a forecast in Fahrenheit, said to be Celsius',
    coming({ daily: [{ ...day, min: 50, max: 70 }] }),
    'hotter than any soil stays',
  ),
  refused(
    412,
    'precondition-failed',
    'a forecast with an old tag',
    ask('PUT', `${PLACE}/coming-days`, { medium: 'air', daily: [day] }, { 'if-match': '"old"' }),
    'GET it',
  ),
  unusable(
    'frosts at no temperature',
    ask('GET', `${PLACE}/frost-dates?threshold=cold`),
    'must be a number',
    'threshold',
  ),
  unusable('frosts in summer', ask('GET', `${PLACE}/frost-dates?threshold=25`), 'at most 20', 'threshold'),
  refused(
    422,
    'no-past-years',
    'frosts of a place without air',
    ask('GET', '/v1/places/fallow/frost-dates'),
    'POST /v1/places/{id}/air',
  ),

  // Beds.
  unusable('a bed with an id of dots', ask('PUT', '/v1/beds/a.b', bed), '1 to 64 of a-z, 0-9 and -', 'id'),
  unusable('a bed without a place', putBed({ place: undefined }), 'is missing', '#/place'),
  refused(
    422,
    'unknown-place',
    'a bed in no place',
    putBed({ place: 'nowhere' }),
    'PUT /v1/places/nowhere first',
    '#/place',
  ),
  refused(
    422,
    'unknown-place',
    'a change of a bed to no place',
    ask('PATCH', BED, { place: 'nowhere' }),
    'first',
    '#/place',
  ),
  unusable('a bed of a kind unknown', putBed({ kind: 'roof' }), 'must be one of', '#/kind'),
  unusable('a bed under straw', putBed({ cover: 'straw' }), 'must be one of', '#/cover'),
  unusable('a bed in deep shade', putBed({ shadePercent: 101 }), 'at most 100', '#/shadePercent'),
  unusable('a bed indoors of unknown warmth', putBed({ kind: 'indoors' }), 'how warm is the room?', '#/roomC'),
  unusable('a bed moved indoors without its warmth', ask('PATCH', BED, { kind: 'indoors' }), 'how warm', '#/roomC'),
  unusable('a bed that is watered on a day', putBed({ wettedOn: '2027-05-01' }), 'not a field known', '#/wettedOn'),
  unusable('a page of beds with sowings', ask('GET', '/v1/beds?with=sowings'), 'not a field known here', 'with'),
  refused(
    412,
    'precondition-failed',
    'a bed with an old tag',
    ask('PUT', BED, bed, { 'if-match': 'W/"old"' }),
    'GET it',
  ),

  // Readings.
  unusable(
    'days for readings',
    soil({ readings: undefined, daily: [day] }),
    'keeps readings with their instants',
    '#/daily',
  ),
  unusable(
    'a file of days for readings',
    file(`${BED}/readings`, 'date,soil (C)\n2027-05-01,7\n2027-05-02,8\n'),
    'keeps readings with their instants',
  ),
  unusable('readings of the future', soil({ origin: 'forecast' }), 'only what was measured', '#/origin'),
  unusable(
    'a reading at no time',
    soil({ readings: [{ at: 'noon', value: 1 }, readings[0]] }),
    'is no date and time',
    '#/readings/0/at',
  ),
  unusable(
    'a reading of no thermometer',
    soil({ readings: [{ at: readings[0]!.at, value: 999 }, readings[1]] }),
    'no temperature of soil or air',
    '#/readings/0/value',
  ),
  unusable('one reading', soil({ readings: readings.slice(1) }), 'at least 2 entries', '#/readings'),
  unusable('readings deeper than a probe goes', soil({ probeDepthCm: 101 }), 'at most 100', '#/probeDepthCm'),
  refused(
    422,
    'choose-medium',
    'a file that says neither soil nor air',
    file(`${BED}/readings`, 'time,probe (C)\n2027-05-03T12:00Z,12.5\n2027-05-03T13:00Z,12.5\n2027-05-03T14:00Z,12.5\n'),
    'medium',
  ),
  unusable('readings of water', ask('GET', `${BED}/readings?medium=water`), 'one of soil, air', 'medium'),
  unusable('readings at no depth', ask('GET', `${BED}/readings?probeDepthCm=deep`), /number|seed/, 'probeDepthCm'),
  unusable('readings after no instant', ask('GET', `${BED}/readings?after=yesterday`), 'must be an instant', 'after'),
  unusable(
    'readings backward',
    ask('GET', `${BED}/readings?from=2027-05-02&to=2027-05-01`),
    'must not be before',
    'to',
  ),
  unusable('too many readings at once', ask('GET', `${BED}/readings?limit=50001`), 'at most 50000', 'limit'),
  unusable('to delete readings of water', ask('DELETE', `${BED}/readings?medium=water`), 'one of soil, air', 'medium'),

  // What is not there.
  missing('a place that is not there', ask('GET', '/v1/places/nowhere')),
  missing('a place whose name cannot be one', ask('GET', '/v1/places/No%20Where'), 'No place is kept under "No Where"'),
  missing('to change a place that is not there', ask('PATCH', '/v1/places/nowhere', { name: 'Q' })),
  missing('to delete a place that is not there', ask('DELETE', '/v1/places/nowhere')),
  missing('air of a place that is not there', ask('GET', '/v1/places/nowhere/air')),
  missing('air for a place that is not there', ask('POST', '/v1/places/nowhere/air', { medium: 'air', daily: [day] })),
  missing('to delete air of a place that is not there', ask('DELETE', '/v1/places/nowhere/air')),
  missing('normals of a place that is not there', ask('GET', '/v1/places/nowhere/normals')),
  missing('normals that are not there', ask('GET', '/v1/places/fallow/normals'), 'No normals are kept for "fallow"'),
  missing(
    'normals for a place that is not there',
    ask('PUT', '/v1/places/nowhere/normals', { meanMaxC: months(9), meanMinC: months(1) }),
  ),
  missing('coming days that are not there', ask('GET', '/v1/places/fallow/coming-days'), 'No coming-days are kept'),
  missing(
    'a forecast for a place that is not there',
    ask('PUT', '/v1/places/nowhere/coming-days', { medium: 'air', daily: [day] }),
  ),
  missing('frosts of a place that is not there', ask('GET', '/v1/places/nowhere/frost-dates')),
  missing('a bed that is not there', ask('GET', '/v1/beds/nowhere')),
  missing('to change a bed that is not there', ask('PATCH', '/v1/beds/nowhere', { name: 'Q' })),
  missing('to delete a bed that is not there', ask('DELETE', '/v1/beds/nowhere')),
  missing('readings of a bed that is not there', ask('GET', '/v1/beds/nowhere/readings')),
  missing(
    'readings for a bed that is not there',
    ask('POST', '/v1/beds/nowhere/readings', { medium: 'soil', readings }),
  ),
  missing('to delete readings of a bed that is not there', ask('DELETE', '/v1/beds/nowhere/readings')),

  // Subscriptions.
  unusable('a subscription that is nothing', ask('PUT', SUBSCRIPTION, {}), 'is missing', '#/url'),
  unusable('a subscription to nothing', subscribe({ events: [] }), 'at least one', '#/events'),
  unusable('a subscription to the moon', subscribe({ events: ['moon'] }), 'one of', '#/events/0'),
  unusable('a subscription to frost twice', subscribe({ events: ['frost', 'frost'] }), 'only once', '#/events'),
  unusable('a subscription for no beds', subscribe({ beds: [] }), 'at least one', '#/beds'),
  unusable('a subscription for a bed twice', subscribe({ beds: ['north', 'north'] }), 'only once', '#/beds'),
  unusable('a subscription for a bed in capitals', subscribe({ beds: ['North'] }), '1 to 64', '#/beds/0'),
  unusable(
    'a subscription for a hundred and one beds',
    subscribe({ beds: Array.from({ length: 101 }, (_, i) => `b${i}`) }),
    'at most 100',
    '#/beds',
  ),
  unusable('a subscription to a long address', subscribe({ url: `https://a/${'x'.repeat(2000)}` }), '2,000', '#/url'),
  unusable('a subscription without an address', subscribe({ url: 'shed' }), 'whole address', '#/url'),
  unusable('a subscription to a private address', subscribe({ url: 'https://10.0.0.1/' }), 'private', '#/url'),
  unusable(
    'a subscription with a secret',
    subscribe({ secret: 'whsec_AAAA' }),
    'is not a field known here',
    '#/secret',
  ),
  unusable('windows of no crop', subscribe({ events: ['window-open'] }), 'which crops', '#/crops'),
  refused(422, 'unknown-bed', 'a subscription for a bed unknown', subscribe({ beds: ['x'] }), 'PUT /v1/beds/x first'),
  refused(422, 'unknown-crop', 'a subscription for a crop unknown', subscribe({ crops: ['x'] }), 'GET /v1/crops'),
  missing('a subscription that is not there', ask('GET', '/v1/subscriptions/nowhere')),
  missing('to delete a subscription that is not there', ask('DELETE', '/v1/subscriptions/nowhere')),
  refused(405, 'method-not-allowed', 'to patch a subscription', ask('PATCH', SUBSCRIPTION, {}), 'takes PUT, GET'),
];

/** All that is kept, as it is answered. */
async function everything(): Promise<unknown[]> {
  const urls = [
    '/v1/places',
    '/v1/beds',
    `${PLACE}/air`,
    `${PLACE}/normals`,
    `${PLACE}/coming-days`,
    `${BED}/readings`,
    '/v1/subscriptions',
  ];
  const answers = [];
  for (const url of urls) answers.push((await app.inject(url)).json());
  return answers;
}

describe('a bad request about what is kept is refused in words that help, and changes nothing', () => {
  it.each(badRequests)('$name: $status $code', async (request) => {
    const before = await everything();
    await expectProblem(app, request);
    expect(await everything()).toEqual(before);
  });

  it('each kind is told once', () => {
    const names = badRequests.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
  });
});
