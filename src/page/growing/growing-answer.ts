import { actionForm, NEW } from '../form/action.js';
import { bedField } from '../form/bed-field.js';
import { textField } from '../form/fields.js';
import { confirmed, foldedForm, nameOf, unseen } from '../form/folded-form.js';
import { type Html, type HtmlPart, html } from '../shell/html.js';
import { bedName, cropName, todayAt } from '../shell/inventory.js';
import type { AskedQuestion } from '../shell/view.js';
import { cropField } from '../sowing/sowing-form.js';
import { bedForm } from './growing-bed-forms.js';
import { placesAndBeds } from './growing-beds.js';
import { bedsInQuestion, type Found } from './growing-found.js';
import { planSection, wanted } from './growing-plan.js';
import { sowForm } from './growing-sow-form.js';
import { sowingSection } from './growing-sowing.js';
import { type ThingToDo, thisWeek, toDoSaid } from './growing-to-do.js';
import { sowingName } from './growing-words.js';

/** This week's tasks, the state of each sowing, plans, calendars, and the forms to store more. */
export function growingAnswer(found: Found, toDo: readonly ThingToDo[], asked: AskedQuestion): Html {
  const { sowings, otherSowings, plans, otherPlans, shelf } = found;
  const { reader } = asked;
  const { say } = reader;
  const beds = bedsInQuestion(asked);
  const where = beds.length === 1 ? { bed: 'one', name: beds[0]!.name } : { bed: 'none', name: '' };
  const isEmpty = sowings.length === 0 && otherSowings.length === 0;
  const summary = isEmpty
    ? say('page.growing.nothing-sown', where)
    : say('page.growing.sowings-in', { ...where, count: sowings.length, toDo: toDoSaid(toDo, reader) });
  return html`
    <p class="neighbour">${summary}</p>
    ${thisWeek(toDo, reader, beds.length)}
    <section><h2>${say('page.growing.sowings')}</h2>
      ${sowings.map(({ kept, got }) => sowingSection(kept, got, asked))}
      ${otherSowings.length > 0 && html`<details id="other-sowings"><summary>${say('page.growing.more-sowings', { count: otherSowings.length })}</summary><ul>${otherSowings.map((one) => html`<li>${sowingName(shelf, one, reader, todayAt(shelf, one.bed, ''))}, ${bedName(shelf, one.bed)}</li>`)}</ul></details>`}
      ${foldedForm(sowForm(asked), asked, { act: 'sow', about: NEW, name: say(isEmpty ? 'page.growing.keep-sowing' : 'page.growing.keep-another-sowing'), look: 'add', isOpen: isEmpty })}
    </section>
    <section><h2>${say('page.growing.plans')}</h2>
      ${plans.map(({ kept, got }) => planSection(kept, got, asked))}
      ${otherPlans.length > 0 && html`<details id="other-plans"><summary>${say('page.growing.more-plans', { count: otherPlans.length })}</summary><ul>${otherPlans.map((one) => html`<li>${cropName(shelf, one.crop, reader)}, ${wanted(one, reader)}, ${bedName(shelf, one.bed)}</li>`)}</ul></details>`}
      ${foldedForm(planForm(asked), asked, { act: 'plan', about: NEW, name: say('page.growing.plan-harvest'), look: 'add' })}
    </section>
    <section><h2>${say('page.growing.calendar')}</h2>
      <p>${say('page.growing.calendar-why')}</p>
      ${beds.map(({ id, name, calendarUrl }) => calendar(id, name, calendarUrl, asked))}
    </section>
    <section><h2>${say('page.growing.beds')}</h2>
      ${placesAndBeds(asked, found.thermometers)}
      ${foldedForm(bedForm(asked), asked, { act: 'keep-bed', about: NEW, name: say('page.growing.keep-another-bed'), look: 'add' })}
    </section>`;
}

function planForm(asked: AskedQuestion): Html {
  const { question, shelf, reader } = asked;
  const { say } = reader;
  return actionForm(asked, {
    act: 'plan',
    about: NEW,
    button: say('page.growing.plan-it'),
    fields: (typed) => html`
      <p>${say('page.growing.plan-why')}</p>
      ${bedField(shelf, typed('bed') || question.ofBed, reader)}
      ${cropField({ ...question, crop: typed('crop', question.crop) }, shelf, reader)}
      <div class="side-by-side">
        ${textField('from', say('page.field.harvest-from'), typed('from'), { type: 'date', size: 'short' })}
        ${textField('to', say('page.field.to'), typed('to'), { type: 'date', size: 'short' })}
      </div>
      ${textField('perWeek', say('page.field.per-week'), typed('perWeek'), { isNumber: true, size: 'short' })}`,
  });
}

/** The address of a bed's calendar, and the form for another. */
function calendar(id: string, name: string, url: string | null, asked: AskedQuestion): Html {
  const { reader } = asked;
  const { say, tell } = reader;
  const copy = tell('page.growing.copy-address', { bed: name, unseen });
  const address: HtmlPart =
    url === null
      ? say('page.growing.no-calendar', { bed: name })
      : html`<a href="${url}" id="calendar-link-${id}">${say('page.growing.calendar-of', { bed: name })}</a> <button type="button" class="quiet needs-script" data-copies="calendar-link-${id}">${copy}</button>`;
  const give = say(url === null ? 'page.growing.give-one' : 'page.growing.give-another');
  return html`<div class="calendar" id="calendar-${id}" tabindex="-1"><p class="row">${address}</p>
    ${confirmed(nameOf(give, say('page.growing.the-calendar-of', { bed: name }), reader), asked, {
      act: 'renew-calendar',
      about: id,
      question: say(url === null ? 'page.growing.opens-for' : 'page.growing.old-address'),
      button: say('page.growing.yes-address'),
    })}</div>`;
}
