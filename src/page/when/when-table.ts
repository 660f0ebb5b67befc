import type { WindowAnswer } from '../../contract/windows.js';
import { closedAt } from './when-season.js';

/** The dates as CSV: probability of success, time to emergence, and how much emerges. */
export function whenTable(season: WindowAnswer): string {
  const days = ['first tenth', 'half', 'nine tenths'].flatMap((name) =>
    ['1 year in 10', 'middle year', '9 years in 10'].map((year) => `${name} up (days; ${year})`),
  );
  const head = [
    'date',
    'good (% of years)',
    'open',
    ...days,
    'up in the laboratory (%)',
    'up if held seed is lost (%)',
  ];
  const rows = season.dates.map(({ date, sureness, firstDays, halfDays, mostDays, stand, ifHeldAreLost }) => {
    const closed = closedAt(season, date);
    return [
      date,
      sureness === null ? '' : Math.round(100 * sureness),
      closed === null ? 'open' : (closed.why?.replaceAll('-', ' ') ?? 'not sure enough'),
      ...[firstDays, halfDays, mostDays].flatMap((one) => [one?.p10 ?? '', one?.p50 ?? '', one?.p90 ?? '']),
      stand?.p50 ?? '',
      ifHeldAreLost?.p50 ?? '',
    ].join(',');
  });
  return [head.join(','), ...rows, ''].join('\r\n');
}
