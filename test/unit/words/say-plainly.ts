import { factStored } from '../../../src/garden/store/stored-fact.js';
import { SourceError } from '../../../src/sources/source-error.js';
import { plainReader } from '../../../src/words/reader.js';
import { sayer } from '../../../src/words/say.js';

/** A fact as a reader is told it who says nothing of language and units. */
export const sayPlainly = sayer(plainReader);

/** The same of a fact as the store keeps it. */
export const sayStored = (text: string): string => sayPlainly(factStored(text));

/** What comes of some work, or, where a source failed, an error whose message is what the owner of the place reads. */
export const inPlainWords = <T>(work: Promise<T>): Promise<T> =>
  work.catch((error: unknown) => {
    if (error instanceof SourceError) error.message = sayPlainly(error.fact);
    throw error;
  });
