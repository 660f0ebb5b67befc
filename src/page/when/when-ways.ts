import type { ForecastAnswer } from '../../contract/forecast.js';
import type { WindowAnswer } from '../../contract/windows.js';
import { inUnit } from '../../plot/degrees.js';
import { type Html, html } from '../shell/html.js';
import { day, listed, type PageReader, span, spanText } from '../shell/words.js';
import type { Named } from './when-date.js';
import { type AskedBed, OPEN_GROUND } from './when-request.js';
import { gapsOf, lengthOf, type SeasonGap } from './when-season.js';
import { becauseOf } from './when-words.js';

/** The same bed, altered. */
export interface Way {
  readonly name: string;
  readonly make: AskedBed;
}

const HALF_SHADE = 50;
/** A cool room in which most crops sprout [°C]: common practice. */
const ROOM_C = 18;

/** The bed as it is, and the ways to alter it. */
export function waysOf(bed: AskedBed | null, reader: PageReader): Way[] {
  const { say } = reader;
  const asIs = bed ?? OPEN_GROUND;
  const inOpenGround = say('page.ways.open-ground');
  const first = { name: bed ? say('page.ways.as-is') : inOpenGround, make: asIs };
  if (asIs.kind === 'indoors') return [first, { name: inOpenGround, make: OPEN_GROUND }];
  return [
    first,
    asIs.shadePercent >= HALF_SHADE
      ? { name: say('page.ways.no-shade'), make: { ...asIs, shadePercent: 0 } }
      : { name: say('page.ways.half-shade'), make: { ...asIs, shadePercent: HALF_SHADE } },
    asIs.cover === 'fleece'
      ? { name: say('page.ways.no-fleece'), make: { ...asIs, cover: 'bare' } }
      : { name: say('page.ways.fleece'), make: { ...asIs, cover: 'fleece' } },
    {
      name: say('page.ways.indoors', {
        temp: `${Math.round(inUnit(ROOM_C, reader.degrees))} °${reader.degrees}`,
      }),
      make: { ...OPEN_GROUND, kind: 'indoors', roomC: ROOM_C },
    },
  ];
}

/** Sentences on how an altered bed changes when to sow; the first entry is the bed as it is. */
export const waysSaid = ([asIs, ...others]: readonly Named[], reader: PageReader, today: string): Html[] =>
  asIs === undefined
    ? []
    : others.map(
        ({ name, season }) =>
          html`<li><b>${name}</b> ${closedChanged(asIs.season, season, reader)} ${bestChanged(asIs.season, season, reader, today)}</li>`,
      );

function bestChanged(asIs: WindowAnswer, other: WindowAnswer, reader: PageReader, today: string): Html | null {
  if (!other.best || other.windows.length === 0) return null;
  return reader.tell('page.ways.best', {
    date: day(other.best.date, reader, today),
    isSame: asIs.best?.date === other.best.date ? 'yes' : 'no',
  });
}

/** A smaller change is within the uncertainty of the soil [d]. */
const MIN_CHANGE_DAYS = 3;

/** How the closed times change. */
function closedChanged(asIs: WindowAnswer, other: WindowAnswer, reader: PageReader): Html {
  const { say, tell } = reader;
  const [before, after] = [gapsOf(asIs), gapsOf(other)];
  if (other.windows.length === 0) {
    return tell('page.ways.no-week', {
      why: becauseOf(
        after.flatMap(({ spells }) => spells),
        reader,
      ),
    });
  }
  if (after.length === 0) return html`${say('page.ways.any-time')}`;
  const told = after.map((gap) => {
    const old = before.filter((one) => overlap(one, gap));
    // A spell that was split is reported once, with its last piece.
    const pieces = after.filter((one) => old.some((each) => overlap(one, each)));
    const more = daysOf(pieces) - daysOf(old);
    const isLast = pieces.at(-1) === gap || old.length === 0;
    return tell('page.ways.gap', {
      dates: span(gap.from, gap.to, reader),
      change: isLast ? changeOf(old.length > 0, more) : 'none',
      days: Math.abs(more),
      together: pieces.length > 1 ? 'yes' : 'no',
    });
  });
  const opened = before.filter((one) => !after.some((gap) => overlap(one, gap)));
  return tell('page.ways.closed', {
    dates: listed(told, reader, 'conjunction'),
    opened: opened.map(({ from, to }) => tell('page.ways.opened', { dates: span(from, to, reader) })),
  });
}

function changeOf(wasClosed: boolean, moreDays: number): 'open' | 'same' | 'shorter' | 'longer' {
  if (!wasClosed) return 'open';
  if (Math.abs(moreDays) < MIN_CHANGE_DAYS) return 'same';
  return moreDays < 0 ? 'shorter' : 'longer';
}

const overlap = (one: SeasonGap, other: SeasonGap): boolean => one.from <= other.to && other.from <= one.to;

const daysOf = (gaps: readonly SeasonGap[]): number => gaps.reduce((sum, gap) => sum + lengthOf(gap), 0);

/** What half shade gains in the heat forecast for a sowing. */
export function shadeInHeat(forecast: ForecastAnswer, reader: PageReader): Html | null {
  for (const { remedies, from, to } of forecast.hotSpells ?? []) {
    const shade = remedies.find(({ action }) => action === 'shade');
    if (!shade?.coolerC) continue;
    const { coolerC, hotHoursAvoided } = shade;
    return reader.tell('page.ways.shade', {
      cooler: coolerSaid(coolerC, reader),
      dates: span(from, to, reader),
      hasHours: hotHoursAvoided && hotHoursAvoided.to > 0 ? 'yes' : 'no',
      hours: hotHoursAvoided && spanText(hotHoursAvoided, reader),
    });
  }
  return null;
}

/** A kelvin is 1.8 °F: the definition of the scale. */
const coolerSaid = (
  { from, to }: { readonly from: number; readonly to: number },
  { say, degrees }: PageReader,
): string => {
  const inDegrees = (kelvin: number): number => Math.round(degrees === 'F' ? Math.round(kelvin) * 1.8 : kelvin);
  return say('page.ways.cooler', { from: inDegrees(from), to: inDegrees(to), unit: degrees });
};

/** When each of several crops is open. */
export const cropsSaid = (all: readonly Named[], reader: PageReader, today: string): Html[] =>
  all.map(({ name, season: { best, windows } }) => {
    const parts = { name, b: (text: Html) => html`<b>${text}</b>` };
    if (windows.length === 0) return html`<li>${reader.tell('page.ways.crop-closed', parts)}</li>`;
    const dates = listed(
      windows.map(({ from, to }) => span(from, to, reader)),
      reader,
      'conjunction',
    );
    return html`<li>${reader.tell('page.ways.crop-open', {
      ...parts,
      dates,
      hasBest: best ? 'yes' : 'no',
      best: best && day(best.date, reader, today),
    })}</li>`;
  });
