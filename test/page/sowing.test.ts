import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { killAll } from '../e2e/run-service.js';
import { closeBrowser, demoService, hasNoBrowser, sentence, visit } from './browser.js';

describe.skipIf(hasNoBrowser)('a sowing, asked of the page', () => {
  let address: string;
  beforeAll(async () => {
    address = (await demoService()).address;
  });
  afterAll(async () => {
    await closeBrowser();
    killAll();
  });

  it('is answered in a sentence from what is kept of a bed', () =>
    visit(address, { path: '/?bed=north&crop=lettuce&sowing=2027-08-03' }, async (page) => {
      expect(await sentence(page)).toMatch(/seeds expect .* seedlings/);
    }));
});
