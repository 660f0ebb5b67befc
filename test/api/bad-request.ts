import type { FastifyInstance, InjectOptions } from 'fastify';
import { expect } from 'vitest';
import type { ErrorCode } from '../../src/basics/errors.js';

/** A request that is to be refused, and how. */
export interface BadRequest {
  readonly name: string;
  readonly ask: InjectOptions;
  readonly status: number;
  readonly code: ErrorCode;
  /** What the detail must say. */
  readonly says: string | RegExp;
  /** Where the first of the errors lies: a JSON pointer (with #), or a query parameter. */
  readonly at?: string | undefined;
  readonly line?: number | undefined;
}

export const refused = (
  status: number,
  code: ErrorCode,
  name: string,
  ask: InjectOptions,
  says: string | RegExp,
  at?: string,
  line?: number,
): BadRequest => ({ name, ask, status, code, says, at, line });

/** Whatever is wrong, the answer is a problem that tells a gardener what to change. */
export async function expectProblem(
  service: FastifyInstance,
  { ask, status, code, says, at, line }: BadRequest,
): Promise<void> {
  const response = await service.inject(ask);
  expect(response.statusCode, response.body.slice(0, 300)).toBe(status);
  expect(response.headers['content-type']).toMatch(/^application\/problem\+json\b/);
  const problem = response.json();
  expect(problem).toMatchObject({ status, code, type: `/problems/${code}` });
  expect(problem.title.length).toBeGreaterThan(5);
  expect(problem.instance).toMatch(/^urn:uuid:[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/);
  expect(problem.detail).toMatch(says);
  expect(problem.detail).toMatch(/^\S+( \S+){3,}[.?)]$/);
  expect(problem.detail).not.toMatch(/[^.][.?!:]\.$/);
  expect(problem.detail).not.toContain('FST_');
  if (at !== undefined) {
    const [first] = problem.errors;
    expect(at.startsWith('#') ? first.pointer : first.parameter).toBe(at);
    expect(first.detail.length).toBeGreaterThan(5);
  }
  if (line !== undefined) expect(problem.errors[0].line).toBe(line);
  // From elsewhere: whoever has used up its requests would be refused this too.
  const page = await service.inject({ url: problem.type, remoteAddress: '192.0.2.1' });
  expect(page.statusCode).toBe(200);
  expect(page.headers['content-type']).toMatch(/^text\/html\b/);
}
