import { get, post, postEach, type Question } from './question.js';
import { airDays, csvOf, soilHours, withOffset } from './weather.js';

const place = { latitude: 44, longitude: -30, timeZone: 'Etc/GMT+2' };
const where = { place, bed: { kind: 'open-ground', cover: 'bare', moisture: 'moist' } };
const bedOf = (bed: object) => ({ place, bed: { ...where.bed, ...bed } });
const mild = {
  medium: 'soil',
  daily: airDays('2027-05-01', 30).map(({ date }, i) => ({ date, min: 9 + (i % 4), max: 19 })),
};
const steady = (day: object) => ({ medium: 'soil', daily: mild.daily.map(({ date }) => ({ date, ...day })) });
const hotHours = {
  medium: 'soil',
  probeDepthCm: 5,
  readings: withOffset(soilHours('2027-07-01T00:00', 24 * 33 + 12, { meanC: 25, swingC: 7, warmingC: 3 })),
};
const coolHours = {
  medium: 'soil',
  readings: withOffset(soilHours('2027-04-01T00:00', 24 * 40, { meanC: 9, swingC: 4, warmingC: 4 })),
};
const air = { medium: 'air', daily: airDays('2027-05-20', 75) };
const ahead = { medium: 'air', origin: 'forecast', daily: airDays('2027-08-03', 10, 3) };
const sowing = { date: '2027-07-20', time: '18:00', seeds: 200 };
const hot = { crop: 'lettuce', where, sowing, temperatures: [hotHours] };
const spring = { crop: 'pea', where, sowing: { date: '2027-05-03', seeds: 90 }, temperatures: [mild] };
const fromAir = { crop: 'carrot', where, sowing, temperatures: [air, ahead] };

const crops =
  'asparagus lima-bean snap-bean beet cabbage cauliflower celery sweet-corn cucumber eggplant muskmelon okra'
    .concat(' onion parsley parsnip pepper radish spinach tomato turnip watermelon bunching-onion')
    .split(' ');
const covers = ['grass', 'mulch', 'black-film', 'clear-film', 'fleece'];
const fileQuery = 'crop=lettuce&sowing=2027-07-20&timeZone=Etc/GMT%2B2&latitude=44&longitude=-30&seeds=80';

