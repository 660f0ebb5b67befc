import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { demo, fixture, hasNoBrowser, visit } from './browser.js';

const AXE = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What axe finds serious or critical, where. */
async function foundByAxe(page: Page): Promise<string[]> {
  await page.evaluate(AXE);
  const { violations } = await page.evaluate(() =>
    (globalThis as unknown as { axe: { run(): Promise<AxeResults> } }).axe.run(),
  );
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${target}`));
}

/** The links of all leaves that there are. */
const leaves = (page: Page): Promise<string[]> =>
  page.locator('[data-leaf]').evaluateAll((links) => links.map((link) => link.getAttribute('href')!));

/** What came with the page may be asked once more by its script. */
async function answered(page: Page): Promise<void> {
  await page.waitForLoadState('networkidle');
  await page.locator('#answer:not([aria-busy]) > :not(.waiting)').first().waitFor();
}

/** What people find on the page besides its leaves: a choice, a refusal, a number that explains itself. */
const moments: Readonly<Record<string, (page: Page) => Promise<unknown>>> = {
  'a choice': async (page) => {
    await page.goto(new URL('/?bed=north&source=file&sowing=2027-05-10', page.url()).href);
    await page.setInputFiles('[name="file"]', fixture('logger-files/72-no-unit.csv'));
    await page.locator('.choices').waitFor();
  },
  'a refusal': async (page) => {
    await page.goto(new URL('/?bed=north&source=file', page.url()).href);
    await page.setInputFiles('[name="file"]', fixture('logger-files/132-prose.csv'));
    await page.locator('#file-state .problem').waitFor();
  },
  'days to type in': (page) => page.goto(new URL('/?bed=&source=days', page.url()).href),
  'a number that explains itself': async (page) => {
    await page.goto(new URL('/?bed=north', page.url()).href);
    await page.locator('.neighbour .figure').first().click();
    await page.locator('.why:popover-open').waitFor();
  },
};
const mayLog = /status of 4\d\d/;

describe.skipIf(hasNoBrowser)('the look of every leaf', () => {
  const service = demo();

  for (const colorScheme of ['light', 'dark'] as const) {
    it(`bars nobody in ${colorScheme}, as far as axe can tell`, () =>
      visit(service, { path: '/', colorScheme, bypassCSP: true, mayLog }, async (page) => {
        await answered(page);
        const links = await leaves(page);
        expect(links.length).toBeGreaterThan(0);
        for (const link of links) {
          await page.goto(new URL(link, service.address).href);
          await answered(page);
          expect(await foundByAxe(page), link).toEqual([]);
        }
        for (const [name, come] of Object.entries(moments)) {
          await come(page);
          expect(await foundByAxe(page), name).toEqual([]);
        }
      }));
  }

  it('tells the leaf that is open from the others in the reader’s own colours too', () =>
    visit(service, { path: '/', forcedColors: 'active' }, async (page) => {
      const lines = await page
        .locator('nav a')
        .evaluateAll((links) => links.map((link) => getComputedStyle(link).borderBottomColor));
      const ground = await page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
      expect(lines.map((line) => line === ground)).toEqual([false, true, true]);
    }));

  it('fits a phone, with controls that a thumb can press', () =>
    visit(service, { path: '/', viewport: { width: 360, height: 740 }, hasTouch: true, mayLog }, async (page) => {
      const fits = async (where: string): Promise<void> => {
        const width = await page.evaluate(() => document.documentElement.scrollWidth);
        expect(width, where).toBeLessThanOrEqual(360);
        const low = await page
          .locator('input:not([type=radio], [type=checkbox]), select, textarea, button, summary, nav a, .radios label')
          .filter({ visible: true })
          .evaluateAll((controls) =>
            controls
              // Numbers in a sentence are as high as its lines.
              .filter((one) => !one.classList.contains('figure') && one.getBoundingClientRect().height < 40)
              .map((one) => `${one.outerHTML.slice(0, 60)} ${one.getBoundingClientRect().height}`),
          );
        expect(low, where).toEqual([]);
      };
      await answered(page);
      for (const link of await leaves(page)) {
        await page.goto(new URL(link, service.address).href);
        await answered(page);
        await fits(link);
      }
      for (const [name, come] of Object.entries(moments)) {
        await come(page);
        await fits(name);
      }
    }));
});
