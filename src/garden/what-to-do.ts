import { helpsSownSeed } from '../answers/remedies.js';
import { addDays, daysBetween, type PlainDate } from '../basics/calendar.js';
import type { KnownSowing, SowingState } from './sowing-state.js';

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

/** Seedlings stand so long before they are thinned [d]: common practice, no source. */
const THIN_AFTER_DAYS = 10;
/** What is further off is not yet to be done [d]. */
const SOON_DAYS = 14;
/** So long after most were due a count still says something [d]. */
const COUNT_WITHIN_DAYS = 60;
/** A row that waits is looked at again after so long [d]. */
const LOOK_AGAIN_DAYS = 4;

const capital = (text: string): string => `${text[0]!.toUpperCase()}${text.slice(1)}`;

/** What there is to do about a sowing in the next two weeks, the most pressing first. */
export function whatToDo({ sowing, counts, today, question }: KnownSowing, state: SowingState): ToDo[] {
  const { growing, judgement, indoors, harvest, resowing } = state;
  if (!growing || !judgement) return [];
  const { forecast } = growing;
  const { verdict } = judgement;
  const { most, first } = forecast.emergence;
  const all: ToDo[] = [];
  const add = (task: ToDo['task'], from: PlainDate, to: PlainDate, text: string): void => {
    if (to >= today && from <= addDays(today, SOON_DAYS)) all.push({ task, from, to, text });
  };
  const isOver = verdict === 'lost' || verdict === 'good' || verdict === 'thin';

  if (verdict === 'lost' || verdict === 'thin') {
    const [task, again] =
      verdict === 'lost'
        ? (['sow-again', 'sow again'] as const)
        : (['fill-gaps', 'fill the gaps with a new sowing'] as const);
    if (resowing === 'too-late') add(task, today, today, `It is too late this season to ${again}.`);
    else if (resowing === null) {
      add(
        task,
        today,
        addDays(today, SOON_DAYS),
        `${capital(again)}. Whether there is still time this season cannot be told from what is kept.`,
      );
    } else {
      const { from, by } = resowing;
      add(
        task,
        from,
        by,
        `${capital(again)}. ${from > today ? `It is time for it from ${from} on, and` : 'There is time'} until ${by}.`,
      );
    }
  }
  const wasDue = 'why' in most ? forecast.stand.by : most.date;
  if (verdict === 'count-now') {
    if (daysBetween(wasDue, today) <= COUNT_WITHIN_DAYS) add('count', today, today, judgement.text);
  } else if (!isOver) {
    const lookFrom = 'why' in first ? forecast.stand.by : first.range.from;
    const from = lookFrom > today ? lookFrom : addDays(today, LOOK_AGAIN_DAYS);
    add('count', from, from, 'Count what is up, even if there is nothing.');
  }
  if (!isOver && forecast.keepMoist.to >= today) {
    add(
      'keep-moist',
      forecast.keepMoist.from,
      forecast.keepMoist.to,
      `Keep the seed moist until ${forecast.keepMoist.to}. Where watering is restricted, the local rules go first.`,
    );
  }
  for (const spell of isOver ? [] : (forecast.hotSpells ?? [])) {
    const remedy = spell.remedies.find(helpsSownSeed)?.text;
    add(
      'mind-heat',
      spell.from,
      spell.to,
      `Heat above ${spell.thresholdC.toFixed(0)} °C at the seed.${remedy ? ` ${remedy}` : ''}`,
    );
  }
  for (const spell of isOver ? [] : (forecast.coldSpells ?? [])) {
    const remedy = spell.remedies.find(helpsSownSeed)?.text;
    add(
      'mind-cold',
      spell.from,
      spell.to,
      `Soil below ${spell.thresholdC.toFixed(0)} °C harms this seed.${remedy ? ` ${remedy}` : ''}`,
    );
  }
  const isThinned = counts.some(({ thinned }) => thinned);
  if (verdict === 'good' && sowing.method === 'direct' && !isThinned && !('why' in most)) {
    const from = addDays(most.date, THIN_AFTER_DAYS);
    add(
      'thin',
      from,
      addDays(from, THIN_AFTER_DAYS),
      'Thin the row to its spacing once the seedlings touch; water first, so that those that stay are not torn.',
    );
  }
  if (indoors && verdict !== 'lost') {
    add(
      'harden-off',
      indoors.hardenOff.from,
      indoors.hardenOff.to,
      'Set the trays out by day, longer each day, and take them in at night.',
    );
    add(
      'plant-out',
      indoors.plantOut,
      addDays(indoors.plantOut, 7),
      `Plant out if nights allow; look at the forecast first, and keep fleece at hand. The room is taken to be at ${question.bed.roomC} °C.`,
    );
  }
  if (harvest && verdict !== 'lost') add('harvest', harvest.from, harvest.to, 'The first may be ready.');
  return all.sort((a, b) => tasks.indexOf(a.task) - tasks.indexOf(b.task));
}
