import type { Forecast } from '../../answers/forecast/forecast.js';
import { helpsSownSeed } from '../../answers/forecast/remedies.js';
import type { SpellAnswer } from '../../answers/forecast/spell-answers.js';
import { addDays, daysBetween, type PlainDate } from '../../basics/calendar.js';
import type { Judgement, Verdict } from './judgement.js';
import type { KnownSowing } from './known-sowing.js';
import type { SowingState } from './sowing-state.js';
import { thinningOf } from './thinning.js';

/** The most pressing first. */
export const tasks = [
  'sow-again',
  'fill-gaps',
  'count',
  'mind-heat',
  'mind-cold',
  'keep-moist',
  'thin',
  'harden-off',
  'plant-out',
  'harvest',
] as const;

/** Something to do, and when. */
export interface ToDo {
  readonly task: (typeof tasks)[number];
  readonly from: PlainDate;
  readonly to: PlainDate;
  readonly text: string;
}

/** What is further off is not yet to be done [d]. */
const SOON_DAYS = 14;
/** So long after most were due a count still says something [d]. */
const COUNT_WITHIN_DAYS = 60;
/** A row that waits is looked at again after so long [d]. */
const LOOK_AGAIN_DAYS = 4;

/** What there is to do about a sowing in the next two weeks, the most pressing first. */
export function whatToDo(known: KnownSowing, state: SowingState): ToDo[] {
  const { growing, judgement } = state;
  if (!growing || !judgement) return [];
  const { today } = known;
  const { forecast } = growing;
  const { verdict } = judgement;
  const isWaiting = verdict !== 'lost' && verdict !== 'good' && verdict !== 'thin';
  const all = [
    ...sowAgain(verdict, state.resowing, today),
    ...(isWaiting ? toCount(forecast, judgement, today) : []),
    ...(verdict === 'lost' ? [] : care(forecast)),
    ...(verdict === 'good' ? thinning(known, forecast) : []),
    ...(verdict === 'lost' ? [] : outOfTheTray(known, state.indoors)),
    ...(state.harvest ? [{ task: 'harvest' as const, ...spanOf(state.harvest), text: 'The first may be ready.' }] : []),
  ];
  return all
    .filter(({ from, to }) => to >= today && from <= addDays(today, SOON_DAYS))
    .sort((a, b) => tasks.indexOf(a.task) - tasks.indexOf(b.task));
}

/** Where it is lost or too thin: whether, and when, it can be sown again. */
function sowAgain(verdict: Verdict, resowing: SowingState['resowing'], today: PlainDate): ToDo[] {
  if (verdict !== 'lost' && verdict !== 'thin') return [];
  const task = verdict === 'lost' ? 'sow-again' : 'fill-gaps';
  const again = verdict === 'lost' ? 'sow again' : 'fill the gaps with a new sowing';
  if (resowing === 'too-late') {
    return [{ task, from: today, to: today, text: `It is too late this season to ${again}.` }];
  }
  if (resowing === null) {
    const text = `${capital(again)}. Whether there is still time this season cannot be told from what is kept.`;
    return [{ task, from: today, to: addDays(today, SOON_DAYS), text }];
  }
  const { from, by } = resowing;
  const since = from > today ? `It is time for it from ${from} on, and` : 'There is time';
  return [{ task, from, to: by, text: `${capital(again)}. ${since} until ${by}.` }];
}

const toCount = (forecast: Forecast, { verdict, text }: Judgement, today: PlainDate): ToDo[] =>
  verdict === 'count-now' ? countNow(forecast, text, today) : [lookAgain(forecast, today)];

/** Watering, and what heat and cold ask for, until most are up: a row that stands well already has more to come. */
function care({ keepMoist, hotSpells, coldSpells }: Forecast): ToDo[] {
  const ofSpell =
    (task: ToDo['task'], what: (thresholdC: string) => string) =>
    ({ from, to, thresholdC, remedies }: SpellAnswer): ToDo => {
      const remedy = remedies.find(helpsSownSeed)?.text;
      return { task, from, to, text: `${what(thresholdC.toFixed(0))}${remedy ? ` ${remedy}` : ''}` };
    };
  return [
    {
      task: 'keep-moist',
      ...keepMoist,
      text: `Keep the seed moist until ${keepMoist.to}. Where watering is restricted, the local rules go first.`,
    },
    ...(hotSpells ?? [])
      .filter(({ from }) => from <= keepMoist.to)
      .map(ofSpell('mind-heat', (limit) => `Heat above ${limit} °C at the seed.`)),
    ...(coldSpells ?? [])
      .filter(({ from }) => from <= keepMoist.to)
      .map(ofSpell('mind-cold', (limit) => `Soil below ${limit} °C harms this seed.`)),
  ];
}

function countNow({ emergence: { most }, stand }: Forecast, text: string, today: PlainDate): ToDo[] {
  const wasDue = 'why' in most ? stand.by : most.date;
  return daysBetween(wasDue, today) <= COUNT_WITHIN_DAYS ? [{ task: 'count', from: today, to: today, text }] : [];
}

function lookAgain({ emergence: { first }, stand }: Forecast, today: PlainDate): ToDo {
  const due = 'why' in first ? stand.by : first.range.from;
  const date = due > today ? due : addDays(today, LOOK_AGAIN_DAYS);
  return { task: 'count', from: date, to: date, text: 'Count what is up, even if there is nothing.' };
}

function thinning({ sowing, counts, crop }: KnownSowing, { emergence: { most } }: Forecast): ToDo[] {
  const isThinned = counts.some(({ thinned }) => thinned);
  const dates = sowing.method === 'direct' && !isThinned ? thinningOf(crop, most) : null;
  const text =
    'Thin the row to its spacing once the seedlings touch; water first, so that those that stay are not torn.';
  return dates ? [{ task: 'thin', ...dates, text }] : [];
}

function outOfTheTray({ question }: KnownSowing, indoors: SowingState['indoors']): ToDo[] {
  if (!indoors) return [];
  const { hardenOff, plantOut } = indoors;
  return [
    {
      task: 'harden-off',
      ...hardenOff,
      text: 'Set the trays out by day, longer each day, and take them in at night.',
    },
    {
      task: 'plant-out',
      from: plantOut,
      to: addDays(plantOut, 7),
      text: `Plant out if nights allow; look at the forecast first, and keep fleece at hand. The room is taken to be at ${question.bed.roomC} °C.`,
    },
  ];
}

const spanOf = ({ from, to }: { readonly from: PlainDate; readonly to: PlainDate }) => ({ from, to });
const capital = (text: string): string => `${text[0]!.toUpperCase()}${text.slice(1)}`;
