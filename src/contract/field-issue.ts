import type { z } from 'zod';
import type { Fact } from '../basics/fact.js';
import { type FieldCode, fieldFact } from '../basics/field-facts.js';

/** A schema's message for a value that it rejects: the code of a fact, to be worded for the reader. */
export const mustBe = (code: FieldCode): string => code;

/** Adds a fault with its parameters to a schema's findings. */
export function addIssue(context: z.RefinementCtx, path: readonly (string | number)[], { code, params }: Fact): void {
  context.addIssue({ code: 'custom', path: [...path], message: code, params: { ...params } });
}

export { fieldFact };
