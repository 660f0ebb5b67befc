import { fromUnit } from '../plot/degrees.js';
import { actForm, unusable } from './act.js';
import { get, isRefused } from './api.js';
import { numberIn } from './forecast-request.js';
import { type Html, html } from './html.js';
import type { Act, Asked } from './view.js';
import { monthName } from './words.js';

const MONTHS = Array.from({ length: 12 }, (_, month) => month + 1);

/** The form for the twelve months' mean highest and lowest, as a climate table has them; in the degrees that are read. */
export const climateForm = (asked: Asked, place: string): Html => {
  const { reader } = asked;
  return actForm(asked, {
    act: 'keep-climate',
    about: place,
    with: { unit: reader.degrees },
    button: 'Keep these means',
    fields: (typed) =>
      html`<table class="days"><thead><tr><th scope="col">Month</th><th scope="col">Mean lowest, °${reader.degrees}</th><th scope="col">Mean highest, °${reader.degrees}</th></tr></thead><tbody>${MONTHS.map(
        (month) => {
          const name = monthName(month, reader);
          const [low, high] = [`low${month}`, `high${month}`];
          return html`<tr><th scope="row" lang="${reader.locale}">${name}</th><td><input name="${low}" value="${typed(low)}" inputmode="decimal" autocomplete="off" aria-label="Mean lowest in ${name}"></td><td><input name="${high}" value="${typed(high)}" inputmode="decimal" autocomplete="off" aria-label="Mean highest in ${name}"></td></tr>`;
        },
      )}</tbody></table>`,
  });
};

/** Keeps the months' means of a place. */
export const keepClimate: Act = async (said, { send, reader }) => {
  const unit = said.get('unit') === 'F' ? 'F' : 'C';
  const means: { meanMinC: number[]; meanMaxC: number[] } = { meanMinC: [], meanMaxC: [] };
  for (const month of MONTHS) {
    const name = monthName(month, reader);
    const texts = [`low${month}`, `high${month}`].map((field) => said.get(field) ?? '');
    const [low, high] = texts.map(numberIn) as [number | null, number | null];
    if (low === null || high === null) return unusable(`Write both means of ${name}: all twelve months are needed.`);
    if (Number.isNaN(low) || Number.isNaN(high)) {
      return unusable(`“${texts[Number.isNaN(low) ? 0 : 1]}” of ${name} is no number. Write one, such as 12.5.`);
    }
    if (low > high) return unusable(`In ${name} the lowest, ${texts[0]}, is above the highest, ${texts[1]}. Mend one.`);
    means.meanMinC.push(fromUnit(low, unit));
    means.meanMaxC.push(fromUnit(high, unit));
  }
  const path = `/v1/places/${encodeURIComponent(said.get('about') ?? '')}/normals`;
  const got = await get(send, { method: 'PUT', path, json: means });
  return isRefused(got) ? got : { value: { said: 'Kept: the means of the twelve months', at: 'answer' } };
};
