import type { z } from 'zod';
import type { Fact } from '../basics/fact.js';
import { type FieldCode, fieldFact } from '../basics/field-facts.js';

/** What a schema says of a value that it does not take: the code of a fact, of which the reader's words are made. */
export const mustBe = (code: FieldCode): string => code;

/** Adds a fault to what a schema found; its parameters go along. */
export function addIssue(context: z.RefinementCtx, path: readonly (string | number)[], { code, params }: Fact): void {
  context.addIssue({ code: 'custom', path: [...path], message: code, params: { ...params } });
}

export { fieldFact };
