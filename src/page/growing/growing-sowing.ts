import type { SowingAnswer } from '../../contract/sowings.js';
import { actionForm, actionId, rejectedIn, type Typed } from '../form/action.js';
import { textField } from '../form/fields.js';
import { confirmed, foldedForm, nameOf, unseen } from '../form/folded-form.js';
import { linkTo } from '../form/question.js';
import { isFailure, type Result } from '../shell/api.js';
import { explainedNumber } from '../shell/explained-number.js';
import { type Html, type HtmlPart, html } from '../shell/html.js';
import { bedName, todayAt } from '../shell/inventory.js';
import { notes } from '../shell/notes.js';
import { refusalSaid } from '../shell/refusal-words.js';
import { tableOf } from '../shell/table.js';
import type { AskedQuestion } from '../shell/view.js';
import { dayMonth, numberText, type PageReader, shortDay, span, spanText } from '../shell/words.js';
import { forecastPictures } from '../sowing/forecast-picture.js';
import { seedsSaid } from '../sowing/neighbour-words.js';
import type { KeptSowing } from './growing-found.js';
import { changeSowingForm } from './growing-sow-form.js';
import { sowingName } from './growing-words.js';

/** False for a custom response curve: the forms offer only crops of the chart. */
const isOfChart = (kept: KeptSowing): kept is KeptSowing & { readonly crop: string } => typeof kept.crop === 'string';

/** A sowing's state, its counts, and the form for another count. */
export function sowingSection(kept: KeptSowing, got: Result<SowingAnswer>, asked: AskedQuestion): Html {
  const { shelf, reader } = asked;
  const { id, bed, seeds, method } = kept;
  const { say } = reader;
  const today = todayAt(shelf, bed, '');
  const name = sowingName(shelf, kept, reader, today);
  const where = [
    bedName(shelf, bed),
    method === 'indoors' ? say('page.growing.in-trays-first') : '',
    seeds === null ? say('page.growing.not-counted') : say('page.of.seeds', { count: seeds }),
  ];
  return html`<section class="sowing" id="sowing-${id}" tabindex="-1" aria-label="${name}">
    <h3>${name}</h3>
    <p class="aside">${where.filter((one) => one !== '').join(', ')}</p>
    ${isFailure(got) ? html`<p class="problem">${refusalSaid(got.problem, reader)}</p>` : standing(got.value, name, asked)}
    ${countForm(kept, today, asked)}
    ${isFailure(got) ? null : forecastFolded(got.value, asked)}
    ${isOfChart(kept) && foldedForm(changeSowingForm(kept, asked), asked, { act: 'change-sowing', about: id, name: nameOf(say('page.growing.change-sowing'), name, reader) })}
    ${confirmed(say('page.growing.forget-sowing'), asked, {
      act: 'forget-sowing',
      about: id,
      question: say('page.growing.forget-sowing-why'),
      button: say('page.growing.yes-forget'),
    })}
  </section>`;
}

function standing(sowing: SowingAnswer, name: string, asked: AskedQuestion): Html {
  const { judgement, learned, warnings } = sowing;
  const { reader } = asked;
  return html`
    ${judgement && html`<p class="verdict"><b>${reader.say(`page.verdict.${judgement.verdict}`)}.</b> ${judgement.text}</p>`}
    ${warnings.map(({ text }) => html`<p class="aside">${text}</p>`)}
    <dl class="facts">${factsOf(sowing, reader).map(([name, value]) => html`<div><dt>${name}</dt><dd>${value}</dd></div>`)}</dl>
    ${counts(sowing, name, asked)}
    ${learned && html`<p class="aside">${learned.text}</p>`}`;
}

type Fact = readonly [name: string, value: HtmlPart];

