import { existsSync } from 'node:fs';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { expect } from 'vitest';
import { addressOf, type Run, run, written } from '../e2e/run-service.js';

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

export async function closeBrowser(): Promise<void> {
  await (await browser)?.close();
  browser = undefined;
}

/** The demo's service, once it keeps its season, on a free port or on one that is given. */
export async function demoService(environment: Record<string, string> = {}): Promise<Run & { address: string }> {
  const service = run(['demo'], environment);
  await written(service, /The service listens at/);
  return { ...service, address: await addressOf(service) };
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
  address: string,
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

/** The sentence that the answer begins with, once it stands there, without what its numbers say when asked. */
export const sentence = async (page: Page): Promise<string> =>
  // biome-ignore lint/performance/useDomNodeTextContent: what is folded away is not read
  (await page.locator('#answer:not([aria-busy]) .neighbour').innerText()).replaceAll(/\s+/g, ' ');
