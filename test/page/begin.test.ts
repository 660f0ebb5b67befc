import type { Page } from 'playwright-core';
import { afterEach, describe, expect, it } from 'vitest';
import { end, fixture, foundByAxe, hasNoBrowser, sentence, served, type Visiting, visit } from './browser.js';

/** The means of an invented place’s months [°C]. */
const LOWS = [2, 2, 3, 5, 8, 11, 14, 14, 11, 8, 5, 3];
const HIGHS = [9, 9, 11, 14, 17, 20, 23, 23, 20, 16, 12, 10];

async function fillBed(page: Page, more: Readonly<Record<string, string>> = {}): Promise<void> {
  const said = { name: 'North bed', placeName: 'Quillmere allotments', latitude: '44', longitude: '-30', ...more };
  for (const [name, value] of Object.entries(said)) await page.fill(`#keep-bed-new [name="${name}"]`, value);
}

async function fillMonths(page: Page): Promise<void> {
  for (const [i, low] of LOWS.entries()) {
    await page.fill(`[name="low${i + 1}"]`, String(low));
    await page.fill(`[name="high${i + 1}"]`, String(HIGHS[i]));
  }
}

/** Follows a link of a leaf, and reads what it says. */
async function onLeaf(page: Page, name: string): Promise<string> {
  await page.getByRole('link', { name }).click();
  return sentence(page);
}

