import type { BedWire, ThermometerWire } from '../../contract/beds.js';
import type { PlaceWire } from '../../contract/places.js';
import { inUnit } from '../../plot/degrees.js';
import { placeSaid } from '../begin/place-said.js';
import { actionForm, NEW, type Typed } from '../form/action.js';
import { bedFields, placeFields } from '../form/bed-fields.js';
import { degreesField, type Option, radios, selectField, textField } from '../form/fields.js';
import { type Html, html } from '../shell/html.js';
import type { AskedQuestion } from '../shell/view.js';
import { numberText, type PageReader, tenthOf } from '../shell/words.js';

/** The form for a new bed: its name, what it is, and where. */
export function bedForm(asked: AskedQuestion): Html {
  const { question, shelf } = asked;
  const { say } = asked.reader;
  const places = placesOf(asked);
  return actionForm(asked, {
    act: 'keep-bed',
    about: NEW,
    button: say('page.growing.keep-this-bed'),
    fields: (typed) => html`
      ${bedTexts(typed, { ...question, name: '', roomC: '' }, asked)}
      ${places.length > 0 && selectField('place', say('page.field.at'), typed('place', shelf.places[0]!.id), [...places, { value: '', text: say('page.field.another-place') }])}
      <div class="new-place">${placeTexts(typed, { ...question, name: '' }, asked)}</div>`,
  });
}

/** The form that changes the stored fields of a bed. */
export const changeBedForm = (bed: BedWire, asked: AskedQuestion): Html =>
  actionForm(asked, {
    act: 'change-bed',
    about: bed.id,
    button: asked.reader.say('page.growing.change-it'),
    fields: (typed) => html`
      ${bedTexts(
        typed,
        {
          ...bed,
          shadePercent: String(bed.shadePercent),
          roomC: bed.roomC === null ? '' : tenthOf(inUnit(bed.roomC, asked.reader.degrees), asked.reader),
        },
        asked,
      )}
      ${selectField('place', asked.reader.say('page.field.at'), typed('place', bed.place), placesOf(asked))}`,
  });

/** The form that changes the stored fields of a place. */
export const changePlaceForm = ({ id, name, latitude, longitude, timeZone }: PlaceWire, asked: AskedQuestion): Html =>
  actionForm(asked, {
    act: 'change-place',
    about: id,
    button: asked.reader.say('page.growing.change-it'),
    fields: (typed) =>
      placeTexts(
        typed,
        { name, timeZone, latitude: degreesText(latitude, asked), longitude: degreesText(longitude, asked) },
        asked,
      ),
  });

/** The form that deletes days stored by mistake, of a thermometer or of the place's air. */
export const forgetReadingsForm = (
  { id }: BedWire,
  thermometers: readonly ThermometerWire[],
  asked: AskedQuestion,
): Html =>
  actionForm(asked, {
    act: 'forget-readings',
    about: id,
    button: asked.reader.say('page.growing.forget-it'),
    fields: (typed) => html`
      ${radios('probe', asked.reader.say('page.beds.measured'), typed('probe', probeOf(thermometers[0])), [
        ...thermometers.map((one) => ({ value: probeOf(one), text: thermometerSaid(one, asked.reader) })),
        { value: '', text: asked.reader.say('page.beds.air') },
      ])}
      <div class="side-by-side">
        ${textField('from', asked.reader.say('page.field.from'), typed('from'), { type: 'date', size: 'short' })}
        ${textField('to', asked.reader.say('page.field.to'), typed('to'), { type: 'date', size: 'short' })}
      </div>`,
  });

/** A thermometer as the service identifies it, in a query. */
const probeOf = (one: ThermometerWire | undefined): string =>
  one === undefined ? '' : `medium=${one.medium}&probeDepthCm=${one.probeDepthCm ?? 'seed'}`;

/** As `soil 5 cm deep`. */
export const thermometerSaid = ({ medium, probeDepthCm }: ThermometerWire, reader: PageReader): string =>
  medium === 'air'
    ? reader.say('page.beds.air-above')
    : reader.say('page.beds.soil', { depth: probeDepthCm === undefined ? 'none' : numberText(probeDepthCm, reader) });

const placesOf = ({ shelf, reader }: AskedQuestion): Option[] =>
  shelf.places.map((place) => ({
    value: place.id,
    text: reader.say('page.beds.place-choice', { name: place.name, where: placeSaid(place, reader) }),
  }));

/** A latitude or longitude with all its decimals and the reader's decimal mark. */
const degreesText = (degrees: number, { reader }: AskedQuestion): string =>
  degrees.toLocaleString(reader.locale, { useGrouping: false, maximumFractionDigits: 10 });

type BedText = 'name' | 'kind' | 'cover' | 'moisture' | 'shadePercent' | 'roomC';

const bedTexts = (typed: Typed, usual: Readonly<Record<BedText, string>>, { reader }: AskedQuestion): Html => html`
  ${textField('name', reader.say('page.field.name'), typed('name', usual.name), { hint: reader.say('page.field.name-hint') })}
  ${bedFields(
    (field) => typed(field, usual[field]),
    html`<div class="side-by-side">${textField('roomC', reader.say('page.field.room'), typed('roomC', usual.roomC), { isNumber: true, size: 'short' })}${degreesField('roomUnit', reader.say('page.field.room-unit'), typed('roomUnit', reader.degrees))}</div>`,
    reader,
  )}`;

type PlaceText = 'name' | 'timeZone' | 'latitude' | 'longitude';

const placeTexts = (typed: Typed, usual: Readonly<Record<PlaceText, string>>, { reader }: AskedQuestion): Html => html`
  ${textField('placeName', reader.say('page.field.place'), typed('placeName', usual.name), { hint: reader.say('page.field.place-hint', { usual: reader.say('page.field.usual-place') }) })}
  ${placeFields((field) => typed(field, usual[field]), reader)}`;
