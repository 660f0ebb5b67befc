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
  countDays: 'another “days to the count”',
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

/** A sentence of the service with the page's names for things in it. */
export const inFormNames = (text: string): string => text.replaceAll(SAID, (name) => NAMES[name]!);

/** What a refusal means here, where the service words it for other tools. */
const REFUSALS: Readonly<Record<string, string>> = {
  'time-zone-needed': 'Days begin at midnight somewhere: fill in the time zone of the bed, as Etc/GMT+2.',
  'no-latitude': 'How the sun warms the soil depends on how far north the bed lies: fill in its latitude.',
  'no-past-years':
    'This is told from the past: the place needs three years of air or more, or its monthly means. Whoever looks after the service can send a station’s file of them.',
  'unknown-bed': 'This bed is not kept here any more. Choose another.',
  'choose-medium': 'The file does not say whether the thermometer was in the soil or in the air.',
  'choose-unit': 'The file does not say in which degrees it reads.',
  'choose-column': 'There is more than one column that it could be.',
  'choose-date-order': 'The dates can be read in more than one way.',
  'choose-clock': 'The file does not say whether its clock was changed in spring and autumn.',
  'choose-decimal-mark': 'The commas can be read in more than one way.',
  'too-many-requests': 'That was a great deal at once. Wait a moment, and try again.',
};

/** A refusal in the page's own words. */
export const refusalInWords = ({ code, detail }: { readonly code: string; readonly detail: string }): string =>
  REFUSALS[code] ?? inFormNames(detail);
