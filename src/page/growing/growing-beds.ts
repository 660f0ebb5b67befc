import type { BedWire, ThermometerWire } from '../../contract/beds.js';
import type { PlaceWire } from '../../contract/places.js';
import type { PageCode } from '../../words/page-en.js';
import { placeSaid } from '../begin/place-said.js';
import { bedSaid } from '../form/bed-fields.js';
import { confirmed, foldedForm, nameOf, unseen } from '../form/folded-form.js';
import { linkTo } from '../form/question.js';
import { type Html, html } from '../shell/html.js';
import type { AskedQuestion } from '../shell/view.js';
import { dateText, listed } from '../shell/words.js';
import { changeBedForm, changePlaceForm, forgetReadingsForm, thermometerSaid } from './growing-bed-forms.js';
import { bedsInQuestion, type Thermometers } from './growing-found.js';

/** The stored beds by place, each with its forms to change and delete it. */
export function placesAndBeds(asked: AskedQuestion, thermometers: Thermometers): Html {
  const { shelf, question } = asked;
  const beds = bedsInQuestion(asked);
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

const placeSection = (
  place: PlaceWire,
  beds: readonly BedWire[],
  asked: AskedQuestion,
  thermometers: Thermometers,
): Html =>
  html`<section class="place" id="place-${place.id}" tabindex="-1" aria-label="${place.name}">
    <h3>${place.name}</h3>
    <p class="aside">${asked.reader.say('page.beds.time-zone', { where: placeSaid(place, asked.reader), zone: place.timeZone })}</p>
    ${foldedForm(changePlaceForm(place, asked), asked, { act: 'change-place', about: place.id, name: nameOf(asked.reader.say('page.beds.change-place'), place.name, asked.reader) })}
    ${
      !asked.shelf.beds.some((bed) => bed.place === place.id) &&
      confirmed(nameOf(asked.reader.say('page.beds.forget-place'), place.name, asked.reader), asked, {
        act: 'forget-place',
        about: place.id,
        question: asked.reader.say('page.beds.forget-place-why'),
        button: asked.reader.say('page.growing.yes-forget'),
      })
    }
    ${beds.map((bed) => bedSection(bed, asked, thermometers.get(bed.id) ?? []))}
  </section>`;

function bedSection(bed: BedWire, asked: AskedQuestion, thermometers: readonly ThermometerWire[]): Html {
  const { reader } = asked;
  const { say, tell } = reader;
  const file = linkTo({ ...asked.question, view: 'sowing', source: 'file', bed: bed.id });
  const first = tell('page.beds.bed', {
    name: bed.name,
    what: bedSaid(bed, reader),
    b: (text) => html`<b>${text}</b>`,
    a: (text) => html`<a href="${file}">${text}</a>`,
    unseen,
  });
  const kept = thermometers.map((one) =>
    say('page.beds.kept-readings', {
      thermometer: thermometerSaid(one, reader),
      readings: say('page.of.readings', { count: one.readings }),
      from: dateText(one.from, reader),
      to: dateText(one.to, reader),
    }),
  );
  const named = (does: PageCode): Html => nameOf(say(does), bed.name, reader);
  return html`<div class="bed" id="bed-${bed.id}" tabindex="-1"><p>${first}</p>
    ${kept.length > 0 && html`<p class="aside">${tell('page.beds.kept', { all: listed(kept, reader, 'conjunction') })}</p>`}
    ${foldedForm(changeBedForm(bed, asked), asked, { act: 'change-bed', about: bed.id, name: named('page.beds.change-bed') })}
    ${foldedForm(forgetReadingsForm(bed, thermometers, asked), asked, { act: 'forget-readings', about: bed.id, name: named('page.beds.forget-measured') })}
    ${confirmed(named('page.beds.forget-bed'), asked, {
      act: 'forget-bed',
      about: bed.id,
      question: say('page.beds.forget-bed-why'),
      button: say('page.growing.yes-forget'),
    })}</div>`;
}
