import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { demo, foundByAxe, hasNoBrowser, tabTo, visit } from './browser.js';

const path = '/?view=growing&bed=';

/** Waits until the page says so, where screen readers hear it. */
const isSaid = (page: Page, words: string) =>
  page.waitForFunction((wanted) => document.querySelector('#said')?.textContent?.includes(wanted), words);

const form = (page: Page, sowing: string) => page.locator(`#count-${sowing}`);

/** What has been counted of a sowing, as `3 Aug 4`. */
const counted = (page: Page, sowing: string): Promise<string[]> =>
  page.locator(`#sowing-${sowing} tbody tr`).evaluateAll((rows) =>
    rows.map((row) =>
      [...row.children]
        .slice(0, 2)
        .map((cell) => cell.textContent)
        .join(' '),
    ),
  );

const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const one = document.activeElement as HTMLInputElement;
    return `${one.closest('form')?.id ?? one.id} ${one.name ?? ''}`.trim();
  });

describe.skipIf(hasNoBrowser)('what is growing, asked of the page', () => {
  const service = demo();

  it('takes a count by the keyboard alone, says so, and leaves the focus and what is half typed elsewhere', () =>
    visit(service, { path }, async (page) => {
      await form(page, 'onions-july').getByLabel('Seedlings').fill('77');
      await page.locator('#forecast-of-onions-july summary').first().click();
      await tabTo(page, '#count-carrots-june [name="seedlings"]');
      await page.keyboard.type('85');
      await page.keyboard.press('Enter');
      await isSaid(page, 'Counted: 85 on 3 August');
      expect(await counted(page, 'carrots-june')).toContain('3 Aug 85');
      expect(await focused(page)).toBe('count-carrots-june seedlings');
      expect(await form(page, 'carrots-june').getByLabel('Seedlings').inputValue()).toBe('');
      expect(await form(page, 'onions-july').getByLabel('Seedlings').inputValue()).toBe('77');
      expect(await page.locator('#forecast-of-onions-july').getAttribute('open')).not.toBeNull();
    }));

  it('takes it without a script too, and shows what was typed where it cannot be', () =>
    visit(service, { path, javaScriptEnabled: false, mayLog: /422/ }, async (page) => {
      await form(page, 'carrots-june').getByLabel('Seedlings').fill('9000');
      await form(page, 'carrots-june').getByRole('button', { name: 'Count' }).click();
      await form(page, 'carrots-june').getByText('must not be more than the 200 seeds').waitFor();
      expect(await form(page, 'carrots-june').getByLabel('Seedlings').inputValue()).toBe('9000');
      await form(page, 'carrots-june').getByLabel('Seedlings').fill('86');
      await form(page, 'carrots-june').getByRole('button', { name: 'Count' }).click();
      await page.waitForURL(/view=growing&bed=#sowing-carrots-june$/);
      expect(await counted(page, 'carrots-june')).toContain('3 Aug 86');
    }));

  it('keeps what was typed while the service is away, and sends it once it is back', () =>
    visit(service, { path, mayLog: /ERR_FAILED/ }, async (page) => {
      await page.route('**/v1/**', (route) => route.abort());
      await form(page, 'onions-july').getByLabel('Seedlings').fill('5');
      await form(page, 'onions-july').getByRole('button', { name: 'Count' }).click();
      await form(page, 'onions-july').getByText('The service does not answer just now').waitFor();
      expect(await form(page, 'onions-july').getByLabel('Seedlings').inputValue()).toBe('5');
      await page.unroute('**/v1/**');
      await form(page, 'onions-july').getByRole('button', { name: 'Try again' }).click();
      await isSaid(page, 'Counted: 5 on 3 August');
      expect(await counted(page, 'onions-july')).toContain('3 Aug 5');
    }));

  it('keeps a sowing and shows how it stands, changes it, and forgets it once that is confirmed', () =>
    visit(service, { path }, async (page) => {
      await page.getByText('Keep another sowing').click();
      const sow = page.locator('#sow-new');
      await sow.getByLabel('Crop').selectOption('radish');
      await sow.locator('[name="bed"]').selectOption('frame');
      await sow.getByLabel('How many seeds').fill('60');
      await sow.getByRole('button').click();
      await isSaid(page, 'Kept: Radish, sown 3 August');
      expect(await focused(page)).toBe('sowing-radish-2027-08-03');
      const section = page.locator('#sowing-radish-2027-08-03');
      await section.getByText('Change this sowing').click();
      await section.getByLabel('How many seeds', { exact: true }).fill('70');
      await section.getByRole('button', { name: 'Change it' }).click();
      await isSaid(page, 'Changed: Radish, sown 3 August');
      await section.getByText('Frame, 70 seeds').waitFor();
      await section.getByText('Forget this sowing').click();
      await section.getByRole('button', { name: 'Yes, forget it' }).click();
      await isSaid(page, 'Forgotten');
      expect(await section.count()).toBe(0);
    }));

  it('explains its numbers without a script', () =>
    visit(service, { path, javaScriptEnabled: false }, async (page) => {
      await page.locator('.figure[popovertarget="why-onions-july-half"]').click();
      expect(await page.locator('#why-onions-july-half').isVisible()).toBe(true);
    }));

  for (const width of [360, 1600]) {
    it(`fits ${width} pixels, all unfolded`, () =>
      visit(service, { path, viewport: { width, height: 900 } }, async (page) => {
        await page.locator('details').evaluateAll((all) => all.forEach((one) => void one.setAttribute('open', '')));
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
      }));
  }

  for (const colorScheme of ['light', 'dark'] as const) {
    it(`has nothing in ${colorScheme} colours that keeps anybody out`, () =>
      visit(service, { path, colorScheme, bypassCSP: true }, async (page) => {
        await page.locator('details').evaluateAll((all) => all.forEach((one) => void one.setAttribute('open', '')));
        expect(await foundByAxe(page, true)).toEqual([]);
      }));
  }
});
