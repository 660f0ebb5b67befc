import { get, type More, patch, post, postEach, put, type Question, remove } from './question.js';
import { csvOf, soilHours, withOffset } from './weather.js';

const place = { latitude: 44, longitude: -30, timeZone: 'Etc/GMT+2' };
const days = (from: number, to: number) =>
  Array.from({ length: to - from + 1 }, (_, i) => ({
    date: `2027-05-${String(from + i).padStart(2, '0')}`,
    min: 10,
    max: 20,
  }));
const soil = (daily: readonly object[], more: object = {}) => [{ medium: 'soil', daily, ...more }];
const question = {
  crop: 'lettuce',
  where: { place },
  sowing: { date: '2027-05-03' },
  temperatures: soil(days(1, 30)),
};
const asking = (changes: object) => ({ ...question, ...changes });
const hours = (count: number) => withOffset(soilHours('2027-05-03T12:00', count, { meanC: 13 }));

const forecasts: readonly Question[] = postEach('/v1/forecasts', {
  'a list': [],
  'misspelt fields': { ...question, corp: 'onion', sowing: { date: '2027-05-03', hour: 18 } },
  'no crop': asking({ crop: undefined }),
  'no sowing, no temperatures': { crop: 'lettuce', where: { place } },
  'an unknown crop': asking({ crop: 'lettuse' }),
  'an unknown bed': asking({ where: { bed: 'nowhere' } }),
  'an unknown place': asking({ where: { place: 'nowhere' } }),
  'an empty where': asking({ where: {} }),
  'beyond the pole': asking({ where: { place: { ...place, latitude: 91, longitude: -181 } } }),
  'in no zone': asking({ where: { place: { ...place, timeZone: 'Etc/Quillmere' } } }),
  'no zone': asking({ where: undefined }),
  'a bed unknown': asking({ where: { place, bed: { kind: 'roof', cover: 'straw', shadePercent: 120 } } }),
  'a room of unknown warmth': asking({ where: { place, bed: { kind: 'indoors' } } }),
  'a dry bed never watered': asking({ where: { place, bed: { moisture: 'dry' } } }),
  'a dry bed watered too soon': asking({ where: { place, bed: { moisture: 'dry', wettedOn: '2027-05-02' } } }),
  '30 February at 24:00': asking({ sowing: { date: '2027-02-30', time: '24:00', depthCm: -1, seeds: 0.5 } }),
  'a lot out of range': asking({ lot: { germinationPercent: 101, hotLimitShiftC: 9 } }),
  'factors out of range': asking({ timeFactor: 0, standFactor: { from: 0.8, to: 0.2 }, countDays: 367 }),
  'one own row': asking({ crop: { rows: [{ temperatureC: 10, days: 10, percent: 90 }] } }),
  'rows of which nothing comes': asking({
    crop: { rows: [10, 20].map((temperatureC) => ({ temperatureC, days: 5, percent: 0 })) },
  }),
  'no series': asking({ temperatures: [] }),
  'upside down': asking({ temperatures: soil([...days(1, 3), { date: '2027-05-04', min: 20, max: 10 }]) }),
  'a date twice': asking({ temperatures: soil([...days(1, 9), { date: '2027-05-03', min: 11, max: 20 }]) }),
  'kelvin for Celsius': asking({ temperatures: soil(days(1, 9).map((day) => ({ ...day, min: 283, max: 293 }))) }),
  'Fahrenheit for Celsius': asking({ temperatures: soil(days(1, 9).map((day) => ({ ...day, min: 50, max: 68 }))) }),
  'a mark for no value': asking({ temperatures: soil(days(1, 9).map((day) => ({ ...day, min: -9999 }))) }),
  'a stamp in words': asking({ temperatures: [{ medium: 'soil', readings: [{ at: 'noon', value: 1 }, ...hours(3)] }] }),
  'air without a latitude': asking({
    where: { place: { timeZone: 'Etc/GMT+2' } },
    temperatures: [{ medium: 'air', daily: days(1, 30) }],
  }),
  'begins after the sowing': asking({ temperatures: soil(days(9, 30)) }),
  'a gap too long': asking({ temperatures: soil([...days(1, 4), ...days(25, 30)]) }),
  'too few readings': asking({ temperatures: [{ medium: 'soil', readings: hours(5) }] }),
  'ended long ago': asking({ sowing: { date: '2029-05-03' } }),
  'nothing supposed': asking({ beyond: 'refuse', temperatures: soil(days(1, 6)) }),
  'past years that are not there': asking({ beyond: 'past-years' }),
  'the drift without a latitude': asking({ beyond: 'seasonal-drift', where: { place: { timeZone: 'Etc/GMT+2' } } }),
});