/** The known facts, each with its source. */
function factsOf(sowing: SowingAnswer, reader: PageReader): Fact[] {
  const { id, forecast, expected, observed, judgement, harvest, resowBy, indoors } = sowing;
  const { say, tell } = reader;
  const facts: Fact[] = [];
  if (expected) facts.push([say('page.growing.by-forecast'), say(`page.expected.${expected}`)]);
  const counted = observed === null ? say('page.growing.nobody-counted') : say(`page.observed.${observed}`);
  facts.push([say('page.growing.by-counts'), counted]);
  if (judgement?.odds && judgement.verdict !== 'good') {
    const { late, lost } = judgement.odds;
    const said = say('page.growing.odds-said', { late: Math.round(100 * late), lost: Math.round(100 * lost) });
    facts.push([say('page.growing.odds'), explainedNumber(`${id}-odds`, said, reader, 'page.growing.odds')]);
  }
  if (forecast) facts.push(...forecastFacts(id, forecast, reader));
  if (indoors) {
    const dates = tell('page.growing.then', {
      harden: span(indoors.hardenOff.from, indoors.hardenOff.to, reader),
      plantOut: span(indoors.plantOut, indoors.plantOut, reader),
    });
    facts.push([
      say('page.growing.indoors-dates'),
      explainedNumber(`${id}-indoors`, dates, reader, 'page.growing.trays'),
    ]);
  }
  if (harvest) {
    facts.push([
      say('page.growing.harvest'),
      explainedNumber(`${id}-harvest`, span(harvest.from, harvest.to, reader), reader, 'page.growing.harvest', {
        slowed: harvest.slowed ? 'yes' : 'no',
      }),
    ]);
  }
  if (resowBy !== null && judgement?.verdict !== 'good') {
    const date = span(resowBy, resowBy, reader);
    facts.push([say('page.growing.sow-again-by'), explainedNumber(`${id}-resow`, date, reader, 'page.growing.resow')]);
  }
  return facts;
}

function forecastFacts(id: string, forecast: NonNullable<SowingAnswer['forecast']>, reader: PageReader): Fact[] {
  const { say } = reader;
  const { stand, sowing } = forecast;
  const { from, to } = stand.seedlings ?? stand.field;
  const seedlings = say('page.growing.of-seeds', {
    span: spanText({ from, to }, reader),
    seeds: seedsSaid(sowing.seeds, reader),
  });
  return [
    [say('page.growing.half-up'), halfSaid(id, forecast, reader)],
    [
      say('page.growing.in-all'),
      explainedNumber(`${id}-stand`, seedlings, reader, 'page.growing.stand', {
        date: dayMonth(stand.by, reader),
        laboratory: stand.laboratory,
      }),
    ],
  ];
}

function halfSaid(id: string, forecast: NonNullable<SowingAnswer['forecast']>, reader: PageReader): HtmlPart {
  const { say, tell } = reader;
  const { half } = forecast.emergence;
  if ('why' in half) {
    return half.why === 'not-by-count-day'
      ? tell('page.growing.not-before', { date: shortDay(forecast.stand.by, reader) })
      : say('page.sowing.not-here');
  }
  const { from, to } = half.range;
  const range =
    to === null ? tell('page.growing.or-later', { date: span(from, from, reader) }) : span(from, to, reader);
  const dates = tell('page.growing.half-dates', { date: span(half.date, half.date, reader), range });
  return explainedNumber(`${id}-half`, dates, reader, 'page.growing.half');
}

function counts({ id, counts: all, seeds }: SowingAnswer, sowing: string, asked: AskedQuestion): Html | false {
  const { reader } = asked;
  const { say, tell } = reader;
  const isThinned = all.some(({ thinned }) => thinned !== false);
  const columns = [
    say('page.growing.counted-on'),
    say('page.field.seedlings'),
    say('page.growing.of-so-many'),
    ...(isThinned ? [say('page.growing.pulled-out')] : []),
  ];
  const rows = all.map(({ date, seedlings, ofSeeds, thinned }) => {
    const name = tell('page.growing.forget-count', { date: dayMonth(date, reader), unseen });
    const forget = confirmed(name, asked, {
      act: 'forget-count',
      about: `${id}-${date}`,
      with: { of: id, date },
      question: say('page.growing.forget-count-why'),
      button: say('page.growing.yes-forget'),
    });
    return html`<tr><th scope="row">${shortDay(date, reader)}</th><td>${numberText(seedlings, reader)}</td><td>${numberOr(ofSeeds ?? seeds, reader)}</td>${isThinned && html`<td>${pulledOut(thinned, reader)}</td>`}<td>${forget}</td></tr>`;
  });
  return (
    all.length > 0 &&
    tableOf(say('page.growing.counts-of', { sowing }), [...columns, unseen(html`${say('page.growing.forget')}`)], rows)
  );
}

