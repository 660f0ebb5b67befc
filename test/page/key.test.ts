import { describe, expect, it } from 'vitest';
import { answerAfter, demo, fixture, hasNoBrowser, sentence, visit } from './browser.js';

const KEY = 'plain-key-of-the-society';
/** Without a key the page itself is refused, and says so. */
const mayLog = /status of 401/;

describe.skipIf(hasNoBrowser)('a service that needs a key', () => {
  const service = demo({ API_KEYS: `society:${KEY}` });

  it('asks for it once, keeps it where no script reads it, and forgets it and the file when told to', () =>
    visit(service, { path: '/', mayLog }, async (page) => {
      await page.getByLabel('Key').fill('no-key-of-the-society');
      await page.getByRole('button', { name: 'Let me in' }).click();
      await page.getByRole('alert').waitFor();
      await page.getByLabel('Key').fill(KEY);
      await page.getByRole('button', { name: 'Let me in' }).click();
      await page.getByRole('link', { name: /^Show / }).click();
      expect(await sentence(page)).toMatch(/seeds expect/);
      const [cookie, ...others] = await page.context().cookies();
      expect(others).toEqual([]);
      expect(cookie).toMatchObject({ httpOnly: true, sameSite: 'Strict' });
      expect(cookie!.value).not.toContain(KEY);
      expect(await page.evaluate(() => document.cookie)).toBe('');

      await page.goto(`${service.address}/?bed=north&source=file&sowing=2027-08-03`);
      await answerAfter(page, () => page.setInputFiles('[name="file"]', fixture('demo/north-bed-august.csv')));
      await page.getByRole('button', { name: 'Forget my key here' }).click();
      await page.getByLabel('Key').waitFor();
      expect(await page.context().cookies()).toEqual([]);

      await page.getByLabel('Key').fill(KEY);
      await page.getByRole('button', { name: 'Let me in' }).click();
      await page.getByRole('link', { name: /^Show / }).waitFor();
      await page.goto(`${service.address}/?bed=north&source=file&sowing=2027-08-03`);
      await page.locator('#answer .waiting').waitFor();
      expect(await page.locator('#file-state').textContent()).toBe('');
    }));
});
