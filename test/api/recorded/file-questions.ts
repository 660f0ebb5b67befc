import { readFileSync } from 'node:fs';
import { post, type Question } from './question.js';
import { csvOf, fahrenheit, soilHours, withOffset } from './weather.js';

const FOLDER = new URL('../../../fixtures/logger-files/', import.meta.url);

interface LoggerFile {
  readonly file: string;
  readonly query: Readonly<Record<string, string>>;
}

/** Every other one of the files that thermometers write, and all that are refused or asked about. */
const loggerFiles = (
  JSON.parse(readFileSync(new URL('expected.json', FOLDER), 'utf8')) as (LoggerFile & { expect: { status: number } })[]
).filter(({ expect: { status } }, i) => status !== 200 || i % 2 === 0);

const check = (payload: Parameters<typeof post>[1], query: Readonly<Record<string, string>>, as: string): Question =>
  post(`/v1/readings/check?${new URLSearchParams(query)}`, payload, { as });

const rows = withOffset(soilHours('2027-05-03T00:00', 96, { meanC: 14 }));
const jumping = rows.map(({ at, value }, hour) => ({ at, value: hour === 40 ? value + 12 : value }));
const inFahrenheit = ({ at, value }: { at: string; value: number }): string => `${at},${fahrenheit(value)}`;
const [soil, timeZone] = ['soil', 'Etc/GMT+2'];

/** What is understood of files and of series. */
export const fileQuestions: readonly Question[] = [
  ...loggerFiles.map(({ file, query }) => check(readFileSync(new URL(file, FOLDER)), query, file)),
  check(csvOf('time,soil (C)', jumping), { timeZone }, 'a jump of 12 K'),
  check(csvOf('time,soil (F)', jumping, inFahrenheit), { timeZone }, 'a jump of 12 K in °F'),
  check(csvOf('time,soil', rows, inFahrenheit), { timeZone, unit: 'F' }, 'a unit that is told'),
  check(csvOf('time,probe (C)', rows), { timeZone, medium: soil, precision: 'full' }, 'unrounded'),
  check(
    { medium: soil, unit: 'F', readings: rows.map(({ at, value }) => ({ at, value: fahrenheit(value) })) },
    {},
    'JSON',
  ),
  check(
    {
      medium: 'air',
      daily: [
        { date: '2027-05-03', min: 7, max: 18 },
        { date: '2027-05-05', mean: 12 },
      ],
    },
    { timeZone },
    'days',
  ),
];
