import type { Say } from '../words/say.js';
import { worded } from './worded.js';

/** An answer as it goes out: all but its tag, its coding, and what every answer carries. */
export interface Written {
  readonly type: string;
  readonly body: string | Buffer;
  readonly headers?: Readonly<Record<string, string>>;
}

/** @param say Puts the words into it; left out where it holds none. */
export const asJson = (content: object, say?: Say): Written => ({
  type: 'application/json; charset=utf-8',
  body: JSON.stringify(say ? worded(content, say) : content),
});
