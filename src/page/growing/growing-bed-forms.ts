import type { BedWire, ThermometerWire } from '../../contract/beds.js';
import type { PlaceWire } from '../../contract/places.js';
import { inUnit } from '../../plot/degrees.js';
import { placeSaid } from '../begin/place-said.js';
import { actForm, NEW, type Typed } from '../form/act.js';
import { bedFields, placeFields } from '../form/bed-fields.js';
import { degreesField, type Option, radios, selectField, textField } from '../form/fields.js';
import { type Html, html } from '../shell/html.js';
import type { Asked } from '../shell/view.js';
import { USUAL_PLACE } from './growing-bed-acts.js';

/** A bed is asked for by its name, what it is, and where. */
export function bedForm(asked: Asked): Html {
  const { question, shelf } = asked;
  const places = placesOf(asked);
  return actForm(asked, {
    act: 'keep-bed',
    about: NEW,
    button: 'Keep this bed',
    fields: (typed) => html`
      ${bedTexts(typed, { ...question, name: '', roomC: '' }, asked)}
      ${places.length > 0 && selectField('place', 'At', typed('place', shelf.places[0]!.id), [...places, { value: '', text: 'another place' }])}
      <div class="new-place">${placeTexts(typed, { ...question, name: '' })}</div>`,
  });
}

/** What is kept of a bed, to be changed. */
export const changeBedForm = (bed: BedWire, asked: Asked): Html =>
  actForm(asked, {
    act: 'change-bed',
    about: bed.id,
    button: 'Change it',
    fields: (typed) => html`
      ${bedTexts(
        typed,
        {
          ...bed,
          shadePercent: String(bed.shadePercent),
          roomC: bed.roomC === null ? '' : String(Math.round(inUnit(bed.roomC, asked.reader.degrees) * 10) / 10),
        },
        asked,
      )}
      ${selectField('place', 'At', typed('place', bed.place), placesOf(asked))}`,
  });

/** What is kept of a place, to be changed. */
export const changePlaceForm = ({ id, name, latitude, longitude, timeZone }: PlaceWire, asked: Asked): Html =>
  actForm(asked, {
    act: 'change-place',
    about: id,
    button: 'Change it',
    fields: (typed) => placeTexts(typed, { name, timeZone, latitude: String(latitude), longitude: String(longitude) }),
  });

/** What was kept by mistake of a thermometer, or of the place's air, goes by its days. */
export const forgetReadingsForm = ({ id }: BedWire, thermometers: readonly ThermometerWire[], asked: Asked): Html =>
  actForm(asked, {
    act: 'forget-readings',
    about: id,
    button: 'Forget it',
    fields: (typed) => html`
      ${radios('probe', 'What was measured', typed('probe', probeOf(thermometers[0])), [
        ...thermometers.map((one) => ({ value: probeOf(one), text: thermometerSaid(one) })),
        { value: '', text: 'the air, for all beds of its place' },
      ])}
      <div class="side-by-side">
        ${textField('from', 'From', typed('from'), { type: 'date', size: 'short' })}
        ${textField('to', 'To', typed('to'), { type: 'date', size: 'short' })}
      </div>`,
  });

/** A thermometer as the service tells it from the others, as a query. */
const probeOf = (one: ThermometerWire | undefined): string =>
  one === undefined ? '' : `medium=${one.medium}&probeDepthCm=${one.probeDepthCm ?? 'seed'}`;

/** As `soil 5 cm deep`. */
export const thermometerSaid = ({ medium, probeDepthCm }: ThermometerWire): string =>
  medium === 'air' ? 'air above it' : `soil ${probeDepthCm === undefined ? 'at the seed' : `${probeDepthCm} cm deep`}`;

const placesOf = ({ shelf }: Asked): Option[] =>
  shelf.places.map((place) => ({ value: place.id, text: `${place.name} (${placeSaid(place)})` }));

type BedText = 'name' | 'kind' | 'cover' | 'moisture' | 'shadePercent' | 'roomC';

const bedTexts = (typed: Typed, usual: Readonly<Record<BedText, string>>, { reader }: Asked): Html => html`
  ${textField('name', 'Its name', typed('name', usual.name), { hint: 'such as North bed' })}
  ${bedFields(
    (field) => typed(field, usual[field]),
    html`<div class="side-by-side">${textField('roomC', 'Room', typed('roomC', usual.roomC), { isNumber: true, size: 'short' })}${degreesField('roomUnit', 'in', typed('roomUnit', reader.degrees))}</div>`,
  )}`;

type PlaceText = 'name' | 'timeZone' | 'latitude' | 'longitude';

const placeTexts = (typed: Typed, usual: Readonly<Record<PlaceText, string>>): Html => html`
  ${textField('placeName', 'The place', typed('placeName', usual.name), { hint: `such as Quillmere allotments; left out: ${USUAL_PLACE}` })}
  ${placeFields((field) => typed(field, usual[field]))}`;
