import { readFile } from 'node:fs/promises';
import type { ForecastAnswer } from './contract/forecast.js';
import type { PlanAnswer } from './contract/plans.js';
import type { SowingAnswer } from './contract/sowings.js';
import { patientFetch } from './demo/patient-fetch.js';
import {
  beds,
  comingDays,
  counted,
  northReadings,
  pastAir,
  place,
  plan,
  probeDepthCm,
  sowings,
  today,
} from './demo/season.js';
import { inWords, planInWords, sowingInWords, windowsInWords } from './demo/words.js';

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

type Send = <Answer>(method: string, path: string, body?: object | Buffer) => Promise<Answer>;

/** Sends the demo's sowing and season to the running service and writes the answers as a gardener would read them. */
export async function showDemo(address: string, key: string | undefined, write: (text: string) => void): Promise<void> {
  const send: Send = async <Answer>(method: string, path: string, body?: object | Buffer): Promise<Answer> => {
    const type = body && { 'content-type': Buffer.isBuffer(body) ? 'text/csv' : 'application/json' };
    const headers = { ...type, ...(key === undefined ? {} : { authorization: `Bearer ${key}` }) };
    const sent = body === undefined || Buffer.isBuffer(body) ? body : JSON.stringify(body);
    const response = await patientFetch(`${address}${path}`, {
      method,
      headers,
      ...(sent === undefined ? {} : { body: sent }),
    });
    if (!response.ok) throw new Error(`The demo's question was refused: ${await response.text()}`);
    return (await response.json()) as Answer;
  };
  write('This is a demo: the society, its garden and its season of 2027 are invented.\n\n');
  write(
    'The Quillmere Allotment Society asks about lettuce sown in the north bed, with a probe in the soil beside it.\n\n',
  );
  write(inWords(await send<ForecastAnswer>('POST', `/v1/forecasts?${QUESTION}`, await readFile(FILE))));
  await putSeason(send);
  write(
    '\nThe service now keeps its place with fifteen years of air and the coming days, its two beds, and a week of a\n' +
      'second probe. When to sow lettuce in the north bed in the coming year?\n\n',
  );
  write(windowsInWords(await send('GET', `/v1/beds/north/sowing-windows?crop=lettuce&from=${today}`)));
  write('\nA date in a window is good enough in most years; what heat costs this sowing, the forecast above tells.\n');
  await showSowings(send, write);
  write('\nAnd next year, lettuce for the table every week?\n\n');
  write(planInWords(await send<PlanAnswer>('PUT', '/v1/plans/lettuce-next-year', plan)));
  write(
    `\nThe same to look at, and to ask more: ${address} in a browser. For other tools: ${address}/docs.\nThe service listens there until Ctrl-C.\n`,
  );
}

/** Uploads the society's place, its air and forecast days, its beds and its probe's readings. */
async function putSeason(send: Send): Promise<void> {
  await send('PUT', '/v1/places/quillmere', place);
  await send('POST', '/v1/places/quillmere/air', { medium: 'air', unit: 'C', daily: pastAir() });
  await send('PUT', '/v1/places/quillmere/coming-days', {
    medium: 'air',
    unit: 'C',
    origin: 'forecast',
    daily: comingDays,
  });
  for (const [id, bed] of Object.entries(beds)) await send('PUT', `/v1/beds/${id}`, { place: 'quillmere', ...bed });
  await send('POST', '/v1/beds/north/readings', {
    medium: 'soil',
    probeDepthCm,
    unit: 'C',
    readings: northReadings(),
  });
}

/**
 * Shows the effect of counts: the same forecast before and after the June row was counted; then the state of the July
 * row.
 */
async function showSowings(send: Send, write: (text: string) => void): Promise<void> {
  const carrots = `/v1/beds/north/forecast?crop=carrot&sowing=${today}`;
  const before = await send<ForecastAnswer>('GET', carrots);
  for (const [id, sowing] of Object.entries(sowings)) {
    await send('PUT', `/v1/sowings/${id}`, sowing);
    for (const [date, seedlings] of counted[id] ?? []) {
      await send('PUT', `/v1/sowings/${id}/counts/${date}`, { seedlings });
    }
  }
  const after = await send<ForecastAnswer>('GET', carrots);
  write(
    `\nCarrots sown in the north bed today: by the chart half are up on ${halfOf(before)}. But the society counted its row\n` +
      `of June, and once the service knows those counts it says ${halfOf(after)}:\n\n`,
  );
  write(sowingInWords(await send<SowingAnswer>('GET', '/v1/sowings/carrots-june')));
  write('\nAnd the onions of July, hardly to be seen yet: late, or lost?\n\n');
  write(sowingInWords(await send<SowingAnswer>('GET', '/v1/sowings/onions-july')));
}

const halfOf = ({ emergence: { half } }: ForecastAnswer): string => ('why' in half ? 'no day' : half.date);
