import type { ForecastAnswer } from '../../contract/forecast.js';
import type { WindowAnswer } from '../../contract/windows.js';
import { seasonLanes } from '../../plot/season-lanes.js';
import { type Got, get, isRefused } from '../shell/api.js';
import { type Html, html } from '../shell/html.js';
import { notes } from '../shell/notes.js';
import { pictures } from '../shell/pictures.js';
import { refusalSaid } from '../shell/refusal-words.js';
import { cropName } from '../shell/shelf.js';
import type { Asked } from '../shell/view.js';
import { listed } from '../shell/words.js';
import { dateChanged, dateTable, type Named } from './when-date.js';
import { besideOf, makeOf, type Spot, windowsRequest } from './when-request.js';
import { joinedSpells } from './when-season.js';
import { cropsSaid, shadeInHeat, waysOf, waysSaid } from './when-ways.js';

/** All that the parts of the answer are made from. */
export interface About extends Asked {
  readonly spot: Spot;
  readonly today: string;
  readonly season: WindowAnswer;
}

export interface Beside {
  readonly ways: readonly Named[];
  readonly crops: readonly Named[];
  /** Why some of them could not be told. */
  readonly refused: readonly Html[];
}

/** The same question of the bed altered, and of other crops. */
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
    Promise.all(besideOf(question, shelf).map((crop) => ask(cropName(shelf, crop), question, spot, crop))),
  ]);
  const told = (all: typeof ways): Named[] =>
    all.flatMap(({ name, got }) => (isRefused(got) ? [] : [{ name, season: got.value }]));
  const own = { name: cropName(shelf, question.crop), season };
  return {
    ways: told(ways),
    crops: crops.length > 0 ? [own, ...told(crops)] : [],
    refused: [...ways, ...crops].flatMap(({ name, got }) =>
      isRefused(got) ? refusalSaid(got.problem, reader).map((one) => html`${name}: ${one}`) : [],
    ),
  };
}

export function laterShown(
  { ways, crops, refused }: Beside,
  about: About,
  date: string,
  atDate: Got<ForecastAnswer>,
): Html {
  const { season, reader, today } = about;
  const isSame = JSON.stringify(ways[0]?.season.dates) === JSON.stringify(season.dates);
  return html`
    <section><h2>${waysTitle(ways)}</h2>
      <ul>${waysSaid(ways, reader, today)}</ul>
      ${lanes('ways', 'When to sow, by what is made of the bed', ways, about)}
      <div id="ways-at-date">${waysAtDate(ways, date, about)}</div>
      <p id="shade-in-heat">${shadeSaid(atDate, about)}</p>
      ${ways.length > 0 && html`<p class="aside">${!isSame && 'The bed’s own thermometer is left out here, so that all of these are worked out alike: how it would read in shade or under fleece nobody knows. '}Indoors only the seed is judged: what comes up there needs light, and has to be planted out in its time.</p>`}
    </section>
    ${
      crops.length > 0 &&
      html`<section><h2>Crops side by side</h2>
      ${lanes('crops', 'When to sow, crop by crop', crops, about)}
      <ul>${cropsSaid(crops, reader, today)}</ul>
      <div id="crops-at-date">${dateTable('Crop', crops, date, reader, today)}</div></section>`
    }
    ${refused.length > 0 && html`<ul class="aside">${refused.map((one) => html`<li>${one}</li>`)}</ul>`}
    ${notes('Take heed', season.warnings, reader, true)}
    ${notes(`What is known of ${cropName(about.shelf, season.crop).toLowerCase()}`, season.cautions, reader)}
    ${notes('What this rests on', season.assumptions, reader)}`;
}

/** As `In half shade, under fleece and indoors at 18 °C`. */
const waysTitle = ([, ...ways]: readonly Named[]): string =>
  listed(ways.map(({ name }, i) => (i === 0 ? name : `${name.slice(0, 1).toLowerCase()}${name.slice(1)}`)));

/** The bed as it is and as it could be, at one date. */
export const waysAtDate = (ways: readonly Named[], date: string, { reader, today }: About): Html =>
  html`${dateTable('The bed', ways, date, reader, today)}${dateChanged(ways, date)}`;

/** Of a bed that lies in shade already no more is told. */
export const shadeSaid = (got: Got<ForecastAnswer>, { spot, reader }: About): Html | null =>
  isRefused(got) || (spot.bed?.shadePercent ?? 0) > 0 ? null : shadeInHeat(got.value, reader);

function lanes(id: string, title: string, all: readonly Named[], about: About): Html {
  const { dates } = about.season;
  const setting = { title, from: dates[0]!.date, to: dates.at(-1)!.date };
  const drawn = all.map(({ name, season }) => ({ ...season, name, closed: joinedSpells(season.closed) }));
  return pictures(id, about, (options) => seasonLanes(drawn, setting, options));
}
