import type { ForecastAnswer } from '../http/schemas/forecast.js';
import type { WindowAnswer } from '../http/schemas/windows.js';
import { type Html, html } from './html.js';
import { saidText } from './said-text.js';
import type { Named } from './when-date.js';
import { type BedMake, OPEN_GROUND } from './when-request.js';
import { type Gap, gapsOf, lengthOf } from './when-season.js';
import { day, degreesOf, type Reader, span, spanText } from './words.js';

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
    { name: `Indoors at ${degreesOf(ROOM_C, reader)}`, make: { ...OPEN_GROUND, kind: 'indoors', roomC: ROOM_C } },
  ];
}

/** What an altered bed changes about when to sow, in sentences; the first of all is the bed as it is. */
export const waysSaid = ([asIs, ...others]: readonly Named[], reader: Reader, today: string): Html[] =>
  asIs === undefined
    ? []
    : others.map(
        ({ name, season }) =>
          html`<li><b>${name}</b> ${gapsChanged(asIs.season, season, reader)} ${bestChanged(asIs.season, season, reader, today)}</li>`,
      );

function bestChanged(asIs: WindowAnswer, other: WindowAnswer, reader: Reader, today: string): Html {
  if (!other.best) return html`No date is good.`;
  const date = day(other.best.date, reader, today);
  return asIs.best?.date === other.best.date ? html`The best date stays ${date}.` : html`The best date is ${date}.`;
}

/** Fewer days than this more or less are within the doubt of the soil, and no change [d]. */
const LEAST_CHANGE_DAYS = 3;

/** What becomes of the times that are closed. */
function gapsChanged(asIs: WindowAnswer, other: WindowAnswer, reader: Reader): Html {
  const [before, after] = [gapsOf(asIs), gapsOf(other)];
  if (after.length === 0)
    return before.length === 0 ? html`it stays open all through.` : html`it can be sown at any time.`;
  const spans = (gaps: readonly Gap[]) =>
    gaps.map(({ from, to }, i) => html`${i > 0 && ' and '}${span(from, to, reader)}`);
  const changes = before.map((gap) => {
    const left = after.filter(({ from, to }) => from <= gap.to && to >= gap.from);
    const more = left.reduce((sum, one) => sum + lengthOf(one), 0) - lengthOf(gap);
    const own = html`the closed time of ${spans([gap])}`;
    if (left.length === 0) return html`${own} falls away`;
    if (Math.abs(more) < LEAST_CHANGE_DAYS) return html`${own} stays much the same`;
    return html`${own} ${more < 0 ? 'shrinks' : 'grows'} by ${Math.abs(more)} days, to ${spans(left)}`;
  });
  const opened = after.filter((one) => !before.some(({ from, to }) => from <= one.to && to >= one.from));
  const all = [
    ...changes,
    ...(opened.length > 0 ? [html`${spans(opened)} ${opened.length === 1 ? 'closes' : 'close'} as well`] : []),
  ];
  return html`${all.map((one, i) => html`${i > 0 && '; '}${one}`)}.`;
}

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
