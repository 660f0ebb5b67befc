import { type ErrorCode, errorCodes } from '../../basics/errors.js';
import type { Fact } from '../../basics/fact.js';

const PARTS = ['title', 'cause', 'cure'] as const;
type ProblemCode = `${(typeof PARTS)[number]}.${ErrorCode}`;

/** The title, cause and cure of each problem. */
export const problemFacts = Object.fromEntries(
  errorCodes.flatMap((code) => PARTS.map((part) => [`${part}.${code}`, {}])),
) as Readonly<Record<ProblemCode, Readonly<Record<string, never>>>>;

export const problemFact = (code: ProblemCode): Fact => ({ code, params: {} });

/** Headings of a problem's page. */
export const problemPageFacts = {
  'problem-page.status': { problem: 'text', status: 'count' },
  'problem-page.cause': {},
  'problem-page.cure': {},
} as const;
