import type { ForecastAnswer } from '../../contract/forecast.js';
import type { WindowAnswer } from '../../contract/windows.js';
import { inUnit } from '../../plot/degrees.js';
import { type Html, html } from '../shell/html.js';
import { saidText } from '../shell/said-text.js';
import { day, type Reader, span, spanText } from '../shell/words.js';
import type { Named } from './when-date.js';
import { type BedMake, OPEN_GROUND } from './when-request.js';
import { type Gap, gapsOf, lengthOf } from './when-season.js';
import { becauseOf } from './when-words.js';

/** The same bed, altered. */
export interface Way {
  readonly name: string;
  readonly make: BedMake;
}

const HALF_SHADE = 50;
/** A cool room in which most crops sprout [°C]: common practice. */
const ROOM_C = 18;

/** The bed as it is, and what a grower could make of it. */
export function waysOf(bed: BedMake | null, reader: Reader): Way[] {
  const asIs = bed ?? OPEN_GROUND;
  const first = { name: bed ? 'As it is' : 'In open ground', make: asIs };
  if (asIs.kind === 'indoors') return [first, { name: 'In open ground', make: OPEN_GROUND }];
  return [
    first,
    asIs.shadePercent >= HALF_SHADE
      ? { name: 'Without its shade', make: { ...asIs, shadePercent: 0 } }
      : { name: 'In half shade', make: { ...asIs, shadePercent: HALF_SHADE } },
    asIs.cover === 'fleece'
      ? { name: 'Without the fleece', make: { ...asIs, cover: 'bare' } }
      : { name: 'Under fleece', make: { ...asIs, cover: 'fleece' } },
    {
      name: `Indoors at ${Math.round(inUnit(ROOM_C, reader.degrees))} °${reader.degrees}`,
      make: { ...OPEN_GROUND, kind: 'indoors', roomC: ROOM_C },
    },
  ];
}

/** What an altered bed changes about when to sow, in sentences; the first of all is the bed as it is. */
export const waysSaid = ([asIs, ...others]: readonly Named[], reader: Reader, today: string): Html[] =>
  asIs === undefined
    ? []
    : others.map(
        ({ name, season }) =>
          html`<li><b>${name}</b> ${closedChanged(asIs.season, season, reader)} ${bestChanged(asIs.season, season, reader, today)}</li>`,
      );

function bestChanged(asIs: WindowAnswer, other: WindowAnswer, reader: Reader, today: string): Html | null {
  if (!other.best || other.windows.length === 0) return null;
  const date = day(other.best.date, reader, today);
  return asIs.best?.date === other.best.date ? html`The best date stays ${date}.` : html`The best date is ${date}.`;
}

/** Fewer days than this more or less are within the doubt of the soil, and no change [d]. */
const LEAST_CHANGE_DAYS = 3;

/** What becomes of the times that are closed. */
function closedChanged(asIs: WindowAnswer, other: WindowAnswer, reader: Reader): Html {
  const [before, after] = [gapsOf(asIs), gapsOf(other)];
  if (other.windows.length === 0)
    return html`no week is sure enough: ${becauseOf(after.flatMap(({ spells }) => spells))}.`;
  if (after.length === 0) return html`it can be sown at any time.`;
  const told = after.map((gap, i) => {
    const old = before.filter((one) => overlap(one, gap));
    // One that was broken up is told once, with its last piece.
    const pieces = after.filter((one) => old.some((each) => overlap(one, each)));
    const more = daysOf(pieces) - daysOf(old);
    const isLast = pieces.at(-1) === gap || old.length === 0;
    const change =
      old.length === 0
        ? ' (open as it is)'
        : Math.abs(more) < LEAST_CHANGE_DAYS
          ? ' (much the same)'
          : ` (${Math.abs(more)} days ${more < 0 ? 'shorter' : 'longer'}${pieces.length > 1 ? ' together' : ''})`;
    return html`${i > 0 && (i === after.length - 1 ? ' and ' : ', ')}${span(gap.from, gap.to, reader)}${isLast && change}`;
  });
  const opened = before.filter((one) => !after.some((gap) => overlap(one, gap)));
  return html`closed ${told}${opened.map(({ from, to }) => html`; open ${span(from, to, reader)}`)}.`;
}

const overlap = (one: Gap, other: Gap): boolean => one.from <= other.to && other.from <= one.to;

const daysOf = (gaps: readonly Gap[]): number => gaps.reduce((sum, gap) => sum + lengthOf(gap), 0);

/** What half shade is worth in the heat that a sowing is forecast to meet. */
export function shadeInHeat(forecast: ForecastAnswer, reader: Reader): Html | null {
  for (const { remedies, from, to } of forecast.hotSpells ?? []) {
    const shade = remedies.find(({ action }) => action === 'shade');
    if (!shade?.coolerC) continue;
    const { coolerC, hotHoursAvoided } = shade;
    const hours =
      hotHoursAvoided && hotHoursAvoided.to > 0 ? `, and is spared ${spanText(hotHoursAvoided)} hot hours` : '';
    const cooler = saidText(`${Math.round(coolerC.from)} to ${Math.round(coolerC.to)} °C cooler`, reader);
    return html`In half shade the seed lies ${cooler} in the afternoons of ${span(from, to, reader)}${hours}.`;
  }
  return null;
}

/** When each of several crops is open. */
export const cropsSaid = (all: readonly Named[], reader: Reader, today: string): Html[] =>
  all.map(({ name, season: { best, windows } }) =>
    windows.length === 0
      ? html`<li><b>${name}</b> no week is sure enough.</li>`
      : html`<li><b>${name}</b> open ${windows.map(({ from, to }, i) => html`${i > 0 && (i === windows.length - 1 ? ' and ' : ', ')}${span(from, to, reader)}`)}${best && html`; best on ${day(best.date, reader, today)}`}.</li>`,
  );
