import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { demo, drop, fileSaid, fixture, hasNoBrowser, paste, sentence, visit } from './browser.js';

const PROBE = fixture('demo/north-bed-august.csv');
const logger = (name: string): string => fixture(`logger-files/${name}`);
/** A refusal is told by the browser, too. */
const mayLog = /status of 4\d\d/;
const path = '/?bed=north&crop=lettuce&sowing=2027-08-03';

describe.skipIf(hasNoBrowser)("a thermometer's file, given to the page", () => {
  const service = demo();

  it('that is picked selects itself, is understood in a sentence and answered', () =>
    visit(service, { path, mayLog }, async (page) => {
      await sentence(page);
      await page.getByLabel('a thermometer’s file').check();
      await page.setInputFiles('[name="file"]', PROBE);
      await page
        .getByRole('button', { name: /in the soil/ })
        .or(page.locator('.understood').first())
        .first()
        .waitFor();
      expect(await fileSaid(page)).toMatch(/Soil at the seed, column 2, “soil at seed depth \(C\)”, in °C, every hour/);
      expect(await sentence(page)).toMatch(/seeds? expect|Sow|Of /);
      expect(await page.locator('#file-state').textContent()).toContain('north-bed-august.csv');
    }));

  it('is taken wherever it is dropped, and the page shows where it would land', () =>
    visit(service, { path }, async (page) => {
      await sentence(page);
      await page.evaluate(() => {
        const dataTransfer = new DataTransfer();
        dataTransfer.items.add(new File(['x'], 'x.csv'));
        document.querySelector('footer')!.dispatchEvent(new DragEvent('dragover', { dataTransfer, bubbles: true }));
      });
      expect(await page.evaluate(() => getComputedStyle(document.body, '::after').content)).toContain('Let go');
      await drop(page, 'dropped.csv', await readFile(PROBE, 'utf8'), 'footer');
      expect(await page.evaluate(() => getComputedStyle(document.body, '::after').content)).toBe('none');
      expect(await fileSaid(page)).toContain('every hour');
      expect(await page.getByLabel('a thermometer’s file').isChecked()).toBe(true);
      expect(await page.locator('[name="file"]').evaluate((field: HTMLInputElement) => field.files?.[0]?.name)).toBe(
        'dropped.csv',
      );
      expect(await sentence(page)).not.toBe('');
    }));

  it('may be pasted as text anywhere but in another field, and is shown to be', () =>
    visit(service, { path }, async (page) => {
      await sentence(page);
      const text = await readFile(PROBE, 'utf8');
      await page.locator('[name="seeds"]').focus();
      await paste(page, text);
      expect(await page.locator('#file-state').textContent()).toBe('');
      await page.locator('h1').click();
      await page.evaluate(() => (document.activeElement as HTMLElement).blur());
      await paste(page, text);
      expect(await fileSaid(page)).toContain('every hour');
      expect(await page.locator('[name="pasted"]').inputValue()).toBe(text.replaceAll('\r\n', '\n'));
      expect(await sentence(page)).not.toBe('');
    }));
});
