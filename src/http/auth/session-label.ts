/** Names of browsers; one whose user agent also names others comes first. */
const BROWSERS: readonly (readonly [RegExp, string])[] = [
  [/\bEdgA?(?:iOS)?\//, 'Edge'],
  [/\bOPR\//, 'Opera'],
  [/\bSamsungBrowser\//, 'Samsung Internet'],
  [/\b(?:Firefox|FxiOS)\//, 'Firefox'],
  [/\b(?:Chrome|CriOS|Chromium)\//, 'Chrome'],
  [/\bSafari\//, 'Safari'],
];
const SYSTEMS: readonly (readonly [RegExp, string])[] = [
  [/\biPhone\b/, 'iPhone'],
  [/\biPad\b/, 'iPad'],
  [/\bAndroid\b/, 'Android'],
  [/\bWindows\b/, 'Windows'],
  [/\bMac OS X\b/, 'macOS'],
  [/\bCrOS\b/, 'ChromeOS'],
  [/\bLinux\b/, 'Linux'],
];
const MAX_LENGTH = 60;

/**
 * A short description of a browser, by which its owner recognizes it.
 *
 * @example sessionLabel('Mozilla/5.0 (X11; Linux x86_64; rv:140.0) Gecko/20100101 Firefox/140.0') // => 'Firefox on
 * Linux'
 */
export function sessionLabel(userAgent: string | undefined): string {
  const told = (userAgent ?? '').slice(0, 500);
  const nameIn = (known: readonly (readonly [RegExp, string])[]) => known.find(([pattern]) => pattern.test(told))?.[1];
  const [browser, system] = [nameIn(BROWSERS), nameIn(SYSTEMS)];
  if (browser) return system ? `${browser} on ${system}` : browser;
  const plain = told
    .replaceAll(/[^\x20-\x7e]+/g, ' ')
    .trim()
    .slice(0, MAX_LENGTH);
  return plain === '' ? 'A browser that does not say what it is' : plain;
}
