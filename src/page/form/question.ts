import type { PlotUnit } from '../../plot/degrees.js';
import type { Language } from '../../words/reader.js';
import { isDate } from '../shell/words.js';

export const viewNames = ['sowing', 'when', 'growing'] as const;
export type ViewName = (typeof viewNames)[number];

/** Where the temperatures come from: what is kept of a bed, a thermometer's file, or days typed in. */
export const sources = ['bed', 'file', 'days'] as const;
export type Source = (typeof sources)[number];

/** The fields that are asked by a text each, and what each stands for where nothing is said. */
const usual = {
  /** Of which bed alone to see what is growing; nothing: of all. */
  ofBed: '',
  /** The id of a kept bed; nothing: a bed that is described. */
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
  moisture: 'rain',
  shadePercent: '',
  roomC: '',
  medium: '',
  probeDepthCm: '',
  /** The degrees that the temperatures came in. */
  unit: '',
  column: '',
  timeColumn: '',
  dateOrder: '',
  clock: '',
  decimalMark: '',
  /** The date of the first day typed in. */
  firstDay: '',
  /** The id of a kept place, where no bed is named. */
  place: '',
  /** The first date of a season to look through, and which of its dates is the best. */
  from: '',
  prefer: 'earliest',
  /** Crops to be set beside this one, their ids with commas between. */
  beside: '',
};
export type Field = keyof typeof usual;
const dates: readonly Field[] = ['sowing', 'firstDay', 'from'];
export const fields = Object.keys(usual) as Field[];

/** What the page is asked, as it was typed: a link holds all of it but a file. */
export interface PageQuestion extends Readonly<Record<Field, string>> {
  readonly view: ViewName;
  readonly source: Source;
  /** The degrees to read by. */
  readonly degrees: PlotUnit;
  /** The language to read in; nothing: the one that the reader's browser asks for. */
  readonly lang: Language | '';
  /** Days typed in, from `firstDay` on. */
  readonly days: readonly { readonly min: string; readonly max: string }[];
}

/** So many days a link may hold. */
export const MAX_DAYS = 366;
const MAX_TEXT = 200;
/** A longer link not everything between a browser and the service takes. */
export const MAX_LINK = 8000;

/**
 * The question that a link or a form holds; what makes no sense in it is left out. Of a field that is said twice the
 * last holds: a button that settles something comes after the field that left it open. Where no bed is named it is the
 * first that is kept.
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
    // Days are typed in the degrees that are read, and stay in them when others are read.
    unit: texts.unit === '' && source === 'days' && isTyped(days) ? reading.degrees : texts.unit,
    view: oneOf('view', viewNames) ?? 'sowing',
    ...reading,
    source,
    days,
  };
}

/** How a link or a form wants its answer to be read, whatever it asks. */
export const readingOf = (said: URLSearchParams): Pick<PageQuestion, 'degrees' | 'lang'> => ({
  degrees: said.getAll('degrees').at(-1) === 'F' ? 'F' : 'C',
  lang: languages.find((one) => one === said.getAll('lang').at(-1)) ?? '',
});

const languages: readonly Language[] = ['en', 'de'];

const isTyped = (days: PageQuestion['days']): boolean => days.some(({ min, max }) => min !== '' || max !== '');

const usualSource = (bed: string): Source => (bed === '' ? 'file' : 'bed');

/** The question as a link holds it: what goes without saying is left out. */
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