const numberOr = (value: number | null, reader: PageReader): string =>
  value === null ? '' : numberText(value, reader);

function pulledOut(thinned: boolean | number, reader: PageReader): string {
  if (typeof thinned === 'number') return numberText(thinned, reader);
  return thinned ? reader.say('page.growing.some') : '';
}

/** The form for a count; the stretch and thinning are optional. */
function countForm({ id, seeds }: KeptSowing, today: string, asked: AskedQuestion): Html {
  const { say } = asked.reader;
  const tried = rejectedIn(asked.tried, actionId('count', id));
  const isOpen = tried !== undefined && ['ofSeeds', 'thinned', 'thinnedSome'].some((name) => tried.said.get(name));
  const ofSeeds = (typed: Typed): Html =>
    textField('ofSeeds', say('page.field.of-seeds'), typed('ofSeeds'), {
      isNumber: true,
      size: 'short',
      ...(seeds === null ? {} : { placeholder: String(seeds) }),
    });
  return actionForm(asked, {
    act: 'count',
    about: id,
    button: say('page.growing.count'),
    fields: (typed) => html`
      ${textField('seedlings', say('page.field.seedlings'), typed('seedlings'), { isNumber: true, size: 'short' })}
      ${seeds === null && ofSeeds(typed)}
      ${textField('date', say('page.growing.counted-on'), typed('date', today), { type: 'date', size: 'short' })}`,
    more: (typed) =>
      html`<details${isOpen && html` open`}><summary>${say(seeds === null ? 'page.growing.after-thinning' : 'page.growing.only-a-stretch')}</summary>
        <div class="side-by-side">
          ${seeds !== null && ofSeeds(typed)}
          ${textField('thinned', say('page.field.thinned'), typed('thinned'), { isNumber: true, size: 'short' })}
        </div>
        <label class="tick"><input type="checkbox" name="thinnedSome" value="yes"${typed('thinnedSome') !== '' && html` checked`}> ${say('page.growing.thinned-some')}</label>
      </details>`,
  });
}

/** The rendered forecast, and links to ask for more. */
function forecastFolded(
  { id, bed, crop, date, seeds, forecast, model, issuedAt }: SowingAnswer,
  asked: AskedQuestion,
): Html | null {
  if (!forecast) return null;
  const { question, reader } = asked;
  // A folded picture is rendered once, as narrow as a phone: a width for each screen would double the page.
  const about = { ...asked, question: { ...question, bed }, widths: asked.widths.slice(0, 1) };
  const sameSowing = linkTo({
    ...question,
    view: 'sowing',
    source: 'bed',
    bed,
    crop: typeof crop === 'string' ? crop : question.crop,
    sowing: date,
    seeds: seeds === null ? '' : String(seeds),
  });
  return html`<details id="forecast-of-${id}"><summary>${reader.say('page.growing.whole-forecast')}</summary>
    ${forecastPictures({ ...forecast, model, issuedAt }, about, `forecast-${id}`)}
    ${typeof crop === 'string' && html`<p><a href="${sameSowing}">${reader.say('page.growing.all-numbers')}</a></p>`}
    ${notes(reader.say('page.sowing.take-heed'), forecast.warnings)}
    ${notes(reader.say('page.sowing.rests-on'), forecast.assumptions)}
  </details>`;
}
