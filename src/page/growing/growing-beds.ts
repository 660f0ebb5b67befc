import type { BedWire, ThermometerWire } from '../../contract/beds.js';
import type { PlaceWire } from '../../contract/places.js';
import { placeSaid } from '../begin/place-said.js';
import { bedSaid } from '../form/bed-fields.js';
import { confirmed, foldedForm, nameOf } from '../form/folded-form.js';
import { linkTo } from '../form/question.js';
import { type Html, html } from '../shell/html.js';
import type { Asked } from '../shell/view.js';
import { dateText, listed, plural } from '../shell/words.js';
import { changeBedForm, changePlaceForm, forgetReadingsForm, thermometerSaid } from './growing-bed-forms.js';
import { bedsAsked, type Thermometers } from './growing-found.js';

/** The beds that are kept, by their places, each with the ways to change it and to be without it. */
export function placesAndBeds(asked: Asked, thermometers: Thermometers): Html {
  const { shelf, question } = asked;
  const beds = bedsAsked(asked);
  const places = shelf.places.filter(({ id }) => question.ofBed === '' || beds.some(({ place }) => place === id));
  return html`${places.map((place) =>
    placeSection(
      place,
      beds.filter((bed) => bed.place === place.id),
      asked,
      thermometers,
    ),
  )}`;
}

const placeSection = (place: PlaceWire, beds: readonly BedWire[], asked: Asked, thermometers: Thermometers): Html =>
  html`<section class="place" id="place-${place.id}" tabindex="-1" aria-label="${place.name}">
    <h3>${place.name}</h3>
    <p class="aside">${placeSaid(place)}, time zone ${place.timeZone}</p>
    ${foldedForm(changePlaceForm(place, asked), asked, { act: 'change-place', about: place.id, name: nameOf('Change this place', place.name) })}
    ${
      !asked.shelf.beds.some((bed) => bed.place === place.id) &&
      confirmed(nameOf('Forget this place', place.name), asked, {
        act: 'forget-place',
        about: place.id,
        question: 'The air that is kept of it goes with it.',
        button: 'Yes, forget it',
      })
    }
    ${beds.map((bed) => bedSection(bed, asked, thermometers.get(bed.id) ?? []))}
  </section>`;

const bedSection = (bed: BedWire, asked: Asked, thermometers: readonly ThermometerWire[]): Html =>
  html`<div class="bed" id="bed-${bed.id}" tabindex="-1"><p><b>${bed.name}</b>, ${bedSaid(bed)}. <a href="${linkTo({ ...asked.question, view: 'sowing', source: 'file', bed: bed.id })}">Keep what its thermometer wrote<span class="unseen">: ${bed.name}</span></a></p>
    ${thermometers.length > 0 && html`<p class="aside">Kept of it: ${listed(thermometers.map((one) => `${thermometerSaid(one)}, ${plural(one.readings, 'reading')} from ${dateText(one.from, asked.reader)} to ${dateText(one.to, asked.reader)}`))}.</p>`}
    ${foldedForm(changeBedForm(bed, asked), asked, { act: 'change-bed', about: bed.id, name: nameOf('Change this bed', bed.name) })}
    ${foldedForm(forgetReadingsForm(bed, thermometers, asked), asked, { act: 'forget-readings', about: bed.id, name: nameOf('Forget what was measured', bed.name) })}
    ${confirmed(nameOf('Forget this bed', bed.name), asked, {
      act: 'forget-bed',
      about: bed.id,
      question:
        'All that is kept of it goes with it: its readings, sowings, counts and plans; and its calendar’s address opens nothing any more.',
      button: 'Yes, forget it',
    })}</div>`;
