import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { end, foundByAxe, hasNoBrowser, type Served, served, visit } from './browser.js';

describe.skipIf(hasNoBrowser)('the pages for callers and for whoever runs the service', () => {
  let service: Served;
  beforeAll(async () => {
    service = await served([]);
  });
  afterAll(end);

  test.each(
    ['/docs/guide', '/docs/running'].flatMap((path) =>
      [360, 1200].flatMap((width) => (['light', 'dark'] as const).map((colorScheme) => ({ path, width, colorScheme }))),
    ),
  )('$path fits $width pixels, $colorScheme, and axe finds nothing', async ({ path, width, colorScheme }) => {
    await visit(service, { path, colorScheme, viewport: { width, height: 900 } }, async (page) => {
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
      expect(await foundByAxe(page, true)).toEqual([]);
      const [paper, ink] = await page.evaluate(() => {
        const { backgroundColor, color } = getComputedStyle(document.documentElement);
        return [backgroundColor, color].map((one) => Number(/\d+/.exec(one)![0]));
      });
      expect(paper! > ink!).toBe(colorScheme === 'light');
    });
  });
});
