import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { answerAfter, demo, fixture, foundByAxe, hasNoBrowser, sentence, visit } from './browser.js';

const path = '/?bed=north&crop=lettuce&sowing=2027-08-03&seeds=200';
const LEAVES = [path, '/?view=when&bed=north&crop=lettuce', '/?view=growing&ofBed=', '/', '/?bed=&source=days'];

describe.skipIf(hasNoBrowser)('the page in German', () => {
  const service = demo();
  const inGerman = (does: (page: Page) => Promise<void>, at = path) =>
    visit(service, { path: at, locale: 'de-DE', mayLog: /status of 4\d\d/ }, does);

  for (const colorScheme of ['light', 'dark'] as const) {
    it(`bars nobody in ${colorScheme}, as far as axe can tell`, () =>
      inGerman(async (page) => {
        await page.emulateMedia({ colorScheme });
        for (const leaf of LEAVES) {
          await page.goto(new URL(leaf, page.url()).href);
          await page.waitForLoadState('networkidle');
          expect(await foundByAxe(page), leaf).toEqual([]);
        }
      }));
  }

  it('scrolls nowhere sideways on a small phone', () =>
    inGerman(async (page) => {
      await page.setViewportSize({ width: 320, height: 640 });
      for (const leaf of LEAVES) {
        await page.goto(new URL(leaf, page.url()).href);
        await page.waitForLoadState('networkidle');
        expect(await page.evaluate(() => document.documentElement.scrollWidth), leaf).toBeLessThanOrEqual(320);
      }
    }));

  it('stays German where its script answers', () =>
    inGerman(async (page) => {
      await answerAfter(page, () => page.locator('[name="seeds"]').fill('300'));
      expect(await sentence(page)).toMatch(/^Von 300 Samen sind \d+ bis \d+ Sämlinge zu erwarten/);
      expect(await page.locator('#asked').textContent()).toContain('gesät am 3. August');
      await answerAfter(page, () => page.locator('[name="degrees"][value="F"]').check());
      expect(await page.locator('#answer').textContent()).toMatch(/\d,\d °F/);
    }));

  it('says in German what is wrong with a file', () =>
    inGerman(async (page) => {
      await page.setInputFiles('[name="file"]', fixture('logger-files/132-prose.csv'));
      await page.locator('#file-state .problem').waitFor();
      expect(await page.locator('#file-state h2').textContent()).toBe('Das lässt sich noch nicht beantworten');
      expect(await page.locator('#file-state .given').textContent()).toMatch(/132-prose\.csv, \d+ KB Datei entfernen/);
    }, '/?bed=north&source=file'));

  it('is left for English with what is typed just now, and the choice holds', () =>
    inGerman(async (page) => {
      await answerAfter(page, () => page.locator('[name="seeds"]').fill('310'));
      await page.getByRole('link', { name: 'English' }).click();
      await page.waitForURL(/lang=en/);
      expect(await sentence(page)).toMatch(/^Of 310 seeds expect/);
      await answerAfter(page, () => page.locator('[name="seeds"]').fill('320'));
      expect(await sentence(page)).toMatch(/^Of 320 seeds expect/);
      await page.getByRole('link', { name: 'When to sow' }).click();
      await page.waitForURL(/lang=en/);
      expect(await page.locator('h1').textContent()).toBe('When to sow');
    }));

  it('lets the language be chosen without JavaScript', () =>
    visit(service, { path, locale: 'en-GB', javaScriptEnabled: false }, async (page) => {
      await page.getByRole('link', { name: 'Deutsch' }).click();
      expect(await sentence(page)).toMatch(/^Von 200 Samen/);
      await page.locator('[name="seeds"]').fill('330');
      await page.getByRole('button', { name: 'Antwort zeigen' }).click();
      await page.waitForURL(/lang=de.*seeds=330|seeds=330.*lang=de/);
      expect(await sentence(page)).toMatch(/^Von 330 Samen/);
    }));
});
