import type { BedWire } from '../../contract/beds.js';
import { type Html, html } from '../shell/html.js';
import type { PageReader } from '../shell/words.js';
import { selectField, textField } from './fields.js';

const KINDS = ['open-ground', 'raised-bed', 'pot', 'tray', 'indoors'] as const;
const COVERS = ['bare', 'grass', 'mulch', 'black-film', 'clear-film', 'fleece'] as const;
const MOISTURES = ['moist', 'rain', 'wet'] as const;

type BedField = 'kind' | 'cover' | 'moisture' | 'shadePercent';
type PlaceField = 'timeZone' | 'latitude' | 'longitude';

/**
 * Fields that describe a bed.
 *
 * @param room Temperature of its room, if it is indoors.
 */
export const bedFields = (said: (field: BedField) => string, room: Html, reader: PageReader): Html => {
  const { say } = reader;
  return html`
      ${selectField(
        'kind',
        say('page.field.kind'),
        said('kind'),
        KINDS.map((value) => ({ value, text: kindSaid(value, reader) })),
      )}
      ${selectField(
        'cover',
        say('page.field.cover'),
        said('cover'),
        COVERS.map((value) => ({ value, text: say(`page.cover.${value}`) })),
      )}
      ${selectField(
        'moisture',
        say('page.field.moisture'),
        said('moisture'),
        MOISTURES.map((value) => ({ value, text: say(`page.moisture.${value}`) })),
      )}
      ${textField('shadePercent', say('page.field.shade-percent'), said('shadePercent'), { isNumber: true, size: 'short', hint: say('page.field.shade-hint') })}
      <div class="indoors">${room}</div>`;
};

/** Fields that say where it lies. */
export const placeFields = (
  said: (field: PlaceField) => string,
  { say }: PageReader,
  latitudeHint: 'latitude-hint' | 'latitude-air-hint' = 'latitude-hint',
): Html => html`
      ${textField('timeZone', say('page.field.time-zone'), said('timeZone'), { hint: say('page.field.time-zone-hint') })}
      ${textField('latitude', say('page.field.latitude'), said('latitude'), { isNumber: true, size: 'short', hint: say(`page.field.${latitudeHint}`) })}
      ${textField('longitude', say('page.field.longitude'), said('longitude'), { isNumber: true, size: 'short', hint: say('page.field.longitude-hint') })}`;

/** The name of a kind of bed; a link may name an unknown kind. */
export const kindSaid = (kind: string, { say }: PageReader): string => {
  const known = KINDS.find((one) => one === kind);
  return known ? say(`page.kind.${known}`) : kind;
};

/** A stored bed in short, as `in open ground, bare soil, 20 % shade`. */
export const bedSaid = ({ kind, cover, shadePercent }: BedWire, reader: PageReader): string =>
  [
    kindSaid(kind, reader),
    ...(kind === 'indoors' ? [] : [reader.say(`page.cover.${cover}`)]),
    ...(shadePercent > 0 ? [reader.say('page.bed.shade', { percent: shadePercent })] : []),
  ].join(', ');
