/** Questions that work, for the OpenAPI document, about the north bed of the invented Quillmere Allotment Society. */
export const exampleQuestion = {
  crop: 'lettuce',
  where: { place: { latitude: 44, longitude: -30, timeZone: 'Etc/GMT+2' } },
  sowing: { date: '2027-05-03', time: '18:00', depthCm: 1.3, seeds: 200 },
  temperatures: [
    {
      medium: 'soil',
      probeDepthCm: 5,
      unit: 'C',
      daily: [
        { date: '2027-04-27', min: 9.1, max: 15.2 },
        { date: '2027-04-28', min: 9.4, max: 16 },
        { date: '2027-04-29', min: 10.2, max: 14.8 },
        { date: '2027-04-30', min: 10, max: 15.5 },
        { date: '2027-05-01', min: 9.8, max: 17.1 },
        { date: '2027-05-02', min: 10.6, max: 17.4 },
        { date: '2027-05-03', min: 11.2, max: 16.9 },
      ],
    },
  ],
};

/** Two days of a probe, read every four hours. */
export const exampleCsv = `time,soil 5 cm (C)
2027-05-03T00:00-02:00,12.1
2027-05-03T04:00-02:00,10.9
2027-05-03T08:00-02:00,11.6
2027-05-03T12:00-02:00,15.2
2027-05-03T16:00-02:00,17.0
2027-05-03T20:00-02:00,14.6
2027-05-04T00:00-02:00,12.4
2027-05-04T04:00-02:00,11.1
2027-05-04T08:00-02:00,11.9
2027-05-04T12:00-02:00,15.6
2027-05-04T16:00-02:00,17.3
2027-05-04T20:00-02:00,14.9
`;

/** A week of air, measured and then forecast, over a probe at 10 cm that was read for its first days. */
export const exampleSoilQuestion = {
  where: { place: { latitude: 44, longitude: -30, timeZone: 'Etc/GMT+2' }, bed: { moisture: 'moist' } },
  depthCm: 1.3,
  temperatures: [
    {
      medium: 'air',
      daily: [
        { date: '2027-04-28', min: 7.1, max: 17.2 },
        { date: '2027-04-29', min: 8.4, max: 14.9 },
        { date: '2027-04-30', min: 6.2, max: 16.8 },
        { date: '2027-05-01', min: 7.7, max: 18.3 },
      ],
    },
    {
      medium: 'air',
      origin: 'forecast',
      daily: [
        { date: '2027-05-02', min: 9, max: 19 },
        { date: '2027-05-03', min: 10, max: 21 },
        { date: '2027-05-04', min: 11, max: 20 },
      ],
    },
    {
      medium: 'soil',
      probeDepthCm: 10,
      daily: [
        { date: '2027-04-28', min: 10.9, max: 14.1 },
        { date: '2027-04-29', min: 11.2, max: 13.2 },
        { date: '2027-04-30', min: 10.4, max: 13.9 },
      ],
    },
  ],
};

/** Three days of air, as minima and maxima. */
export const exampleAirCsv = `date,air min (C),air max (C)
2027-05-01,7.7,18.3
2027-05-02,9.0,19.1
2027-05-03,10.2,21.0
`;

/** Three invented years of air, as seasons with a little weather. */
const invented = Array.from({ length: 3 * 365 }, (_, day) => {
  const mean = 11 - 8 * Math.cos((2 * Math.PI * (day - 25)) / 365) + 3 * Math.sin(day / 4.3) + 2 * Math.sin(day / 1.9);
  const date = new Date(Date.UTC(2024, 0, 1 + day)).toISOString().slice(0, 10);
  return { date, min: Math.round(10 * (mean - 4.5)) / 10, max: Math.round(10 * (mean + 4.5)) / 10 };
});

/** When to sow lettuce from April to June, after three years. */
export const exampleWindowQuestion = {
  crop: 'lettuce',
  where: { place: { latitude: 44, longitude: -30, timeZone: 'Etc/GMT+2' }, bed: { moisture: 'moist' } },
  from: '2027-04-01',
  to: '2027-06-30',
  temperatures: [{ medium: 'air', daily: invented }],
};

export const exampleYearsCsv = [
  'date,air min (C),air max (C)',
  ...invented.map(({ date, min, max }) => `${date},${min},${max}`),
  '',
].join('\n');

/** Resources of the society. */
export const examplePlace = {
  name: 'Quillmere Allotment Society',
  latitude: 44,
  longitude: -30,
  elevationM: 12,
  timeZone: 'Etc/GMT+2',
};

export const exampleBed = { place: 'quillmere', name: 'North bed', kind: 'raised-bed', moisture: 'moist' };

export const examplePastAir = {
  medium: 'air',
  daily: [
    { date: '2027-05-01', min: 7.7, max: 18.3 },
    { date: '2027-05-02', min: 8.1, max: 16.9 },
  ],
};

export const exampleComingDays = {
  medium: 'air',
  origin: 'forecast',
  daily: [
    { date: '2027-08-04', min: 14, max: 27 },
    { date: '2027-08-05', min: 15.5, max: 29 },
  ],
};

export const exampleNormals = {
  meanMaxC: [8, 8.5, 10.5, 13, 16.5, 20, 22.5, 23, 20, 16, 11.5, 9],
  meanMinC: [2, 2, 3, 5, 8, 11.5, 14, 14.5, 12, 9, 5, 3],
};

export const exampleBedReadings = {
  medium: 'soil',
  probeDepthCm: 5,
  readings: [
    { at: '2027-05-03T12:00:00-02:00', value: 15.2 },
    { at: '2027-05-03T13:00:00-02:00', value: 15.9 },
    { at: '2027-05-03T14:00:00-02:00', value: 16.3 },
  ],
};

export const exampleLot = {
  crop: 'onion',
  test: { sown: 100, germinated: 88 },
  testedOn: '2027-01-10',
  packedYear: 2026,
  moisturePercent: 8,
  storeC: 18,
};

export const exampleSowing = {
  bed: 'north',
  crop: 'lettuce',
  date: '2027-07-30',
  time: '18:00',
  depthCm: 1.3,
  seeds: 200,
};

export const exampleCount = { seedlings: 14, ofSeeds: 60 };

export const exampleSeedsQuestion = {
  crop: 'lettuce',
  plants: 40,
  sureness: 0.9,
  lot: { test: { sown: 50, germinated: 46 }, testedOn: '2027-02-01' },
};

export const exampleSubscription = {
  url: 'https://shed.example/alerts',
  events: ['hot-spell', 'emergence-shift', 'window-open', 'frost'],
  beds: ['north'],
  crops: ['lettuce', 'carrot'],
};

/** Some lettuce every week of summer. */
export const examplePlan = {
  bed: 'north',
  crop: 'lettuce',
  harvest: { from: '2028-06-15', to: '2028-08-31', perWeek: 12 },
};
