import type { PictureOptions } from '../../plot/picture.js';
import { sayer } from '../../words/say.js';
import { type Html, html, safe } from './html.js';
import type { Asked } from './view.js';
import type { Reader } from './words.js';

/** A picture to be kept: wide enough for whatever it is laid into, light, for itself. */
export const TO_KEEP: Omit<PictureOptions, 'say'> = { width: 1000, theme: 'light' };

/** What of a picture is the reader's. */
export const pictureFor = ({ degrees, locale }: Reader): Pick<PictureOptions, 'say' | 'unit' | 'locale'> => ({
  say: sayer({ language: 'en', locale, textUnit: degrees }),
  unit: degrees,
  locale,
});

/** How wide a picture is that fills a sheet of paper, or a screen that is not known [px]. */
export const SHEET_PX = 860;

/** A picture at each width; the style sheet shows the one that fits, and hides the others from everybody. */
export const pictures = (
  id: string,
  { reader, widths }: Pick<Asked, 'reader' | 'widths'>,
  draw: (options: PictureOptions) => string,
): Html =>
  html`<div class="pictures">${widths.map(
    (width, i) =>
      html`<div class="${widths.length === 1 ? 'only' : i === 0 ? 'narrow' : 'wide'}">${safe(
        draw({ ...pictureFor(reader), width, id: `${id}-${width}`, hasStyles: false }),
      )}</div>`,
  )}</div>`;
