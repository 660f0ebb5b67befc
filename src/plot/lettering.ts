import { type Attributes, element, escapeText } from './svg.js';
import { type Colour, paint } from './theme.js';

/** Type sizes [px]. */
export const TYPE = { title: 19, plain: 14, small: 12.5 } as const;

const NARROW = new Set("ijlft.,:;'|!()[]- ");
const WIDE = new Set('mwMWOQ%@—');

/** Upper estimate of a text's width, as the reader's font is unknown [px]. */
export function widthOf(text: string, size: number = TYPE.plain, isBold = false): number {
  let ems = 0;
  for (const character of text) {
    const isTall = character.codePointAt(0)! > 0x2e7f;
    if (isTall) ems += 1.05;
    else if (NARROW.has(character)) ems += 0.37;
    else if (WIDE.has(character)) ems += 0.95;
    else ems += character !== character.toLowerCase() ? 0.72 : 0.62;
  }
  return ems * size * (isBold ? 1.12 : 1);
}

/** Wraps text at a width; cuts a single word that is wider, with an ellipsis. */
export function wrapped(text: string, widthPx: number, size: number = TYPE.plain, isBold = false): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter(Boolean)) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && widthOf(longer, size, isBold) > widthPx) {
      lines.push(line);
      line = cut(word, widthPx, size, isBold);
    } else line = line === '' ? cut(word, widthPx, size, isBold) : longer;
  }
  return line === '' ? lines : [...lines, line];
}

/** Cuts text at a width. */
export function cut(text: string, widthPx: number, size: number = TYPE.plain, isBold = false): string {
  if (widthOf(text, size, isBold) <= widthPx) return text;
  let kept = '';
  for (const character of text) {
    if (widthOf(`${kept}${character}…`, size, isBold) > widthPx) break;
    kept += character;
  }
  return `${kept}…`;
}

interface Lettering {
  readonly size?: number;
  readonly colour?: Colour;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly bold?: boolean;
}

/** A line of text with a rim of paper colour that keeps it legible over anything. */
export function lettering(
  x: number,
  y: number,
  text: string,
  { size = TYPE.plain, colour = 'ink', anchor = 'start', bold }: Lettering = {},
): string {
  const { class: classes, fill, stroke }: Attributes = paint({ fill: colour, stroke: 'paper' });
  return element(
    'text',
    {
      x,
      y,
      class: classes,
      fill,
      stroke,
      'stroke-width': 3,
      'stroke-linejoin': 'round',
      'paint-order': 'stroke',
      'font-size': size,
      'text-anchor': anchor === 'start' ? undefined : anchor,
      'font-weight': bold ? 600 : undefined,
    },
    escapeText(text),
  );
}

/** Lines of text below one another, and the height where they end. */
export function paragraph(
  { x, y, width }: { readonly x: number; readonly y: number; readonly width: number },
  text: string,
  how: Lettering = {},
): { readonly drawn: string; readonly toY: number } {
  const size = how.size ?? TYPE.plain;
  const step = size * 1.35;
  const lines = wrapped(text, width, size, how.bold);
  return {
    drawn: lines.map((line, i) => lettering(x, y + size + i * step, line, how)).join(''),
    toY: y + lines.length * step + size * 0.25,
  };
}

/** A label and the position that it wants. */
export interface Label {
  readonly x: number;
  readonly text: string;
}

export interface PlacedLabel extends Label {
  /** The middle of the label. */
  readonly middle: number;
  /** 0: nearest to its object. */
  readonly row: number;
}

/** Places labels in rows without overlap, all between two edges. */
export function inRows(
  labels: readonly Label[],
  { from, to }: { readonly from: number; readonly to: number },
  size: number = TYPE.small,
): PlacedLabel[] {
  const gap = 8;
  const rows: (readonly [left: number, right: number])[][] = [];
  return labels.map((label) => {
    const text = cut(label.text, to - from, size);
    const half = widthOf(text, size) / 2;
    const middle = Math.max(from + half, Math.min(to - half, label.x));
    const isFree = (row: number): boolean =>
      (rows[row] ?? []).every(([left, right]) => middle + half + gap <= left || middle - half - gap >= right);
    let row = 0;
    while (!isFree(row)) row++;
    rows[row] ??= [];
    rows[row]!.push([middle - half, middle + half]);
    return { x: label.x, text, middle, row };
  });
}
