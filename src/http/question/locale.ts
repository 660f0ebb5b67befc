import type { ClimateOf, ClimatePlace } from '../../answers/climate/climate-of.js';
import type { TableClimate } from '../../answers/climate/table-climate.js';
import type { Site } from '../../answers/soil/known-hours.js';
import { dateAt, type PlainDate, zoneNamed } from '../../basics/calendar.js';
import { type Fault, type Note, RequestError } from '../../basics/errors.js';
import { type ForecastQuery, isLocated } from '../../contract/forecast.js';
import type { NamedLocality } from '../../localities/near.js';
import type { Localities } from '../../localities/open-localities.js';
import { type Frost, requireLocality } from '../../localities/require-locality.js';

/** A place that a question describes by a town's name or by coordinates. */
export interface Locale {
  readonly site: Site & { readonly latitude: number; readonly longitude: number };
  /** The town; null: coordinates alone were sent. */
  readonly near: string | null;
  readonly elevationM: number | null;
  /** Its climate from the table; null: it is not to be used, or no table is at hand. */
  readonly climate: TableClimate | null;
  readonly assumptions: readonly Note[];
}

/** What finds towns and climates; left out: they are not at hand. */
export interface LocaleSources {
  readonly localities?: (() => Promise<Localities>) | undefined;
  readonly climateOf?: ClimateOf | undefined;
}

/** `needed`: nothing else answers; `wanted`: something else may; `unused`: it is left out. */
export type TableUse = 'needed' | 'wanted' | 'unused';

type Described = Exclude<NonNullable<NonNullable<ForecastQuery['where']>['place']>, string>;

/**
 * The place of a question, found by name or coordinates; undefined where the question does not say where it is.
 *
 * @param where     The field or parameter that a town's name stands in.
 * @param table     Whether the climate table is to answer for it.
 * @throws {RequestError} `unknown-locality`, `choose-locality`, `no-climate-near`, or `not-understood` for a frost date.
 */
export async function localeOf(
  { localities, climateOf }: LocaleSources,
  place: Described | undefined,
  where: Pick<Fault, 'path' | 'parameter'>,
  { now, table }: { readonly now: Date; readonly table: TableUse },
): Promise<Locale | undefined> {
  if (!place || !localities || !isLocated(place)) return undefined;
  const { index, zoneAt } = await localities();
  const isByCoordinates = place.latitude !== undefined && place.longitude !== undefined;
  const frostOf = (town: NamedLocality): Frost =>
    frostThere(climateOf, town, dateAt(now.getTime(), zoneNamed(town.timeZone)));
  const town = isByCoordinates ? null : requireLocality(index, place.near!, where, frostOf);
  const latitude = place.latitude ?? town!.locality.latitude;
  const longitude = place.longitude ?? town!.locality.longitude;
  const zone = zoneNamed(place.timeZone ?? town?.locality.timeZone ?? zoneAt(latitude, longitude));
  const elevationM = place.elevationM ?? town?.locality.elevationM ?? null;
  const { lastFrostAround = null, firstFrostAround = null } = place;
  const today = dateAt(now.getTime(), zone);
  const asked = { latitude, longitude, elevationM, zone, lastFrostAround, firstFrostAround };
  const climate = climateOf ? climateBy(climateOf, asked, today, table) : null;
  return {
    site: { zone, latitude, longitude, annualRainMm: place.annualRainMm ?? climate?.annualRainMm ?? null },
    near: town?.locality.near ?? null,
    elevationM,
    climate,
    assumptions: town?.assumption ? [town.assumption] : [],
  };
}

function climateBy(climateOf: ClimateOf, asked: ClimatePlace, today: PlainDate, use: TableUse): TableClimate | null {
  if (use === 'unused') return null;
  try {
    return climateOf(asked, today);
  } catch (error) {
    if (use === 'wanted' && error instanceof RequestError && error.code === 'no-climate-near') return null;
    throw error;
  }
}

/** What the climate table says of a town's last frost, to tell towns of one name apart. */
function frostThere(climateOf: ClimateOf | undefined, town: NamedLocality, today: PlainDate): Frost {
  const unknown: Frost = { frost: 'unknown', lastFrostOn: null };
  if (!climateOf) return unknown;
  const { latitude, longitude, elevationM, timeZone } = town;
  try {
    const { climate } = climateOf(
      { latitude, longitude, elevationM, zone: zoneNamed(timeZone), lastFrostAround: null, firstFrostAround: null },
      today,
    );
    const lastFrostOn = climate.lastSpringFrost?.risk50 ?? null;
    return lastFrostOn === null ? { frost: 'never', lastFrostOn } : { frost: 'in-spring', lastFrostOn };
  } catch (error) {
    if (error instanceof RequestError) return unknown;
    throw error;
  }
}
