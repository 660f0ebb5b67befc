import { expect, test } from 'vitest';
import { sessionLabel } from '../../../src/http/auth/session-label.js';

test.each([
  ['Mozilla/5.0 (X11; Linux x86_64; rv:140.0) Gecko/20100101 Firefox/140.0', 'Firefox on Linux'],
  [
    'Mozilla/5.0 (Windows NT 10.0; Win64; x64) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/130.0.0.0 Safari/537.36 Edg/130.0.0.0',
    'Edge on Windows',
  ],
  [
    'Mozilla/5.0 (iPhone; CPU iPhone OS 18_0 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/18.0 Mobile/15E148 Safari/604.1',
    'Safari on iPhone',
  ],
  ['garden-tool/1.2', 'garden-tool/1.2'],
  ['x\u0000y\u202ez'.repeat(100), expect.stringMatching(/^[x-z ]{1,60}$/)],
  ['', 'A browser that does not say what it is'],
  [undefined, 'A browser that does not say what it is'],
])('%s', (userAgent, label) => {
  expect(sessionLabel(userAgent)).toEqual(label);
});
