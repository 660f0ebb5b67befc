import { fromUnit, inUnit } from '../../plot/degrees.js';
import { actForm } from '../form/act.js';
import { degreesField } from '../form/fields.js';
import { foldedForm } from '../form/folded-form.js';
import { numberIn } from '../form/typed-numbers.js';
import { get, isRefused, unusable } from '../shell/api.js';
import { type Html, html } from '../shell/html.js';
import type { Act, Asked } from '../shell/view.js';
import { monthName } from '../shell/words.js';
import { placeSaid } from './place-said.js';

const ACT = 'keep-climate';
const MONTHS = Array.from({ length: 12 }, (_, month) => month + 1);

/** The means of twelve months, January first [°C]. */
export interface Climate {
  readonly meanMinC: readonly number[];
  readonly meanMaxC: readonly number[];
}

/** The form for the twelve months' mean lowest and highest, as a climate table has them. */
export const climateForm = (asked: Asked, place: string, kept?: Climate): Html => {
  const { reader } = asked;
  const usual = (meansC: readonly number[] | undefined, month: number): string =>
    meansC === undefined ? '' : String(Math.round(inUnit(meansC[month - 1]!, reader.degrees) * 10) / 10);
  return actForm(asked, {
    act: ACT,
    about: place,
    button: 'Keep these means',
    fields: (typed) => html`
      ${degreesField('unit', 'They are in', typed('unit', reader.degrees))}
      <table class="days"><thead><tr><th scope="col">Month</th><th scope="col">Mean lowest</th><th scope="col">Mean highest</th></tr></thead><tbody>${MONTHS.map(
        (month) => {
          const name = monthName(month, reader);
          const [low, high] = [`low${month}`, `high${month}`];
          return html`<tr><th scope="row" lang="${reader.locale}">${name}</th><td><input name="${low}" value="${typed(low, usual(kept?.meanMinC, month))}" inputmode="decimal" autocomplete="off" aria-label="Mean lowest in ${name}"></td><td><input name="${high}" value="${typed(high, usual(kept?.meanMaxC, month))}" inputmode="decimal" autocomplete="off" aria-label="Mean highest in ${name}"></td></tr>`;
        },
      )}</tbody></table>`,
  });
};

/** The same, folded away, where they are kept already. */
export const climateAgain = (asked: Asked, place: string, kept: Climate): Html =>
  foldedForm(climateForm(asked, place, kept), asked, {
    act: ACT,
    about: place,
    name: 'Change the means of the twelve months',
    look: 'add',
  });

/** Keeps the months’ means of a place. */
export const keepClimate: Act = async (said, { send, reader, shelf }) => {
  const unit = said.get('unit') === 'F' ? 'F' : 'C';
  const text = (field: 'low' | 'high', month: number): string => said.get(`${field}${month}`) ?? '';
  const means: { meanMinC: number[]; meanMaxC: number[] } = { meanMinC: [], meanMaxC: [] };
  for (const month of MONTHS) {
    const name = monthName(month, reader);
    const [low, high] = [numberIn(text('low', month)), numberIn(text('high', month))];
    if (low === null || high === null) return unusable(`Write both means of ${name}: all twelve months are needed.`);
    if (Number.isNaN(low) || Number.isNaN(high)) {
      const wrong = text(Number.isNaN(low) ? 'low' : 'high', month);
      return unusable(`“${wrong}” of ${name} is no number. Write one, such as 12.5.`);
    }
    if (low > high) {
      return unusable(
        `In ${name} the lowest, ${text('low', month)}, is above the highest, ${text('high', month)}. Mend one.`,
      );
    }
    means.meanMinC.push(fromUnit(low, unit));
    means.meanMaxC.push(fromUnit(high, unit));
  }
  const place = shelf.places.find(({ id }) => id === said.get('about'));
  if (place && isTurnedOver(place.latitude, means)) {
    return unusable(
      `At ${placeSaid(place)} summer is in ${monthName(place.latitude > 0 ? 7 : 1, reader)}; by this table it is not. Mend the table, or the place under What is growing.`,
    );
  }
  const path = `/v1/places/${encodeURIComponent(said.get('about') ?? '')}/normals`;
  const got = await get(send, { method: 'PUT', path, json: means });
  if (!isRefused(got)) return { value: { said: 'Kept: the means of the twelve months', at: 'answer' } };
  const [, field, index] = /mean(Min|Max)C\/(\d+)$/.exec(got.problem.errors?.[0]?.pointer ?? '') ?? [];
  if (index === undefined) return got;
  const month = Number(index) + 1;
  const wrong = text(field === 'Min' ? 'low' : 'high', month);
  return unusable(`${wrong} °${unit} in ${monthName(month, reader)}? No air is like that. Mend it, or the degrees.`);
};

/** Between the tropics it may be warmest at any time of the year [°]. */
const TROPIC = 23.5;

/** Is each month of summer colder than the one half a year from it? A slip in one month turns no year over. */
function isTurnedOver(latitude: number, { meanMinC, meanMaxC }: Climate): boolean {
  if (Math.abs(latitude) <= TROPIC) return false;
  const sumC = (month: number): number => meanMinC[month]! + meanMaxC[month]!;
  return [5, 6, 7].every((month) => (sumC(month) - sumC((month + 6) % 12)) * latitude < 0);
}
