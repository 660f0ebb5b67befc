import { afterAll, describe, expect, it } from 'vitest';
import { endOf } from '../e2e/run-service.js';
import { answerAfter, end, fileSaid, fixture, hasNoBrowser, served, visit } from './browser.js';

const path = '/?source=file&bed=&crop=lettuce&sowing=2027-08-03&latitude=44&timeZone=Etc/GMT%2B2';

describe.skipIf(hasNoBrowser)('a service that goes away and comes back', () => {
  afterAll(end);

  it('is asked again by a press, and nothing that was entered is lost meanwhile', async () => {
    const first = await served([]);
    const { address } = first;
    await visit({ address }, { path, mayLog: /ERR_CONNECTION/ }, async (page) => {
      const before = await answerAfter(page, () =>
        page.setInputFiles('[name="file"]', fixture('demo/north-bed-august.csv')),
      );
      first.child.kill('SIGKILL');
      await endOf(first);
      const away = /does not answer just now. What you entered is still here/;
      expect(await answerAfter(page, () => page.locator('[name="seeds"]').fill('150'))).toMatch(away);
      // What the file says has to be asked anew, too.
      await page.selectOption('[name="medium"]', 'soil');
      await page.locator('#file-state .problem').waitFor();
      expect(await fileSaid(page)).toMatch(away);
      await page.waitForURL(/seeds=150.*medium=soil/);

      await served([], { PORT: new URL(address).port });
      const again = await answerAfter(page, () => page.getByRole('button', { name: 'Try again' }).first().click());
      expect(again).toMatch(/^Of 150 seeds expect/);
      expect(before).toMatch(/^Of a hundred seeds expect/);
      expect(await page.locator('[name="seeds"]').inputValue()).toBe('150');
      expect(await page.locator('.problem').count()).toBe(0);
    });
  });
});
