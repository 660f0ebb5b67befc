import type { ForecastAnswer } from '../../contract/forecast.js';
import type { WindowAnswer } from '../../contract/windows.js';
import { seasonLanes } from '../../plot/season-lanes.js';
import { get, isFailure, type Result } from '../shell/api.js';
import { type Html, html } from '../shell/html.js';
import { cropInSentence, cropName } from '../shell/inventory.js';
import { notes } from '../shell/notes.js';
import { pictures } from '../shell/pictures.js';
import { refusalSaid } from '../shell/refusal-words.js';
import type { AskedQuestion } from '../shell/view.js';
import { listed, type PageReader } from '../shell/words.js';
import { dateChanged, dateTable, type Named } from './when-date.js';
import { besideOf, makeOf, type Spot, windowsRequest } from './when-request.js';
import { joinedSpells } from './when-season.js';
import { cropsSaid, shadeInHeat, waysOf, waysSaid } from './when-ways.js';

/** Everything that the parts of the answer are rendered from. */
export interface About extends AskedQuestion {
  readonly spot: Spot;
  readonly today: string;
  readonly season: WindowAnswer;
}

export interface Beside {
  readonly ways: readonly Named[];
  readonly crops: readonly Named[];
  /** Reasons why parts are missing. */
  readonly refused: readonly Html[];
}

/** The same question for an altered bed and for other crops. */
export async function laterOf({ question, spot, reader, send, shelf, season }: About): Promise<Beside> {
  const ask = async (name: string, ...asking: Parameters<typeof windowsRequest>) => ({
    name,
    got: await get<WindowAnswer>(send, windowsRequest(...asking)),
  });
  const [ways, crops] = await Promise.all([
    Promise.all(
      waysOf(spot.bed && makeOf(spot.bed), reader).map(({ name, make }) =>
        ask(name, question, spot, question.crop, make),
      ),
    ),
    Promise.all(besideOf(question, shelf).map((crop) => ask(cropName(shelf, crop, reader), question, spot, crop))),
  ]);
  const told = (all: typeof ways): Named[] =>
    all.flatMap(({ name, got }) => (isFailure(got) ? [] : [{ name, season: got.value }]));
  const own = { name: cropName(shelf, question.crop, reader), season };
  return {
    ways: told(ways),
    crops: crops.length > 0 ? [own, ...told(crops)] : [],
    refused: [...ways, ...crops].flatMap(({ name, got }) =>
      isFailure(got)
        ? refusalSaid(got.problem, reader).map((text) => reader.tell('page.ways.refused', { name, text }))
        : [],
    ),
  };
}

export function laterShown(
  { ways, crops, refused }: Beside,
  about: About,
  date: string,
  atDate: Result<ForecastAnswer>,
): Html {
  const { season, reader, today } = about;
  const { say } = reader;
  const isSame = JSON.stringify(ways[0]?.season.dates) === JSON.stringify(season.dates);
  return html`
    <section><h2>${waysTitle(ways, reader)}</h2>
      <ul>${waysSaid(ways, reader, today)}</ul>
      ${lanes('ways', say('page.ways.lanes'), ways, about)}
      <div id="ways-at-date">${waysAtDate(ways, date, about)}</div>
      <p id="shade-in-heat">${shadeSaid(atDate, about)}</p>
      ${ways.length > 0 && html`<p class="aside">${say('page.ways.aside', { isSame: isSame ? 'yes' : 'no' })}</p>`}
    </section>
    ${
      crops.length > 0 &&
      html`<section><h2>${say('page.ways.crops')}</h2>
      ${lanes('crops', say('page.ways.crop-lanes'), crops, about)}
      <ul>${cropsSaid(crops, reader, today)}</ul>
      <div id="crops-at-date">${dateTable(say('page.when.crop'), crops, date, reader, today)}</div></section>`
    }
    ${refused.length > 0 && html`<ul class="aside">${refused.map((one) => html`<li>${one}</li>`)}</ul>`}
    ${notes(say('page.sowing.take-heed'), season.warnings, true)}
    ${notes(say('page.ways.known', { crop: cropInSentence(about.shelf, season.crop, reader) }), season.cautions)}
    ${notes(say('page.sowing.rests-on'), season.assumptions)}`;
}

/** As `In half shade, under fleece and indoors at 18 °C`. */
const waysTitle = ([, ...ways]: readonly Named[], reader: PageReader): Html =>
  listed(
    ways.map(({ name }, i) => (i === 0 ? name : name.charAt(0).toLocaleLowerCase(reader.locale) + name.slice(1))),
    reader,
    'conjunction',
  );

/** The bed as it is and as it could be, at one date. */
export const waysAtDate = (ways: readonly Named[], date: string, { reader, today }: About): Html =>
  html`${dateTable(reader.say('page.when.the-bed'), ways, date, reader, today)}${dateChanged(ways, date, reader)}`;

/** Omitted for a bed that is shaded already. */
export const shadeSaid = (got: Result<ForecastAnswer>, { spot, reader }: About): Html | null =>
  isFailure(got) || (spot.bed?.shadePercent ?? 0) > 0 ? null : shadeInHeat(got.value, reader);

function lanes(id: string, title: string, all: readonly Named[], about: About): Html {
  const { dates } = about.season;
  const setting = { title, from: dates[0]!.date, to: dates.at(-1)!.date };
  const drawn = all.map(({ name, season }) => ({ ...season, name, closed: joinedSpells(season.closed) }));
  return pictures(id, about, (options) => seasonLanes(drawn, setting, options));
}
