import type { PlanAnswer, PlanWire } from '../../contract/plans.js';
import { confirmed } from '../form/folded-form.js';
import { type Got, isRefused } from '../shell/api.js';
import { figure } from '../shell/figure.js';
import { type Html, html, type Part } from '../shell/html.js';
import { notes } from '../shell/notes.js';
import { refusalSaid } from '../shell/refusal-words.js';
import { saidText } from '../shell/said-text.js';
import { bedName, cropName } from '../shell/shelf.js';
import { tableOf } from '../shell/table.js';
import type { Asked } from '../shell/view.js';
import { dayMonth, type Reader, shortDay, span } from '../shell/words.js';
import { ofHundred, whereSown } from './growing-words.js';

type PlannedSowing = PlanAnswer['sowings'][number];

/** A harvest that is wanted: what to sow when for it, and what it will lack. */
export function planSection(kept: PlanWire, got: Got<PlanAnswer>, asked: Asked): Html {
  const { shelf, reader } = asked;
  const { id, bed, crop } = kept;
  const name = cropName(shelf, crop);
  return html`<section class="plan" id="plan-${id}" tabindex="-1" aria-label="Plan for ${name}">
    <h3>${name}, ${wanted(kept, reader)}</h3>
    <p class="aside">${bedName(shelf, bed)}</p>
    ${isRefused(got) ? html`<p class="problem">${refusalSaid(got.problem, reader)}</p>` : planned(got.value, name, reader)}
    ${confirmed('Forget this plan', asked, {
      act: 'forget-plan',
      about: id,
      question: 'Its sowings stay; only the plan goes.',
      button: 'Yes, forget it',
    })}
  </section>`;
}

/** How many, and when. */
export const wanted = ({ harvest: { from, to, perWeek } }: PlanWire, reader: Reader): Html =>
  html`${perWeek} a week, ${span(from, to, reader)} ${to.slice(0, 4)}`;

function planned(
  { id, years, harvest, sowings, gaps, cautions, warnings, assumptions }: PlanAnswer,
  name: string,
  reader: Reader,
): Html {
  const advice = sowings.flatMap(({ date, advice: all }) => all.map(({ text }) => ({ date, text })));
  return html`
    ${
      sowings.length > 0 &&
      tableOf(
        `What to sow of ${name}, to harvest from ${dayMonth(harvest.from, reader)}`,
        columnsOf(id, years.count),
        sowings.map((one) => rowOf(one, reader)),
      )
    }
    ${gaps.length > 0 && html`<h4>Gaps</h4><ul>${gaps.map(({ from, to, text }) => html`<li><b>${span(from, to, reader)}.</b> ${saidText(text, reader)}</li>`)}</ul>`}
    ${advice.length > 0 && html`<details id="helps-${id}"><summary>What helps these sowings</summary><ul>${advice.map(({ date, text }) => html`<li><b>${dayMonth(date, reader)}.</b> ${saidText(text, reader)}</li>`)}</ul></details>`}
    ${notes('What to heed', [...warnings, ...cautions], reader)}
    ${notes('What this plan rests on', assumptions, reader)}`;
}

const columnsOf = (id: string, years: number): Part[] => [
  'Sow on',
  'Where',
  figure(`${id}-seeds`, 'Seeds', {
    what: 'How many seeds to sow for the plants of its weeks.',
    from: 'One plant for each one wanted, by the stand of that day and what beds have given.',
    sure: 'Enough nine times in ten, of seed as good as the chart’s.',
  }),
  figure(`${id}-half`, 'Half up', {
    what: 'When half of it is up, and from when to when eight times in ten.',
    from: years === 0 ? 'One usual year.' : `The middle of ${years} past years of this place.`,
    sure: 'Beds may take longer than a laboratory, and then all is ready so much later.',
  }),
  figure(`${id}-pick`, 'Pick', {
    what: 'From when to when it is the harvest.',
    from: 'Published days to maturity, slowed where days are short.',
    sure: 'A guide. Kind, weather and soil move it by weeks.',
  }),
  figure(`${id}-sure`, 'Reached', {
    what: 'In how many of a hundred past years its weeks would have had their harvest.',
    from: years === 0 ? 'Without past years it cannot be told.' : `${years} past years of this place.`,
    sure: 'Years to come need not be like those before.',
  }),
];

const rowOf = (sowing: PlannedSowing, reader: Reader): Html => {
  const { date, seeds, sown, half, halfRange, harvest, sureness, indoors } = sowing;
  return html`<tr><th scope="row">${shortDay(date, reader)}${sown && html` <span class="aside">sown</span>`}</th>
    <td>${whereSown(sowing)}${indoors && html`, out on ${shortDay(indoors.plantOut, reader)}`}</td>
    <td>${seeds}</td>
    <td>${shortDay(half, reader)}${halfRange && html` <span class="aside">(${span(halfRange.from, halfRange.to, reader, 'short')})</span>`}</td>
    <td>${span(harvest.from, harvest.to, reader, 'short')}</td>
    <td>${sureness === null ? 'not known' : ofHundred(sureness)}</td></tr>`;
};
