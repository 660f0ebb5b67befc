import { expect, test } from 'vitest';
import { now } from '../../src/demo/season.js';
import { showDemo } from '../../src/demo.js';
import { startApp } from './helper.js';

test('the demo asks again where the service is too busy for a question', async () => {
  const app = await startApp({ clock: () => now });
  const asked: string[] = [];
  app.addHook('onRequest', async ({ url }, reply) => {
    if (!url.includes('/sowing-windows')) return;
    asked.push(url);
    if (asked.length === 1) await reply.code(503).header('retry-after', 1).send();
  });
  const address = await app.listen({ host: '127.0.0.1', port: 0 });
  let shown = '';
  await showDemo(address, undefined, (text) => {
    shown += text;
  });
  expect(asked).toEqual([asked[0], asked[0]]);
  expect(shown).toContain('Window     2027-08-');
  expect(shown).toContain('Wanted     10 of lettuce a week');
  await app.close();
}, 120_000);
