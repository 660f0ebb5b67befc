import { actionOf } from '../form/action.js';
import { keepUnder } from '../form/keep-under.js';
import { wholeIn } from '../form/typed-numbers.js';
import { get, isFailure, type Result, unusable } from '../shell/api.js';
import { cropName, type Inventory, todayAt } from '../shell/inventory.js';
import type { ActionOf, Done } from '../shell/view.js';
import { dayMonth, daysFrom, isDate, type PageReader } from '../shell/words.js';
import { changeBed, changePlace, forgetReadings, keepBed } from './growing-bed-actions.js';

const count: ActionOf = async (said, { send, reader }) => {
  const about = said.get('about') ?? '';
  const date = said.get('date') ?? '';
  const { say } = reader;
  const numbers = wholeNumbers(said, ['seedlings', 'ofSeeds', 'thinned'], reader);
  if (isFailure(numbers)) return numbers;
  const { seedlings, ofSeeds, thinned } = numbers.value;
  if (seedlings === null) return unusable(say('page.undone.how-many'));
  if (!isDate(date)) return unusable(say('page.refused.no-date'));
  const json = { seedlings, ofSeeds, thinned: thinned ?? said.has('thinnedSome') };
  const path = `/v1/sowings/${encodeURIComponent(about)}/counts/${date}`;
  return done(await get(send, { method: 'PUT', path, json }), () => ({
    said: say('page.done.counted', { seedlings, date: dayMonth(date, reader) }),
    at: `sowing-${about}`,
  }));
};

/** A sowing date further away is a slip of the pen [d]. */
const MAX_DAYS_OFF = 366;

const sow: ActionOf = async (said, { send, shelf, reader }) => {
  const sowing = sowingIn(said, shelf, reader);
  if (isFailure(sowing)) return sowing;
  const { crop, date } = sowing.value;
  return done(await keepUnder(send, 'sowings', `${crop}-${date}`, sowing.value), ({ id, isNew }) => ({
    said: reader.say('page.done.kept', { isNew: isNew ? 'yes' : 'no', what: sownSaid(shelf, crop, date, reader) }),
    at: `sowing-${id}`,
  }));
};

const changeSowing: ActionOf = async (said, { send, shelf, reader }) => {
  const about = said.get('about') ?? '';
  const sowing = sowingIn(said, shelf, reader);
  if (isFailure(sowing)) return sowing;
  const { crop, date } = sowing.value;
  const path = `/v1/sowings/${encodeURIComponent(about)}`;
  return done(await get(send, { method: 'PATCH', path, json: sowing.value }), () => ({
    said: reader.say('page.done.changed', { what: sownSaid(shelf, crop, date, reader) }),
    at: `sowing-${about}`,
  }));
};

/** A sowing in the service's format. */
function sowingIn(
  said: URLSearchParams,
  shelf: Inventory,
  reader: PageReader,
): Result<{ readonly crop: string; readonly date: string; readonly [field: string]: unknown }> {
  const [bed, crop, date] = [said.get('bed') ?? '', said.get('crop') ?? '', said.get('date') ?? ''];
  const numbers = wholeNumbers(said, ['seeds'], reader);
  if (isFailure(numbers)) return numbers;
  if (bed === '') return unusable(reader.say('page.refused.no-bed'));
  if (!isDate(date)) return unusable(reader.say('page.refused.no-date'));
  const today = todayAt(shelf, bed, '');
  if (Math.abs(daysFrom(date, today)) > MAX_DAYS_OFF) {
    return unusable(
      reader.say('page.undone.other-year', {
        year: date.slice(0, 4),
        today: `${dayMonth(today, reader)} ${today.slice(0, 4)}`,
      }),
    );
  }
  return { value: { bed, crop, date, seeds: numbers.value.seeds, method: said.get('method') ?? 'direct' } };
}

