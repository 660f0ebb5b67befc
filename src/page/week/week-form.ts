import { optionsNamed, selectField, textField } from '../form/fields.js';
import { hiddenState } from '../form/hidden-state.js';
import { type Html, html } from '../shell/html.js';
import { bedNamed } from '../shell/inventory.js';
import type { AskedQuestion } from '../shell/view.js';

/** The form of the week: a town, and at will when its last frost comes; or a stored bed. */
export function weekForm({ question, shelf, reader }: Omit<AskedQuestion, 'send'>): Html {
  const { say } = reader;
  return html`
    ${
      shelf.beds.length > 0 &&
      selectField('bed', say('page.field.bed'), question.bed, [
        ...optionsNamed(shelf.beds),
        { value: '', text: say('page.week.a-town') },
      ])
    }
    <div class="described">
      ${textField('near', say('page.field.town'), question.near, { hint: say('page.week.town-hint') })}
      <details><summary>${say('page.week.frost')}</summary>
        ${textField('lastFrost', say('page.field.last-frost'), question.lastFrost, { type: 'date', hint: say('page.week.frost-hint') })}
      </details>
    </div>
    ${hiddenState(question, shelf.beds.length > 0 ? ['bed', 'near', 'lastFrost'] : ['near', 'lastFrost'])}`;
}

export const weekAsked = ({ question, shelf, reader }: Pick<AskedQuestion, 'question' | 'shelf' | 'reader'>): Html =>
  html`${bedNamed(shelf, question.bed)?.name ?? (question.near || reader.say('page.week.no-town'))}`;
