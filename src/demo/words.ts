import type { ForecastAnswer } from '../contract/forecast.js';
import type { PlanAnswer } from '../contract/plans.js';
import type { SowingAnswer } from '../contract/sowings.js';
import type { WindowAnswer } from '../contract/windows.js';

/** Sowing windows in plain words: the best date, the windows, and why the dates between them are closed. */
export function windowsInWords({ years, best, windows, closed }: WindowAnswer): string {
  const lines = [
    `Years      ${years.count}, from ${years.from} to ${years.to}`,
    best ? wrapped(`Best       ${best.date}. ${best.why}`) : 'Best       no date was good in any year',
    ...windows.map(({ from, to, sureness, halfDays }) => {
      const sure = sureness === null ? '' : `, good in ${Math.round(100 * sureness)} of 100 years or more`;
      const half = halfDays ? `; half up in ${halfDays.p50} days (${halfDays.p10} to ${halfDays.p90})` : '';
      return `Window     ${from} to ${to}${sure}${half}`;
    }),
    ...closedSpells({ closed, windows }).map(({ from, to, whys }) => `Closed     ${from} to ${to}: ${whys.join(', ')}`),
  ];
  return `${lines.join('\n')}\n`;
}

const whyInWords: Record<WindowAnswer['closed'][number]['why'], string> = {
  'too-cold': 'too cold',
  'too-hot': 'too hot',
  'too-slow': 'too slow to come up',
  'frost-to-come': 'frost would follow',
  'too-late': 'no harvest would be had',
};

/** Merges closed runs without a window between them into one spell with all their reasons. */
function closedSpells({ closed, windows }: Pick<WindowAnswer, 'closed' | 'windows'>) {
  const spells: { from: string; to: string; whys: string[] }[] = [];
  for (const { from, to, why } of closed) {
    const last = spells.at(-1);
    const isJoined = last && !windows.some((window) => window.from > last.to && window.from < from);
    const spell = isJoined ? last : { from, to, whys: [] };
    if (!isJoined) spells.push(spell);
    spell.to = to;
    if (!spell.whys.includes(whyInWords[why])) spell.whys.push(whyInWords[why]);
  }
  return spells;
}

/** A forecast in plain words, with one line for each question of a gardener. */
export function inWords(answer: ForecastAnswer): string {
  const { sowing, stand, emergence, chart, keepMoist } = answer;
  const lines = [
    `Sown       ${sowing.date} at ${sowing.time}, ${sowing.depthCm} cm deep${sowing.seeds ? `, ${sowing.seeds} seeds` : ''}`,
    `First tenth of all that come up by the count  ${milestone(emergence.first)}`,
    `Half of them   ${milestone(emergence.half)}`,
    `Nine in ten    ${milestone(emergence.most)}`,
    `Stand      by ${stand.by} ${stand.laboratory} of 100 seeds in a laboratory${heldNote(stand)}`,
    `In the bed ${stand.field.from} to ${stand.field.to} of 100${stand.seedlings ? `: ${stand.seedlings.from} to ${stand.seedlings.to} seedlings` : ''}`,
    `The chart  says ${chart.days === null ? 'nothing comes' : `${chart.days} days and ${chart.percent} of 100`} at a constant ${chart.meanC} °C`,
    `Keep moist ${keepMoist.from} to ${keepMoist.to}`,
    ...(answer.hotSpells ?? []).flatMap(spell),
    ...section(
      'Take heed',
      answer.warnings.map(({ text }) => text),
    ),
    ...section(
      'This rests on',
      answer.assumptions.map(({ text }) => text),
    ),
  ];
  return `${lines.join('\n')}\n`;
}

function milestone(one: ForecastAnswer['emergence']['half']): string {
  if ('why' in one) return one.why === 'not-by-count-day' ? 'not by the count day' : 'not at this temperature';
  const range =
    one.range.to === null ? `${one.range.from} or later, even past the count` : `${one.range.from} to ${one.range.to}`;
  return `${one.date}, after ${one.days} days (${range}); in beds ${one.inBeds.from} to ${one.inBeds.to}`;
}

