import { type Html, html, type Part } from './html.js';

/** What a number says when it is asked. */
export interface Explained {
  readonly what: Part;
  readonly from: Part;
  readonly sure: Part;
}

/** A number in a sentence that explains itself: pressed, it says what it is, where it comes from, and how sure it is. */
export const figure = (id: string, text: Part, { what, from, sure }: Explained): Html =>
  html`<button type="button" class="figure" popovertarget="why-${id}">${text}</button><span popover id="why-${id}" class="why" role="note"><span class="row"><b>What it is</b> ${what}</span> <span class="row"><b>Where it comes from</b> ${from}</span> <span class="row"><b>How sure</b> ${sure}</span> <button type="button" class="quiet" popovertarget="why-${id}" popovertargetaction="hide">Close</button></span>`;
