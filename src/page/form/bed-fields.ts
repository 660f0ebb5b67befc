import type { BedWire } from '../../contract/beds.js';
import { type Html, html } from '../shell/html.js';
import { optionsOf, selectField, textField } from './fields.js';

const KINDS = [
  ['open-ground', 'in open ground'],
  ['raised-bed', 'a raised bed'],
  ['pot', 'a pot outside'],
  ['tray', 'a tray outside'],
  ['indoors', 'indoors'],
] as const;
const COVERS = [
  ['bare', 'bare soil'],
  ['grass', 'grass'],
  ['mulch', 'mulch'],
  ['black-film', 'black film'],
  ['clear-film', 'clear film'],
  ['fleece', 'fleece'],
] as const;
const MOISTURES = [
  ['rain', 'as the rain leaves it'],
  ['moist', 'kept moist'],
  ['wet', 'kept wet'],
] as const;

type BedField = 'kind' | 'cover' | 'moisture' | 'shadePercent';
type PlaceField = 'timeZone' | 'latitude' | 'longitude';

/**
 * What a bed is, to be filled in.
 *
 * @param room How warm its room is, where it is indoors.
 */
export const bedFields = (said: (field: BedField) => string, room: Html): Html => html`
      ${selectField('kind', 'It is', said('kind'), optionsOf(KINDS))}
      ${selectField('cover', 'Covered with', said('cover'), optionsOf(COVERS))}
      ${selectField('moisture', 'Water', said('moisture'), optionsOf(MOISTURES))}
      ${textField('shadePercent', 'Shade in percent', said('shadePercent'), { isNumber: true, size: 'short', hint: 'left out: none' })}
      <div class="indoors">${room}</div>`;

/** Where it lies, to be filled in. */
export const placeFields = (said: (field: PlaceField) => string, latitudeHint = 'north is positive'): Html => html`
      ${textField('timeZone', 'Time zone', said('timeZone'), { hint: 'such as Etc/GMT+2' })}
      ${textField('latitude', 'Latitude', said('latitude'), { isNumber: true, size: 'short', hint: latitudeHint })}
      ${textField('longitude', 'Longitude', said('longitude'), { isNumber: true, size: 'short', hint: 'east is positive' })}`;

const saidOf = (pairs: readonly (readonly [value: string, text: string])[], value: string): string =>
  pairs.find(([one]) => one === value)?.[1] ?? value;

export const kindSaid = (kind: string): string => saidOf(KINDS, kind);

/** A kept bed in short, as `in open ground, bare soil, 20 % shade`. */
export const bedSaid = ({ kind, cover, shadePercent }: BedWire): string =>
  [
    kindSaid(kind),
    ...(kind === 'indoors' ? [] : [saidOf(COVERS, cover)]),
    ...(shadePercent > 0 ? [`${shadePercent} % shade`] : []),
  ].join(', ');
