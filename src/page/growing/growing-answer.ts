import { actForm, NEW } from '../form/act.js';
import { bedField } from '../form/bed-field.js';
import { textField } from '../form/fields.js';
import { confirmed, foldedForm, nameOf } from '../form/folded-form.js';
import { type Html, html, type Part } from '../shell/html.js';
import { bedName, cropName, todayAt } from '../shell/shelf.js';
import type { Asked } from '../shell/view.js';
import { plural } from '../shell/words.js';
import { cropField } from '../sowing/sowing-form.js';
import { bedForm } from './growing-bed-forms.js';
import { placesAndBeds } from './growing-beds.js';
import { bedsAsked, type Found } from './growing-found.js';
import { planSection, wanted } from './growing-plan.js';
import { sowForm } from './growing-sow-form.js';
import { sowingSection } from './growing-sowing.js';
import { type ToDo, thisWeek, toDoSaid } from './growing-to-do.js';
import { sowingName } from './growing-words.js';

/** What to do this week, how each sowing stands, the plans, the calendars; and the forms to keep more. */
export function growingAnswer(found: Found, toDo: readonly ToDo[], asked: Asked): Html {
  const { sowings, otherSowings, plans, otherPlans, shelf } = found;
  const { reader } = asked;
  const beds = bedsAsked(asked);
  const where = beds.length === 1 ? beds[0]!.name : 'your beds';
  const isEmpty = sowings.length === 0 && otherSowings.length === 0;
  return html`
    <p class="neighbour">${isEmpty ? `Nothing is sown in ${where} yet.` : `${plural(sowings.length, 'sowing')} in ${where}. ${toDoSaid(toDo)}`}</p>
    ${thisWeek(toDo, reader, beds.length)}
    <section><h2>Sowings</h2>
      ${sowings.map(({ kept, got }) => sowingSection(kept, got, asked))}
      ${otherSowings.length > 0 && html`<details id="other-sowings"><summary>${plural(otherSowings.length, 'more sowing')}, earlier or too many to work out at once</summary><ul>${otherSowings.map((one) => html`<li>${sowingName(shelf, one, reader, todayAt(shelf, one.bed, ''))}, ${bedName(shelf, one.bed)}</li>`)}</ul></details>`}
      ${foldedForm(sowForm(asked), asked, { act: 'sow', about: NEW, name: isEmpty ? 'Keep a sowing' : 'Keep another sowing', look: 'add', isOpen: isEmpty })}
    </section>
    <section><h2>Plans</h2>
      ${plans.map(({ kept, got }) => planSection(kept, got, asked))}
      ${otherPlans.length > 0 && html`<details id="other-plans"><summary>${plural(otherPlans.length, 'more plan')}</summary><ul>${otherPlans.map((one) => html`<li>${cropName(shelf, one.crop)}, ${wanted(one, reader)}, ${bedName(shelf, one.bed)}</li>`)}</ul></details>`}
      ${foldedForm(planForm(asked), asked, { act: 'plan', about: NEW, name: 'Plan a harvest', look: 'add' })}
    </section>
    <section><h2>Calendar</h2>
      <p>What there is to do, and when, in the calendar that you have anyhow: give it one of these addresses to subscribe to, and it follows as things change. Whoever has the address can read what grows in that bed, without a key, so pass it on only to those who may.</p>
      ${beds.map(({ id, name, calendarUrl }) => calendar(id, name, calendarUrl, asked))}
    </section>
    <section><h2>Beds</h2>
      ${placesAndBeds(asked, found.thermometers)}
      ${foldedForm(bedForm(asked), asked, { act: 'keep-bed', about: NEW, name: 'Keep another bed', look: 'add' })}
    </section>`;
}

function planForm(asked: Asked): Html {
  const { question, shelf } = asked;
  return actForm(asked, {
    act: 'plan',
    about: NEW,
    button: 'Plan it',
    fields: (typed) => html`
      <p>Say when you want to harvest, and how much; which sowings that takes is worked out from past years.</p>
      ${bedField(shelf, typed('bed') || question.ofBed)}
      ${cropField({ ...question, crop: typed('crop', question.crop) }, shelf)}
      <div class="side-by-side">
        ${textField('from', 'Harvest from', typed('from'), { type: 'date', size: 'short' })}
        ${textField('to', 'To', typed('to'), { type: 'date', size: 'short' })}
      </div>
      ${textField('perWeek', 'How many plants a week', typed('perWeek'), { isNumber: true, size: 'short' })}`,
  });
}

/** The address of a bed's calendar, and the way to another. */
function calendar(id: string, name: string, url: string | null, asked: Asked): Html {
  const address: Part =
    url === null
      ? `${name} has no calendar yet.`
      : html`<a href="${url}" id="calendar-link-${id}">Calendar of ${name}</a> <button type="button" class="quiet needs-script" data-copies="calendar-link-${id}">Copy the address<span class="unseen"> of the calendar of ${name}</span></button>`;
  return html`<div class="calendar" id="calendar-${id}" tabindex="-1"><p class="row">${address}</p>
    ${confirmed(nameOf(url === null ? 'Give it one' : 'Give it another address', `the calendar of ${name}`), asked, {
      act: 'renew-calendar',
      about: id,
      question:
        url === null
          ? 'Its address then opens it for whoever has it.'
          : 'The old address opens nothing any more: calendars that go by it have to be given the new one.',
      button: 'Yes, a new address',
    })}</div>`;
}
