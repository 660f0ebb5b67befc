import type { Reader } from '../../words/reader.js';
import { sayer } from '../../words/say.js';
import { worded } from './worded.js';

/** An answer as it goes out: all but its tag, its coding, and what every answer carries. */
export interface Written {
  readonly type: string;
  readonly body: string | Buffer;
  readonly headers?: Readonly<Record<string, string>>;
}

/** @param reader Whom its words are for; left out where it holds none. */
export const asJson = (content: object, reader?: Reader): Written => ({
  type: 'application/json; charset=utf-8',
  body: JSON.stringify(reader ? worded(content, sayer(reader)) : content),
});
