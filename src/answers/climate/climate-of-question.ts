import { frostDates } from '../../climate/frost-dates.js';
import type { Normals } from '../../climate/normals.js';
import type { ReadSeries } from '../../readings/read-series.js';
import { type AirOfYears, isTypical, MIN_YEARS, yearsTold } from '../ahead/past-soil.js';
import type { Site } from '../soil/known-hours.js';
import { airDays } from '../windows/air-days.js';
import type { Climate, FrostRisk } from './climate.js';
import type { TableClimate } from './table-climate.js';

/** What a question knows of a climate. */
interface ClimateAsked extends AirOfYears {
  readonly site: Pick<Site, 'latitude'>;
  readonly normals: Normals | null;
}

const UNMEASURED = { typicalYears: null, plusMinusC: null, plusMinusDays: null, stations: [], tunedBy: null } as const;

/**
 * The climate that an answer rests on: the table's where typical years stand in, else past years, else normals.
 *
 * @param table The climate that the typical years came with.
 * @returns null where the answer rests on none.
 */
export function climateOfQuestion(question: ClimateAsked, table: TableClimate | null): Climate | null {
  const { series, site, normals } = question;
  if (isTypical(question)) return table?.climate ?? null;
  if (yearsTold(series) >= MIN_YEARS) {
    return { basis: 'past-years', ...UNMEASURED, ...frostIn(series, site.latitude) };
  }
  return normals && { basis: 'normals', ...UNMEASURED, lastSpringFrost: null, firstAutumnFrost: null };
}

type Frosts = Pick<Climate, 'lastSpringFrost' | 'firstAutumnFrost'>;
const NO_FROSTS: Frosts = { lastSpringFrost: null, firstAutumnFrost: null };

/** Past years are the same objects from question to question. */
const found = new WeakMap<ReadSeries, Frosts>();

function frostIn(series: readonly ReadSeries[], latitude: number | null): Frosts {
  const air = series.find(({ medium, origin }) => medium === 'air' && origin === 'measured');
  if (!air || latitude === null) return NO_FROSTS;
  const known = found.get(air);
  if (known) return known;
  const days = airDays([air]);
  const sides = days && frostDates(days, 0, latitude);
  const frosts: Frosts = sides
    ? { lastSpringFrost: riskOf(sides.spring), firstAutumnFrost: riskOf(sides.autumn) }
    : NO_FROSTS;
  found.set(air, frosts);
  return frosts;
}

const riskOf = ({ risk10, risk50, risk90 }: FrostRisk): FrostRisk => ({ risk10, risk50, risk90 });
