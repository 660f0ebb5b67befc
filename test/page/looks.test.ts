import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { answerAfter, demo, fixture, foundByAxe, hasNoBrowser, paste, sentence, visit } from './browser.js';

/** The links of all leaves that there are. */
const leaves = (page: Page): Promise<string[]> =>
  page.locator('[data-tab]').evaluateAll((links) => links.map((link) => link.getAttribute('href')!));

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
  'nothing asked yet': async (page) => {
    await page.goto(new URL('/', page.url()).href);
    await page.getByRole('link', { name: /^Show / }).waitFor();
  },
  'days to type in': (page) => page.goto(new URL('/?bed=&source=days', page.url()).href),
  'a number that explains itself': async (page) => {
    await page.goto(new URL('/?bed=north', page.url()).href);
    await page.locator('.neighbour .figure').first().click();
    await page.locator('.why:popover-open').waitFor();
  },
};
/** How dark the outermost pixels of a picture are at its left and its right, of 255: of its rows' median, so that a letter counts for nothing. */
const darknessOfEdges = (page: Page, png: Buffer): Promise<number[]> =>
  page.evaluate(async (base64) => {
    const image = new Image();
    image.src = `data:image/png;base64,${base64}`;
    await image.decode();
    const { width, height } = image;
    const context = Object.assign(document.createElement('canvas'), { width, height }).getContext('2d', {
      willReadFrequently: true,
    })!;
    context.drawImage(image, 0, 0);
    return [1, width - 2].map((x) => {
      const { data } = context.getImageData(x, 0, 1, height);
      const greens = Array.from({ length: height }, (_, y) => data[4 * y + 1]!).sort((a, b) => a - b);
      return 255 - greens[height >> 1]!;
    });
  }, png.toString('base64'));

const pagesOf = (pdf: Buffer): number => pdf.toString('latin1').match(/\/Type \/Page\b/g)?.length ?? 0;
/** Half of A4 within its margins [px], and a little. */
const HALF_A_PAGE_PX = 540;

/** Looks at every leaf, answered, and at every moment. */
async function everywhere(page: Page, look: (where: string) => Promise<void>): Promise<void> {
  await answered(page);
  const links = await leaves(page);
  expect(links.length).toBeGreaterThan(0);
  for (const link of links) {
    await page.goto(new URL(link, page.url()).href);
    await answered(page);
    await look(link);
  }
  for (const [name, come] of Object.entries(moments)) {
    await come(page);
    await look(name);
  }
}

const mayLog = /status of 4\d\d/;

