import { get, patch, post, put, type Question, remove } from './question.js';
import { airDays, csvOf, fahrenheit, soilHours, withOffset } from './weather.js';

const place = {
  name: 'Quillmere Allotment Society',
  latitude: 44,
  longitude: -30,
  elevationM: 12,
  timeZone: 'Etc/GMT+2',
  annualRainMm: 800,
};
const normals = {
  meanMaxC: [8, 8.5, 10.5, 13, 16.5, 20, 22.5, 23, 20, 16, 11.5, 9],
  meanMinC: [2, 2, 3, 5, 8, 11.5, 14, 14.5, 12, 9, 5, 3],
};
const ownRows = {
  rows: [
    { temperatureC: 5, days: 30, percent: 60 },
    { temperatureC: 15, days: 9, percent: 90 },
    { temperatureC: 25, days: 5, percent: 85 },
    { temperatureC: 35, days: null, percent: 0 },
  ],
};

/** A probe in °F that jumps by 12 K for one reading, sticks for a day and a half, and fails for an hour. */
const northHours = soilHours('2027-07-06T00:00', 24 * 28 + 12, { meanC: 21, swingC: 5, warmingC: 3 }).map(
  ({ at, value }, hour) => ({
    at,
    value: hour === 300 ? value + 12 : hour === 410 ? -127 : hour >= 500 && hour < 536 ? 22.5 : value,
  }),
);
const northFile = csvOf('Date and time,Soil 5 cm (°F),Battery (V)', northHours, ({ at, value }) =>
  [`${at.replace('T', ' ')}:00`, value === -127 ? value : fahrenheit(value), 3.1].join(','),
);
const southFile = csvOf(
  'Datum;Uhrzeit;Bodentemperatur 10 cm (°C)',
  soilHours('2027-07-20T00:00', 24 * 14 + 12, { meanC: 24, swingC: 3, warmingC: 2 }),
  ({ at, value }) =>
    `${at.slice(8, 10)}.${at.slice(5, 7)}.${at.slice(0, 4)};${at.slice(11)};${String(value).replace('.', ',')}`,
);

const bed = { place: 'quillmere', name: 'North bed', kind: 'raised-bed', cover: 'bare', moisture: 'moist' };