const forecasts: readonly Question[] = [
  ...postEach('/v1/forecasts', {
    ...Object.fromEntries(crops.map((crop) => [crop, { ...spring, crop }])),
    'a hot July': hot,
    'counted before any is up': { ...hot, countDays: 1 },
    'too cold for any': { ...spring, crop: 'okra', temperatures: [steady({ min: 3, max: 7 })] },
    'heat that kills': { ...spring, crop: 'spinach', temperatures: [steady({ min: 33, max: 47 })] },
    'means alone': { ...spring, temperatures: [steady({ mean: 14 })] },
    'means alone, of air': { ...spring, temperatures: [{ ...steady({ mean: 14 }), medium: 'air' }] },
    'a probe deep down': { ...spring, temperatures: [{ ...steady({ min: 11, max: 12 }), probeDepthCm: 60 }] },
    'a frost in May': {
      ...spring,
      crop: 'snap-bean',
      temperatures: [{ ...steady({ min: -4, max: 13 }), medium: 'air' }],
    },
    'in the morning': { ...hot, sowing: { ...sowing, time: '07:00' } },
    'deep, without seeds': { ...hot, sowing: { date: '2027-07-20', depthCm: 4 } },
    'counted early': { ...hot, countDays: 4 },
    'a weak lot that bears heat': {
      ...hot,
      lot: { germinationPercent: 70, testedOn: '2027-01-10', hotLimitShiftC: 3 },
    },
    'a grower’s own factors': { ...hot, timeFactor: 1.6, standFactor: { from: 0.4, to: 0.7 } },
    'one own factor': { ...hot, standFactor: 0.5 },
    'own rows': {
      ...hot,
      crop: {
        rows: [
          { temperatureC: 10, days: 12, percent: 80 },
          { temperatureC: 20, days: 6, percent: 95 },
          { temperatureC: 30, days: 8, percent: 40 },
        ],
        hotThresholdC: 27,
      },
    },
    'spinach in the heat': { ...hot, crop: 'spinach' },
    'chilled beans': {
      ...hot,
      crop: 'snap-bean',
      sowing: { date: '2027-04-10', seeds: 50 },
      temperatures: [coolHours],
    },
    'cold soil': { ...hot, crop: 'okra', sowing: { date: '2027-04-10' }, temperatures: [coolHours] },
    'carrot from air': fromAir,
    'carrot from air and a probe': { ...fromAir, temperatures: [air, hotHours, ahead] },
    'a dry bed, watered later': {
      ...hot,
      where: bedOf({ moisture: 'dry', wettedOn: '2027-07-24' }),
    },
    ...Object.fromEntries(covers.map((cover) => [`under ${cover}`, { ...fromAir, where: bedOf({ cover }) }])),
    ...Object.fromEntries(
      ['raised-bed', 'pot', 'tray'].map((kind) => [`in a ${kind}`, { ...fromAir, where: bedOf({ kind }) }]),
    ),
    'wet soil in half shade': { ...fromAir, where: bedOf({ moisture: 'wet', shadePercent: 50 }) },
    'by rain alone': { ...fromAir, where: { place: { ...place, annualRainMm: 600 }, bed: { moisture: 'rain' } } },
    'indoors without readings': { crop: 'tomato', where: bedOf({ kind: 'indoors', roomC: 21 }), sowing },
    'the drift of the season': { ...hot, beyond: 'seasonal-drift', sowing: { date: '2027-08-01', seeds: 100 } },
    'the last week again': { ...hot, beyond: 'repeat-last-week', sowing: { date: '2027-08-01', seeds: 100 } },
    'no place': { ...hot, where: undefined },
    'a kept bed': { crop: 'lettuce', where: { bed: 'north' }, sowing },
    'a kept bed that has learned': {
      crop: 'lettuce',
      where: { bed: 'north' },
      sowing: { date: '2027-08-04', seeds: 10 },
    },
    'a kept place': { crop: 'beet', where: { place: 'quillmere', bed: where.bed }, sowing: { date: '2027-08-10' } },
    'a place with normals': {
      crop: 'beet',
      where: { place: 'harbour', bed: where.bed },
      sowing: { date: '2027-08-10' },
    },
    'three sent years': {
      crop: 'lettuce',
      where,
      sowing: { date: '2027-07-30' },
      temperatures: [{ medium: 'air', daily: airDays('2024-05-01', 1190) }],
    },
  }),
  post('/v1/forecasts?precision=full', fromAir),
  post('/v1/forecasts?hourly=true', { ...hot, countDays: 7 }),
  post(`/v1/forecasts?${fileQuery}`, csvOf('time,soil 5 cm (C)', withOffset(soilHours('2027-07-15T00:00', 300)))),
  post(
    `/v1/forecasts?${fileQuery}&lot.hotLimitShiftC=2&where.bed.kind=raised-bed`,
    csvOf(
      'date,air min (C),air max (C)',
      airDays('2027-06-01', 60).map(({ date, min, max }) => ({ at: `${date},${min}`, value: max })),
    ),
  ),
  ...[
    'crop=lettuce&sowing=2027-08-04',
    'crop=lettuce&sowing=2027-07-22&seeds=100',
    'crop=carrot&sowing=2027-09-01',
  ].map((query) => get(`/v1/beds/north/forecast?${query}`)),
  get('/v1/beds/south/forecast?crop=spinach&sowing=2027-08-01&precision=full'),
  get('/v1/beds/shade/forecast?crop=lettuce&sowing=2027-08-05&hourly=true&countDays=6'),
  get('/v1/beds/frame/forecast?crop=onion&sowing=2027-08-20'),
  get('/v1/beds/window/forecast?crop=pepper&sowing=2027-08-03'),
  get('/v1/beds/upper/forecast?crop=snap-bean&sowing=2027-07-20'),
  get('/v1/beds/harbour/forecast?crop=pea&sowing=2027-08-10'),
];

