import { describe, expect, it } from 'vitest';
import type { WindowAnswer } from '../../src/contract/windows.js';
import { answerAfter, demo, hasNoBrowser, sentence, visit } from './browser.js';

/** What takes the service a second or two, on a busy machine more. */
const SOON = { timeout: 20_000 };
const LETTUCE = '/?view=when&bed=north&crop=lettuce';

describe.skipIf(hasNoBrowser)('when to sow', () => {
  const service = demo();
  const season = async (query: string): Promise<WindowAnswer> =>
    (await fetch(`${service.address}/v1/beds/north/sowing-windows?${query}`)).json() as Promise<WindowAnswer>;

  it('is found by who comes from the first page: the best date, the heat to come, and the date that meets hardly any of it', () =>
    visit(service, { path: '/?bed=north' }, async (page) => {
      await page.getByRole('link', { name: 'When to sow' }).click();
      const said = await sentence(page);
      const { best, windows } = await season('crop=lettuce');
      // The demo's day is the best date, and its heat is what the coming days have.
      expect(best!.date).toBe('2027-08-03');
      expect(said).toContain('Sow lettuce in North bed today, Tuesday 3 August');
      expect(said).toMatch(
        /heat of 3 – 9 August holds half back by [\d.]+ days; sown on Tuesday 17 August it meets only \d+ hours of it/,
      );
      // Leaves sown after August are not picked before the frosts of most years.
      expect(windows[0]!.to).toBe('2027-08-30');
      expect(said).toContain('until 30 August');
    }));

  it('tells what shade would change: how much cooler, how many hot hours fewer, how much sooner', () =>
    visit(service, { path: LETTUCE }, async (page) => {
      await expect
        .poll(() => page.locator('#shade-in-heat').textContent(), SOON)
        .toMatch(/in half shade the seed lies \d+ to \d+ °C cooler .* spared \d+ to \d+ hot hours/i);
      expect(await page.locator('#ways-at-date').textContent()).toMatch(
        /half shade nine tenths are up in [\d.]+ days rather than [\d.]+/,
      );
    }));

  it('lets the date be moved by keyboard: what past years say of it at once, its forecast a moment later', () =>
    visit(service, { path: LETTUCE }, async (page) => {
      const slider = page.getByRole('slider');
      await expect.poll(() => page.locator('#later table').count(), SOON).toBeGreaterThan(0);
      await slider.focus();
      for (let days = 0; days < 14; days++) await page.keyboard.press('ArrowRight');
      await expect.poll(() => page.locator('#at-date').textContent(), SOON).toContain('Sown on Tuesday 17 August');
      const { dates } = await season('crop=lettuce');
      const { halfDays } = dates.find(({ date }) => date === '2027-08-17')!;
      expect(await page.locator('#at-date').textContent()).toContain(`${halfDays!.p50} days`);
      await expect
        .poll(() => page.locator('#of-date:not([aria-busy]) svg title').first().textContent(), SOON)
        .toContain('17 August 2027');
      expect(new URL(page.url()).searchParams.get('sowing')).toBe('2027-08-17');
      expect(await page.evaluate(() => document.activeElement?.getAttribute('type'))).toBe('range');
    }));

  it('sets crops side by side', () =>
    visit(service, { path: LETTUCE }, async (page) => {
      await sentence(page);
      await page.getByLabel('Crop to set beside it, 1').selectOption('spinach');
      const table = page.locator('#crops-at-date');
      await expect.poll(() => table.textContent().catch(() => ''), SOON).toMatch(/Lettuce.*Spinach/s);
      await page.reload();
      await expect.poll(() => table.textContent().catch(() => ''), SOON).toMatch(/Lettuce.*Spinach/s);
    }));

  it('calls nothing refused that it waits for no longer, when more is asked before all has come', () =>
    visit(service, { path: LETTUCE }, async (page) => {
      await sentence(page);
      await page.getByText('Seeds, depth and hour').click();
      let release = (): void => {};
      const released = new Promise<void>((done) => (release = done));
      const hold = (path: string): Promise<unknown> =>
        page.route(path, async (route) => {
          await released;
          await route.continue().catch(() => {});
        });
      await hold('**/v1/sowing-windows?*');
      const rest = page.waitForRequest('**/v1/sowing-windows?*');
      await page.locator('[name="crop"]').selectOption('spinach');
      await rest;
      await hold('**/v1/beds/**');
      const more = page.waitForRequest('**/v1/beds/**');
      await page.getByLabel('How many seeds').fill('50');
      await more;
      await page.getByRole('button', { name: 'A day later' }).click();
      // Longer than the date has to rest.
      await page.waitForTimeout(500);
      expect(await page.locator('main').textContent()).not.toContain('does not answer');
      release();
      await expect.poll(() => page.locator('#later table').count(), SOON).toBeGreaterThan(0);
      expect(await page.locator('main').textContent()).not.toContain('does not answer');
    }));

  it('answers for another crop in the same place', () =>
    visit(service, { path: LETTUCE }, async (page) => {
      await sentence(page);
      const said = await answerAfter(page, () => page.locator('[name="crop"]').selectOption('spinach'));
      const { best } = await season('crop=spinach');
      const words = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long', timeZone: 'UTC' });
      expect(said).toContain(words.format(new Date(best!.date)));
    }));

  it('says all of it without a script too', () =>
    visit(service, { path: `${LETTUCE}&beside=spinach`, javaScriptEnabled: false }, async (page) => {
      expect(await sentence(page)).toContain('Sow lettuce in North bed');
      await page.getByRole('link', { name: 'Work out the rest as well' }).click();
      expect(await page.locator('#ways-at-date').textContent()).toContain('In half shade');
      expect(await page.locator('#crops-at-date').textContent()).toContain('Spinach');
      await page.getByText('A day later').click();
      expect(await page.locator('#at-date').textContent()).toContain('Sown on Wednesday 4 August');
    }));
});
