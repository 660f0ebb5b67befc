import { actOf } from '../form/act.js';
import { keepUnder } from '../form/keep-under.js';
import { wholeIn } from '../form/typed-numbers.js';
import { type Got, get, isRefused, unusable } from '../shell/api.js';
import { cropName, type Shelf, todayAt } from '../shell/shelf.js';
import type { Act, Done } from '../shell/view.js';
import { dayMonth, daysFrom, isDate, type Reader } from '../shell/words.js';
import { changeBed, changePlace, forgetReadings, keepBed } from './growing-bed-acts.js';

const count: Act = async (said, { send, reader }) => {
  const about = said.get('about') ?? '';
  const date = said.get('date') ?? '';
  const numbers = wholeNumbers(said, ['seedlings', 'ofSeeds', 'thinned']);
  if (isRefused(numbers)) return numbers;
  const { seedlings, ofSeeds, thinned } = numbers.value;
  if (seedlings === null)
    return unusable('How many stand there? Where there are none, write 0: that says something too.');
  if (!isDate(date)) return unusable(NO_DATE);
  const json = { seedlings, ofSeeds, thinned: thinned ?? said.has('thinnedSome') };
  const path = `/v1/sowings/${encodeURIComponent(about)}/counts/${date}`;
  return done(await get(send, { method: 'PUT', path, json }), () => ({
    said: `Counted: ${seedlings} on ${dayMonth(date, reader)}`,
    at: `sowing-${about}`,
  }));
};

/** A sowing further off is a slip of the pen [d]. */
const MOST_DAYS_OFF = 366;

const sow: Act = async (said, { send, shelf, reader }) => {
  const sowing = sowingIn(said, shelf, reader);
  if (isRefused(sowing)) return sowing;
  const { crop, date } = sowing.value;
  return done(await keepUnder(send, 'sowings', `${crop}-${date}`, sowing.value), ({ id, isNew }) => ({
    said: `${isNew ? 'Kept' : 'Kept already'}: ${cropName(shelf, crop)}, sown ${dayMonth(date, reader)}`,
    at: `sowing-${id}`,
  }));
};

const changeSowing: Act = async (said, { send, shelf, reader }) => {
  const about = said.get('about') ?? '';
  const sowing = sowingIn(said, shelf, reader);
  if (isRefused(sowing)) return sowing;
  const { crop, date } = sowing.value;
  const path = `/v1/sowings/${encodeURIComponent(about)}`;
  return done(await get(send, { method: 'PATCH', path, json: sowing.value }), () => ({
    said: `Changed: ${cropName(shelf, crop)}, sown ${dayMonth(date, reader)}`,
    at: `sowing-${about}`,
  }));
};

/** A sowing as the service takes it. */
function sowingIn(
  said: URLSearchParams,
  shelf: Shelf,
  reader: Reader,
): Got<{ readonly crop: string; readonly date: string; readonly [field: string]: unknown }> {
  const [bed, crop, date] = [said.get('bed') ?? '', said.get('crop') ?? '', said.get('date') ?? ''];
  const numbers = wholeNumbers(said, ['seeds']);
  if (isRefused(numbers)) return numbers;
  if (bed === '') return unusable(NO_BED);
  if (!isDate(date)) return unusable(NO_DATE);
  const today = todayAt(shelf, bed, '');
  if (Math.abs(daysFrom(date, today)) > MOST_DAYS_OFF) {
    return unusable(
      `${date.slice(0, 4)} is over a year from today, ${dayMonth(today, reader)} ${today.slice(0, 4)}. Is it the year that is meant?`,
    );
  }
  return { value: { bed, crop, date, seeds: numbers.value.seeds, method: said.get('method') ?? 'direct' } };
}

const plan: Act = async (said, { send, shelf }) => {
  const [bed, crop, from, to] = ['bed', 'crop', 'from', 'to'].map((name) => said.get(name) ?? '') as [
    string,
    string,
    string,
    string,
  ];
  const numbers = wholeNumbers(said, ['perWeek']);
  if (isRefused(numbers)) return numbers;
  const { perWeek } = numbers.value;
  if (bed === '') return unusable(NO_BED);
  if (!isDate(from) || !isDate(to)) return unusable('Say the first and the last day of the harvest.');
  if (perWeek === null) return unusable('How many plants do you want to harvest in a week?');
  const json = { bed, crop, harvest: { from, to, perWeek } };
  return done(await keepUnder(send, 'plans', `${crop}-${from}`, json), ({ id }) => ({
    said: `Planned: ${cropName(shelf, crop)}, ${perWeek} a week`,
    at: `plan-${id}`,
  }));
};

const forgetCount: Act = async (said, { send, reader }) => {
  const [of, date] = [said.get('of') ?? '', said.get('date') ?? ''];
  const path = `/v1/sowings/${encodeURIComponent(of)}/counts/${encodeURIComponent(date)}`;
  return done(gone(await get(send, { method: 'DELETE', path })), () => ({
    said: `Forgotten: the count${isDate(date) ? ` of ${dayMonth(date, reader)}` : ''}`,
    at: `sowing-${of}`,
  }));
};

const forget =
  (kind: 'sowing' | 'plan' | 'bed' | 'place'): Act =>
  async (said, { send, question }) => {
    const about = said.get('about') ?? '';
    const path = `/v1/${kind}s/${encodeURIComponent(about)}${kind === 'bed' ? '?with=sowings' : ''}`;
    // Nothing more is asked of a bed that is gone.
    const without = (bed: string): string => (bed === about ? '' : bed);
    return done(gone(await get(send, { method: 'DELETE', path })), () => ({
      said: `Forgotten: the ${kind}`,
      at: 'answer',
      ...(kind === 'bed' && { goesOn: { bed: without(question.bed), ofBed: without(question.ofBed) } }),
    }));
  };

const renewCalendar: Act = async (said, { send }) => {
  const about = said.get('about') ?? '';
  const path = `/v1/beds/${encodeURIComponent(about)}/calendar-token`;
  return done(await get(send, { method: 'POST', path }), () => ({
    said: 'The calendar has a new address; the old one opens nothing any more',
    at: `calendar-${about}`,
  }));
};

/** What the forms of this leaf do, by their names. */
export const growingAct = actOf(
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

const NO_BED = 'Choose the bed.';
const NO_DATE = 'Say on which day.';
const done = <T>(got: Got<T>, told: (value: T) => Done): Got<Done> =>
  isRefused(got) ? got : { value: told(got.value) };

/** What is not there any more is forgotten. */
const gone = (got: Got<unknown>): Got<unknown> =>
  isRefused(got) && got.problem.status === 404 ? { value: undefined } : got;

/** Numbers as they are typed, null where nothing is. */
function wholeNumbers<Name extends string>(
  said: URLSearchParams,
  names: readonly Name[],
): Got<Record<Name, number | null>> {
  const numbers = names.map((name) => [name, wholeIn(said.get(name) ?? '')] as const);
  const wrong = numbers.find(([, value]) => Number.isNaN(value));
  if (wrong) return unusable(`“${said.get(wrong[0])}” is no whole number. Write it in digits, such as 14.`);
  return { value: Object.fromEntries(numbers) as Record<Name, number | null> };
}
