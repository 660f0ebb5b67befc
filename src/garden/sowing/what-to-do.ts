import type { Forecast } from '../../answers/forecast/forecast.js';
import { helpsSownSeed } from '../../answers/forecast/remedies/remedies.js';
import type { SpellAnswer } from '../../answers/forecast/remedies/spell-answers.js';
import { addDays, daysBetween, type PlainDate } from '../../basics/calendar.js';
import { type Fact, followedBy } from '../../basics/fact.js';
import type { Judgement, Verdict } from './judgement.js';
import type { KnownSowing } from './known-sowing.js';
import type { TaskFact, VerdictFact } from './sowing-facts.js';
import type { SowingState } from './sowing-state.js';
import { thinningOf } from './thinning.js';
import { LOOK_AGAIN_DAYS } from './triage-rule.js';

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
  readonly text: Fact;
}

/** A task further off than this is not listed [d]. */
const SOON_DAYS = 14;
/** A count is useful up to this long after most of the row was due [d]. */
const COUNT_WITHIN_DAYS = 60;

/** What there is to do about a sowing in the next two weeks, the most pressing first. */
export function whatToDo(known: KnownSowing, state: SowingState): ToDo[] {
  const { growing, judgement } = state;
  if (!growing || !judgement) return [];
  const { today } = known;
  const { forecast } = growing;
  const { verdict } = judgement;
  const isWaiting = verdict !== 'lost' && verdict !== 'good' && verdict !== 'thin';
  const all = [
    ...sowAgain(verdict, state, today),
    ...(isWaiting ? toCount(forecast, judgement, today) : []),
    ...(verdict === 'lost' ? [] : care(forecast)),
    ...(verdict === 'good' ? thinning(known, forecast) : []),
    ...(verdict === 'lost' ? [] : outOfTheTray(known, state.indoors)),
    ...(state.harvest ? [toDo('harvest', state.harvest, { code: 'task.harvest', params: {} })] : []),
  ];
  return all
    .filter(({ from, to }) => to >= today && from <= addDays(today, SOON_DAYS))
    .sort((a, b) => tasks.indexOf(a.task) - tasks.indexOf(b.task));
}

/** Something to do in a span of dates. */
const toDo = (
  task: ToDo['task'],
  { from, to }: { readonly from: PlainDate; readonly to: PlainDate },
  fact: TaskFact | VerdictFact,
  next?: Fact | string,
): ToDo => ({ task, from, to, text: followedBy(fact, next) });

/** Where it is lost, too thin, or not worth waiting for: whether, and when, it can be sown again. */
function sowAgain(
  verdict: Verdict,
  { resowing, triage }: Pick<SowingState, 'resowing' | 'triage'>,
  today: PlainDate,
): ToDo[] {
  if (verdict !== 'lost' && verdict !== 'thin' && triage?.do !== 'sow-again') return [];
  const task = verdict === 'thin' ? 'fill-gaps' : 'sow-again';
  const isTooLate = resowing === 'too-late';
  const open = resowing !== null && !isTooLate ? resowing : null;
  const span = open
    ? { from: open.from, to: open.by }
    : { from: today, to: isTooLate ? today : addDays(today, SOON_DAYS) };
  const from = open && open.from > today ? open.from : null;
  const params = { isTooLate: isTooLate ? 'yes' : 'no', from, by: open?.by ?? null } as const;
  return [toDo(task, span, { code: `task.${task}`, params })];
}

const toCount = (forecast: Forecast, { verdict, text }: Judgement, today: PlainDate): ToDo[] =>
  verdict === 'count-now' ? countNow(forecast, text, today) : [lookAgain(forecast, today)];

/** Watering, and what heat and cold ask for, until most are up: a row that stands well already has more to come. */
function care({ keepMoist, hotSpells, coldSpells }: Forecast): ToDo[] {
  const ofSpell =
    (task: 'mind-heat' | 'mind-cold') =>
    (spell: SpellAnswer): ToDo => {
      const thresholdC = Math.round(spell.thresholdC);
      const remedy = spell.remedies.find(helpsSownSeed)?.text;
      return toDo(task, spell, { code: `task.${task}`, params: { thresholdC } }, remedy);
    };
  const before = ({ from }: SpellAnswer): boolean => from <= keepMoist.to;
  return [
    toDo('keep-moist', keepMoist, { code: 'task.keep-moist', params: { to: keepMoist.to } }),
    ...(hotSpells ?? []).filter(before).map(ofSpell('mind-heat')),
    ...(coldSpells ?? []).filter(before).map(ofSpell('mind-cold')),
  ];
}

function countNow({ emergence: { most }, stand }: Forecast, text: VerdictFact, today: PlainDate): ToDo[] {
  const wasDue = 'why' in most ? stand.by : most.date;
  return daysBetween(wasDue, today) <= COUNT_WITHIN_DAYS ? [toDo('count', { from: today, to: today }, text)] : [];
}

function lookAgain({ emergence: { first }, stand }: Forecast, today: PlainDate): ToDo {
  const due = 'why' in first ? stand.by : first.range.from;
  const date = due > today ? due : addDays(today, LOOK_AGAIN_DAYS);
  return toDo('count', { from: date, to: date }, { code: 'task.count', params: {} });
}

function thinning({ sowing, counts, crop }: KnownSowing, { emergence: { most } }: Forecast): ToDo[] {
  const isThinned = counts.some(({ thinned }) => thinned);
  const dates = sowing.method === 'direct' && !isThinned ? thinningOf(crop, most) : null;
  return dates ? [toDo('thin', dates, { code: 'task.thin', params: {} })] : [];
}

function outOfTheTray({ question }: KnownSowing, indoors: SowingState['indoors']): ToDo[] {
  if (!indoors) return [];
  const { hardenOff, plantOut } = indoors;
  return [
    toDo('harden-off', hardenOff, { code: 'task.harden-off', params: {} }),
    toDo(
      'plant-out',
      { from: plantOut, to: addDays(plantOut, 7) },
      { code: 'task.plant-out', params: { roomC: question.bed.roomC! } },
    ),
  ];
}
