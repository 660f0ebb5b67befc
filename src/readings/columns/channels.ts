import { RequestError } from '../../basics/errors.js';
import { celsiusFrom, type TemperatureUnit } from '../../basics/units.js';
import { isTemperature } from '../read-series.js';
import { fileQuestion, readingsRefusal } from '../readings-facts.js';
import type { Table } from '../text/table.js';
import type { TimePlan } from '../time/time-plan.js';
import { askChannel } from './ask-channel.js';
import { columnNames } from './ask-column.js';
import type { Channel, ChannelPlan, WantedChannel } from './channel.js';
import { channelCalled } from './channel-called.js';
import { type Column, legendOf, type Meaning, meaningOf, rangeOf } from './columns.js';

const SAME_DEPTH_CM = 0.5;
const MAX_LABELS = 60;
/** Limits of a place's temperature in any unit: kelvin of summer, degrees Fahrenheit of winter. */
const HOTTEST_ANY = 350;
const COLDEST_ANY = -100;
const LABEL_NAMES =
  /sensor|entity|probe|device|channel|element|field$|_field|measurement|parameter|variable|metric|series|topic|\btag|node|location|fühler|messstelle|capteur|sonde|kanal|\bitem\b|^name$|^label$|^what$|^where$|\bplace\b/i;
const VALUE_NAMES =
  /^_?(?:value|values|state|reading|wert|messwert|valeur|valor|valore|waarde|v[äa]rde|arvo|warto[śs][ćc]|hodnota|result|data)s?$/i;

/**
 * Chooses the temperatures that fit what was asked for, if they alone do.
 *
 * @throws {RequestError} `choose-column` with every temperature described, `not-csv` where there is none.
 */
export function channelPlanOf(
  table: Table,
  columns: readonly Column[],
  time: TimePlan,
  wanted: WantedChannel,
): ChannelPlan {
  const labelColumns = labelColumnsOf(table, columns, time);
  const all = channelsOf(table, columns, time, labelColumns);
  const planOf = (channels: readonly Channel[]): ChannelPlan => ({ channels, labelColumns, all });
  if (wanted.column !== null) return planOf([channelCalled(all, columns, labelColumns, wanted.column)]);
  const likely = likelyTemperatures(all, wanted.unit);
  if (likely.length === 0) {
    const others = all.filter(({ meaning }) => meaning.saysTemperature);
    if (others.length > 0) throw askChannel(fileQuestion('choose-column.unsure'), others, wanted.medium);
    throw new RequestError('no-readings', readingsRefusal('no-readings.no-temperature-column'), [
      { parameter: 'column', detail: readingsRefusal('no-readings.columns', { columns: columnNames(columns) }) },
    ]);
  }
  const fitting = likely.filter(({ meaning }) => fits(meaning, wanted));
  if (fitting.length === 0) {
    const { medium, probeDepthCm: depthCm } = wanted;
    throw askChannel(fileQuestion('choose-column.unnamed', { medium: medium ?? 'unknown', depthCm }), likely, medium);
  }
  const sure = nearestTo(fitting, wanted);
  if (sure.length === 1) return planOf(sure);
  if (time.isDaily) {
    const days = minMeanMax(sure);
    if (days) return planOf(days);
  }
  const means = sure.filter(({ meaning }) => meaning.statistic === 'mean');
  const plain = sure.filter(({ meaning }) => meaning.statistic === null);
  if (sameSpot(sure)) {
    if (means.length === 1) return planOf(means);
    if (
      plain.length === 1 &&
      means.length === 0 &&
      sure.every((one) => one === plain[0] || one.meaning.statistic !== null)
    ) {
      return planOf(plain);
    }
  }
  throw askChannel(fileQuestion('choose-column.several'), sure, wanted.medium);
}

/** Columns whose text says, row by row, which sensor the row is of. */
function labelColumnsOf(table: Table, columns: readonly Column[], time: TimePlan): number[] {
  if (table.fixed) return table.fixed.labelColumn === null ? [] : [table.fixed.labelColumn];
  const isFree = ({ index }: Column): boolean => !time.columns.includes(index);
  const texts = columns.filter(
    (column) =>
      isFree(column) &&
      (column.kind === 'text' ||
        (column.kind === 'number' && LABEL_NAMES.test(column.name) && column.distinct <= 20)) &&
      column.distinct >= 1 &&
      column.distinct <= MAX_LABELS,
  );
  const named = texts.filter(({ name }) => LABEL_NAMES.test(name));
  // One name for all rows, beside columns that say themselves what they hold, labels nothing.
  const isWide = columns.some(
    ({ name, kind, index }) => kind === 'number' && meaningOf(name, table.units[index] ?? '').saysTemperature,
  );
  if (named.length > 0 && !(isWide && named.every(({ distinct }) => distinct === 1)))
    return named.map(({ index }) => index);
  const stamps = table.sample.map(time.textOf);
  const repeated = stamps.length - new Set(stamps).size;
  const several = texts.filter(({ distinct, kind }) => distinct >= 2 && kind === 'text');
  return repeated >= 0.2 * stamps.length && several.length > 0 ? [several[0]!.index] : [];
}

/** The label of a row. */
export function labelOf(row: readonly string[], labelColumns: readonly number[]): string {
  if (labelColumns.length === 1) return (row[labelColumns[0]!] ?? '').trim();
  return labelColumns.map((column) => (row[column] ?? '').trim()).join(' ');
}

