import type { BedWire } from '../../contract/beds.js';
import type { PlaceWire } from '../../contract/places.js';
import type { Question } from '../form/question.js';
import { inQuery, numberOrText, wholeOrText } from '../form/typed-numbers.js';
import { type ApiRequest, pathWith } from '../shell/api.js';
import { bedNamed, placeOf, type Shelf } from '../shell/shelf.js';
import { bedForecastRequest, filled } from '../sowing/forecast-request.js';

/** What a bed is like, beside its name. */
export type BedMake = Pick<BedWire, 'kind' | 'cover' | 'moisture' | 'shadePercent' | 'roomC'>;

/** Where is sown: in a kept bed, or in open ground at a kept place. */
export interface Spot {
  readonly bed: BedWire | null;
  readonly place: PlaceWire;
}

/** Open ground of which nothing more is said. */
export const OPEN_GROUND: BedMake = {
  kind: 'open-ground',
  cover: 'bare',
  moisture: 'moist',
  shadePercent: 0,
  roomC: null,
};

/** What a kept bed is like, without its name and its place. */
export const makeOf = ({ kind, cover, moisture, shadePercent, roomC }: BedWire): BedMake => ({
  kind,
  cover,
  moisture,
  shadePercent,
  roomC,
});

/** null: no such bed is kept, nor a place. */
export function spotOf({ bed: id, place: placeId }: Question, shelf: Shelf): Spot | null {
  const bed = bedNamed(shelf, id) ?? null;
  const place =
    id === '' ? (shelf.places.find((one) => one.id === placeId) ?? shelf.places[0]) : placeOf(shelf, bed ?? undefined);
  return place ? { bed, place } : null;
}

/** When to sow a crop there; in a bed of another make, where one is named. */
export function windowsRequest(question: Question, spot: Spot, crop: string, make?: BedMake): ApiRequest {
  const { from, prefer, time, depthCm } = question;
  if (spot.bed && !make) {
    const query = { crop, from, prefer, depthCm: inQuery(depthCm), 'sowing.time': time };
    return { method: 'GET', path: pathWith(`/v1/beds/${encodeURIComponent(spot.bed.id)}/sowing-windows`, query) };
  }
  const json = {
    crop,
    where: { place: spot.place.id, bed: make ?? OPEN_GROUND },
    ...(from === '' ? {} : { from }),
    prefer,
    sowing: sowingJson(question),
  };
  return { method: 'POST', path: '/v1/sowing-windows', json };
}

/** What a sowing on that date would do, by the hour as well. */
export function dateRequest(question: Question, spot: Spot, date: string): ApiRequest {
  const { crop, seeds } = question;
  if (spot.bed) return bedForecastRequest({ ...question, countDays: '' }, spot.bed.id, date);
  const json = {
    crop,
    where: { place: spot.place.id, bed: OPEN_GROUND },
    sowing: { date, ...sowingJson(question), ...filled({ seeds: wholeOrText(seeds) }) },
  };
  return { method: 'POST', path: '/v1/forecasts?hourly=true', json };
}

const sowingJson = ({ time, depthCm }: Question): object =>
  filled({ time: time || null, depthCm: numberOrText(depthCm) });

/** The crops set beside the one that is asked for. */
export const besideOf = ({ beside, crop }: Question, { crops }: Shelf): string[] =>
  [...new Set(beside.split(','))]
    .filter((id) => id !== crop && crops.some((one) => one.id === id))
    .slice(0, MOST_BESIDE);

export const MOST_BESIDE = 3;
