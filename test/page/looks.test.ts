import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { answerAfter, demo, fixture, hasNoBrowser, paste, sentence, visit } from './browser.js';

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

  describe('on a phone', () => {
    const phone = { viewport: { width: 360, height: 740 }, hasTouch: true };
    const path = '/?bed=north&crop=lettuce&sowing=2027-08-03';
    const isOpen = (page: Page): Promise<boolean> =>
      page.locator('#asking').evaluate((one) => (one as HTMLDetailsElement).open);
    const isFolded = (page: Page): Promise<unknown> => page.locator('#asking:not([open])').waitFor();
    const topOf = (page: Page, selector: string): Promise<number> =>
      page
        .locator(selector)
        .first()
        .evaluate((one) => one.getBoundingClientRect().top);
    const tellMe = (page: Page): Promise<void> => page.getByRole('button', { name: 'Tell me' }).click();

    it('folds the question away once it is answered, so that every leaf’s sentence is seen at once', () =>
      visit(service, { path, ...phone }, async (page) => {
        const short = {
          sowing: /^Lettuce, North bed, sown 3 August change$/,
          when: /^Lettuce, North bed, from today on change$/,
          growing: /^All beds change$/,
        };
        for (const [view, said] of Object.entries(short)) {
          await page.goto(new URL(`${path}&view=${view}`, service.address).href);
          await sentence(page);
          await isFolded(page);
          expect(await page.locator('#asking > summary').textContent(), view).toMatch(said);
          expect(await topOf(page, '.neighbour'), view).toBeLessThan(370);
        }
      }));

    it('unfolds it to be changed, folds it again where asked, and the focus is not lost', () =>
      visit(service, { path, ...phone }, async (page) => {
        const summary = page.locator('#asking > summary');
        await summary.click();
        expect(await answerAfter(page, () => page.selectOption('[name="crop"]', 'carrot'))).toMatch(/^Of a hundred/);
        expect(await isOpen(page)).toBe(true);
        await tellMe(page);
        await isFolded(page);
        expect(await summary.textContent()).toMatch(/^Carrot, North bed, sown 3 August/);
        expect(await summary.evaluate((one) => one === document.activeElement)).toBe(true);
        const top = await topOf(page, '.neighbour');
        expect(top).toBeGreaterThan(0);
        expect(top).toBeLessThan(370);
      }));

    it('leaves it open as long as there is something in it to be settled', () =>
      visit(service, { path: `${path}&source=file`, ...phone, mayLog }, async (page) => {
        await page.setInputFiles('[name="file"]', fixture('logger-files/72-no-unit.csv'));
        const choices = page.locator('#file-state .choices');
        await choices.waitFor();
        await tellMe(page);
        await page.waitForLoadState('networkidle');
        expect(await isOpen(page)).toBe(true);
        expect(await choices.isVisible()).toBe(true);
      }));

    it('unfolds it for a file that is pasted while it is folded away', () =>
      visit(service, { path, ...phone, mayLog }, async (page) => {
        await isFolded(page);
        await paste(page, 'no table at all');
        await page.locator('#file-state .problem').waitFor();
        expect(await isOpen(page)).toBe(true);
      }));

    it('leaves it open, and leads past it, where no script can fold it', () =>
      visit(service, { path, ...phone, javaScriptEnabled: false }, async (page) => {
        expect(await page.locator('[name="crop"]').isVisible()).toBe(true);
        const skip = page.getByRole('link', { name: 'To the answer' });
        const { width, height } = (await skip.boundingBox())!;
        expect(Math.min(width, height)).toBeGreaterThan(40);
        await skip.click();
        expect((await page.locator('.neighbour').boundingBox())!.y).toBeLessThan(100);
      }));

    it('keeps it open where the answer stands beside it, as on a phone that is turned', () =>
      visit(service, { path, ...phone }, async (page) => {
        await isFolded(page);
        expect(await page.locator('[name="crop"]').isVisible()).toBe(false);
        await page.setViewportSize({ width: 1200, height: 740 });
        expect(await page.locator('[name="crop"]').isVisible()).toBe(true);
        expect(await page.locator('#asking > summary').isVisible()).toBe(false);
      }));
  });
});
