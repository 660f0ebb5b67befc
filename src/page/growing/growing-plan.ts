import type { PlanAnswer, PlanWire } from '../../contract/plans.js';
import { confirmed } from '../form/folded-form.js';
import { isFailure, type Result } from '../shell/api.js';
import { explainedNumber } from '../shell/explained-number.js';
import { type Html, type HtmlPart, html } from '../shell/html.js';
import { bedName, cropName } from '../shell/inventory.js';
import { notes } from '../shell/notes.js';
import { refusalSaid } from '../shell/refusal-words.js';
import { tableOf } from '../shell/table.js';
import type { AskedQuestion } from '../shell/view.js';
import { dayMonth, numberText, ofHundred, type PageReader, shortDay, span } from '../shell/words.js';
import { whereSown } from './growing-words.js';

type PlannedSowing = PlanAnswer['sowings'][number];

/** A planned harvest: what to sow for it and when, and what it will lack. */
export function planSection(kept: PlanWire, got: Result<PlanAnswer>, asked: AskedQuestion): Html {
  const { shelf, reader } = asked;
  const { id, bed, crop } = kept;
  const name = cropName(shelf, crop, reader);
  const { say } = reader;
  return html`<section class="plan" id="plan-${id}" tabindex="-1" aria-label="${say('page.plan.label', { crop: name })}">
    <h3>${name}, ${wanted(kept, reader)}</h3>
    <p class="aside">${bedName(shelf, bed)}</p>
    ${isFailure(got) ? html`<p class="problem">${refusalSaid(got.problem, reader)}</p>` : planned(got.value, name, reader)}
    ${confirmed(say('page.plan.forget'), asked, {
      act: 'forget-plan',
      about: id,
      question: say('page.plan.forget-why'),
      button: say('page.growing.yes-forget'),
    })}
  </section>`;
}

/** The plants wanted, and when. */
export const wanted = ({ harvest: { from, to, perWeek } }: PlanWire, reader: PageReader): Html =>
  reader.tell('page.plan.wanted', { perWeek, dates: span(from, to, reader), year: to.slice(0, 4) });

function planned(
  { id, years, harvest, sowings, gaps, cautions, warnings, assumptions }: PlanAnswer,
  name: string,
  reader: PageReader,
): Html {
  const { say, tell } = reader;
  const b = (text: Html): Html => html`<b>${text}</b>`;
  const advice = sowings.flatMap(({ date, advice: all }) => all.map(({ text }) => ({ date, text })));
  return html`
    ${
      sowings.length > 0 &&
      tableOf(
        say('page.plan.what-to-sow', { crop: name, date: dayMonth(harvest.from, reader) }),
        columnsOf(id, years.count, reader),
        sowings.map((one) => rowOf(one, reader)),
      )
    }
    ${gaps.length > 0 && html`<h4>${say('page.plan.gaps')}</h4><ul>${gaps.map(({ from, to, text }) => html`<li>${tell('page.plan.dated', { b, dates: span(from, to, reader), text })}</li>`)}</ul>`}
    ${advice.length > 0 && html`<details id="helps-${id}"><summary>${say('page.plan.helps')}</summary><ul>${advice.map(({ date, text }) => html`<li>${tell('page.plan.dated', { b, dates: dayMonth(date, reader), text })}</li>`)}</ul></details>`}
    ${notes(say('page.plan.heed'), [...warnings, ...cautions])}
    ${notes(say('page.plan.rests-on'), assumptions)}`;
}

const columnsOf = (id: string, count: number, reader: PageReader): HtmlPart[] => {
  const { say } = reader;
  return [
    say('page.plan.sow-on'),
    say('page.growing.where-label'),
    explainedNumber(`${id}-seeds`, say('page.plan.seeds'), reader, 'page.plan.seeds'),
    explainedNumber(`${id}-half`, say('page.growing.half-up'), reader, 'page.plan.half', { count }),
    explainedNumber(`${id}-pick`, say('page.plan.pick'), reader, 'page.plan.pick'),
    explainedNumber(`${id}-sure`, say('page.plan.reached'), reader, 'page.plan.reached', { count }),
  ];
};

const rowOf = (sowing: PlannedSowing, reader: PageReader): Html => {
  const { date, seeds, sown, half, halfRange, harvest, sureness, indoors } = sowing;
  const where = whereSown(sowing, reader);
  return html`<tr><th scope="row">${shortDay(date, reader)}${sown && html` <span class="aside">${reader.say('page.plan.sown')}</span>`}</th>
    <td>${indoors ? reader.tell('page.plan.out-on', { where, date: shortDay(indoors.plantOut, reader) }) : where}</td>
    <td>${numberText(seeds, reader)}</td>
    <td>${shortDay(half, reader)}${halfRange && html` <span class="aside">(${span(halfRange.from, halfRange.to, reader, 'short')})</span>`}</td>
    <td>${span(harvest.from, harvest.to, reader, 'short')}</td>
    <td>${sureness === null ? reader.say('page.when.not-known') : ofHundred(sureness, reader)}</td></tr>`;
};
