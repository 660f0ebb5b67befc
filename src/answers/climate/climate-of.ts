import type { PlainDate, Zone } from '../../basics/calendar.js';
import type { MonthDay } from '../../climate/frost-dates.js';
import type { DailyExtremes } from '../../climate/world/typical-years.js';
import type { TableClimate } from './table-climate.js';

/** A place whose climate is asked for. */
export interface ClimatePlace {
  readonly latitude: number;
  readonly longitude: number;
  /** null: unknown. */
  readonly elevationM: number | null;
  readonly zone: Zone;
  readonly lastFrostAround: MonthDay | null;
  readonly firstFrostAround: MonthDay | null;
  /** Its own air of a year or two, too short to judge by; left out or null: none is known. */
  readonly ownAir?: DailyExtremes | null | undefined;
}

/**
 * Finds the climate of a place from the table of stations, whoever reads that.
 *
 * @throws {RequestError} `no-climate-near` where no station is near enough; `not-understood` for a frost date that cannot
 * be true there.
 */
export type ClimateOf = (place: ClimatePlace, today: PlainDate) => TableClimate;

/** A typical year ends so many months or more before today, so that none of its days is taken for yesterday. */
const MONTHS_BEFORE = 2;

/** The last calendar year that typical years are dated as. */
export const lastTypicalYear = (today: PlainDate): number =>
  Number(today.slice(0, 4)) - (Number(today.slice(5, 7)) > MONTHS_BEFORE ? 1 : 2);
