import type { PageCode } from '../../words/page-en.js';

/** The page's wording of refusals that the service words for other tools, or that the page makes itself. */
const REFUSALS: Readonly<Record<string, PageCode>> = {
  'time-zone-needed': 'page.refused.time-zone-needed',
  'no-latitude': 'page.refused.no-latitude',
  'no-past-years': 'page.refused.no-past-years',
  'not-found': 'page.refused.not-found',
  'has-beds': 'page.refused.has-beds',
  'unknown-bed': 'page.refused.unknown-bed',
  'too-many-requests': 'page.refused.too-many-requests',
  unreached: 'page.refused.unreached',
  stopped: 'page.refused.stopped',
  'file-gone': 'page.refused.file-gone',
  'foreign-origin': 'page.refused.foreign',
  'form-too-large': 'page.refused.form-too-large',
  'cut-short': 'page.refused.cut-short',
};

/** The page's message for a refusal; undefined if the service's own words serve. */
export const refusalCode = (code: string): PageCode | undefined => REFUSALS[code];

/** The question form's label for each parameter. */
const ASKED: Readonly<Record<string, PageCode>> = {
  bed: 'page.field.bed',
  near: 'page.field.town',
  lastFrostAround: 'page.field.last-frost',
  crop: 'page.field.crop',
  sowing: 'page.field.sowing',
  date: 'page.field.sowing',
  time: 'page.field.time',
  depthCm: 'page.field.depth',
  seeds: 'page.field.seeds',
  countDays: 'page.field.count-days',
  latitude: 'page.field.latitude',
  longitude: 'page.field.longitude',
  timeZone: 'page.field.time-zone',
  shadePercent: 'page.field.shade',
  roomC: 'page.field.room',
  probeDepthCm: 'page.field.how-deep',
};

/** Labels of further fields, in the action forms of answers. */
const CHANGED: Readonly<Record<string, PageCode>> = {
  ...ASKED,
  name: 'page.field.name',
  kind: 'page.field.kind',
  cover: 'page.field.cover',
  moisture: 'page.field.moisture',
  place: 'page.field.at',
  placeName: 'page.field.place',
  date: 'page.field.date',
  seedlings: 'page.field.seedlings',
  ofSeeds: 'page.field.of-seeds',
  thinned: 'page.field.thinned',
  from: 'page.field.harvest-from',
  to: 'page.field.to',
  perWeek: 'page.field.per-week',
};

/**
 * A form's label for the field of a parameter.
 *
 * @param form `ask`: the question form; `act`: an action form within an answer.
 */
export const fieldLabel = (field: string, form: 'ask' | 'act'): PageCode | undefined =>
  (form === 'ask' ? ASKED : CHANGED)[field];