const plan: ActionOf = async (said, { send, shelf, reader }) => {
  const { say } = reader;
  const [bed, crop, from, to] = ['bed', 'crop', 'from', 'to'].map((name) => said.get(name) ?? '') as [
    string,
    string,
    string,
    string,
  ];
  const numbers = wholeNumbers(said, ['perWeek'], reader);
  if (isFailure(numbers)) return numbers;
  const { perWeek } = numbers.value;
  if (bed === '') return unusable(say('page.refused.no-bed'));
  if (!isDate(from) || !isDate(to)) return unusable(say('page.undone.harvest-days'));
  if (perWeek === null) return unusable(say('page.undone.harvest-plants'));
  const json = { bed, crop, harvest: { from, to, perWeek } };
  return done(await keepUnder(send, 'plans', `${crop}-${from}`, json), ({ id }) => ({
    said: say('page.done.planned', { crop: cropName(shelf, crop, reader), perWeek }),
    at: `plan-${id}`,
  }));
};

const forgetCount: ActionOf = async (said, { send, reader }) => {
  const [of, date] = [said.get('of') ?? '', said.get('date') ?? ''];
  const path = `/v1/sowings/${encodeURIComponent(of)}/counts/${encodeURIComponent(date)}`;
  return done(gone(await get(send, { method: 'DELETE', path })), () => ({
    said: isDate(date)
      ? reader.say('page.done.forgotten-count-of', { date: dayMonth(date, reader) })
      : reader.say('page.done.forgotten-count'),
    at: `sowing-${of}`,
  }));
};

const forget =
  (kind: 'sowing' | 'plan' | 'bed' | 'place'): ActionOf =>
  async (said, { send, question, reader }) => {
    const about = said.get('about') ?? '';
    const path = `/v1/${kind}s/${encodeURIComponent(about)}${kind === 'bed' ? '?with=sowings' : ''}`;
    // A deleted bed is no longer asked about.
    const without = (bed: string): string => (bed === about ? '' : bed);
    return done(gone(await get(send, { method: 'DELETE', path })), () => ({
      said: reader.say('page.done.forgotten', { kind }),
      at: 'answer',
      ...(kind === 'bed' && { goesOn: { bed: without(question.bed), ofBed: without(question.ofBed) } }),
    }));
  };

const renewCalendar: ActionOf = async (said, { send, reader }) => {
  const about = said.get('about') ?? '';
  const path = `/v1/beds/${encodeURIComponent(about)}/calendar-token`;
  return done(await get(send, { method: 'POST', path }), () => ({
    said: reader.say('page.growing.new-address'),
    at: `calendar-${about}`,
  }));
};

/** The actions of this view's forms, by name. */
export const growingAction = actionOf(
  new Map([
    ['count', count],
    ['sow', sow],
    ['change-sowing', changeSowing],
    ['plan', plan],
    ['forget-count', forgetCount],
    ['forget-sowing', forget('sowing')],
    ['forget-plan', forget('plan')],
    ['keep-bed', keepBed],
    ['change-bed', changeBed],
    ['forget-bed', forget('bed')],
    ['forget-readings', forgetReadings],
    ['change-place', changePlace],
    ['forget-place', forget('place')],
    ['renew-calendar', renewCalendar],
  ]),
);

const sownSaid = (shelf: Inventory, crop: string, date: string, reader: PageReader): string =>
  reader.say('page.growing.sown', { crop: cropName(shelf, crop, reader), date: dayMonth(date, reader) });
const done = <T>(got: Result<T>, told: (value: T) => Done): Result<Done> =>
  isFailure(got) ? got : { value: told(got.value) };

/** Counts something already gone as deleted. */
const gone = (got: Result<unknown>): Result<unknown> =>
  isFailure(got) && got.problem.status === 404 ? { value: undefined } : got;

/** Typed whole numbers; null if empty. */
function wholeNumbers<Name extends string>(
  said: URLSearchParams,
  names: readonly Name[],
  { say }: PageReader,
): Result<Record<Name, number | null>> {
  const numbers = names.map((name) => [name, wholeIn(said.get(name) ?? '')] as const);
  const wrong = numbers.find(([, value]) => Number.isNaN(value));
  if (wrong) return unusable(say('page.refused.no-whole', { said: said.get(wrong[0]) ?? '' }));
  return { value: Object.fromEntries(numbers) as Record<Name, number | null> };
}
