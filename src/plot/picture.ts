import { TYPE } from './lettering.js';
import type { SayPicture } from './picture-facts.js';
import { element, escapeText } from './svg.js';
import { type Hatch, hatchPattern, paint, styles, type Theme } from './theme.js';

/** How to render a picture. */
export interface PictureOptions {
  /** Words facts in the reader's language. */
  readonly say: SayPicture;
  /** Width [px]: MIN_WIDTH to MAX_WIDTH. */
  readonly width?: number;
  readonly unit?: 'C' | 'F';
  /** Locale of dates, as a BCP 47 tag. */
  readonly locale?: string;
  readonly theme?: Theme;
  /** Prefix of the ids inside; pictures on one page need different ones. */
  readonly id?: string;
  /** false: the page supplies the style sheet of `styles`. */
  readonly hasStyles?: boolean;
}

export const MIN_WIDTH = 280;
export const MAX_WIDTH = 2400;
const DEFAULT_WIDTH = 800;
/** From this width on there is room beside things [px]. */
const WIDE = 640;

/** A picture's layout and options. */
export interface Sheet extends Required<PictureOptions> {
  readonly isWide: boolean;
  /** Left and right edge of text. */
  readonly left: number;
  readonly right: number;
  /** Left edge of parts with an axis. */
  readonly axisX: number;
}

export function sheetOf({
  say,
  width = DEFAULT_WIDTH,
  unit = 'C',
  locale = 'en-GB',
  theme = 'auto',
  id = 'plot',
  hasStyles = true,
}: PictureOptions): Sheet {
  const fitting = Math.round(Math.max(MIN_WIDTH, Math.min(MAX_WIDTH, Number.isFinite(width) ? width : DEFAULT_WIDTH)));
  const isWide = fitting >= WIDE;
  const margin = isWide ? 24 : 14;
  return {
    say,
    width: fitting,
    unit,
    locale,
    theme,
    id,
    hasStyles,
    isWide,
    left: margin,
    right: fitting - margin,
    axisX: margin + 40,
  };
}

/** Assembles the whole picture from its drawing and its description. */
export function picture(
  sheet: Sheet,
  heightPx: number,
  { title, description, hatches }: { title: string; description: string; hatches: readonly Hatch[] },
  drawn: string,
): string {
  const { id, width, theme, hasStyles } = sheet;
  const height = Math.ceil(heightPx);
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      class: 'plot',
      role: 'img',
      'aria-labelledby': `${id}-title`,
      'aria-describedby': `${id}-description`,
      viewBox: `0 0 ${width} ${height}`,
      width,
      height,
      'font-family': 'system-ui, sans-serif',
      'font-size': TYPE.plain,
    },
    element('title', { id: `${id}-title` }, escapeText(title)),
    element('desc', { id: `${id}-description` }, escapeText(description)),
    ...(hasStyles ? [element('style', {}, styles(theme))] : []),
    element('defs', {}, ...hatches.map((hatch) => hatchPattern(id, hatch)), ''),
    element('rect', { width, height, ...paint({ fill: 'paper' }) }),
    drawn,
  );
}
