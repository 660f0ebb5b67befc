import type { SowingAnswer } from '../../contract/sowings.js';
import { actForm, actId, type Typed, triedIn } from '../form/act.js';
import { textField } from '../form/fields.js';
import { confirmed, foldedForm, nameOf } from '../form/folded-form.js';
import { linkTo } from '../form/question.js';
import { type Got, isRefused } from '../shell/api.js';
import { figure } from '../shell/figure.js';
import { type Html, html, type Part } from '../shell/html.js';
import { notes } from '../shell/notes.js';
import { refusalSaid } from '../shell/refusal-words.js';
import { saidText } from '../shell/said-text.js';
import { bedName, todayAt } from '../shell/shelf.js';
import { tableOf } from '../shell/table.js';
import type { Asked } from '../shell/view.js';
import { dayMonth, plural, type Reader, shortDay, span, spanText } from '../shell/words.js';
import { forecastPictures } from '../sowing/forecast-picture.js';
import type { KeptSowing } from './growing-found.js';
import { changeSowingForm } from './growing-sow-form.js';
import { EXPECTED, OBSERVED, ofHundred, sowingName, VERDICTS } from './growing-words.js';

/** Of rows of one's own no form asks. */
const isOfChart = (kept: KeptSowing): kept is KeptSowing & { readonly crop: string } => typeof kept.crop === 'string';

/** How a sowing stands, what was counted, and the form to count once more. */
export function sowingSection(kept: KeptSowing, got: Got<SowingAnswer>, asked: Asked): Html {
  const { shelf, reader } = asked;
  const { id, bed, seeds, method } = kept;
  const today = todayAt(shelf, bed, '');
  const name = sowingName(shelf, kept, reader, today);
  const where = [
    bedName(shelf, bed),
    method === 'indoors' ? 'in trays first' : '',
    seeds === null ? 'seeds not counted' : plural(seeds, 'seed'),
  ];
  return html`<section class="sowing" id="sowing-${id}" tabindex="-1" aria-label="${name}">
    <h3>${name}</h3>
    <p class="aside">${where.filter((one) => one !== '').join(', ')}</p>
    ${isRefused(got) ? html`<p class="problem">${refusalSaid(got.problem, reader)}</p>` : standing(got.value, name, asked)}
    ${countForm(kept, today, asked)}
    ${isRefused(got) ? null : forecastFolded(got.value, asked)}
    ${isOfChart(kept) && foldedForm(changeSowingForm(kept, asked), asked, { act: 'change-sowing', about: id, name: nameOf('Change this sowing', name) })}
    ${confirmed('Forget this sowing', asked, {
      act: 'forget-sowing',
      about: id,
      question: 'It goes with all its counts, and what they taught goes with them.',
      button: 'Yes, forget it',
    })}
  </section>`;
}

function standing(sowing: SowingAnswer, name: string, asked: Asked): Html {
  const { judgement, learned, warnings } = sowing;
  const { reader } = asked;
  return html`
    ${judgement && html`<p class="verdict"><b>${VERDICTS[judgement.verdict]}.</b> ${saidText(judgement.text, reader)}</p>`}
    ${warnings.map(({ text }) => html`<p class="aside">${saidText(text, reader)}</p>`)}
    <dl class="facts">${factsOf(sowing, reader).map(([name, value]) => html`<div><dt>${name}</dt><dd>${value}</dd></div>`)}</dl>
    ${counts(sowing, name, asked)}
    ${learned && html`<p class="aside">${saidText(learned.text, reader)}</p>`}`;
}

type Fact = readonly [name: string, value: Part];

/** What is known of it, each with where that comes from. */
function factsOf(sowing: SowingAnswer, reader: Reader): Fact[] {
  const { id, forecast, expected, observed, judgement, harvest, resowBy, indoors } = sowing;
  const facts: Fact[] = [];
  if (expected) facts.push(['By the forecast', EXPECTED[expected]]);
  facts.push(['By the counts', observed === null ? 'nobody has counted' : OBSERVED[observed]]);
  if (judgement?.odds && judgement.verdict !== 'good') {
    const { late, lost } = judgement.odds;
    facts.push([
      'Odds',
      figure(`${id}-odds`, `slower than beds have been ${ofHundred(late)}, lost ${ofHundred(lost)}`, {
        what: 'Of a hundred such rows, how many live but take longer than beds of this crop have taken, and of how many nothing comes any more.',
        from: 'The forecast set against what was counted, with the counts of other sowings of the crop in this bed.',
        sure: 'It knows nothing of slugs, birds and drought. Lost is said when 95 of a hundred such rows would be.',
      }),
    ]);
  }
  if (forecast) facts.push(...forecastFacts(id, forecast, reader));
  if (indoors) {
    facts.push([
      'Harden off, plant out',
      figure(
        `${id}-indoors`,
        html`${span(indoors.hardenOff.from, indoors.hardenOff.to, reader)}, then ${span(indoors.plantOut, indoors.plantOut, reader)}`,
        {
          what: 'When the trays stand out by day, and when the plants go into the bed.',
          from: 'So many weeks after coming up in the room, and not before nights bear it.',
          sure: 'Common practice for most gardens. Look at the weather forecast first.',
        },
      ),
    ]);
  }
  if (harvest) {
    facts.push([
      'Harvest',
      figure(`${id}-harvest`, span(harvest.from, harvest.to, reader), {
        what: 'From when the earliest kinds may be ready to when late ones are.',
        from: `Published days to maturity, counted from coming up.${harvest.slowed ? ' Short days slow it.' : ''}`,
        sure: 'A guide. Kind, weather and soil move it by weeks.',
      }),
    ]);
  }
  if (resowBy !== null && judgement?.verdict !== 'good') {
    facts.push([
      'Sow again by',
      figure(`${id}-resow`, span(resowBy, resowBy, reader), {
        what: 'The last day of the season on which a new sowing is still good.',
        from: 'What sowings of each day would have done in the past years of this place, harvest counted in: “When to sow” asks only for seedlings, and so allows later ones.',
        sure: 'Good in most years, not in all.',
      }),
    ]);
  }
  return facts;
}