describe.skipIf(hasNoBrowser)('who begins with a service that keeps nothing', () => {
  afterEach(end);
  const begin = async (does: (page: Page) => Promise<void>, options: Visiting = {}) =>
    visit(await served([]), { path: '/?view=when', timezoneId: 'Etc/GMT+2', mayLog: /422/, ...options }, does);

  it('keeps a bed, a climate table and a file from the page, and is told when to sow and how it will come up', () =>
    begin(async (page) => {
      expect(await sentence(page)).toContain('No bed is kept here yet');
      await page.locator('#answer').getByRole('link', { name: 'Keep a bed' }).click();
      expect(await page.inputValue('#keep-bed-new [name="timeZone"]')).toBe('Etc/GMT+2');
      await page.getByRole('button', { name: 'Keep this bed' }).click();
      await page.getByText('Give the bed a name').waitFor();
      await fillBed(page);
      await page.getByRole('button', { name: 'Keep this bed' }).click();
      await page.locator('#bed-north-bed').getByText('Kept: North bed').waitFor();
      expect(await page.evaluate(() => document.activeElement?.id)).toBe('bed-north-bed');
      await page.selectOption('[name="ofBed"]', 'north-bed');

      await page.getByRole('link', { name: 'When to sow' }).click();
      await page.getByText('Too few past years').waitFor();
      await fillMonths(page);
      await page.fill('[name="high4"]', '4');
      await page.getByRole('button', { name: 'Keep these means' }).click();
      await page.getByText('In April the lowest, 5, is above the highest, 4').waitFor();
      // A number stays what it is when others are read.
      await page.getByRole('radio', { name: '°F' }).check();
      await page.waitForURL(/degrees=F/);
      await page.locator('#answer:not([aria-busy])').waitFor();
      expect([
        await page.inputValue('.act-keep-climate [name="unit"]'),
        await page.inputValue('[name="low5"]'),
      ]).toEqual(['C', '8']);
      await page.getByRole('radio', { name: '°C' }).check();
      await page.fill('[name="high4"]', '14');
      await page.getByRole('button', { name: 'Keep these means' }).click();
      expect(await sentence(page)).toMatch(/^Sow lettuce in North bed .* in a usual year/);

      await page.goto(new URL('/?source=file&bed=north-bed&sowing=2027-08-03', page.url()).href);
      await page.setInputFiles('[name="file"]', fixture('demo/north-bed-august.csv'));
      await page.getByText('Keep this file for a bed').click();
      await page.getByRole('button', { name: 'Keep it' }).click();
      await page.locator('.done').getByText('Kept for North bed: 421 readings: 421 new').waitFor();
      await page.waitForURL((url) => !url.search.includes('source=file'));
      expect(await page.getByLabel('what is kept of the bed').isChecked()).toBe(true);
      expect(await sentence(page)).toMatch(/seeds expect/);
    }));

  it('may change the question while a file is being kept, mend a bed, and forget it again', () =>
    begin(
      async (page) => {
        const answers = page.locator('#answer:not([aria-busy])');
        await fillBed(page);
        await page.getByRole('button', { name: 'Keep this bed' }).click();
        await page.locator('#bed-north-bed').waitFor();
        await page.goto(new URL('/?source=file&bed=north-bed&sowing=2027-08-03', page.url()).href);
        await page.setInputFiles('[name="file"]', fixture('demo/north-bed-august.csv'));
        await page.getByText('Keep this file for a bed').click();
        await page.route('**/v1/beds/north-bed/readings*', async (route) => {
          await page.locator('#ask [name="seeds"]').fill('77');
          await route.continue();
        });
        await page.getByRole('button', { name: 'Keep it' }).click();
        await page.locator('.done').waitFor();
        expect(await page.inputValue('#ask [name="seeds"]')).toBe('77');

        // Another tool keeps a bed meanwhile.
        const place = await page.request.get(new URL('/v1/places', page.url()).href);
        const [{ id }] = (await place.json()).places;
        await page.request.put(new URL('/v1/beds/frame', page.url()).href, { data: { place: id, name: 'Frame' } });
        await page.getByRole('link', { name: 'What is growing' }).click();
        await page.locator('#bed-frame').waitFor();
        await page.getByText('Kept of it: soil at the seed, 421 readings from 20 Jul 2027 to 6 Aug 2027').waitFor();
        await page.request.put(new URL('/v1/beds/sill', page.url()).href, { data: { place: id, name: 'Sill' } });
        await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
        await page.getByRole('button', { name: 'Tell me' }).click();
        await page.locator('#bed-sill').waitFor();

        await page.locator('#fold-change-bed-sill > summary').click();
        await page.fill('#change-bed-sill [name="shadePercent"]', '120');
        await page.locator('#change-bed-sill').getByRole('button').click();
        await page.locator('#change-bed-sill .problem').waitFor();
        expect(await page.locator('#change-bed-sill .problem').boundingBox()).toMatchObject({
          y: expect.toSatisfy((y: number) => y >= 0 && y < 740),
        });
        await page.fill('#change-bed-sill [name="shadePercent"]', '20');
        await page.fill('#change-bed-sill [name="name"]', 'Shady sill');
        await page.locator('#change-bed-sill').getByRole('button').click();
        await page.locator('#bed-sill').getByText('Shady sill, in open ground, bare soil, 20 % shade').waitFor();

        for (const bed of ['frame', 'sill', 'north-bed']) {
          await page.locator(`#fold-forget-bed-${bed} > summary`).click();
          await page.locator(`#forget-bed-${bed}`).getByRole('button').click();
          await page.locator(`#bed-${bed}`).waitFor({ state: 'detached' });
        }
        await page.getByText('No bed is kept here yet').waitFor();
        await page.getByRole('link', { name: 'This sowing' }).click();
        await page.getByLabel('a thermometer’s file').check();
        await answers.locator('.neighbour').waitFor();
        expect(await sentence(page)).toMatch(/^Of 77 seeds expect/);
      },
      { path: '/?view=growing' },
    ));

  it('does the same without a script', () =>
    begin(
      async (page) => {
        await page.locator('#answer').getByRole('link', { name: 'Keep a bed' }).click();
        await fillBed(page, { latitude: 'north', timeZone: 'Etc/GMT+2' });
        await page.getByRole('button', { name: 'Keep this bed' }).click();
        expect(await page.inputValue('#keep-bed-new [name="latitude"]')).toBe('north');
        await fillBed(page, { timeZone: 'Etc/GMT+2' });
        await page.getByRole('button', { name: 'Keep this bed' }).click();
        await page.waitForURL(/bed=north-bed#bed-north-bed$/);
        expect(await onLeaf(page, 'What is growing')).toContain('Nothing is sown in North bed yet');

        await page.goto(new URL('/?source=file&bed=north-bed&sowing=2027-08-03', page.url()).href);
        await page.setInputFiles('[name="file"]', fixture('demo/north-bed-august.csv'));
        await page.getByRole('button', { name: 'Tell me' }).click();
        await page.getByText('Keep this file for a bed').click();
        await page.getByRole('button', { name: 'Keep it' }).click();
        await page.waitForURL(/bed=north-bed&sowing=2027-08-03.*#answer$/);
        const kept = await page.request.get(new URL('/v1/beds/north-bed/readings?limit=1000', page.url()).href);
        expect((await kept.json()).series[0].readings).toHaveLength(421);
      },
      { javaScriptEnabled: false },
    ));

  it.each(['light', 'dark'] as const)(
    'finds nothing in %s colours that keeps anybody out, nor wider than a phone',
    (colorScheme) =>
      begin(
        async (page) => {
          expect(await foundByAxe(page, true)).toEqual([]);
          await page.locator('#answer').getByRole('link', { name: 'Keep a bed' }).click();
          expect(await foundByAxe(page, true)).toEqual([]);
          expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(360);
          await fillBed(page);
          await page.getByRole('button', { name: 'Keep this bed' }).click();
          await page.locator('#bed-north-bed').waitFor();
          await page.locator('details').evaluateAll((all) => all.forEach((one) => void one.setAttribute('open', '')));
          expect(await foundByAxe(page, true)).toEqual([]);
          await page.getByRole('link', { name: 'When to sow' }).click();
          await page.getByText('Too few past years').waitFor();
          expect(await foundByAxe(page, true)).toEqual([]);
          expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(360);
        },
        { colorScheme, bypassCSP: true, viewport: { width: 360, height: 740 } },
      ),
  );
});

describe.skipIf(hasNoBrowser)('who knows no more than the name of a town', () => {
  afterEach(end);
  const begin = async (does: (page: Page) => Promise<void>, options: Visiting = {}) =>
    visit(await served([]), { path: '/', mayLog: /422/, ...options }, does);

  it('types it, learns what to sow this week and when in the year, and keeps it as a garden', () =>
    begin(async (page) => {
      await page.getByLabel('Your town').fill('Ithaca, New York');
      await page.keyboard.press('Enter');
      expect(await sentence(page)).toMatch(/this week/);
      await page.getByText('Make it your garden').waitFor();
      await page.getByText(/crops? not now/).click();
      await page.locator('#answer').getByRole('link', { name: 'Tomato' }).click();
      await page.getByText('Move the date').waitFor();
      expect(await sentence(page)).toContain('Ithaca, New York');
      await page.getByRole('link', { name: 'Sow now' }).click();
      await page.getByRole('button', { name: 'Keep this town' }).click();
      await page.getByText('Kept: Ithaca').first().waitFor();
      await page.getByRole('link', { name: 'What is growing' }).click();
      expect(await sentence(page)).toContain('Nothing is sown in My bed yet');
    }));

  it('is asked which of several towns is meant, and chooses', () =>
    begin(async (page) => {
      await page.getByLabel('Your town').fill('Portland');
      await page.getByRole('button', { name: 'Tell me' }).click();
      await page.getByRole('button', { name: /Portland, Maine, US/ }).click();
      expect(await sentence(page)).toMatch(/this week/);
      expect(await page.getByLabel('Your town').inputValue()).toBe('Portland, Maine, US');
    }));

  it('does the same without a script', () =>
    begin(
      async (page) => {
        await page.getByLabel('Your town').fill('Portland');
        await page.getByRole('button', { name: 'Tell me' }).click();
        await page.getByRole('button', { name: /Portland, Maine, US/ }).click();
        expect(await sentence(page)).toMatch(/this week/);
        await page.getByRole('button', { name: 'Keep this town' }).click();
        expect(await sentence(page)).toMatch(/this week/);
        expect(page.url()).toContain('bed=bed');
      },
      { javaScriptEnabled: false },
    ));

  it.each(['light', 'dark'] as const)('finds nothing in %s colours that keeps anybody out', (colorScheme) =>
    begin(
      async (page) => {
        expect(await foundByAxe(page, true)).toEqual([]);
        await page.getByLabel('Your town').fill('Ithaca, New York');
        await page.getByRole('button', { name: 'Tell me' }).click();
        await page.getByText('Make it your garden').waitFor();
        await page.locator('details').evaluateAll((all) => all.forEach((one) => void one.setAttribute('open', '')));
        expect(await foundByAxe(page, true)).toEqual([]);
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(360);
      },
      { colorScheme, bypassCSP: true, viewport: { width: 360, height: 740 } },
    ),
  );
});

describe.skipIf(hasNoBrowser)('who sees the demo', () => {
  afterEach(end);

  it('is told so on every leaf, and is one click from a town of their own', async () =>
    visit(await served(['demo']), { path: '/' }, async (page) => {
      for (const leaf of ['Sow now', 'When to sow', 'This sowing', 'What is growing']) {
        await page.getByRole('link', { name: leaf }).click();
        await page.getByText('A demo, all invented.').waitFor();
      }
      await page.getByRole('link', { name: 'See your own town.' }).click();
      await page.getByLabel('Your town').fill('Ithaca, New York');
      await page.keyboard.press('Enter');
      expect(await sentence(page)).toMatch(/this week/);
    }));
});
