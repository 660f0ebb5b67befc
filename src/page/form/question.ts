import type { PlotUnit } from '../../plot/degrees.js';
import type { Language } from '../../words/reader.js';
import { isDate } from '../shell/words.js';

export const viewNames = ['week', 'when', 'sowing', 'growing'] as const;
export type ViewName = (typeof viewNames)[number];

/** Origin of the temperatures: a bed's stored readings, a thermometer's file, or typed days. */
export const sources = ['bed', 'file', 'days'] as const;
export type Source = (typeof sources)[number];

/** Text fields of the question, with their defaults. */
const usual = {
  /** Limits the growing view to one bed; empty: all beds. */
  ofBed: '',
  /** The id of a stored bed; empty: a described bed. */
  bed: '',
  crop: 'lettuce',
  sowing: '',
  time: '',
  depthCm: '',
  seeds: '',
  countDays: '',
  latitude: '',
  longitude: '',
  timeZone: '',
  kind: 'open-ground',
  cover: 'bare',
  moisture: 'moist',
  shadePercent: '',
  roomC: '',
  medium: '',
  probeDepthCm: '',
  /** The unit of the temperatures in the source. */
  unit: '',
  column: '',
  timeColumn: '',
  dateOrder: '',
  clock: '',
  decimalMark: '',
  /** The date of the first typed day. */
  firstDay: '',
  /** A town, if no bed is named, and a day of its last spring frost, of which the year does not count. */
  near: '',
  lastFrost: '',
  /** The id of a stored place, if no bed is named. */
  place: '',
  /** The first date of the season to search, and the method that ranks its dates. */
  from: '',
  prefer: 'earliest',
  /** Crops to compare with this one: ids separated by commas. */
  beside: '',
};
export type Field = keyof typeof usual;
const dates: readonly Field[] = ['sowing', 'firstDay', 'from', 'lastFrost'];
export const fields = Object.keys(usual) as Field[];

/** The page's question as typed: a link holds all of it but a file. */
export interface PageQuestion extends Readonly<Record<Field, string>> {
  readonly view: ViewName;
  readonly source: Source;
  /** The unit to read temperatures in. */
  readonly degrees: PlotUnit;
  /** The language to read in; empty: the browser's preference. */
  readonly lang: Language | '';
  /** Typed days, from `firstDay` on. */
  readonly days: readonly { readonly min: string; readonly max: string }[];
}

/** Maximum days in a link. */
export const MAX_DAYS = 366;
const MAX_TEXT = 200;
/** Some intermediaries reject a longer link. */
export const MAX_LINK = 8000;

/**
 * The question in a link or a form, without what makes no sense in it. The last value of a repeated field holds: a
 * button that settles something comes after the field that left it open. Without a named bed it is the first stored
 * one.
 */
export function questionFrom(
  said: URLSearchParams,
  { beds }: { readonly beds: readonly { readonly id: string }[] },
): PageQuestion {
  const last = (name: string): string | undefined => said.getAll(name).at(-1);
  const oneOf = <T extends string>(name: string, all: readonly T[]): T | undefined =>
    all.find((one) => one === last(name));
  const texts = Object.fromEntries(
    fields.map((field) => {
      const text = (last(field) ?? usual[field]).slice(0, MAX_TEXT);
      return [field, dates.includes(field) && !isDate(text) ? '' : text];
    }),
  ) as Record<Field, string>;
  const beside = said.getAll('beside').join().split(',').filter(Boolean).join().slice(0, MAX_TEXT);
  const bed = last('bed') === undefined ? (beds[0]?.id ?? '') : texts.bed;
  const [mins, maxs] = [said.getAll('min'), said.getAll('max')];
  const days = Array.from({ length: Math.min(MAX_DAYS, Math.max(mins.length, maxs.length)) }, (_, i) => ({
    min: (mins[i] ?? '').slice(0, MAX_TEXT),
    max: (maxs[i] ?? '').slice(0, MAX_TEXT),
  }));
  const source = oneOf('source', sources) ?? usualSource(bed);
  const reading = readingOf(said);
  return {
    ...texts,
    beside,
    bed,
    // Days are typed in the reader's degrees and keep that unit when the reader switches.
    unit: texts.unit === '' && source === 'days' && isTyped(days) ? reading.degrees : texts.unit,
    view: oneOf('view', viewNames) ?? usualView(said, beds.length),
    ...reading,
    source,
    days,
  };
}

/** A newcomer begins with the week of a town. Every link to a sowing names its bed, if only as none. */
const usualView = (said: URLSearchParams, nBeds: number): ViewName =>
  nBeds === 0 && ![...said.keys()].some((name) => (fields as readonly string[]).includes(name) && name !== 'near')
    ? 'week'
    : 'sowing';

/** How a link or a form wants its answer presented, whatever it asks. */
export const readingOf = (said: URLSearchParams): Pick<PageQuestion, 'degrees' | 'lang'> => ({
  degrees: said.getAll('degrees').at(-1) === 'F' ? 'F' : 'C',
  lang: languages.find((one) => one === said.getAll('lang').at(-1)) ?? '',
});

const languages: readonly Language[] = ['en', 'de'];

const isTyped = (days: PageQuestion['days']): boolean => days.some(({ min, max }) => min !== '' || max !== '');

const usualSource = (bed: string): Source => (bed === '' ? 'file' : 'bed');

/** The question as a link, without defaults. */
export function linkTo(question: PageQuestion): string {
  const said = new URLSearchParams();
  if (question.view !== 'sowing') said.set('view', question.view);
  if (question.source !== usualSource(question.bed)) said.set('source', question.source);
  if (question.lang !== '') said.set('lang', question.lang);
  if (question.degrees !== 'C') said.set('degrees', question.degrees);
  for (const field of fields) if (field === 'bed' || question[field] !== usual[field]) said.set(field, question[field]);
  if (isTyped(question.days)) {
    for (const { min, max } of question.days) {
      said.append('min', min);
      said.append('max', max);
    }
  }
  return `/?${said}`;
}
