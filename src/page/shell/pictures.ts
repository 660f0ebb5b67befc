import type { Fact, ParamKind } from '../../basics/fact.js';
import type { PictureOptions } from '../../plot/picture.js';
import { pictureFacts } from '../../plot/picture-facts.js';
import { valueFor } from '../../words/value.js';
import { type Html, html, safe } from './html.js';
import type { AskedQuestion } from './view.js';
import type { PageReader } from './words.js';

/** Options of a picture for download: wide enough for any document, light, self-contained. */
export const TO_KEEP: Omit<PictureOptions, 'say'> = { width: 1000, theme: 'light' };

/** The reader's part of a picture's options. */
export const pictureFor = (reader: PageReader): Pick<PictureOptions, 'say' | 'unit' | 'locale'> => ({
  say: (fact) => reader.ofPicture(fact.code, valuesOf(fact, reader)),
  unit: reader.degrees,
  locale: reader.locale,
});

/** The parameters of a picture's text, in the reader's words. */
function valuesOf({ code, params }: Fact, { crop, language, locale, degrees }: PageReader) {
  const kinds: Readonly<Record<string, ParamKind>> = pictureFacts[code as keyof typeof pictureFacts];
  return Object.fromEntries(
    Object.entries(kinds).map(([name, kind]) => {
      const value = params[name] ?? null;
      const word = kind === 'crop' && value !== null ? (crop(String(value)) ?? value) : null;
      return [name, word ?? valueFor(kind, value, { language, locale, textUnit: degrees })];
    }),
  );
}

/** Picture width that fills a sheet of paper, or an unknown screen [px]. */
export const SHEET_PX = 860;

/** A picture at each width; the style sheet shows the one that fits, and hides the others from everybody. */
export const pictures = (
  id: string,
  { reader, widths }: Pick<AskedQuestion, 'reader' | 'widths'>,
  draw: (options: PictureOptions) => string,
): Html =>
  html`<div class="pictures">${widths.map(
    (width, i) =>
      html`<div class="${widths.length === 1 ? 'only' : i === 0 ? 'narrow' : 'wide'}">${safe(
        draw({ ...pictureFor(reader), width, id: `${id}-${width}`, hasStyles: false }),
      )}</div>`,
  )}</div>`;