const heldNote = ({ laboratory, ifHeldAreLost }: ForecastAnswer['stand']): string =>
  ifHeldAreLost < laboratory ? `, ${ifHeldAreLost} if seed held by heat or cold does not recover` : '';

function spell(one: NonNullable<ForecastAnswer['hotSpells']>[number]): string[] {
  const delay = one.delayDays ? `, half comes ${one.delayDays.half} days later for it` : '';
  const risk = one.standAtRisk > 0 ? `, ${one.standAtRisk} of 100 seeds at risk` : '';
  return [
    '',
    `Hot spell  ${one.from} to ${one.to}, ${one.severity}: ${one.hours} hours above ${one.thresholdC} °C, peak ${one.peakC} °C${delay}${risk}`,
    ...one.remedies.map(({ text, hotHoursAvoided }) => {
      const hours = hotHoursAvoided;
      const saved = !hours
        ? ''
        : hours.from === hours.to
          ? ` [${hours.to} hot hours fewer]`
          : ` [${hours.from} to ${hours.to} hot hours fewer]`;
      return wrapped(`- ${text}${saved}`);
    }),
  ];
}

/** A sowing in plain words: its expected state, the counts, and what to do. */
export function sowingInWords({
  crop,
  date,
  counts,
  forecast,
  learned,
  judgement,
  resowBy,
  toDo,
}: SowingAnswer): string {
  const seen = counts.map((count) => `${count.seedlings} on ${count.date}`).join(', ');
  const lines = [
    `Sown       ${crop} on ${date}`,
    ...(seen === '' ? [] : [`Counted    ${seen}`]),
    ...(learned ? [wrapped(`Learned    ${learned.text}`)] : []),
    ...(forecast ? [`Half up    ${milestone(forecast.emergence.half)}`] : []),
    ...(judgement ? [wrapped(`It stands  ${judgement.verdict}. ${judgement.text}`)] : []),
    ...(resowBy === null || judgement?.verdict === 'good' ? [] : [`Sow again  until ${resowBy} at the latest`]),
    ...section(
      'To do',
      toDo.map(({ from, to, text }) => `${from === to ? from : `${from} to ${to}`}: ${text}`),
    ),
  ];
  return `${lines.join('\n')}\n`;
}

/** A plan in plain words: sowing dates, and the gaps. */
export function planInWords({ crop, harvest, sowings, gaps }: PlanAnswer): string {
  const lines = [
    `Wanted     ${harvest.perWeek} of ${crop} a week from ${harvest.from} to ${harvest.to}`,
    ...sowings.map(({ date, method, shaded, seeds, half, harvest: ripe }) => {
      const where = method === 'indoors' ? 'in trays' : shaded ? 'in shade' : 'in the bed';
      return `Sow        ${date} ${where}, ${seeds} seeds; half up ${half}, to pick from ${ripe.from} to ${ripe.to}`;
    }),
    ...gaps.map(({ from, to, text }) => wrapped(`Gap        ${from} to ${to}. ${text}`)),
  ];
  return `${lines.join('\n')}\n`;
}

const section = (title: string, texts: readonly string[]): string[] =>
  texts.length === 0 ? [] : ['', title, ...texts.map((text) => wrapped(`- ${text}`))];

/** Breaks a line at spaces and indents the lines after it. */
function wrapped(text: string, width = 96): string {
  const lines: string[] = [''];
  for (const word of text.split(' ')) {
    const line = lines.at(-1)!;
    if (line !== '' && line.length + 1 + word.length > width) lines.push(`  ${word}`);
    else lines[lines.length - 1] = line === '' ? word : `${line} ${word}`;
  }
  return lines.join('\n');
}
