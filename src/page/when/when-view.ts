import type { ForecastAnswer } from '../../contract/forecast.js';
import type { WindowAnswer } from '../../contract/windows.js';
import { dayOf } from '../../plot/dates.js';
import type { PictureOptions } from '../../plot/picture.js';
import { seasonStrip } from '../../plot/season-strip.js';
import { type Climate, climateAgain, climateForm, keepClimate } from '../begin/climate-table.js';
import { actionOf } from '../form/action.js';
import { linkTo, type PageQuestion } from '../form/question.js';
import { get, isFailure, type ProblemBody, type Result, unusable } from '../shell/api.js';
import { type Html, html } from '../shell/html.js';
import { cropInSentence } from '../shell/inventory.js';
import { pictureFor, pictures, TO_KEEP } from '../shell/pictures.js';
import { problemNote } from '../shell/problem-note.js';
import type { AnsweredView, AskedQuestion, AtDate, View } from '../shell/view.js';
import { dateIn, day, daysLater, dayText, type PageReader } from '../shell/words.js';
import { forecastPictures } from '../sowing/forecast-picture.js';
import { neighbourWords } from '../sowing/neighbour-words.js';
import { dateTable, dateWords } from './when-date.js';
import { whenForm, whenSummary } from './when-form.js';
import { type About, type Beside, laterOf, laterShown, shadeSaid, waysAtDate } from './when-later.js';
import { dateRequest, type Spot, spotOf, windowsRequest } from './when-request.js';
import { joinedSpells } from './when-season.js';
import { whenTable } from './when-table.js';
import { seasonTables, whenWords } from './when-words.js';

/** The view of when to sow. */
export const whenView: View = {
  name: 'when',
  title: 'page.when.title',
  fileName: 'season',
  form: whenForm,
  summary: whenSummary,
  answer,
  runAction: actionOf(new Map([['keep-climate', keepClimate]])),
};

async function answer(asked: AskedQuestion): Promise<AnsweredView | null> {
  const { question, shelf, send, reader } = asked;
  const spot = spotOf(question, shelf);
  if (!spot)
    return { shown: shelf.beds.length === 0 ? nothingKept(question, reader) : problemNote(noPlace(reader), reader) };
  const got = await get<WindowAnswer>(send, windowsRequest(question, spot, question.crop));
  if (isFailure(got)) {
    const { code } = got.problem;
    const isShort = code === 'no-past-years' || code === 'no-readings';
    return { shown: isShort ? fewYears(asked, spot) : problemNote(got.problem, reader) };
  }
  const season = got.value;
  const about: About = {
    ...asked,
    spot,
    season,
    today: dateIn(season.place?.timeZone ?? spot.place.timeZone, shelf.nowMs),
  };
  const best = season.best?.date ?? null;
  const date = question.sowing || best || season.dates[0]!.date;
  const [atDate, atBest, climate] = await Promise.all([
    forecastOn(about, date),
    best !== null && best !== date ? forecastOn(about, best) : null,
    season.climate?.basis === 'normals' ? climateOf(about) : null,
  ]);
  const forBest = best === date ? atDate : atBest;
  const drawn = { ...season, closed: joinedSpells(season.closed) };
  const setting = {
    crop: question.crop,
    bedName: spot.bed?.name ?? spot.place.name,
    today: about.today,
  };
  const strip = (options: PictureOptions): string => seasonStrip(drawn, setting, options);
  const spoken = {
    cropName: cropInSentence(shelf, question.crop, reader),
    where: whereSaid(spot, reader),
    today: about.today,
    reader,
  };
  const shown = html`
    ${whenWords(season, forBest && !isFailure(forBest) ? forBest.value : null, spoken)}
    ${pictures('season', asked, strip)}
    ${seasonTables(season, reader)}
    ${dateMover(about, date)}
    <div id="at-date">${dateWords(season, date, reader, about.today)}</div>
    <div id="of-date">${dateAnswer(atDate, about, date)}</div>
    ${climate && !isFailure(climate) && climateAgain(asked, spot.place.id, climate.value)}`;
  let beside: Beside | null = null;
  const findBeside = async (): Promise<Beside> => (beside ??= await laterOf(about));
  return {
    shown,
    later: async () => laterShown(await findBeside(), about, date, atDate),
    atDate: (other) => dateMoved(about, { known: beside, find: findBeside }, other),
    picture: () => strip({ ...TO_KEEP, ...pictureFor(reader) }),
    table: () => whenTable(season),
    link: question,
  };
}

const noPlace = ({ say }: PageReader): ProblemBody => unusable(say('page.when.no-such-place')).problem;

