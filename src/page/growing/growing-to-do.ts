import type { SowingAnswer } from '../../contract/sowings.js';
import { isFailure } from '../shell/api.js';
import { type Html, html } from '../shell/html.js';
import { bedName, cropName, todayAt } from '../shell/inventory.js';
import { day, daysFrom, daysLater, type PageReader, shortDay } from '../shell/words.js';
import type { Found } from './growing-found.js';
import { PRESSING, sowingName, whereSown } from './growing-words.js';

/** A task, its sowing or plan, and its bed. */
export interface ThingToDo {
  /** The first day; today if that is past. */
  readonly date: string;
  readonly to: string;
  /** The last day, unless the text names it. */
  readonly until: string | null;
  readonly text: string;
  readonly task: SowingAnswer['toDo'][number]['task'] | 'sow';
  readonly of: string;
  readonly bed: string;
  /** The id of the section with details. */
  readonly at: string;
  readonly today: string;
}

const WEEK_DAYS = 7;
/** Days ahead: the service reports the tasks of sowings this far ahead, and those of plans are listed as far [d]. */
const SOON_DAYS = 14;

/** All tasks of the next two weeks by date, the most pressing first within a date. */
export function thingsToDo({ shelf, sowings, plans }: Found, reader: PageReader): ThingToDo[] {
  const ofSowings = sowings.flatMap(({ kept, got }) => {
    if (isFailure(got)) return [];
    const today = todayAt(shelf, kept.bed, '');
    const of = sowingName(shelf, kept, reader, today);
    return got.value.toDo.map(
      ({ task, from, to, text, params = {} }): ThingToDo => ({
        task,
        date: [from, today].sort().at(-1)!,
        to,
        // A sentence that names its last day does not get it again.
        until: Object.values(params).includes(to) ? null : to,
        text,
        of,
        bed: bedName(shelf, kept.bed),
        today,
        at: `sowing-${kept.id}`,
      }),
    );
  });
  const ofPlans = plans.flatMap(({ kept, got }) => {
    if (isFailure(got)) return [];
    const today = todayAt(shelf, kept.bed, '');
    return got.value.sowings
      .filter(({ date, sown }) => !sown && date >= today && date <= daysLater(today, SOON_DAYS))
      .map(
        (one): ThingToDo => ({
          task: 'sow',
          date: one.date,
          to: one.date,
          until: null,
          today,
          text: reader.say('page.growing.sow-planned', { seeds: one.seeds, where: whereSown(one, reader) }),
          of: cropName(shelf, kept.crop, reader),
          bed: bedName(shelf, kept.bed),
          at: `plan-${kept.id}`,
        }),
      );
  });
  return [...ofSowings, ...ofPlans].sort(
    (a, b) => a.date.localeCompare(b.date) || PRESSING[a.task] - PRESSING[b.task] || a.of.localeCompare(b.of),
  );
}

const isThisWeek = ({ date, today }: ThingToDo): boolean => daysFrom(today, date) < WEEK_DAYS;
const isToday = ({ date, today }: ThingToDo): boolean => date === today;

/** The number of tasks, as a sentence. */
export function toDoSaid(all: readonly ThingToDo[], { say }: PageReader): string {
  const week = all.filter(isThisWeek);
  const now = week.filter(isToday).length;
  return week.length === 0
    ? say('page.growing.nothing-week')
    : say('page.growing.to-do', { now, later: week.length - now });
}

/** This week's tasks day by day; next week's are folded. */
export function thisWeek(all: readonly ThingToDo[], reader: PageReader, bedsShown: number): Html | false {
  const [week, next] = [all.filter(isThisWeek), all.filter((one) => !isThisWeek(one))];
  return (
    all.length > 0 &&
    html`<section><h2>${reader.say('page.growing.this-week')}</h2>
    ${week.length === 0 ? html`<p>${reader.say('page.growing.nothing')}</p>` : byDay(week, reader, bedsShown)}
    ${next.length > 0 && html`<details id="next-week"><summary>${reader.say('page.growing.week-after')}</summary>${byDay(next, reader, bedsShown)}</details>`}
    </section>`
  );
}

function byDay(all: readonly ThingToDo[], reader: PageReader, bedsShown: number): Html[] {
  const dates = [...new Set(all.map(({ date }) => date))];
  return dates.map((date) => {
    const ofDay = all.filter((one) => one.date === date);
    const name = ofDay.some(isToday)
      ? reader.tell('page.growing.today', { date: day(date, reader) })
      : day(date, reader);
    return html`<h3>${name}</h3><ul class="to-do">${ofDay.map((one) => thing(one, reader, bedsShown))}</ul>`;
  });
}

const thing = ({ of, at, bed, text, date, until }: ThingToDo, reader: PageReader, bedsShown: number): Html =>
  html`<li><a href="#${at}">${of}</a>${bedsShown > 1 && html` <span class="aside">${bed}</span>`}<br>${text}${
    until !== null &&
    until > date &&
    html` <span class="aside">${reader.tell('page.growing.until', { date: shortDay(until, reader) })}</span>`
  }</li>`;