const soilQuestion = { where, depthCm: 2, temperatures: [air, ahead] };
const soils: readonly Question[] = [
  ...postEach('/v1/soil-temperatures', {
    'from air': soilQuestion,
    'from air, by the hour': { ...soilQuestion, step: 'hour', from: '2027-07-20', to: '2027-07-23' },
    'from a probe, deeper': { where, depthCm: 8, temperatures: [hotHours] },
    'from a probe, at the surface': {
      where,
      depthCm: 0.5,
      temperatures: [hotHours],
      from: '2027-07-10',
      to: '2027-07-20',
    },
    'from both': { where, depthCm: 3, temperatures: [air, hotHours, ahead], from: '2027-07-01' },
    'at the crop’s depth, on from the last value': {
      where,
      crop: 'snap-bean',
      beyond: 'seasonal-drift',
      temperatures: [hotHours],
      from: '2027-07-30',
      to: '2027-08-20',
    },
    'below snow': {
      where: { place: { ...place, latitude: 62 }, bed: where.bed },
      depthCm: 5,
      temperatures: [{ medium: 'air', daily: airDays('2026-11-01', 120, -9) }],
    },
    'of a kept bed': { where: { bed: 'south' }, depthCm: 4, from: '2027-07-28', to: '2027-08-12' },
    ...Object.fromEntries(
      covers.map((cover) => [`under ${cover}`, { ...soilQuestion, where: bedOf({ cover }), from: '2027-07-20' }]),
    ),
  }),
  post('/v1/soil-temperatures?precision=full', { ...soilQuestion, from: '2027-07-25' }),
  post(
    '/v1/soil-temperatures?timeZone=Etc/GMT%2B2&latitude=44&depthCm=6&where.bed.moisture=wet',
    csvOf('time,soil 5 cm (C)', withOffset(soilHours('2027-07-15T00:00', 240))),
  ),
  ...['north', 'south', 'shade', 'frame', 'window', 'upper', 'harbour'].map((bed) =>
    get(`/v1/beds/${bed}/soil-temperatures`),
  ),
  get('/v1/beds/north/soil-temperatures?from=2027-07-18&to=2027-07-19&step=hour&depthCm=2'),
  get('/v1/beds/upper/soil-temperatures?from=2027-03-27&to=2027-03-29&step=hour&precision=full'),
];

const sent = { where, temperatures: [{ medium: 'air', daily: airDays('2024-01-01', 1095) }] };
const windows: readonly Question[] = [
  ...postEach('/v1/sowing-windows', {
    'lettuce in spring': { ...sent, crop: 'lettuce', from: '2027-04-01', to: '2027-06-30' },
    'tomato, the surest': { ...sent, crop: 'tomato', from: '2027-04-01', to: '2027-06-10', prefer: 'surest' },
    'own criteria': {
      ...sent,
      crop: 'onion',
      from: '2027-03-01',
      to: '2027-04-15',
      share: 0.6,
      maxDays: 18,
      sureness: 0.5,
    },
    'a kept bed': { crop: 'spinach', where: { bed: 'south' }, from: '2027-08-03', to: '2027-09-30' },
  }),
  post(
    '/v1/sowing-windows?crop=pea&from=2027-02-20&to=2027-04-10&timeZone=Etc/GMT%2B2&latitude=44&where.bed.moisture=moist',
    csvOf(
      'date,air min (C),air max (C)',
      airDays('2024-01-01', 1095).map(({ date, min, max }) => ({ at: `${date},${min}`, value: max })),
    ),
  ),
  get('/v1/beds/north/sowing-windows?crop=lettuce'),
  get('/v1/beds/north/sowing-windows?crop=carrot&from=2027-08-03&to=2027-10-31&precision=full'),
  get('/v1/beds/upper/sowing-windows?crop=snap-bean&from=2028-02-01&to=2028-06-30'),
  get('/v1/beds/harbour/sowing-windows?crop=beet&from=2027-08-03&to=2027-11-30'),
  get('/v1/places/quillmere/sowing-windows?crop=lettuce&from=2027-08-03&to=2027-10-31'),
  get('/v1/places/quillmere/sowing-windows?crop=cucumber&from=2028-03-01&to=2028-07-31&where.bed.cover=clear-film'),
];

const seeds: readonly Question[] = postEach('/v1/seeds-needed', {
  'forty lettuces': { crop: 'lettuce', plants: 40 },
  'of a tested lot': {
    crop: 'lettuce',
    plants: 40,
    sureness: 0.8,
    lot: { test: { sown: 50, germinated: 46 }, testedOn: '2027-02-01' },
  },
  'of a kept lot': { crop: 'onion', plants: 200, lot: 'onion-2026' },
  'of a kept lot that is old': { crop: 'lettuce', plants: 5, lot: 'lettuce-old' },
  'in the grower’s own field': { crop: 'carrot', plants: 300, field: { from: 0.3, to: 0.6 } },
});

/** The three questions of the service, and how many seeds to sow. */
export const askedQuestions: readonly Question[] = [...forecasts, ...soils, ...windows, ...seeds];
