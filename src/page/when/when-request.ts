import type { BedWire } from '../../contract/beds.js';
import type { PlaceWire } from '../../contract/places.js';
import type { PageQuestion } from '../form/question.js';
import { inQuery, numberOrText, wholeOrText } from '../form/typed-numbers.js';
import { type ApiRequest, pathWith } from '../shell/api.js';
import { bedNamed, type Inventory, placeOf } from '../shell/inventory.js';
import { bedForecastRequest, filled } from '../sowing/forecast-request.js';
import { monthDayOf } from '../week/week-request.js';

/** A bed's properties, without its name. */
export type AskedBed = Pick<BedWire, 'kind' | 'cover' | 'moisture' | 'shadePercent' | 'roomC'>;

/** Where to sow: in a stored bed, or in open ground at a stored place. */
export interface Spot {
  readonly bed: BedWire | null;
  readonly place: Pick<PlaceWire, 'id' | 'name' | 'timeZone'>;
  /** A town and its last frost, in place of what is stored; null: it is stored. */
  readonly near: { readonly near: string; readonly lastFrostAround?: string } | null;
}

/** Open ground with default properties. */
export const OPEN_GROUND: AskedBed = {
  kind: 'open-ground',
  cover: 'bare',
  moisture: 'moist',
  shadePercent: 0,
  roomC: null,
};

/** A stored bed's properties, without its name and place. */
export const makeOf = ({ kind, cover, moisture, shadePercent, roomC }: BedWire): AskedBed => ({
  kind,
  cover,
  moisture,
  shadePercent,
  roomC,
});

/** null: no such bed or place is stored. */
export function spotOf({ bed: id, place: placeId, near, lastFrost }: PageQuestion, shelf: Inventory): Spot | null {
  if (id === '' && near !== '') {
    const known = lastFrost === '' ? {} : { lastFrostAround: monthDayOf(lastFrost) };
    return { bed: null, place: { id: '', name: near, timeZone: '' }, near: { near, ...known } };
  }
  const bed = bedNamed(shelf, id) ?? null;
  const place =
    id === '' ? (shelf.places.find((one) => one.id === placeId) ?? shelf.places[0]) : placeOf(shelf, bed ?? undefined);
  return place ? { bed, place, near: null } : null;
}

/** The request for a crop's sowing windows there, or in an altered bed. */
export function windowsRequest(question: PageQuestion, spot: Spot, crop: string, make?: AskedBed): ApiRequest {
  const { from, prefer, time, depthCm } = question;
  if (spot.bed && !make) {
    const query = { crop, from, prefer, depthCm: inQuery(depthCm), 'sowing.time': time };
    return { method: 'GET', path: pathWith(`/v1/beds/${encodeURIComponent(spot.bed.id)}/sowing-windows`, query) };
  }
  const json = {
    crop,
    where: { place: spot.near ?? spot.place.id, bed: make ?? OPEN_GROUND },
    ...(from === '' ? {} : { from }),
    prefer,
    sowing: sowingJson(question),
  };
  return { method: 'POST', path: '/v1/sowing-windows', json };
}

/** The request for the forecast of that date, with hours. */
export function dateRequest(question: PageQuestion, spot: Spot, date: string): ApiRequest {
  const { crop, seeds } = question;
  if (spot.bed) return bedForecastRequest({ ...question, countDays: '' }, spot.bed.id, date);
  const json = {
    crop,
    where: { place: spot.near ?? spot.place.id, bed: OPEN_GROUND },
    sowing: { date, ...sowingJson(question), ...filled({ seeds: wholeOrText(seeds) }) },
  };
  return { method: 'POST', path: '/v1/forecasts?hourly=true', json };
}

const sowingJson = ({ time, depthCm }: PageQuestion): object =>
  filled({ time: time || null, depthCm: numberOrText(depthCm) });

/** The crops to compare with the one asked for. */
export const besideOf = ({ beside, crop }: PageQuestion, { crops }: Inventory): string[] =>
  [...new Set(beside.split(','))]
    .filter((id) => id !== crop && crops.some((one) => one.id === id))
    .slice(0, MAX_BESIDE);

export const MAX_BESIDE = 3;
