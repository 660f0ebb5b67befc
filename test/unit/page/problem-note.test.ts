import { describe, expect, it } from 'vitest';
import type { ProblemBody } from '../../../src/page/shell/api.js';
import { problemNote } from '../../../src/page/shell/problem-note.js';
import { readerIn } from './readers.js';

const text = ({ markup }: { markup: string }): string => markup.replaceAll(/<[^>]*>/g, ' ').replaceAll(/\s+/g, ' ');
const noted = (problem: ProblemBody) => problemNote(problem, readerIn('en'));
const refusal = { status: 422, code: 'not-understood', title: '' };

describe('a refusal, in place', () => {
  it('offers each way to read it as a button of the form, with what it means, and does not say it twice', () => {
    const { markup } = noted({
      ...refusal,
      detail: 'Which unit? Send unit=F.',
      errors: [
        {
          parameter: 'unit',
          detail: 'Which unit?',
          choices: [{ value: 'F', reads: 'degrees Fahrenheit', consequence: 'minimum <0>' }],
        },
      ],
    });
    expect(markup).toContain('form="ask" name="unit" value="F"');
    expect(markup).toContain('minimum &lt;0&gt;');
    expect(markup).not.toContain('Send unit=F');
  });

  it('calls fields as the form does, and tells each once', () => {
    const said = text(
      noted({
        ...refusal,
        detail: 'depthCm must be a number; it was "abc". (1 more under "errors")',
        errors: [
          { parameter: 'depthCm', detail: 'must be a number; it was "abc"' },
          { pointer: '/sowing/seeds', detail: 'must be at least 1; it was -3' },
        ],
      }),
    );
    expect(said).toMatch(/Depth must be a number; .*How many seeds must be at least 1/);
    expect(said).not.toContain('under');
  });

  it('tells what lies behind it once', () => {
    const said = text(
      noted({
        ...refusal,
        detail: 'No row can be used. Line 2 stands on a last line that is cut off.',
        errors: [{ line: 2, detail: 'stands on a last line that is cut off' }],
      }),
    );
    expect(said.match(/cut off/g)).toHaveLength(1);
  });

  it('that may pass can be tried again, another cannot', () => {
    for (const [status, code, words] of [
      [0, 'unreached', 'Try again'],
      [503, 'busy', 'Try again'],
      [429, 'too-many-requests', 'Try again'],
      [400, 'stopped', 'Send it again'],
    ] as const) {
      expect(text(noted({ status, code, title: '', detail: 'No.' }))).toContain(words);
    }
    expect(text(noted({ ...refusal, detail: 'No.' }))).not.toContain('again');
  });
});