function channelsOf(
  table: Table,
  columns: readonly Column[],
  time: TimePlan,
  labelColumns: readonly number[],
): Channel[] {
  const unitColumn = columns.find(({ kind }) => kind === 'unit');
  const numbers = columns.filter(
    ({ index, kind, name }) =>
      (kind === 'number' || (kind === 'empty' && meaningOf(name, table.units[index] ?? '').saysTemperature)) &&
      !time.columns.includes(index) &&
      !labelColumns.includes(index),
  );
  const values = labelColumns.length > 0 ? valueColumns(numbers) : numbers;
  const labels =
    labelColumns.length > 0
      ? [...new Set(table.sample.map((row) => labelOf(row, labelColumns)))].filter(Boolean)
      : [null];
  // With one series to a label, text columns that only ever say one thing are no labels, but still tell what it is.
  return values.flatMap(({ index, name }) =>
    labels.map((label): Channel => {
      const rows = label === null ? table.sample : table.sample.filter((row) => labelOf(row, labelColumns) === label);
      const cells = rows.map((row) => row[index] ?? '');
      const unitOfRows = unitColumn
        ? (rows.find((row) => (row[unitColumn.index] ?? '').trim() !== '')?.[unitColumn.index] ?? '')
        : '';
      const unitOfCells = cells.slice(0, 50).find((cell) => /[CFK\u2103\u2109]\s*"?$/i.test(cell.trim())) ?? '';
      const units = `${table.units[index] ?? ''} ${unitOfRows} ${unitOfCells.replace(/[\d.,+-]+/, '')}`.trim();
      const known = table.fixed?.labels.find((one) => one.label === label);
      const legend = legendOf(label ?? name, table.preamble);
      const said = meaningOf([label, name, legend].filter(Boolean).join(' '), units);
      const meaning = known
        ? { ...said, medium: known.medium, depthCm: known.depthCm, statistic: known.statistic }
        : said;
      const { isFlat, isCounter, min, max } = rangeOf(cells);
      return {
        column: index,
        label,
        name: label ?? name,
        meaning: table.fixed && label !== null && !known ? { ...meaning, lure: 'another quantity' } : meaning,
        isFlat,
        isCounter,
        min,
        max,
      };
    }),
  );
}

/** The column of values among the numbers of a long file. */
function valueColumns(numbers: readonly Column[]): readonly Column[] {
  const named = numbers.filter(({ name }) => VALUE_NAMES.test(name));
  if (named.length > 0) return named.slice(0, 1);
  const likely = numbers.filter(({ name }) => meaningOf(name, '').lure === null);
  return likely.length > 0 ? likely : numbers;
}

/** The numbers most likely to be temperatures: those whose names say so, else those whose names say nothing. */
function likelyTemperatures(all: readonly Channel[], unit: TemperatureUnit | null): Channel[] {
  const free = all.filter((one) => one.meaning.lure === null && couldBeTemperature(one, unit));
  const saying = free.filter(({ meaning }) => meaning.saysTemperature || meaning.medium === 'soil');
  if (saying.length > 0) return saying;
  const media = free.filter(({ meaning }) => meaning.medium !== null);
  if (media.length > 0) return media;
  const nameless = free.filter(({ name }) => !/^(?:table|result|group|year|month|day|hour)$/i.test(name));
  const moving = nameless.filter(({ isFlat, isCounter }) => !isFlat && !isCounter);
  return moving.length > 0 ? moving : nameless;
}

/** Numbers far outside what a soil or the air has, in the unit said or in any, are something else. */
function couldBeTemperature({ meaning, min, max }: Channel, unit: TemperatureUnit | null): boolean {
  if (max < min) return true;
  const { scale } = meaning.unit;
  const said = unit ?? meaning.unit.unit;
  if (said === null) return min * scale < HOTTEST_ANY && max * scale > COLDEST_ANY;
  const toCelsius = celsiusFrom[said];
  return isTemperature(toCelsius(min * scale)) || isTemperature(toCelsius(max * scale));
}

function fits(meaning: Meaning, wanted: WantedChannel): boolean {
  if (wanted.medium !== null && meaning.medium !== null && meaning.medium !== wanted.medium) return false;
  return (
    !(
      wanted.medium !== 'air' &&
      wanted.probeDepthCm !== null &&
      meaning.depthCm !== null &&
      meaning.medium !== 'air'
    ) || Math.abs(meaning.depthCm! - wanted.probeDepthCm) <= SAME_DEPTH_CM
  );
}

/** Channels whose names match the request, else those whose names say nothing. */
function nearestTo(channels: readonly Channel[], wanted: WantedChannel): readonly Channel[] {
  const ofMedium = channels.filter(({ meaning }) => wanted.medium !== null && meaning.medium === wanted.medium);
  const media = ofMedium.length > 0 ? ofMedium : channels;
  const ofDepth = media.filter(({ meaning }) => wanted.probeDepthCm !== null && meaning.depthCm !== null);
  return ofDepth.length > 0 ? ofDepth : media;
}

const sameSpot = (channels: readonly Channel[]): boolean =>
  channels.every(
    ({ meaning }) => meaning.medium === channels[0]!.meaning.medium && meaning.depthCm === channels[0]!.meaning.depthCm,
  );

/** A day's minimum and maximum, and its mean where there is one, all of one spot. */
function minMeanMax(channels: readonly Channel[]): Channel[] | undefined {
  if (!sameSpot(channels)) return undefined;
  const of = (statistic: string | null): Channel[] => channels.filter(({ meaning }) => meaning.statistic === statistic);
  const [mins, maxes] = [of('min'), of('max')];
  if (mins.length !== 1 || maxes.length !== 1) return undefined;
  const means = of('mean').length > 0 ? of('mean') : of(null);
  if (means.length > 1) return undefined;
  return [...means, ...mins, ...maxes];
}