/** Keeps a garden of the society, and tells what each step answers. */
export const keepingQuestions: readonly Question[] = [
  put('/v1/places/quillmere', place),
  put('/v1/places/upper', { ...place, name: 'Upper field', latitude: 38.5, timeZone: 'Atlantic/Azores' }),
  put('/v1/places/harbour', {
    name: 'Harbour plots',
    latitude: -35,
    longitude: -30,
    timeZone: 'Etc/GMT+2',
    source: { format: 'station-day-file', url: 'https://weather.example/a.csv', everyHours: 6 },
  }),
  put('/v1/places/fallow', { ...place, name: 'Fallow' }),
  put('/v1/places/quillmere', { ...place, elevationM: 14 }, { as: 'again' }),
  patch('/v1/places/fallow', { annualRainMm: 900 }),
  put('/v1/places/harbour/normals', normals),
  put('/v1/places/quillmere/normals', normals),
  put('/v1/places/quillmere/coming-days', {
    medium: 'air',
    origin: 'forecast',
    daily: airDays('2027-08-04', 6, 4),
  }),
  put('/v1/beds/north', bed),
  put('/v1/beds/south', { ...bed, name: 'South bed', kind: 'open-ground', cover: 'black-film', moisture: 'wet' }),
  put('/v1/beds/shade', { ...bed, name: 'Pots in the shade', kind: 'pot', cover: 'mulch', shadePercent: 50 }),
  put('/v1/beds/frame', { ...bed, name: '5 °C frame', kind: 'open-ground', cover: 'fleece', moisture: 'rain' }),
  put('/v1/beds/window', { ...bed, name: 'Window sill', kind: 'indoors', roomC: 19 }),
  put('/v1/beds/upper', { ...bed, place: 'upper', name: 'Upper bed', kind: 'open-ground', cover: 'grass' }),
  put('/v1/beds/harbour', { ...bed, place: 'harbour', name: 'Harbour bed', kind: 'tray', cover: 'clear-film' }),
  put('/v1/beds/fallow', { ...bed, place: 'fallow', name: 'Fallow bed' }),
  patch('/v1/beds/frame', { shadePercent: 20 }),
  patch('/v1/beds/window', { roomC: 18.5 }),
  put('/v1/lots/onion-2026', {
    crop: 'onion',
    test: { sown: 100, germinated: 88 },
    testedOn: '2027-01-10',
    packedYear: 2026,
    moisturePercent: 8,
    storeC: 18,
  }),
  put('/v1/lots/lettuce-old', { crop: 'lettuce', germinationPercent: 80, testedOn: '2023-02-01', packedYear: 2022 }),
  put('/v1/lots/spinach', { crop: 'spinach', germinationPercent: 91, testedOn: '2027-03-01', hotLimitShiftC: 2 }),
  put('/v1/lots/own', { crop: ownRows, test: { sown: 50, germinated: 40 }, testedOn: '2027-06-01' }),
  put('/v1/lots/spare', { crop: 'pea' }),
  put('/v1/sowings/north-lettuce', {
    bed: 'north',
    crop: 'lettuce',
    date: '2027-07-22',
    time: '18:00',
    depthCm: 1,
    seeds: 200,
    lot: 'lettuce-old',
  }),
  put('/v1/sowings/north-lettuce-2', { bed: 'north', crop: 'lettuce', date: '2027-07-30', seeds: 150 }),
  put('/v1/sowings/north-carrot', { bed: 'north', crop: 'carrot', date: '2027-07-08', seeds: 300 }),
  put('/v1/sowings/south-beet', { bed: 'south', crop: 'beet', date: '2027-08-05', depthCm: 2 }),
  put('/v1/sowings/upper-bean', { bed: 'upper', crop: 'snap-bean', date: '2027-07-20', seeds: 60 }),
  put('/v1/sowings/window-tomato', {
    bed: 'north',
    crop: 'tomato',
    date: '2027-07-10',
    seeds: 24,
    method: 'indoors',
    roomC: 21,
  }),
  put('/v1/sowings/window-own', { bed: 'window', crop: ownRows, date: '2027-07-28', seeds: 40, lot: 'own' }),
  put('/v1/sowings/harbour-pea', { bed: 'harbour', crop: 'pea', date: '2027-08-10' }),
  put('/v1/sowings/fallow-onion', { bed: 'fallow', crop: 'onion', date: '2027-07-01', lot: 'onion-2026' }),
  put('/v1/sowings/north-radish', { bed: 'north', crop: 'radish', date: '2027-07-07', seeds: 200 }),
  put('/v1/sowings/north-beet', { bed: 'north', crop: 'beet', date: '2027-07-07', seeds: 200 }),
  put('/v1/sowings/north-turnip', { bed: 'north', crop: 'turnip', date: '2027-07-24', seeds: 200 }),
  put('/v1/sowings/south-radish', { bed: 'south', crop: 'radish', date: '2027-07-21', seeds: 100 }),
  put('/v1/sowings/window-cabbage', {
    bed: 'north',
    crop: 'cabbage',
    date: '2027-07-06',
    seeds: 40,
    method: 'indoors',
  }),
  put('/v1/sowings/north-radish/counts/2027-07-25', { seedlings: 0 }),
  put('/v1/sowings/north-radish/counts/2027-08-02', { seedlings: 0 }),
  put('/v1/sowings/north-parsley', { bed: 'north', crop: 'parsley', date: '2027-07-10', seeds: 200 }),
  put('/v1/sowings/north-parsley/counts/2027-07-29', { seedlings: 0 }),
  put('/v1/sowings/north-parsley/counts/2027-08-01', { seedlings: 0 }),
  put('/v1/sowings/north-beet/counts/2027-07-24', { seedlings: 4 }),
  put('/v1/sowings/north-beet/counts/2027-07-29', { seedlings: 6 }),
  put('/v1/sowings/north-beet/counts/2027-08-02', { seedlings: 6 }),
  put('/v1/sowings/north-turnip/counts/2027-07-30', { seedlings: 0 }),
  put('/v1/sowings/north-turnip/counts/2027-08-02', { seedlings: 0 }),
  put('/v1/sowings/south-radish/counts/2027-08-02', { seedlings: 88 }),
  put('/v1/sowings/north-lettuce/counts/2027-07-28', { seedlings: 20 }),
  put('/v1/sowings/north-lettuce/counts/2027-08-02', { seedlings: 48, thinned: 6 }),
  put('/v1/sowings/north-lettuce/counts/2027-08-02', { seedlings: 50, thinned: 6 }, { as: 'again' }),
  put('/v1/sowings/north-carrot/counts/2027-08-01', { seedlings: 0 }),
  put('/v1/sowings/upper-bean/counts/2027-07-31', { seedlings: 9, ofSeeds: 20, thinned: true }),
  // Sowings were kept before the air and the readings, as each answer would be worked out from years.
  post('/v1/places/quillmere/air', { medium: 'air', daily: airDays('2023-07-01', 1494) }),
  post('/v1/places/quillmere/air', { medium: 'air', daily: airDays('2027-07-25', 9, 0.5) }, { as: 'some days anew' }),
  post(
    '/v1/places/upper/air',
    csvOf(
      'date,air min (F),air max (F)',
      airDays('2023-06-01', 1520, 7).map(({ date, min, max }) => ({ at: `${date},${fahrenheit(min)}`, value: max })),
      ({ at, value }) => `${at},${fahrenheit(value)}`,
    ),
  ),
  post('/v1/beds/north/readings', northFile),
  post(
    '/v1/beds/north/readings',
    {
      medium: 'air',
      readings: withOffset(soilHours('2027-07-28T00:00', 150, { meanC: 19, swingC: 7 })),
    },
    { as: 'air' },
  ),
  post('/v1/beds/south/readings?medium=soil', southFile),
  post('/v1/beds/upper/readings', {
    medium: 'soil',
    probeDepthCm: 10,
    unit: 'K',
    readings: withOffset(soilHours('2027-07-15T00:00', 24 * 19), 'Z').map(({ at, value }) => ({
      at,
      value: Math.round(10 * (value + 273.15)) / 10,
    })),
  }),
  put('/v1/sowings/south-spinach', { bed: 'south', crop: 'spinach', date: '2027-07-25', seeds: 120, lot: 'spinach' }),
  put('/v1/sowings/south-spinach/counts/2027-08-02', { seedlings: 3, ofSeeds: 60 }),
  patch('/v1/sowings/north-lettuce-2', { seeds: 180 }),
  patch('/v1/sowings/south-beet', { date: '2027-08-02', time: '07:30' }),
  put('/v1/plans/north-lettuce', {
    bed: 'north',
    crop: 'lettuce',
    harvest: { from: '2028-06-15', to: '2028-08-10', perWeek: 12 },
  }),
  put('/v1/plans/north-onion', {
    bed: 'north',
    crop: 'onion',
    harvest: { from: '2028-07-01', to: '2028-08-31', perWeek: 20 },
  }),
  put('/v1/plans/north-winter', {
    bed: 'north',
    crop: 'spinach',
    harvest: { from: '2027-12-01', to: '2028-02-28', perWeek: 6 },
  }),
  put('/v1/plans/north-tomato', {
    bed: 'north',
    crop: 'tomato',
    harvest: { from: '2028-04-01', to: '2028-11-30', perWeek: 3 },
  }),
  put('/v1/plans/harbour-radish', {
    bed: 'harbour',
    crop: 'radish',
    harvest: { from: '2027-10-01', to: '2027-11-15', perWeek: 30 },
  }),
  put('/v1/subscriptions/shed', {
    url: 'https://shed.example/alerts',
    events: ['hot-spell', 'emergence-shift', 'window-open', 'frost'],
    beds: ['north'],
    crops: ['lettuce', 'carrot'],
  }),
  put('/v1/subscriptions/house', { url: 'https://house.example/alerts', events: ['frost'] }),
];

