import { fromUnit, inUnit } from '../../plot/degrees.js';
import { actionForm } from '../form/action.js';
import { degreesField } from '../form/fields.js';
import { foldedForm } from '../form/folded-form.js';
import { numberIn } from '../form/typed-numbers.js';
import { get, isFailure, unusable } from '../shell/api.js';
import { type Html, html } from '../shell/html.js';
import type { ActionOf, AskedQuestion } from '../shell/view.js';
import { monthName, tenthOf } from '../shell/words.js';
import { placeSaid } from './place-said.js';

const ACT = 'keep-climate';
const MONTHS = Array.from({ length: 12 }, (_, month) => month + 1);

/** Twelve monthly means, January first [°C]. */
export interface Climate {
  readonly meanMinC: readonly number[];
  readonly meanMaxC: readonly number[];
}

/** The form for each month's mean minimum and maximum, as a climate table gives them. */
export const climateForm = (asked: AskedQuestion, place: string, kept?: Climate): Html => {
  const { reader } = asked;
  const { say } = reader;
  const usual = (meansC: readonly number[] | undefined, month: number): string =>
    meansC === undefined ? '' : tenthOf(inUnit(meansC[month - 1]!, reader.degrees), reader);
  return actionForm(asked, {
    act: ACT,
    about: place,
    button: say('page.climate.keep'),
    fields: (typed) => html`
      ${degreesField('unit', say('page.climate.unit'), typed('unit', reader.degrees))}
      <table class="days"><thead><tr><th scope="col">${say('page.climate.month')}</th><th scope="col">${say('page.climate.lowest')}</th><th scope="col">${say('page.climate.highest')}</th></tr></thead><tbody>${MONTHS.map(
        (month) => {
          const name = monthName(month, reader);
          const [low, high] = [`low${month}`, `high${month}`];
          return html`<tr><th scope="row" lang="${reader.locale}">${name}</th><td><input name="${low}" value="${typed(low, usual(kept?.meanMinC, month))}" inputmode="decimal" autocomplete="off" aria-label="${say('page.climate.lowest-in', { month: name })}"></td><td><input name="${high}" value="${typed(high, usual(kept?.meanMaxC, month))}" inputmode="decimal" autocomplete="off" aria-label="${say('page.climate.highest-in', { month: name })}"></td></tr>`;
        },
      )}</tbody></table>`,
  });
};

/** The same form, folded, for a place that has monthly means already. */
export const climateAgain = (asked: AskedQuestion, place: string, kept: Climate): Html =>
  foldedForm(climateForm(asked, place, kept), asked, {
    act: ACT,
    about: place,
    name: asked.reader.say('page.climate.change'),
    look: 'add',
  });

/** Stores a place’s monthly means. */
export const keepClimate: ActionOf = async (said, { send, reader, shelf }) => {
  const { say } = reader;
  const unit = said.get('unit') === 'F' ? 'F' : 'C';
  const text = (field: 'low' | 'high', month: number): string => said.get(`${field}${month}`) ?? '';
  const means: { meanMinC: number[]; meanMaxC: number[] } = { meanMinC: [], meanMaxC: [] };
  for (const month of MONTHS) {
    const name = monthName(month, reader);
    const [low, high] = [numberIn(text('low', month)), numberIn(text('high', month))];
    if (low === null || high === null) return unusable(say('page.climate.both', { month: name }));
    if (Number.isNaN(low) || Number.isNaN(high)) {
      const wrong = text(Number.isNaN(low) ? 'low' : 'high', month);
      return unusable(say('page.climate.no-number', { said: wrong, month: name }));
    }
    if (low > high) {
      return unusable(say('page.climate.turned', { month: name, low: text('low', month), high: text('high', month) }));
    }
    means.meanMinC.push(fromUnit(low, unit));
    means.meanMaxC.push(fromUnit(high, unit));
  }
  const place = shelf.places.find(({ id }) => id === said.get('about'));
  if (place && isTurnedOver(place.latitude, means)) {
    return unusable(
      say('page.climate.turned-over', {
        where: placeSaid(place, reader),
        month: monthName(place.latitude > 0 ? 7 : 1, reader),
      }),
    );
  }
  const path = `/v1/places/${encodeURIComponent(said.get('about') ?? '')}/normals`;
  const got = await get(send, { method: 'PUT', path, json: means });
  if (!isFailure(got)) return { value: { said: say('page.done.kept-climate'), at: 'answer' } };
  const [, field, index] = /mean(Min|Max)C\/(\d+)$/.exec(got.problem.errors?.[0]?.pointer ?? '') ?? [];
  if (index === undefined) return got;
  const month = Number(index) + 1;
  const wrong = text(field === 'Min' ? 'low' : 'high', month);
  return unusable(say('page.climate.no-air', { said: wrong, unit, month: monthName(month, reader) }));
};

/** Between the tropics the warmest month can be any month [°]. */
const TROPIC = 23.5;

/** True if every summer month is colder than the month half a year away, so one typing error does not count. */
function isTurnedOver(latitude: number, { meanMinC, meanMaxC }: Climate): boolean {
  if (Math.abs(latitude) <= TROPIC) return false;
  const sumC = (month: number): number => meanMinC[month]! + meanMaxC[month]!;
  return [5, 6, 7].every((month) => (sumC(month) - sumC((month + 6) % 12)) * latitude < 0);
}
