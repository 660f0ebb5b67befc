import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { answerAfter, demo, hasNoBrowser, sentence, tabTo, visit } from './browser.js';

const path = '/?bed=north&crop=lettuce&sowing=2027-08-03&seeds=200';

/** Fills the table of days, as `[lowest, highest]` each. */
async function typeDays(page: Page, days: readonly (readonly [string, string])[]): Promise<void> {
  for (const [i, [min, max]] of days.entries()) {
    await page.locator('[name="min"]').nth(i).fill(min);
    await page.locator('[name="max"]').nth(i).fill(max);
  }
}

const WEEK = [
  ['12', '22'],
  ['12.5', '22,5'],
  ['13', '23'],
  ['12', '24'],
  ['13', '21'],
  ['12', '20'],
  ['11', '21'],
] as const;

const dailyRows = (page: Page) =>
  page.getByRole('region', { name: 'The days in numbers', includeHidden: true }).locator('tbody tr');

describe.skipIf(hasNoBrowser)('a sowing, asked of the page', () => {
  const service = demo();

  it('is answered in a sentence from what is kept of a bed', () =>
    visit(service, { path }, async (page) => {
      expect(await sentence(page)).toMatch(/^Of 200 seeds expect \d+ to \d+ seedlings/);
    }));

  it('is answered from days that are typed in, which the link holds', () =>
    visit(service, { path }, async (page) => {
      await page.getByLabel('days typed in').check();
      const said = await answerAfter(page, async () => {
        await page.locator('[name="firstDay"]').fill('2027-07-27');
        await typeDays(page, WEEK);
        await page.waitForURL(/max=21$|max=21&/);
        await page.getByRole('button', { name: 'Tell me' }).click();
      });
      expect(said).toMatch(/^Of 200 seeds expect/);
      const link = await page.locator('#link').getAttribute('href');
      expect(link).toContain('source=days');
      await visit(service, { path: link! }, async (shared) => expect(await sentence(shared)).toBe(said));
    }));

  it('keeps all that was typed over a reload, and what is half typed or wrong too', () =>
    visit(service, { path: '/?bed=' }, async (page) => {
      await page.getByLabel('days typed in').check();
      const typed = {
        seeds: '12',
        latitude: '44',
        longitude: '-',
        timeZone: 'Etc/GMT+',
        shadePercent: 'some',
        firstDay: '2027-05-01',
        probeDepthCm: '5,',
      };
      for (const [name, value] of Object.entries(typed)) await page.locator(`[name="${name}"]`).fill(value);
      await page.selectOption('[name="kind"]', 'pot');
      await page.selectOption('[name="crop"]', 'onion');
      await typeDays(page, [['9', '1x']]);
      await page.waitForURL(/1x/);
      await page.locator('#answer .problem').waitFor();
      await page.reload();
      for (const [name, value] of Object.entries({ ...typed, kind: 'pot', crop: 'onion' })) {
        expect(await page.locator(`[name="${name}"]`).inputValue(), name).toBe(value);
      }
      expect(await page.locator('[name="max"]').first().inputValue()).toBe('1x');
      expect(await page.getByLabel('days typed in').isChecked()).toBe(true);
    }));

  it('is told in °F as the same temperatures, at once', () =>
    visit(service, { path }, async (page) => {
      const degrees = async (): Promise<number> =>
        Number.parseFloat((await dailyRows(page).first().locator('td').first().textContent())!);
      const celsius = await degrees();
      await answerAfter(page, () => page.getByRole('radio', { name: '°F' }).check());
      expect(Math.abs((await degrees()) - (celsius * 1.8 + 32))).toBeLessThan(0.2);
      expect(await page.locator('#answer').textContent()).not.toContain('°C');
      expect(page.url()).toContain('degrees=F');
    }));

  it("names days in the reader's language", () =>
    visit(service, { path, locale: 'de-DE' }, async (page) => {
      const days = /(Mo|Di|Mi|Do|Fr|Sa|So)[a-z.]*, \d+\. Aug/;
      expect(await page.locator('#answer tbody').first().textContent()).toMatch(days);
      await answerAfter(page, () => page.selectOption('[name="crop"]', 'carrot'));
      expect(await page.locator('#answer tbody').first().textContent()).toMatch(days);
    }));

  it('is answered by keyboard alone, and so is the question what a number is', () =>
    visit(service, { path: '/' }, async (page) => {
      await page.keyboard.press('Tab');
      expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('To the answer');
      await tabTo(page, '[name="crop"]');
      await page.keyboard.type('Carrot');
      await tabTo(page, '[name="seeds"]');
      await page.keyboard.type('300');
      await tabTo(page, 'button.main');
      expect(await answerAfter(page, () => page.keyboard.press('Enter'))).toMatch(/^Of 300 seeds/);
      await tabTo(page, '.neighbour .figure');
      const why = page.locator('.why:popover-open');
      await page.keyboard.press('Enter');
      expect(await why.textContent()).toMatch(/What it is.*Where it comes from.*How sure/s);
      await page.keyboard.press('Escape');
      expect(await why.count()).toBe(0);
      expect(await page.evaluate(() => document.activeElement?.className)).toBe('figure');
    }));

  it('moves nothing for who asked for less motion', () =>
    visit(service, { path, reducedMotion: 'reduce' }, async (page) => {
      await sentence(page);
      const moving = await page.evaluate(() => {
        document.querySelector('#answer')!.setAttribute('aria-busy', 'true');
        return [...document.querySelectorAll('*')].filter((one) => {
          const { transitionDuration, animationName, scrollBehavior } = getComputedStyle(one);
          return !/^0s(, 0s)*$/.test(transitionDuration) || animationName !== 'none' || scrollBehavior === 'smooth';
        }).length;
      });
      expect(moving).toBe(0);
    }));

  it('is printed without what was asked with', () =>
    visit(service, { path }, async (page) => {
      await sentence(page);
      await page.emulateMedia({ media: 'print' });
      for (const gone of ['form#ask', 'nav:has([data-tab])', '.languages', '#keep'])
        expect(await page.locator(gone).isVisible(), gone).toBe(false);
      for (const there of ['.neighbour', '.pictures svg']) {
        expect(await page.locator(there).filter({ visible: true }).count(), there).toBeGreaterThan(0);
      }
    }));

  it('can be kept as a picture and as numbers that are what they say', () =>
    visit(service, { path }, async (page) => {
      await sentence(page);
      const kept = async (button: string): Promise<{ name: string; content: Buffer }> => {
        const [download] = await Promise.all([
          page.waitForEvent('download'),
          page.getByRole('button', { name: button }).click(),
        ]);
        return { name: download.suggestedFilename(), content: await readFile(await download.path()) };
      };
      const svg = await kept('Picture as SVG');
      expect(svg.name).toBe('forecast.svg');
      // In a document of its own: this one's policy allows a picture no style.
      const blank = await page.context().newPage();
      const root = await blank.evaluate((text) => {
        const { documentElement } = new DOMParser().parseFromString(text, 'image/svg+xml');
        return [documentElement.nodeName, documentElement.getAttribute('width')];
      }, svg.content.toString());
      expect(root).toEqual(['svg', '1000']);

      const png = await kept('Picture as PNG');
      expect(png.name).toBe('forecast.png');
      const colours = await page.evaluate(async (base64) => {
        const bytes = Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
        const image = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
        const canvas = new OffscreenCanvas(image.width, image.height).getContext('2d')!;
        canvas.drawImage(image, 0, 0);
        const seen = new Set(new Uint32Array(canvas.getImageData(0, 0, image.width, image.height).data.buffer));
        return { width: image.width, count: seen.size };
      }, png.content.toString('base64'));
      expect(colours.width).toBe(2000);
      expect(colours.count).toBeGreaterThan(20);

      const csv = await kept('Numbers as CSV');
      expect(csv.name).toBe('forecast.csv');
      const response = await page.request.post(
        `${service.address}/v1/readings/check?medium=soil&timeZone=Etc/GMT%2B2`,
        { headers: { 'content-type': 'text/csv' }, data: csv.content },
      );
      const report = await response.json();
      expect(report, JSON.stringify(report)).toMatchObject({ unit: 'C', from: '2027-08-03', droppedCount: 0 });
      expect(report.used).toBe(await dailyRows(page).count());
    }));
});