const file = (query: string, rows: string, header = 'time,soil (C)', as?: string): Question =>
  post(`/v1/forecasts?${query}`, `${header}\n${rows}`, as === undefined ? {} : { as });
const LETTUCE = 'crop=lettuce&sowing=2027-05-03&latitude=44';
const ZONED = `${LETTUCE}&timeZone=Etc/GMT%2B2`;
const zonedRows = csvOf('', hours(72)).slice(1);
const localRows = csvOf('', soilHours('2027-05-03T00:00', 72)).slice(1);

const files: readonly Question[] = [
  file(LETTUCE, localRows),
  file(ZONED, zonedRows, 'time,probe (C)', 'soil or air'),
  file(`${ZONED}&medium=soil`, zonedRows, 'time,probe', 'which unit'),
  file(`${ZONED}&column=9`, zonedRows),
  file(`${ZONED}&colour=red&standFactor=0.5&standFactor.from=0.2`, zonedRows),
  file('crop=lettuse&sowing=2027-05-03&timeZone=Etc/GMT%2B2', zonedRows),
  file('timeZone=Etc/GMT%2B2', zonedRows),
  file(
    ZONED,
    csvOf('', hours(72), ({ at, value }) => `${at},${value.toFixed(1).replace('.', ',')}`),
    undefined,
    'which mark',
  ),
  file(ZONED, zonedRows.replaceAll('2027-05', '2027-06'), undefined, 'begins after the sowing'),
  file(ZONED, 'yours, the society\n', 'Dear society', 'a letter'),
];

const json = { 'content-type': 'application/json' };
const addresses: readonly Question[] = [
  post('/v1/forecasts', '{"crop": "lettuce",}', { headers: json, as: 'a comma too many' }),
  post('/v1/forecasts', '', { headers: json, as: 'nothing' }),
  post('/v1/forecasts', 'crop=lettuce', { headers: { 'content-type': 'application/xml' }, as: 'XML' }),
  post('/v1/forecasts', 'x', { headers: { ...json, 'content-encoding': 'gzip' }, as: 'packed' }),
  post('/v1/forecasts', 'x'.repeat(5 * 1024 * 1024), { headers: json, as: 'five megabytes' }),
  get('/v1/forcasts'),
  get('/v1/crops/lettuse'),
  get('/problems/lost'),
  get('/v1/crops/%E0%A4%A'),
  get('/v1/crops', { headers: { accept: 'application/xml' }, as: 'as XML' }),
  get('/v1/crops?limit=0'),
  get('/v1/crops?colour=red&precision=high'),
  remove('/v1/crops/onion'),
  post('/v1/readings/check?latitude=95', { medium: 'soil', daily: days(1, 3) }),
];

const windowed = { ...question, sowing: undefined, from: '2027-04-01', to: '2027-04-30' };
const others: readonly Question[] = [
  post('/v1/sowing-windows', windowed, { as: 'too few years' }),
  post('/v1/sowing-windows', { ...windowed, share: 2, to: '2026-01-01' }, { as: 'out of range' }),
  post('/v1/soil-temperatures', { where: { place }, depthCm: 31, step: 'week', temperatures: [] }),
  post('/v1/soil-temperatures', { where: { bed: 'nowhere' } }, { as: 'an unknown bed' }),
  post('/v1/seeds-needed', { crop: 'lettuce', plants: 100_000, field: 0.001 }, { as: 'too many' }),
  post('/v1/seeds-needed', { crop: 'lettuce', plants: 4, lot: 'nowhere' }, { as: 'an unknown lot' }),
  post('/v1/seeds-needed', { crop: 'lettuce', plants: 4, lot: 'onion-2026' }, { as: 'a lot of another crop' }),
  get('/v1/beds/nowhere/forecast?crop=lettuce&sowing=2027-08-04'),
  get('/v1/beds/north/forecast?crop=lettuce'),
  get('/v1/beds/fallow/sowing-windows?crop=lettuce'),
  get('/v1/places/fallow/frost-dates'),
  get('/v1/places/fallow/normals'),
  get('/v1/places/quillmere/air?from=2027-05-02&to=2027-05-01'),
  get('/v1/beds/north/readings?medium=water&limit=50001'),
  get('/v1/beds/north/calendar.ics?token=quillmere'),
  ...['places', 'beds', 'lots', 'sowings', 'plans', 'subscriptions'].map((kind) => get(`/v1/${kind}/nowhere`)),
];

