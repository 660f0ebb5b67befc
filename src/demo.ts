import { readFile } from 'node:fs/promises';
import type { ForecastAnswer } from './http/schemas/forecast.js';

const FILE = new URL('../fixtures/demo/north-bed-august.csv', import.meta.url);
const QUESTION = new URLSearchParams({
  crop: 'lettuce',
  sowing: '2027-08-03',
  'sowing.time': '10:00',
  seeds: '200',
  medium: 'soil',
  latitude: '44',
  longitude: '-30',
  timeZone: 'Etc/GMT+2',
});

/** Asks the running service about the demo's sowing, and tells the answer as a gardener would want to read it. */
export async function showDemo(address: string, key: string | undefined, write: (text: string) => void): Promise<void> {
  const response = await fetch(`${address}/v1/forecasts?${QUESTION}`, {
    method: 'POST',
    headers: { 'content-type': 'text/csv', ...(key === undefined ? {} : { authorization: `Bearer ${key}` }) },
    body: await readFile(FILE),
  });
  if (!response.ok) throw new Error(`The demo's question was refused: ${await response.text()}`);
  const answer = (await response.json()) as ForecastAnswer;
  write(
    `The Quillmere Allotment Society asks about lettuce sown in the north bed, with a probe in the soil beside it.\n\n`,
  );
  write(inWords(answer));
  write(`\nThe service listens at ${address}, its documentation is at ${address}/docs. Stop it with Ctrl-C.\n`);
}

/** A forecast in plain words, a line to each thing a gardener asks. */
export function inWords(answer: ForecastAnswer): string {
  const { sowing, stand, emergence, chart, keepMoist } = answer;
  const lines = [
    `Sown       ${sowing.date} at ${sowing.time}, ${sowing.depthCm} cm deep${sowing.seeds ? `, ${sowing.seeds} seeds` : ''}`,
    `First tenth of all that come up by the count  ${milestone(emergence.first)}`,
    `Half of them   ${milestone(emergence.half)}`,
    `Nine in ten    ${milestone(emergence.most)}`,
    `Stand      by ${stand.by} ${stand.laboratory} of 100 seeds in a laboratory${held(stand)}`,
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

const held = ({ laboratory, ifHeldAreLost }: ForecastAnswer['stand']): string =>
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

const section = (title: string, texts: readonly string[]): string[] =>
  texts.length === 0 ? [] : ['', title, ...texts.map((text) => wrapped(`- ${text}`))];

/** Breaks a line at spaces, with later lines set in. */
function wrapped(text: string, width = 96): string {
  const lines: string[] = [''];
  for (const word of text.split(' ')) {
    const line = lines.at(-1)!;
    if (line !== '' && line.length + 1 + word.length > width) lines.push(`  ${word}`);
    else lines[lines.length - 1] = line === '' ? word : `${line} ${word}`;
  }
  return lines.join('\n');
}
