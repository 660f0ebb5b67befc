import { mkdtemp, open, readFile, rm, utimes, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { answerAfter, demo, drop, fileSaid, fixture, hasNoBrowser, paste, sentence, visit } from './browser.js';

const PROBE = fixture('demo/north-bed-august.csv');
const logger = (name: string): string => fixture(`logger-files/${name}`);
/** A refusal is told by the browser, too. */
const mayLog = /status of 4\d\d/;
const path = '/?source=file&bed=north&crop=lettuce&sowing=2027-08-03';

const pick = (page: Page, file: string): Promise<void> => page.setInputFiles('[name="file"]', file);
const understood = (page: Page): Promise<void> => page.locator('#file-state .understood').waitFor();
const checks = (page: Page): string[] => {
  const asked: string[] = [];
  page.on('request', (request) => {
    if (request.url().includes('/v1/readings/check')) asked.push(request.url());
  });
  return asked;
};

describe.skipIf(hasNoBrowser)("a thermometer's file, given to the page", () => {
  const service = demo();
  let folder: string;
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'page-files-'));
  });
  afterAll(() => rm(folder, { recursive: true }));

  /** Half a million minutes and more, of about as many bytes as are asked for. */
  async function longFile(name: string, bytes: number): Promise<string> {
    const rows = ['time,soil 5 cm (C)'];
    const start = Date.UTC(2026, 0, 1);
    for (let minute = 0; minute < bytes / 23; minute++) {
      const at = new Date(start + minute * 60_000).toISOString().slice(0, 16);
      rows.push(`${at},${(14 + 5 * Math.sin((minute / 720) * Math.PI)).toFixed(2)}`);
    }
    const file = join(folder, name);
    await writeFile(file, `${rows.join('\n')}\n`);
    return file;
  }

  it('is understood in a sentence as soon as it is picked, and answered', () =>
    visit(service, { path }, async (page) => {
      const asked = checks(page);
      expect(await answerAfter(page, () => pick(page, PROBE))).toMatch(/^Of .* seeds expect/);
      expect(await fileSaid(page)).toMatch(
        /^Soil at the seed, column 2, “soil at seed depth \(C\)”, in °C, every hour; 20 July? ?– ?\d+ Aug 2027 in the time zone Etc\/GMT\+2; \d+ readings between/,
      );
      expect(await page.locator('#file-state .given').textContent()).toMatch(/north-bed-august\.csv, \d+ KB/);
      // Another crop does not have it read again.
      await answerAfter(page, () => page.selectOption('[name="crop"]', 'carrot'));
      expect(asked).toHaveLength(1);
    }));

  it('is taken wherever it is dropped, which the page shows, and selects itself', () =>
    visit(service, { path: '/?bed=north' }, async (page) => {
      const mark = () => page.evaluate(() => getComputedStyle(document.body, '::after').content);
      expect(await page.getByLabel('what is kept of the bed').isChecked()).toBe(true);
      await page.evaluate(() => {
        const dataTransfer = new DataTransfer();
        dataTransfer.items.add(new File(['x'], 'x.csv'));
        document.querySelector('footer')!.dispatchEvent(new DragEvent('dragover', { dataTransfer, bubbles: true }));
      });
      expect(await mark()).toContain('Let go');
      const text = await readFile(PROBE, 'utf8');
      expect(await answerAfter(page, () => drop(page, 'dropped.csv', text, 'footer'))).toMatch(/seeds expect/);
      expect(await mark()).toBe('none');
      expect(await page.getByLabel('a thermometer’s file').isChecked()).toBe(true);
      const name = await page.locator('[name="file"]').evaluate((field: HTMLInputElement) => field.files?.[0]?.name);
      expect(name).toBe('dropped.csv');
    }));

  it('may be pasted as text anywhere but in another field, and selects itself', () =>
    visit(service, { path: '/?bed=north' }, async (page) => {
      const text = (await readFile(PROBE, 'utf8')).replaceAll('\r\n', '\n');
      const asked = checks(page);
      await page.locator('[name="seeds"]').focus();
      await paste(page, text);
      await page.locator('[name="seeds"]').blur();
      expect(asked).toEqual([]);
      expect(await answerAfter(page, () => paste(page, text))).toMatch(/seeds expect/);
      expect(await fileSaid(page)).toContain('every hour');
      expect(await page.locator('[name="pasted"]').inputValue()).toBe(text);
      expect(await page.getByLabel('a thermometer’s file').isChecked()).toBe(true);
    }));

  it('may be pasted as a file, even into a field', () =>
    visit(service, { path }, async (page) => {
      const text = await readFile(PROBE, 'utf8');
      await answerAfter(page, () =>
        page.locator('[name="seeds"]').evaluate((field, content) => {
          const clipboardData = new DataTransfer();
          clipboardData.items.add(new File([content], 'copied.csv'));
          field.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }));
        }, text),
      );
      expect(await page.locator('#file-state .given').textContent()).toContain('copied.csv');
      expect(await page.locator('[name="seeds"]').inputValue()).toBe('');
    }));

  it('that is typed into its box row by row is read, and half of it is still there after a reload', () =>
    visit(service, { path, mayLog }, async (page) => {
      const typed = 'time,soil (C)\n2027-08-02T00:00,12\n2027-08-02T01:0';
      await page.locator('[name="pasted"]').pressSequentially(typed);
      expect(await fileSaid(page)).toContain('1 reading');
      await page.waitForTimeout(400);
      await page.reload();
      expect(await fileSaid(page)).toContain('1 reading');
      expect(await page.locator('[name="pasted"]').inputValue()).toBe(typed);
    }));

  it('whose dates can be read in two ways is asked about once, each way with what it means', () =>
    visit(service, { path: path.replace('08-03', '04-05'), mayLog }, async (page) => {
      await pick(page, logger('82-ambiguous-order.csv'));
      expect(await fileSaid(page)).toMatch(
        /day before month the readings run from 4 May 2027 .*month before day the readings run from 5 April 2027/,
      );
      expect(await page.locator('.choices').count()).toBe(1);
      expect(await page.locator('#answer .problem').count()).toBe(0);
      const answer = await answerAfter(page, () =>
        page.getByRole('button', { name: 'month before day' }).press('Enter'),
      );
      expect(answer).toMatch(/seeds expect/);
      expect(await page.evaluate(() => document.activeElement?.id)).toBe('file-state');
      expect(await fileSaid(page)).toMatch(/dates with the month first; 5 Apr 2027/);
      expect(await page.locator('.choices').count()).toBe(0);
      expect(page.url()).toContain('dateOrder=mdy');
      // What is settled of one file is not said of the next.
      await pick(page, PROBE);
      await page.waitForURL((url) => !url.href.includes('dateOrder'));
      expect(await page.locator('[name="dateOrder"]').inputValue()).toBe('');
    }));

  it('without a unit is asked about, and what was pressed can be changed by hand', () =>
    visit(service, { path: path.replace('08-03', '05-10'), mayLog }, async (page) => {
      await pick(page, logger('72-no-unit.csv'));
      await page.getByRole('button', { name: 'degrees Fahrenheit' }).click();
      await understood(page);
      expect(await fileSaid(page)).toMatch(/in °F.* between -11\.1 °C and/);
      await page.selectOption('[name="unit"]', 'C');
      await page.locator('#file-state', { hasText: 'in °C' }).waitFor();
      expect(await fileSaid(page)).toMatch(/in °C.* between 12\.1 °C and/);
      expect(page.url()).toContain('unit=C');
    }));

  it("whose times name no zone has the reader's own in a described bed, and is told how to mend it without", () =>
    visit(service, { path: path.replace('bed=north', 'bed='), mayLog, timezoneId: 'Asia/Tokyo' }, async (page) => {
      await pick(page, logger('101-no-zone.csv'));
      expect(await fileSaid(page)).toContain('in the time zone Asia/Tokyo');
      await page.locator('[name="timeZone"]').fill('');
      await page.locator('#file-state .problem').waitFor();
      expect(await fileSaid(page)).toContain('fill in its time zone');
      await page.locator('[name="timeZone"]').fill('Etc/GMT+2');
      await understood(page);
      expect(await fileSaid(page)).toContain('in the time zone Etc/GMT+2');
    }));

  it.each([
    ['132-prose.csv', /No table of readings was found/],
    ['130-empty.csv', /The file is empty/],
    ['125-binary.csv', /The file is not text/],
    ['126-gzip.csv', /gzip archive/],
    ['111-uptime-seconds.csv', /counts from when the logger was started/],
  ])('that cannot be read (%s) is told so in words, and nothing typed is lost', (name, words) =>
    visit(service, { path, mayLog }, async (page) => {
      await page.locator('[name="seeds"]').fill('150');
      await page.locator('[name="probeDepthCm"]').fill('7');
      await pick(page, logger(name));
      expect(await fileSaid(page)).toMatch(words);
      const stillThere = async () => {
        expect(await page.locator('[name="seeds"]').inputValue()).toBe('150');
        expect(await page.locator('[name="probeDepthCm"]').inputValue()).toBe('7');
        expect(await page.locator('#file-state .given').textContent()).toContain(name);
      };
      await page.waitForURL(/probeDepthCm=7/);
      await stillThere();
      await page.reload();
      expect(await fileSaid(page)).toMatch(words);
      await stillThere();
    }),
  );

  it('is kept over a reload until it is taken away', () =>
    visit(service, { path }, async (page) => {
      const before = await answerAfter(page, () => pick(page, PROBE));
      await page.reload();
      expect(await sentence(page)).toBe(before);
      expect(await page.locator('#file-state .given').textContent()).toContain('north-bed-august.csv');
      await page.getByRole('button', { name: 'Take the file away' }).click();
      await page.locator('#answer .waiting').waitFor();
      expect(await page.locator('#file-state').textContent()).toBe('');
      await page.reload();
      await page.locator('#answer .waiting').waitFor();
      expect(await page.locator('#file-state').textContent()).toBe('');
      expect(await page.locator('[name="file"]').evaluate((field: HTMLInputElement) => field.files!.length)).toBe(0);
    }));

  it('that changed or vanished on disk since is told so plainly', () =>
    visit(service, { path, mayLog: /ERR_UPLOAD_FILE_CHANGED|ERR_FILE_NOT_FOUND/ }, async (page) => {
      const file = join(folder, 'moved.csv');
      await writeFile(file, await readFile(PROBE));
      await answerAfter(page, () => pick(page, file));
      await writeFile(file, 'something else');
      // A browser tells a changed file by its time, to the second.
      const later = new Date(Date.now() + 10_000);
      await utimes(file, later, later);
      const words = /cannot be read any more: it was changed, renamed or moved/;
      expect(await answerAfter(page, () => page.selectOption('[name="crop"]', 'carrot'))).toMatch(words);
      await rm(file);
      expect(await answerAfter(page, () => page.selectOption('[name="crop"]', 'onion'))).toMatch(words);
      expect(await page.locator('[name="crop"]').inputValue()).toBe('onion');
    }));

  it('is told to be too large before it is sent', () =>
    visit(service, { path }, async (page) => {
      const asked = checks(page);
      const file = join(folder, 'large.csv');
      const handle = await open(file, 'w');
      await handle.truncate(300 * 1024 * 1024);
      await handle.close();
      await pick(page, file);
      expect(await fileSaid(page)).toContain('The file has 300 MB; up to 256 MB can be sent.');
      expect(asked).toEqual([]);
    }));

  it('of thirty megabytes is shown on its way, can be stopped, and is sent again when asked', () =>
    visit(service, { path: path.replace('2027-08-03', '2027-05-01') }, async (page) => {
      const bytes = 30 * 1024 * 1024;
      const file = await longFile('long.csv', bytes);
      await pick(page, file);
      await page.locator('#sending').waitFor();
      // A fast machine may have sent it all by now; then it says so, and can be stopped all the same.
      const { sent, share } = await page.locator('#sending').evaluate((sending) => {
        const bar = sending.querySelector('progress');
        return { sent: sending.querySelector('#sent')!.textContent, share: bar ? bar.value / bar.max : null };
      });
      if (sent!.startsWith('Sending')) {
        expect(sent).toMatch(/^Sending the file: [\d.]+ MB of 30 MB$/);
        expect(share).toBeLessThan(1);
      } else expect(sent).toBe('All 30 MB are sent, and are being read.');
      await page.getByRole('button', { name: 'Stop' }).click();
      expect(await fileSaid(page)).toContain('You stopped the file on its way. It is still here');
      expect(await page.locator('#sending').isHidden()).toBe(true);
      const start = performance.now();
      await page.getByRole('button', { name: 'Send it again' }).click();
      await understood(page);
      const readMs = Math.round(performance.now() - start);
      expect(await fileSaid(page)).toMatch(/every minute/);
      expect(await sentence(page)).toMatch(/seeds expect/);
      console.info(`30 MB read after ${readMs} ms, answered after ${Math.round(performance.now() - start)} ms`);
      await page.reload();
      await understood(page);
    }));

  it('of thirty megabytes that is no table is refused at its end at the latest', () =>
    visit(service, { path, mayLog }, async (page) => {
      const file = join(folder, 'prose.csv');
      await writeFile(file, 'It rained on the beds all night.\n'.repeat(1_000_000));
      await pick(page, file);
      expect(await fileSaid(page)).toContain('No table of readings was found');
    }));

  it('is a text and nothing else, whatever it is called and says', () =>
    visit(service, { path: path.replace('08-03', '05-03') }, async (page) => {
      const evil = '<img src=x onerror=document.title=1>';
      const rows = Array.from(
        { length: 48 },
        (_, hour) =>
          `2027-05-0${1 + Math.floor(hour / 24)}T${String(hour % 24).padStart(2, '0')}:00-02:00,${hour === 7 ? evil : 14}`,
      );
      const text = `time,"soil 5 cm (C) ${evil}"\n${rows.join('\n')}\n`;
      await answerAfter(page, () => drop(page, `${evil}.csv`, text));
      const said = (await page.locator('#file-state').textContent())!;
      expect(said.split(evil)).toHaveLength(4);
      expect(await page.locator('main :is(img, script)').count()).toBe(0);
      expect(await page.title()).not.toBe('1');
    }));
});
