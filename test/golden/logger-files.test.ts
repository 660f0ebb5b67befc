import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { CheckAnswer } from '../../src/contract/readings.js';
import type { Problem } from '../../src/http/problems/problems.js';
import { startApp } from '../api/helper.js';

/** Invented files of the kinds that thermometers write; `make.py` beside them worked out what each must answer. */
const FOLDER = new URL('../../fixtures/logger-files/', import.meta.url);

interface Expected {
  readonly file: string;
  readonly traps: readonly string[];
  readonly query: Readonly<Record<string, string | number>>;
  readonly expect: Answered | Refused;
}
interface Answered {
  readonly status: 200;
  readonly report: Readonly<Record<string, unknown>>;
  readonly droppedLines?: readonly number[];
  readonly doubtfulLines?: readonly number[];
  /** Lines that are dropped or doubtful, in any order; or how many at least. */
  readonly toldLines?: readonly number[];
  readonly toldAtLeast?: number;
}
interface Refused {
  readonly status: 400 | 422;
  readonly code: string;
  readonly parameter?: string;
  readonly choices?: readonly string[];
  readonly then?: {
    readonly query: Readonly<Record<string, string>>;
    readonly report: Readonly<Record<string, unknown>>;
  };
}

const cases = JSON.parse(readFileSync(new URL('expected.json', FOLDER), 'utf8')) as Expected[];
const app = await startApp();

async function check(file: string, query: Readonly<Record<string, string | number>>) {
  const asked = new URLSearchParams();
  for (const [name, value] of Object.entries(query)) asked.set(name, String(value));
  return app.inject({
    method: 'POST',
    url: `/v1/readings/check?${asked}`,
    headers: { 'content-type': 'text/csv' },
    payload: readFileSync(new URL(file, FOLDER)),
  });
}

describe('the files that thermometers write', () => {
  it('are at least sixty, of every kind', () => {
    expect(cases.length).toBeGreaterThanOrEqual(60);
  });

  it.each(cases)('$file: $traps', async ({ file, query, expect: expected }) => {
    const response = await check(file, query);
    const body = response.json();
    if (expected.status === 200) {
      expect(body, response.body.slice(0, 600)).toMatchObject(expected.report);
      const answer = body as CheckAnswer;
      if (expected.droppedLines) expect(answer.dropped.map(({ line }) => line)).toEqual(expected.droppedLines);
      if (expected.doubtfulLines) expect(answer.doubtful!.map(({ line }) => line)).toEqual(expected.doubtfulLines);
      const told = [...answer.dropped, ...answer.doubtful!].map(({ line }) => line);
      if (expected.toldLines) expect(told).toEqual(expect.arrayContaining([...expected.toldLines]));
      if (expected.toldAtLeast) {
        expect(answer.droppedCount + answer.doubtfulCount!).toBeGreaterThanOrEqual(expected.toldAtLeast);
      }
      return;
    }
    const problem = body as Problem;
    expect([response.statusCode, problem.code], response.body.slice(0, 600)).toEqual([expected.status, expected.code]);
    const [fault] = problem.errors ?? [];
    if (expected.parameter) expect(fault?.parameter).toBe(expected.parameter);
    if (expected.choices) expect(fault?.choices?.map(({ value }) => value)).toEqual(expected.choices);
    for (const choice of fault?.choices ?? []) {
      const again = await check(file, { ...query, [fault!.parameter!]: choice.value });
      const asksTheSame =
        again.statusCode !== 200 && (again.json() as Problem).errors?.[0]?.parameter === fault!.parameter;
      expect(asksTheSame, `${choice.value} is asked again: ${again.body.slice(0, 300)}`).toBe(false);
    }
    if (expected.then) {
      const settled = await check(file, { ...query, ...expected.then.query });
      expect(settled.json(), settled.body.slice(0, 600)).toMatchObject(expected.then.report);
    }
  });
});
