import type { BedWire } from '../http/schemas/beds.js';
import { actForm } from './act.js';
import { bedFields, bedSaid, placeFields } from './bed-fields.js';
import { degreesField, selectField, textField } from './fields.js';
import { USUAL_PLACE } from './growing-bed-acts.js';
import { confirmed } from './growing-sowing.js';
import { type Html, html } from './html.js';
import { linkTo } from './question.js';
import { placeOf } from './shelf.js';
import type { Asked } from './view.js';

/** A bed that is kept, and the way to be without it. */
export const bedSection = (bed: BedWire, asked: Asked): Html =>
  html`<div class="bed" id="bed-${bed.id}" tabindex="-1"><p><b>${bed.name}</b>, ${bedSaid(bed)}, at ${placeOf(asked.shelf, bed)?.name ?? bed.place}. <a href="${linkTo({ ...asked.question, view: 'sowing', source: 'file', bed: bed.id })}">Keep what its thermometer wrote<span class="unseen">: ${bed.name}</span></a></p>
    ${confirmed(html`Forget this bed<span class="unseen">: ${bed.name}</span>`, asked, {
      act: 'forget-bed',
      about: bed.id,
      question:
        'All that is kept of it goes with it: its readings, sowings, counts and plans; and its calendar’s address opens nothing any more.',
      button: 'Yes, forget it',
    })}</div>`;

/** A bed is asked for by its name, what it is, and where. */
export function bedForm(asked: Asked): Html {
  const { question, shelf, reader } = asked;
  const { places } = shelf;
  return actForm(asked, {
    act: 'keep-bed',
    about: 'new',
    button: 'Keep this bed',
    fields: (typed) => html`
      ${textField('name', 'Its name', typed('name'), { hint: 'such as North bed' })}
      ${bedFields(
        (field) => typed(field, question[field]),
        html`<div class="side-by-side">${textField('roomC', 'Room', typed('roomC'), { isNumber: true, size: 'short' })}${degreesField('roomUnit', 'in', typed('roomUnit', reader.degrees))}</div>`,
      )}
      ${
        places.length > 0 &&
        selectField('place', 'At', typed('place', places[0]!.id), [
          ...places.map(({ id, name }) => ({ value: id, text: name })),
          { value: '', text: 'another place' },
        ])
      }
      <div class="new-place">${textField('placeName', 'The place', typed('placeName'), { hint: `such as Quillmere allotments; left out: ${USUAL_PLACE}` })}
      ${placeFields((field) => typed(field, question[field]))}</div>`,
  });
}
