import type { PageCode } from '../../words/page-en.js';
import { type Html, type HtmlPart, html } from './html.js';
import type { Told } from './say.js';
import type { PageReader } from './words.js';

/** The code of an explained number: three messages say what it is, where it comes from, and how sure it is. */
export type ExplainedNumberCode = PageCode extends infer Code ? (Code extends `${infer Of}.sure` ? Of : never) : never;

/**
 * A number in a sentence that explains itself when pressed.
 *
 * @param code Prefix of the codes of its three messages, which end in `.what`, `.from` and `.sure`.
 * @param parts The parameters of all three.
 */
export function explainedNumber(
  id: string,
  text: HtmlPart,
  { tell, say }: PageReader,
  code: ExplainedNumberCode,
  parts: Readonly<Record<string, Told>> = {},
): Html {
  const told = (part: 'what' | 'from' | 'sure'): Html => tell(`${code}.${part}` as PageCode, parts);
  return html`<button type="button" class="figure" popovertarget="why-${id}">${text}</button><span popover id="why-${id}" class="why" role="note"><span class="row"><b>${say('page.shell.what')}</b> ${told('what')}</span> <span class="row"><b>${say('page.shell.from')}</b> ${told('from')}</span> <span class="row"><b>${say('page.shell.sure')}</b> ${told('sure')}</span> <button type="button" class="quiet" popovertarget="why-${id}" popovertargetaction="hide">${say('page.shell.close')}</button></span>`;
}