const bed = { place: 'quillmere', name: 'North bed' };
const stale: More = { headers: { 'if-match': '"old"' }, as: 'with an old tag' };
const changes: readonly Question[] = [
  put('/v1/places/Quillmere', { ...place, name: 'Q' }),
  put('/v1/places/quillmere', {}, { as: 'nothing' }),
  put('/v1/places/quillmere', { ...place, name: 'Q' }, stale),
  put('/v1/places/quillmere', { ...place, name: 'Q' }, { headers: { 'if-none-match': '*' }, as: 'as a new one' }),
  patch('/v1/places/quillmere', { name: null }, { as: 'no name' }),
  remove('/v1/places/quillmere'),
  remove('/v1/beds/north'),
  remove('/v1/lots/onion-2026'),
  remove('/v1/sowings/north-carrot', stale),
  put('/v1/beds/new', { ...bed, place: 'nowhere' }),
  put('/v1/beds/new', { ...bed, kind: 'indoors' }, { as: 'indoors' }),
  post('/v1/places/quillmere/air', { medium: 'soil', daily: days(1, 2) }, { as: 'soil' }),
  post('/v1/places/quillmere/air', { medium: 'air', readings: hours(2) }, { as: 'two hours' }),
  post('/v1/beds/north/readings', { medium: 'soil', daily: days(1, 2) }, { as: 'days' }),
  put(
    '/v1/places/quillmere/normals',
    { meanMaxC: new Array(12).fill(9), meanMinC: new Array(12).fill(10) },
    { as: 'upside down' },
  ),
  put('/v1/places/quillmere/coming-days', { medium: 'air', origin: 'measured', daily: days(1, 2) }, { as: 'measured' }),
  put('/v1/lots/new', { crop: 'pea', germinationPercent: 80, test: { sown: 10, germinated: 11 } }),
  put('/v1/sowings/new', { bed: 'nowhere', crop: 'pea', date: '2027-07-01' }),
  put('/v1/sowings/new', { bed: 'north', crop: 'pea', date: '2027-07-01', lot: 'nowhere' }, { as: 'an unknown lot' }),
  put('/v1/sowings/new', { bed: 'north', crop: 'pea', date: '2027-07-01', lot: 'spinach' }, { as: 'of another crop' }),
  patch('/v1/sowings/north-lettuce', { date: '2027-08-01', seeds: 10 }, { as: 'against its counts' }),
  put('/v1/sowings/north-lettuce/counts/2027-07-01', { seedlings: 4 }, { as: 'before it was sown' }),
  put('/v1/sowings/north-lettuce/counts/2027-08-03', { seedlings: 400 }, { as: 'more than were sown' }),
  put('/v1/plans/new', { bed: 'north', crop: 'pea', harvest: { from: '2028-06-01', to: '2028-05-01', perWeek: 0 } }),
  put(
    '/v1/plans/new',
    { bed: 'fallow', crop: 'pea', harvest: { from: '2028-06-01', to: '2028-07-01', perWeek: 4 } },
    { as: 'no years' },
  ),
  put('/v1/subscriptions/new', { url: 'https://10.0.0.1/', events: ['frost'] }, { as: 'a private address' }),
  put('/v1/subscriptions/new', { url: 'shed', events: ['moon', 'window-open'] }),
];

const bearer = { authorization: 'Bearer s3cret' };
const elsewhere: readonly Question[] = [
  get('/v1/crops', { service: 'keyed', as: 'without a key' }),
  get('/v1/crops', { service: 'keyed', headers: { authorization: 'Bearer guessed' }, as: 'with a key of nobody’s' }),
  get('/v1/places?token=s3cret', { service: 'keyed' }),
  get('/v1/places', { service: 'keyed', headers: bearer, as: 'with a key' }),
  post('/session', { key: 's3cret' }, { service: 'keyed' }),
  post('/session', { key: 'guessed' }, { service: 'keyed', as: 'a key of nobody’s' }),
  post(
    '/session',
    { key: 's3cret' },
    { service: 'keyed', headers: { origin: 'https://other.example' }, as: 'another site' },
  ),
  remove('/session', { service: 'keyed' }),
  remove('/v1/sessions/none', { service: 'keyed', headers: bearer }),
  get('/v1/crops/onion', { service: 'hasty' }),
  get('/v1/crops/onion', { service: 'hasty', as: 'too soon' }),
  get('/v1/crops', { service: 'hosted', headers: { host: 'other.example' }, as: 'of another host' }),
  put('/v1/places/one', { ...place, name: 'One' }, { service: 'small' }),
  put('/v1/places/two', { ...place, name: 'Two' }, { service: 'small' }),
  get('/v1/places', { service: 'away', as: 'while the database is away' }),
  get('/readyz', { service: 'away', as: 'while the database is away' }),
];

/** What is refused, and how. */
export const refusedQuestions: readonly Question[] = [
  ...forecasts,
  ...files,
  ...addresses,
  ...others,
  ...changes,
  ...elsewhere,
];
