import { plainReader } from '../../../src/words/reader.js';
import { sayer } from '../../../src/words/say.js';

/** A fact as a reader is told it who says nothing of language and units. */
export const sayPlainly = sayer(plainReader);
