import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import { type Browser, type BrowserContextOptions, chromium, type Locator, type Page } from 'playwright-core';
import { afterAll, beforeAll, expect } from 'vitest';
import { addressOf, killAll, type Run, root, run, written } from '../e2e/run-service.js';

const executablePath = process.env.CHROMIUM ?? '/usr/bin/chromium';

/** Without a browser these tests are skipped, but not in CI. */
export const hasNoBrowser = !existsSync(executablePath) && !process.env.CI;

/** What a browser on a closed network must not try by itself. */
const QUIET = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

let browser: Promise<Browser> | undefined;

const theBrowser = (): Promise<Browser> => (browser ??= chromium.launch({ executablePath, args: QUIET }));

export interface Served extends Run {
  readonly address: string;
}

/** A service on a free port or on one that is given; the demo's once it keeps its season. */
export async function served(args: readonly string[], environment: Record<string, string> = {}): Promise<Served> {
  const service = run(args, environment);
  if (args.includes('demo')) await written(service, /Ctrl-C/);
  return { ...service, address: await addressOf(service) };
}

/** The demo's service, for all tests of a `describe`; its browser is closed after them. */
export function demo(environment: Record<string, string> = {}): { readonly address: string } {
  let service: Served | undefined;
  beforeAll(async () => {
    service = await served(['demo'], environment);
  });
  afterAll(end);
  return {
    get address() {
      return service!.address;
    },
  };
}

/** Ends the browser and all services. */
export async function end(): Promise<void> {
  await (await browser)?.close();
  browser = undefined;
  killAll();
}

export interface Visiting extends BrowserContextOptions {
  /** Where the page is opened; else nothing is, and the test goes there itself. */
  readonly path?: string;
  /** What the console may say here: a refusal that the test provokes is told there by the browser itself. */
  readonly mayLog?: RegExp;
}

/**
 * Opens a page in a browser that knows nothing yet, and does something with it. Fails if the console told of an error,
 * a script failed, the content policy was broken, or anything was asked of another address.
 */
export async function visit(
  { address }: { readonly address: string },
  { path, mayLog, ...options }: Visiting,
  does: (page: Page) => Promise<void>,
): Promise<void> {
  const context = await (await theBrowser()).newContext({
    locale: 'en-GB',
    timezoneId: 'UTC',
    viewport: { width: 1200, height: 900 },
    ...options,
  });
  const faults: string[] = [];
  context.on('weberror', (fault) => faults.push(`script: ${fault.error().message}`));
  context.on('console', (message) => {
    if (['error', 'warning'].includes(message.type()) && !mayLog?.test(message.text())) {
      faults.push(`console: ${message.text()}`);
    }
  });
  context.on('request', (request) => {
    const { origin, protocol } = new URL(request.url());
    if (origin !== address && !['data:', 'blob:'].includes(protocol)) faults.push(`outside: ${request.url()}`);
  });
  await context.addInitScript(() =>
    document.addEventListener('securitypolicyviolation', ({ violatedDirective, blockedURI }) =>
      console.error(`policy: ${violatedDirective} ${blockedURI}`),
    ),
  );
  try {
    const page = await context.newPage();
    if (path !== undefined) await page.goto(new URL(path, address).href);
    await does(page);
    expect(faults).toEqual([]);
  } finally {
    await context.close();
  }
}

/** A text as it is read: without what is folded away. */
const textOf = async (one: Locator): Promise<string> => {
  const text = await one.evaluate((element) => {
    const copy = element.cloneNode(true) as Element;
    for (const folded of copy.querySelectorAll('.why, details:not([open]) > :not(summary)')) folded.remove();
    return copy.textContent;
  });
  return text.replaceAll(/\s+/g, ' ').trim();
};

/** The sentence that the answer begins with, once it stands there, without what its numbers say when asked. */
export const sentence = (page: Page): Promise<string> =>
  textOf(page.locator('#answer:not([aria-busy]) .neighbour').first());

/** Does something, and gives the sentence, or why there is none, that stands in the place of the one before. */
export async function answerAfter(page: Page, does: () => Promise<unknown>): Promise<string> {
  await page
    .locator('#answer :is(.neighbour, .problem)')
    .evaluateAll((before) => before.forEach((one) => void one.setAttribute('data-before', '')));
  await does();
  return textOf(page.locator('#answer:not([aria-busy]) :is(.neighbour, .problem):not([data-before])').first());
}

/** What the page says of the file, once it has been read. */
export const fileSaid = (page: Page): Promise<string> => textOf(page.locator('#file-state :is(.understood, .problem)'));

/** A file of fixtures, such as `demo/north-bed-august.csv`. */
export const fixture = (path: string): string => new URL(`fixtures/${path}`, root).pathname;

/** Drops a file onto the page where a selector is. */
export async function drop(page: Page, name: string, content: string, onto = 'h1'): Promise<void> {
  const dataTransfer = await page.evaluateHandle(
    ([fileName, text]) => {
      const dragged = new DataTransfer();
      dragged.items.add(new File([text], fileName));
      return dragged;
    },
    [name, content] as const,
  );
  for (const event of ['dragenter', 'dragover', 'drop']) await page.dispatchEvent(onto, event, { dataTransfer });
}

/** Pastes a text where the focus is, as the keyboard would. */
export const paste = (page: Page, text: string): Promise<void> =>
  page.evaluate((pasted) => {
    const clipboardData = new DataTransfer();
    clipboardData.setData('text/plain', pasted);
    const event = new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true });
    (document.activeElement ?? document.body).dispatchEvent(event);
  }, text);

/** Presses Tab until the focus is on what is looked for. */
export async function tabTo(page: Page, selector: string): Promise<void> {
  for (let presses = 0; presses < 100; presses++) {
    await page.keyboard.press('Tab');
    if (await page.evaluate((wanted) => document.activeElement?.matches(wanted), selector)) return;
  }
  throw new Error(`the keyboard does not reach ${selector}`);
}

const AXE = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What axe finds, where; unless all of it is asked for, what is serious or critical. */
export async function foundByAxe(page: Page, isAll = false): Promise<string[]> {
  await page.evaluate(AXE);
  const { violations } = await page.evaluate(() =>
    (globalThis as unknown as { axe: { run(): Promise<AxeResults> } }).axe.run(),
  );
  return violations
    .filter(({ impact }) => isAll || impact === 'serious' || impact === 'critical')
    .flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${target}`));
}
