import { type Choice, RequestError } from '../../basics/errors.js';
import type { Fact } from '../../basics/fact.js';
import { celsiusFrom, type TemperatureUnit } from '../../basics/units.js';
import type { Channel } from '../columns/channel.js';
import { unitSaid } from '../columns/temperature-words.js';
import { isTemperature } from '../read-series.js';
import { fileChoice, fileQuestion, readingsRefusal, seriesWarning } from '../readings-facts.js';
import type { FileHints, RowsRead } from '../text/rows-read.js';

/** The unit that values came in, and how many of it a count is: a tenth in national files. */
export interface ReadingUnit {
  readonly unit: TemperatureUnit;
  readonly scale: number;
}

/** Values of a file in one unit [°C]; null if none could be temperatures. */
export type InUnit = (
  unit: ReadingUnit,
) => Generator<void, { used: number; min: number; mean: number; max: number } | null>;

const units = ['C', 'F', 'K'] as const satisfies readonly TemperatureUnit[];
/** A unit is worth asking about if this share of the values can be temperatures in it, and their mean a place's [°C]. */
const PLAUSIBLE_SHARE = 0.8;
const MIN_MEAN_C = -40;
const MAX_MEAN_C = 45;

/**
 * The unit that the caller or the file says.
 *
 * @param values As the file writes them.
 * @param inUnit What they would be in a unit: each choice that is offered promises just that.
 * @throws {RequestError} `choose-unit` where the file says none, or more than one.
 */
export function* settleUnit(
  read: RowsRead,
  hints: FileHints,
  channel: Channel,
  values: Float64Array | Float32Array,
  inUnit: InUnit,
): Generator<void, ReadingUnit> {
  const above = unitAbove(read);
  const { unit, isTorn, scale: ofColumn } = channel.meaning.unit;
  const scale = Math.min(ofColumn, above.scale);
  const said = unit ?? (isTorn ? null : above.unit);
  if (hints.unit) return { unit: hints.unit, scale };
  const contradicts =
    isTorn ||
    (unit !== null && above.unit !== null && unit !== above.unit) ||
    (said !== null && !suits({ unit: said, scale }, values));
  if (said && !contradicts) return { unit: said, scale };
  const choices: Choice[] = [];
  for (const unit of units) {
    const found = yield* inUnit({ unit, scale });
    if (!found || found.used < PLAUSIBLE_SHARE * values.length || found.mean < MIN_MEAN_C || found.mean > MAX_MEAN_C)
      continue;
    const { min, mean, max } = found;
    const extremes = { minC: tenth(min), meanC: tenth(mean), maxC: tenth(max) };
    choices.push(fileChoice(unit, 'choose-unit.choice', { unit, ...extremes }));
  }
  const column = channel.name || String(channel.column + 1);
  if (choices.length === 0) {
    throw new RequestError('no-readings', readingsRefusal('no-readings.no-temperatures', { column }), [
      { parameter: 'column', detail: readingsRefusal('no-readings.no-temperatures.field') },
    ]);
  }
  const detail = fileQuestion(contradicts ? 'choose-unit.contradicts' : 'choose-unit.unsaid', { column });
  const ways = choices.map(({ value }) => `unit=${value}`).join(', ');
  throw new RequestError(
    'choose-unit',
    [detail, fileQuestion('choose-unit.send', { ways })],
    [{ parameter: 'unit', detail, choices }],
  );
}

const tenth = (value: number): number => Math.round(value * 10) / 10;

/** Can half of the values, of some hundreds that stand for all, be temperatures in a unit? */
function suits({ unit, scale }: ReadingUnit, values: Float64Array | Float32Array): boolean {
  const stride = Math.max(1, Math.floor(values.length / 500));
  let [good, all] = [0, 0];
  for (let i = 0; i < values.length; i += stride) {
    all++;
    if (isTemperature(celsiusFrom[unit](values[i]! * scale))) good++;
  }
  return 2 * good >= all;
}

/** A caller's unit that the column's name contradicts is taken, and told. */
export function unitWarnings(hints: FileHints, { name, meaning }: Channel): Fact[] {
  const said = meaning.unit.unit;
  if (!hints.unit || !said || said === hints.unit) return [];
  return [seriesWarning('unit-against-header', { column: name, headerUnit: said, unit: hints.unit })];
}

/** Unit named by the lines above the table that mention temperature or units. */
function unitAbove({ table }: RowsRead): { unit: TemperatureUnit | null; scale: number } {
  const lines = table.preamble
    .filter((line) => /temp|unit|einheit|unit[ée]|unidad|deg|°|celsius|fahrenheit|kelvin|tenth/i.test(line))
    .map(unitSaid);
  const units = [...new Set(lines.flatMap(({ unit }) => unit ?? []))];
  return { unit: units.length === 1 ? units[0]! : null, scale: Math.min(1, ...lines.map(({ scale }) => scale)) };
}