const nothingKept = (question: PageQuestion, { say, tell }: PageReader): Html =>
  html`<p class="neighbour">${say('page.when.no-bed')}</p>
  <p>${tell('page.when.keep-bed', { a: (text) => html`<a href="${linkTo({ ...question, view: 'growing' })}">${text}</a>` })}</p>`;

/** Shown if too few past years are known: how to mend it, and what can be asked meanwhile. */
const fewYears = (asked: AskedQuestion, { place }: Spot): Html => {
  const link = (changes: Partial<PageQuestion>): string => linkTo({ ...asked.question, view: 'sowing', ...changes });
  const { say, tell } = asked.reader;
  const to = (changes: Partial<PageQuestion>) => ({ a: (text: Html) => html`<a href="${link(changes)}">${text}</a>` });
  return html`<div class="problem" role="alert"><h2>${say('page.when.few-years')}</h2>
    <p>${say('page.when.few-years.what', { place: place.name })}</p>
    <p>${tell('page.when.few-years.do', to({ source: 'file' }))}</p>
    <p>${tell('page.when.few-years.meanwhile', to({}))}</p></div>
    <section><h2>${say('page.when.twelve-means')}</h2>${climateForm(asked, place.id)}</section>`;
};

const whereSaid = ({ bed, place }: Spot, { say }: PageReader): string =>
  bed ? say('page.when.in-bed', { bed: bed.name }) : say('page.when.in-ground', { place: place.name });

/** The monthly means that the usual year was made of. */
const climateOf = ({ send, spot }: About): Promise<Result<Climate>> =>
  get<Climate>(send, { method: 'GET', path: `/v1/places/${spot.place.id}/normals` });

const forecastOn = ({ send, question, spot }: About, date: string): Promise<Result<ForecastAnswer>> =>
  get<ForecastAnswer>(send, dateRequest(question, spot, date));

/** Controls that move the date: by script at once, by the form without it. */
function dateMover({ season, reader }: About, date: string): Html {
  const { say } = reader;
  const [first, last] = [season.dates[0]!.date, season.dates.at(-1)!.date];
  // The browser would move a slider that is beyond its end, and take the date along.
  const shown = date < first ? first : date > last ? last : date;
  const step = (to: string, by: number, text: string): Html =>
    html`<button type="submit" form="ask" name="sowing" value="${to}" data-step="${by}">${text}</button>`;
  return html`<h2>${say('page.when.move')}</h2>
    <div class="move">
      ${step(daysLater(date, -1), -1, say('page.when.earlier'))}
      <label class="needs-script"><span class="unseen">${say('page.when.date-of-sowing')}</span><input type="range" id="date-moved" min="${dayOf(first)}" max="${dayOf(last)}" value="${dayOf(shown)}" aria-valuetext="${dayText(shown, reader)}"></label>
      ${step(daysLater(date, 1), 1, say('page.when.later'))}
    </div>`;
}

/** The forecast for that date. */
function dateAnswer(got: Result<ForecastAnswer>, about: About, date: string): Html {
  if (isFailure(got)) return problemNote(got.problem, about.reader);
  const { question, reader, today, spot } = about;
  return html`${neighbourWords(got.value, cropInSentence(about.shelf, question.crop, reader), reader, today)}
    ${forecastPictures(got.value, about)}
    ${spot.bed && html`<p><a href="${linkTo({ ...question, view: 'sowing', source: 'bed', sowing: date })}">${reader.tell('page.when.all-about', { date: day(date, reader, today) })}</a></p>`}`;
}

interface FoundBeside {
  /** null: not requested yet, or all of it came with the page. */
  readonly known: Beside | null;
  readonly find: () => Promise<Beside>;
}

/** The answer at another date: past years' part at once, the forecast on request. */
function dateMoved(about: About, { known, find }: FoundBeside, date: string): AtDate {
  const { season, reader, today } = about;
  return {
    name: dayText(date, reader),
    atOnce: { 'at-date': dateWords(season, date, reader, today), ...(known && besideAt(known, about, date)) },
    whole: async () => {
      const [got, found] = await Promise.all([forecastOn(about, date), find()]);
      return {
        'of-date': dateAnswer(got, about, date),
        'shade-in-heat': html`${shadeSaid(got, about)}`,
        ...besideAt(found, about, date),
      };
    },
  };
}

/** The altered bed and other crops at another date; missing parts stay as they are. */
const besideAt = ({ ways, crops }: Beside, about: About, date: string): Readonly<Record<string, Html>> => ({
  ...(ways.length > 0 && { 'ways-at-date': waysAtDate(ways, date, about) }),
  ...(crops.length > 0 && {
    'crops-at-date': dateTable(about.reader.say('page.when.crop'), crops, date, about.reader, about.today),
  }),
});
