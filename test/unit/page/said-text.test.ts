import { describe, expect, test } from 'vitest';
import { saidText } from '../../../src/page/shell/said-text.js';

const inFahrenheit = (text: string): string => saidText(text, { locale: 'en-GB', degrees: 'F' }).markup;

describe('what the service says, in the reader’s degrees', () => {
  // 9/5 of a difference; 32 more of a temperature: the definition of the scale.
  test.each([
    ['12 at 30 °C.', '12 at 86 °C.'],
    ['days of 22 to 25 °C', 'days of 72 to 77 °C'],
    ['lay between 25.7 and 32.8 °C in 22 of them', 'lay between 78.3 and 91 °C in 22 of them'],
    ['freezes no harder than -2 °C', 'freezes no harder than 28 °C'],
    ['about 4 (2 to 6) °C cooler at the seed', 'about 7 (4 to 11) °C cooler at the seed'],
    ['kept the soil at 10 cm 1 to 2.5 °C warmer', 'kept the soil at 10 cm 2 to 4.5 °C warmer'],
    [
      'daily means at 5 cm erred by 1.4 °C and maxima by 2.1 °C',
      'daily means at 5 cm erred by 2.5 °C and maxima by 3.8 °C',
    ],
    ['fall to nothing within 5 °C, or', 'fall to nothing within 9 °C, or'],
    ['in 14 at 15 °C and in 43 at 10 °C', 'in 14 at 59 °C and in 43 at 50 °C'],
  ])('%s', (text, turned) => {
    expect(inFahrenheit(text)).toBe(turned.replaceAll('°C', '°F'));
  });

  test('nothing is turned for who reads in °C', () => {
    expect(saidText('about 4 (2 to 6) °C cooler, from 10.5 to 15 °C', { locale: 'en-GB', degrees: 'C' }).markup).toBe(
      'about 4 (2 to 6) °C cooler, from 10.5 to 15 °C',
    );
  });
});

test('dates are in the reader’s language', () => {
  expect(saidText('a sowing on 2027-08-17 meets none', { locale: 'de', degrees: 'C' }).markup).toContain(
    'Dienstag, 17. August',
  );
});

test('what is no date stays as it is, and markup is escaped', () => {
  expect(saidText('order 2027-99-99 <b>', { locale: 'en-GB', degrees: 'C' }).markup).toBe('order 2027-99-99 &lt;b&gt;');
});

test('what is said to other tools is said here as a gardener would', () => {
  const said = (text: string) => saidText(text, { locale: 'en-GB', degrees: 'C' }).markup;
  expect(said('No sowing is kept under "pea-2027-08-03"; GET /v1/sowings lists them.')).toBe(
    'No sowing is kept under &quot;pea-2027-08-03&quot;.',
  );
  expect(said('It is hot. Send "unit": "F" if these are °F. (2 more under "errors")')).toBe(
    'It is hot. Choose °F under “It reads” if these are °F.',
  );
  expect(said('send where.place.latitude')).toBe('send the latitude');
});