const kept = ['places/quillmere', 'places/harbour', 'beds/north', 'beds/window', 'lots/onion-2026', 'lots/lettuce-old'];
const sown = [
  ...[
    'north-lettuce',
    'north-lettuce-2',
    'north-carrot',
    'north-radish',
    'north-beet',
    'north-turnip',
    'north-parsley',
  ],
  ...['south-spinach', 'south-beet', 'south-radish', 'upper-bean', 'harbour-pea', 'fallow-onion'],
  ...['window-tomato', 'window-own', 'window-cabbage'],
];

/** Asks for all that is kept. */
export const keptQuestions: readonly Question[] = [
  ...['places', 'beds', 'lots', 'sowings', 'plans', 'subscriptions'].map((kind) => get(`/v1/${kind}`)),
  ...['places?limit=2', 'beds?after=north&limit=3', 'lots?limit=1', 'plans?bed=north'].map((one) => get(`/v1/${one}`)),
  ...kept.flatMap((one) => [get(`/v1/${one}`), get(`/v1/${one}?as=kept`)]),
  ...['upper', 'fallow'].map((one) => get(`/v1/places/${one}`)),
  ...['lots/spinach', 'lots/own', 'lots/spare'].map((one) => get(`/v1/${one}`)),
  ...sown.map((one) => get(`/v1/sowings/${one}`)),
  ...['north-lettuce', 'upper-bean'].map((one) => get(`/v1/sowings/${one}?precision=full`)),
  get('/v1/sowings/north-lettuce?as=kept'),
  get('/v1/sowings?bed=north&with=judgement,toDo'),
  get('/v1/sowings?open=true&with=judgement'),
  get('/v1/sowings?from=2027-07-25&limit=2'),
  get('/v1/sowings/north-lettuce/counts/2027-08-02'),
  get('/v1/sowings/north-lettuce/counts/2027-08-02?as=kept'),
  ...['north-lettuce', 'north-onion', 'north-winter', 'north-tomato', 'harbour-radish'].map((one) =>
    get(`/v1/plans/${one}`),
  ),
  get('/v1/plans/north-lettuce?as=kept'),
  get('/v1/subscriptions/shed'),
  get('/v1/subscriptions/shed?as=kept'),
  get('/v1/places/quillmere/air?from=2027-07-20'),
  get('/v1/places/upper/air?limit=10&precision=rounded'),
  get('/v1/places/upper/air?from=2027-07-20&as=kept'),
  get('/v1/places/quillmere/normals'),
  get('/v1/places/quillmere/normals?as=kept'),
  get('/v1/places/quillmere/coming-days'),
  get('/v1/places/quillmere/coming-days?as=kept'),
  get('/v1/places/quillmere/frost-dates'),
  get('/v1/places/quillmere/frost-dates?threshold=4'),
  get('/v1/places/upper/frost-dates?threshold=7.5'),
  get('/v1/beds/north/thermometers'),
  get('/v1/beds/north/readings?from=2027-07-18&to=2027-07-19'),
  get('/v1/beds/north/readings?medium=air&limit=20&precision=rounded'),
  get('/v1/beds/upper/readings?limit=20'),
  get('/v1/beds/upper/readings?probeDepthCm=10&from=2027-08-01&as=kept'),
  get('/v1/usage'),
  get('/v1/sessions'),
];

/** Takes it away again. */
export const forgettingQuestions: readonly Question[] = [
  remove('/v1/places/quillmere/air?from=2023-07-01&to=2023-07-31'),
  remove('/v1/beds/north/readings?medium=air'),
  remove('/v1/beds/north/readings?from=2027-07-06&to=2027-07-07'),
  remove('/v1/sowings/north-lettuce/counts/2027-07-28'),
  get('/v1/sowings/north-lettuce', { as: 'without a count and some readings' }),
  get('/v1/sowings/north-lettuce-2', { as: 'without a count and some readings' }),
  get('/v1/beds/north/forecast?crop=lettuce&sowing=2027-08-04', { as: 'without a count and some readings' }),
  post('/v1/beds/frame/calendar-token', undefined),
  remove('/v1/plans/north-onion'),
  remove('/v1/subscriptions/house'),
  remove('/v1/lots/spare'),
  remove('/v1/sowings/window-own'),
  remove('/v1/beds/window'),
  remove('/v1/beds/upper?with=sowings'),
  remove('/v1/places/upper?with=beds'),
  get('/v1/places', { as: 'after some are gone' }),
  get('/v1/beds', { as: 'after some are gone' }),
  get('/v1/usage', { as: 'after some are gone' }),
];
