/** What the service's names for things are called in the page's forms. */
const NAMES: Readonly<Record<string, string>> = {
  'where.place.timeZone': 'the time zone',
  'where.place.latitude': 'the latitude',
  'where.place.longitude': 'the longitude',
  'where.place.annualRainMm': 'the year’s rain',
  'where.bed.roomC': 'how warm the room is',
  'sowing.depthCm': 'the depth',
  'sowing.seeds': 'how many seeds',
  'sowing.date': 'the day of sowing',
  'sowing.time': 'the hour of sowing',
  countDays: 'other “days to the count”',
  probeDepthCm: 'how deep the probe lies',
  depthCm: 'the depth',
  timeZone: 'the time zone',
};
const SAID = new RegExp(
  Object.keys(NAMES)
    .map((name) => `\\b${name.replaceAll('.', '\\.')}\\b`)
    .join('|'),
  'g',
);

/** What the service says to other tools, and what is said here instead. */
const TOOLS_WORDS: readonly (readonly [RegExp, string])[] = [
  [/ \(\d+ more under "errors"\)/g, ''],
  [/Send "unit": "([CFK])"/g, 'Choose °$1 under “It reads”'],
  [/send "unit": "([CFK])"/g, 'choose °$1 under “It reads”'],
  [/\bnull\b/g, 'nothing'],
  [/^Neither the column ("[^"]*") nor the query says/g, 'The column $1 does not say'],
  [/ ?; GET \/v1\/\w+ lists [^.]*\./g, '.'],
];

/** A sentence of the service with the page's names for things in it. */
export const inFormNames = (text: string): string =>
  TOOLS_WORDS.reduce((said, [words, instead]) => said.replaceAll(words, instead), text).replaceAll(
    SAID,
    (name) => NAMES[name]!,
  );

/** What a refusal means here, where the service words it for other tools. */
const REFUSALS: Readonly<Record<string, string>> = {
  'time-zone-needed':
    'Days begin at midnight somewhere, and these times do not say where: choose the bed that the thermometer is in, or describe it and fill in its time zone.',
  'no-latitude': 'How the sun warms the soil depends on how far north the bed lies: fill in its latitude.',
  'no-past-years':
    'This is told from the past: the place needs three years of air or more, or its monthly means. “When to sow” says how to give them.',
  'not-found': 'What this is about is not kept here any more. Load the page again, and choose anew.',
  'has-beds': 'Beds are kept there. Forget them first, or say of each that it lies elsewhere.',
  'unknown-bed': 'This bed is not kept here any more. Choose another.',
  'too-many-requests': 'That was a great deal at once. Wait a moment, and try again.',
};

/** What a refusal means here; undefined where the service's own words do. */
export const refusalInWords = (code: string): string | undefined => REFUSALS[code];

/** What the form calls the field of a parameter. */
export const LABELS: Readonly<Record<string, string>> = {
  bed: 'Bed',
  crop: 'Crop',
  sowing: 'Sown on',
  date: 'Sown on',
  time: 'Hour of sowing',
  depthCm: 'Depth',
  seeds: 'How many seeds',
  countDays: 'Days to the count',
  latitude: 'Latitude',
  longitude: 'Longitude',
  timeZone: 'Time zone',
  shadePercent: 'Shade',
  roomC: 'Room',
  probeDepthCm: 'How deep',
};

/** What else the forms of answers call their fields. */
export const ACT_LABELS: Readonly<Record<string, string>> = {
  name: '“Its name”',
  kind: '“It is”',
  cover: '“Covered with”',
  moisture: '“Water”',
  place: '“At”',
  placeName: '“The place”',
  date: 'The date',
  seedlings: '“Seedlings”',
  ofSeeds: '“Of how many seeds”',
  thinned: '“Pulled out before, in all”',
  seeds: '“How many seeds”',
  from: '“Harvest from”',
  to: '“To”',
  perWeek: '“How many plants a week”',
};