function forecastFacts(id: string, forecast: NonNullable<SowingAnswer['forecast']>, reader: Reader): Fact[] {
  const { stand, sowing } = forecast;
  const { half } = forecast.emergence;
  const { from, to } = stand.seedlings ?? stand.field;
  return [
    [
      'Half up',
      'why' in half
        ? half.why === 'not-by-count-day'
          ? html`not before ${shortDay(stand.by, reader)}`
          : 'not at these temperatures'
        : figure(
            `${id}-half`,
            html`${span(half.date, half.date, reader)} (${
              half.range.to === null
                ? html`${span(half.range.from, half.range.from, reader)} or later`
                : span(half.range.from, half.range.to, reader)
            })`,
            {
              what: 'The day on which half of what comes up is up, and the days between which it is eight times in ten.',
              from: 'The crop’s response to temperature, added up hour by hour at the seed, and what counts in this bed have taught.',
              sure: 'The range is of weather, soil and counts. Seed and drought come on top.',
            },
          ),
    ],
    [
      'Seedlings in all',
      figure(`${id}-stand`, `${spanText({ from, to })} of ${sowing.seeds ?? 'a hundred'} seeds`, {
        what: `How many stand on ${dayMonth(stand.by, reader)}, the day of the count.`,
        from: `In a laboratory ${stand.laboratory} of a hundred would; beds give less, and counts in this bed narrow how much less.`,
        sure: 'From a poor bed to a good one.',
      }),
    ],
  ];
}

function counts({ id, counts: all, seeds }: SowingAnswer, sowing: string, asked: Asked): Html | false {
  const { reader } = asked;
  const isThinned = all.some(({ thinned }) => thinned !== false);
  const columns = ['Counted on', 'Seedlings', 'Of seeds', ...(isThinned ? ['Pulled out before'] : [])];
  const rows = all.map(({ date, seedlings, ofSeeds, thinned }) => {
    const name = html`Forget<span class="unseen"> the count of ${dayMonth(date, reader)}</span>`;
    const forget = confirmed(name, asked, {
      act: 'forget-count',
      about: `${id}-${date}`,
      with: { of: id, date },
      question: 'What it taught goes with it.',
      button: 'Yes, forget it',
    });
    return html`<tr><th scope="row">${shortDay(date, reader)}</th><td>${seedlings}</td><td>${ofSeeds ?? seeds}</td>${isThinned && html`<td>${pulledOut(thinned)}</td>`}<td>${forget}</td></tr>`;
  });
  return all.length > 0 && tableOf(`Counts of ${sowing}`, [...columns, html`<span class="unseen">Forget</span>`], rows);
}

function pulledOut(thinned: boolean | number): string {
  if (typeof thinned === 'number') return String(thinned);
  return thinned ? 'some' : '';
}

/** Counts are typed in as they are seen; a stretch, and thinning, are said where there is something to say. */
function countForm({ id, seeds }: KeptSowing, today: string, asked: Asked): Html {
  const tried = triedIn(asked.tried, actId('count', id));
  const isOpen = tried !== undefined && ['ofSeeds', 'thinned', 'thinnedSome'].some((name) => tried.said.get(name));
  const ofSeeds = (typed: Typed): Html =>
    textField('ofSeeds', 'Of how many seeds', typed('ofSeeds'), {
      isNumber: true,
      size: 'short',
      ...(seeds === null ? {} : { placeholder: String(seeds) }),
    });
  return actForm(asked, {
    act: 'count',
    about: id,
    button: 'Count',
    fields: (typed) => html`
      ${textField('seedlings', 'Seedlings', typed('seedlings'), { isNumber: true, size: 'short' })}
      ${seeds === null && ofSeeds(typed)}
      ${textField('date', 'Counted on', typed('date', today), { type: 'date', size: 'short' })}`,
    more: (typed) =>
      html`<details${isOpen && html` open`}><summary>${seeds === null ? 'After thinning' : 'Only a stretch of it, or after thinning'}</summary>
        <div class="side-by-side">
          ${seeds !== null && ofSeeds(typed)}
          ${textField('thinned', 'Pulled out before, in all', typed('thinned'), { isNumber: true, size: 'short' })}
        </div>
        <label class="tick"><input type="checkbox" name="thinnedSome" value="yes"${typed('thinnedSome') !== '' && html` checked`}> Some were pulled out, nobody knows how many</label>
      </details>`,
  });
}

/** The forecast as drawn, and the way to ask more of it. */
function forecastFolded(
  { id, bed, crop, date, seeds, forecast, model, issuedAt }: SowingAnswer,
  asked: Asked,
): Html | null {
  if (!forecast) return null;
  const { question, reader } = asked;
  // Folded away, it is drawn once, as narrow as a phone: a width for each screen would double the page.
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
  return html`<details id="forecast-of-${id}"><summary>The whole forecast</summary>
    ${forecastPictures({ ...forecast, model, issuedAt }, about, `forecast-${id}`)}
    ${typeof crop === 'string' && html`<p><a href="${sameSowing}">What a sowing of that day does, in all its numbers</a></p>`}
    ${notes('Take heed', forecast.warnings, reader)}
    ${notes('What this rests on', forecast.assumptions, reader)}
  </details>`;
}