describe.skipIf(hasNoBrowser)('the look of every leaf', () => {
  const service = demo();

  for (const colorScheme of ['light', 'dark'] as const) {
    it(`bars nobody in ${colorScheme}, as far as axe can tell`, () =>
      visit(service, { path: '/', colorScheme, bypassCSP: true, mayLog }, async (page) => {
        await everywhere(page, async (where) => expect(await foundByAxe(page), where).toEqual([]));
      }));
  }

  it('tells the leaf that is open from the others in the reader’s own colours too', () =>
    visit(service, { path: '/', forcedColors: 'active' }, async (page) => {
      const lines = await page
        .locator('nav a[data-tab]')
        .evaluateAll((links) => links.map((link) => getComputedStyle(link).borderBottomColor));
      const ground = await page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
      expect(lines.map((line) => line === ground)).toEqual([true, true, false, true]);
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
      await everywhere(page, fits);
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

    it('shows the way to a first answer at once, and answers on one press', () =>
      visit(service, { path: '/', ...phone }, async (page) => {
        await isFolded(page);
        const first = page.getByRole('link', { name: /^Show / });
        expect(await first.evaluate((one) => one.getBoundingClientRect().bottom < innerHeight)).toBe(true);
        await first.click();
        expect(await sentence(page)).toMatch(/^Of a hundred seeds expect/);
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

    for (const [how, width, fontSize] of [
      ['in letters half as large again', 360, '25.5px'],
      ['on the narrowest phone', 320, ''],
    ] as const) {
      it(`scrolls no page sideways and cuts no date ${how}, whatever is unfolded`, () =>
        visit(service, { path, viewport: { width, height: 740 }, locale: 'en-US', mayLog }, async (page) => {
          const fits = async (where: string): Promise<void> => {
            await page.evaluate((size) => {
              document.documentElement.style.fontSize = size;
              for (const details of document.querySelectorAll('details')) details.open = true;
              for (const date of document.querySelectorAll<HTMLInputElement>('input[type="date"]')) {
                date.value = '2027-09-15';
              }
            }, fontSize);
            expect(await page.evaluate(() => document.documentElement.scrollWidth), where).toBeLessThanOrEqual(width);
            const cut = await page
              .locator('input:is([type="date"], [type="time"])')
              .filter({ visible: true })
              .evaluateAll((dates: HTMLInputElement[]) =>
                dates
                  .filter((date) => {
                    const { clientWidth } = date;
                    Object.assign(date.style, { width: 'max-content', maxWidth: 'none' });
                    const wanted = date.clientWidth;
                    Object.assign(date.style, { width: '', maxWidth: '' });
                    return clientWidth < wanted;
                  })
                  .map(({ name, form }) => `${name} in ${form?.id}`),
              );
            expect(cut, where).toEqual([]);
          };
          await everywhere(page, fits);
        }));
    }

    it('shows beside a table that there is more of it, on the side where it is, until its end is reached', () =>
      visit(service, { path: '/?view=growing', ...phone }, async (page) => {
        await isFolded(page);
        const table = page.locator('.plan .scroll').first();
        await table.scrollIntoViewIfNeeded();
        const rightOverLeft = async (to: number): Promise<number> => {
          await table.evaluate((one, x) => one.scrollTo(x * one.scrollWidth, 0), to);
          const [left = 0, right = 0] = await darknessOfEdges(page, await table.screenshot());
          return right - left;
        };
        expect(await rightOverLeft(0)).toBeGreaterThan(20);
        expect(await rightOverLeft(1)).toBeLessThan(-20);
      }));
  });

  it('marks where a form has led to, where no script does', () =>
    visit(service, { path: '/?view=growing', javaScriptEnabled: false }, async (page) => {
      const sowing = page.locator('.sowing').first();
      const line = (): Promise<string> => sowing.evaluate((one) => getComputedStyle(one).borderLeftWidth);
      expect(await line()).toBe('0px');
      await page.goto(`${page.url()}#${await sowing.getAttribute('id')}`);
      expect(await line()).toBe('3px');
    }));

  describe('on paper', () => {
    const A4 = { format: 'A4' } as const;
    for (const width of [360, 1200]) {
      it(`fits on few pages that are full, without what can only be pressed, from a window of ${width} pixels`, () =>
        visit(service, { path: '/', viewport: { width, height: 740 } }, async (page) => {
          const most = { sowing: 2, when: 4, growing: 3 };
          for (const [view, pages] of Object.entries(most)) {
            await page.goto(new URL(`/?bed=north&view=${view}`, service.address).href);
            await sentence(page);
            // The answer is drawn anew at the width of the window.
            if (!(await page.locator('#asking[open]').count())) await page.locator('#asking > summary').click();
            await answerAfter(page, () => page.getByRole('button', { name: 'Tell me' }).click());
            await page.waitForLoadState('networkidle');
            expect(pagesOf(await page.pdf(A4)), view).toBeLessThanOrEqual(pages);
            const sowings = page.locator('.sowing').filter({ visible: true });
            const onScreen = await sowings.count();
            await page.emulateMedia({ media: 'print' });
            expect(await sowings.count(), view).toBe(onScreen);
            if (view === 'growing') expect(onScreen).toBeGreaterThan(0);
            const left = await page
              .locator('input, select, textarea, summary, form, #asking, .move, button:not(.figure), #keep')
              .filter({ visible: true })
              .count();
            expect(left, view).toBe(0);
            const drawn = await page
              .locator('.pictures svg')
              .filter({ visible: true })
              .evaluateAll((all) =>
                (all as SVGSVGElement[]).map((one) => ({
                  width: one.viewBox.baseVal.width,
                  height: one.getBoundingClientRect().height,
                })),
              );
            expect(Math.max(0, ...drawn.map(({ height }) => height)), view).toBeLessThan(HALF_A_PAGE_PX);
            // A picture made for a phone wastes a sheet.
            expect(Math.min(...drawn.map(({ width: px }) => px)), view).toBeGreaterThan(600);
            await page.emulateMedia({ media: null });
          }
        }));
    }
  });
});
