import { degrees, degreesSpan } from '../degrees.js';
import type { Sheet } from '../picture.js';
import type { SayPicture } from '../picture-facts.js';
import { CELLS, cellOf, type DrawnCrop, type DrawnRow, roundedDays } from './drawn-crop.js';

type Wording = Pick<Sheet, 'say' | 'unit'>;

/** Temperatures labelled above the curve. */
export function limitsOf({ soil, hotThresholdC }: DrawnCrop, { say, unit }: Wording) {
  const all = [
    ...(soil
      ? [
          { tempC: soil.minimumC, limit: 'minimum' as const },
          { tempC: soil.maximumC, limit: 'maximum' as const },
        ]
      : []),
    { tempC: hotThresholdC, limit: 'heat' as const },
  ];
  return all
    .filter(({ tempC }) => Number.isFinite(tempC))
    .sort((a, b) => a.tempC - b.tempC)
    .map(({ tempC, limit }) => ({
      tempC,
      text: say({ code: 'picture.limit', params: { limit, at: degrees(tempC, unit) } }),
    }));
}

/** A custom response curve has the name that the grower gives it. */
export const titleOf = ({ id, name, latinName }: DrawnCrop, say: SayPicture): string =>
  say({ code: 'picture.crop', params: { crop: id === OWN_ID ? name : id, latinName: latinName || null } });

const OWN_ID = 'own-rows';

/** The picture's subtitle: the best temperatures, and the fastest. */
export function gist({ soil }: DrawnCrop, rows: readonly DrawnRow[], { say, unit }: Wording): string {
  const fastest = rows
    .filter((row) => row.days !== null)
    .reduce<DrawnRow | null>((best, row) => (best && best.days! <= row.days! ? best : row), null);
  return say({
    code: 'picture.curve',
    params: {
      ...(soil ? degreesSpan(soil.optimumFromC, soil.optimumToC, unit) : { from: null, to: null }),
      fastest: fastest && degrees(fastest.temperatureC, unit),
      days: fastest && roundedDays(fastest.days!),
    },
  });
}

/** The picture's description for readers who cannot see it. */
export function inWords(crop: DrawnCrop, rows: readonly DrawnRow[], wording: Wording): string {
  const { say, unit } = wording;
  const valuesAt = (values: readonly { readonly tempC: number; readonly value: number }[]): string =>
    values
      .map(({ tempC, value }) => say({ code: 'picture.value-at', params: { value, at: degrees(tempC, unit) } }))
      .join(', ');
  const timed = rows
    .filter((row) => cellOf(row) === 'timed')
    .map(({ temperatureC, days }) => ({ tempC: temperatureC, value: roundedDays(days!) }));
  const counted = rows
    .filter(({ percent }) => percent !== null)
    .map(({ temperatureC, percent }) => ({ tempC: temperatureC, value: Math.round(percent!) }));
  const untimed = CELLS.filter((cell) => cell !== 'timed').map((cell) => {
    const at = rows.filter((row) => cellOf(row) === cell).map(({ temperatureC }) => degrees(temperatureC, unit));
    return at.length > 0 ? say({ code: 'picture.cell', params: { cell, at: at.join(', ') } }) : '';
  });
  return [
    gist(crop, rows, wording),
    timed.length > 0 ? say({ code: 'picture.days-at', params: { values: valuesAt(timed) } }) : '',
    counted.length > 0 ? say({ code: 'picture.seedlings-at', params: { values: valuesAt(counted) } }) : '',
    ...untimed,
    ...limitsOf(crop, wording).map(({ text }) => `${text}.`),
  ]
    .filter(Boolean)
    .join(' ');
}
