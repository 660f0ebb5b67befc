import { isFailure } from '../shell/api.js';
import { bedName, cropName } from '../shell/inventory.js';
import type { PageReader } from '../shell/words.js';
import type { Found } from './growing-found.js';

/** All counts as CSV. */
export function growingTable({ shelf, sowings }: Found, reader: PageReader): string {
  const rows = sowings.flatMap(({ kept, got }) =>
    isFailure(got)
      ? []
      : got.value.counts.map(({ date, seedlings, ofSeeds, thinned }) => [
          bedName(shelf, kept.bed),
          cropName(shelf, kept.crop, reader),
          kept.date,
          date,
          String(seedlings),
          String(ofSeeds ?? kept.seeds ?? ''),
          thinned === true ? 'some' : thinned === false ? '' : String(thinned),
        ]),
  );
  const columns = ['bed', 'crop', 'sown', 'counted', 'seedlings', 'of seeds', 'pulled out before'];
  return `${[columns, ...rows].map((row) => row.map(cell).join(',')).join('\r\n')}\r\n`;
}

/** A CSV cell (RFC 4180), marked so that a spreadsheet does not take it for a formula. */
const cell = (text: string): string => {
  const plain = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
};
