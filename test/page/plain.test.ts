import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { demo, fixture, hasNoBrowser, sentence, type Visiting, visit } from './browser.js';

const path = '/?source=file&bed=north&crop=lettuce&sowing=2027-08-03';
const tellMe = (page: Page): Promise<void> => page.getByRole('button', { name: 'Tell me' }).click();
const pasted = (page: Page): Promise<string> => page.locator('#ask [name="pasted"]').inputValue();

describe.skipIf(hasNoBrowser)('the page without JavaScript', () => {
  const service = demo();
  const plainly = (does: (page: Page) => Promise<void>, options: Visiting = { path }) =>
    visit(service, { ...options, javaScriptEnabled: false }, does);

  it('answers a link, and a form by leading to one', () =>
    plainly(
      async (page) => {
        expect(await sentence(page)).toMatch(/^Of 200 seeds expect/);
        await page.selectOption('[name="crop"]', 'carrot');
        await tellMe(page);
        await page.waitForURL(/crop=carrot/);
        expect(await sentence(page)).toMatch(/^Of 200 seeds expect/);
      },
      { path: '/?bed=north&crop=lettuce&sowing=2027-08-03&seeds=200' },
    ));

  it('explains a number without a script', () =>
    plainly(
      async (page) => {
        await page.locator('.neighbour .figure').first().click();
        expect(await page.locator('.why:popover-open').textContent()).toContain('Where it comes from');
      },
      { path: '/?bed=north' },
    ));

  it('answers a file, holds it as text, and answers of it again without its being chosen anew', () =>
    plainly(async (page) => {
      await page.setInputFiles('[name="file"]', fixture('demo/north-bed-august.csv'));
      await tellMe(page);
      const lettuce = await sentence(page);
      expect(lettuce).toMatch(/seeds expect/);
      const text = await pasted(page);
      expect(text).toMatch(/^time,soil at seed depth \(C\)\n/);
      await page.locator('[name="seeds"]').fill('300');
      await tellMe(page);
      expect(await sentence(page)).toMatch(/^Of 300 seeds expect/);
      expect(await pasted(page)).toBe(text);
    }));

  it('says of a file that it cannot hold that it has to be chosen again', () =>
    plainly(
      async (page) => {
        await page.setInputFiles('[name="file"]', fixture('logger-files/03-utf16le.csv'));
        await tellMe(page);
        expect(await sentence(page)).toMatch(/seeds expect/);
        expect(await page.locator('#file-state').textContent()).toMatch(/03-utf16le\.csv was read.*Choose it again/);
        expect(await pasted(page)).toBe('');
      },
      { path: path.replace('08-03', '05-11') },
    ));

  it('asks what can be read in two ways, and a press settles it', () =>
    plainly(
      async (page) => {
        await page.setInputFiles('[name="file"]', fixture('logger-files/82-ambiguous-order.csv'));
        await tellMe(page);
        await page.getByRole('button', { name: 'day before month' }).click();
        expect(await sentence(page)).toMatch(/seeds expect/);
        expect(await page.locator('[name="dateOrder"]').inputValue()).toBe('dmy');
        expect(await page.locator('.choices').count()).toBe(0);
      },
      { path: path.replace('08-03', '05-04') },
    ));

  it('tells of a file that cannot be read, with everything typed still there', () =>
    plainly(async (page) => {
      await page.locator('[name="seeds"]').fill('150');
      await page.setInputFiles('[name="file"]', fixture('logger-files/132-prose.csv'));
      await tellMe(page);
      expect(await page.locator('#answer .problem').textContent()).toContain('No table of readings was found');
      expect(await page.locator('[name="seeds"]').inputValue()).toBe('150');
      expect(await pasted(page)).not.toBe('');
    }));

  it('answers days that are typed in, by a link that holds them', () =>
    plainly(async (page) => {
      await page.getByLabel('days typed in').check();
      await page.locator('[name="firstDay"]').fill('2027-07-27');
      for (let i = 0; i < 7; i++) {
        await page
          .locator('[name="min"]')
          .nth(i)
          .fill(`${11 + (i % 3)}`);
        await page
          .locator('[name="max"]')
          .nth(i)
          .fill(`${21 + (i % 3)},5`);
      }
      await tellMe(page);
      await page.waitForURL(/source=days.*max=21%2C5/);
      expect(await sentence(page)).toMatch(/seeds expect/);
      expect(await page.locator('[name="max"]').first().inputValue()).toBe('21,5');
    }));
});
