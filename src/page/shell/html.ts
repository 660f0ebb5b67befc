import { escapeText } from '../../plot/svg.js';

/** Markup in which every text of a person or a file is escaped. */
export interface Html {
  readonly markup: string;
}

/** A value in a template. `null`, `undefined` and `false` render nothing. */
export type HtmlPart = Html | string | number | null | undefined | false | readonly HtmlPart[];

/** Markup from a template; texts in it are escaped. */
export function html(strings: TemplateStringsArray, ...parts: readonly HtmlPart[]): Html {
  return { markup: strings.reduce((all, text, i) => all + markupOf(parts[i - 1]) + text) };
}

/** Markup that is safe already, such as a picture's. */
export const safe = (markup: string): Html => ({ markup });

function markupOf(part: HtmlPart): string {
  if (part === null || part === undefined || part === false) return '';
  if (typeof part === 'string') return escapeText(part);
  if (typeof part === 'number') return String(part);
  return 'markup' in part ? part.markup : part.map(markupOf).join('');
}
