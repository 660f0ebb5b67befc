/**
 * The climate of the world's stations, as arrays side by side in the order of stations; months are January first, station
 * after station.
 */
export interface StationTable {
  /** The credit that the publisher of the data asks for. */
  readonly credit: string;
  /** Number of stations n. */
  readonly count: number;
  /** North and east positive [0.01°]. Shape (n) each. */
  readonly latitudeHundredths: Int16Array;
  readonly longitudeHundredths: Int16Array;
  readonly elevationM: Int16Array;
  /** Mean daily maximum [0.1 °C]. Shape (12n). */
  readonly maxTenths: Int16Array;
  /** Mean daily maximum less mean daily minimum [0.1 K]. Shape (12n). */
  readonly rangeTenths: Uint8Array;
  /** Standard deviation of the daily mean about the month's mean, within and between years [0.1 K]; `MISSING_SD`. Shape (12n). */
  readonly sdTenths: Uint8Array;
  /** Precipitation [mm]; `MISSING_RAIN`. Shape (12n). */
  readonly rainMm: Int16Array;
  /** Index into `countries`. Shape (n). */
  readonly countryOf: Uint8Array;
  readonly countries: readonly string[];
  /** The station's number in the World Meteorological Organization's list, five characters, and its name. Shape (n). */
  readonly labels: readonly string[];
}

/** Marks of cells for which too few months were reported. */
export const MISSING_SD = 255;
export const MISSING_RAIN = -1;
export const MONTHS = 12;
const ID_CHARS = 5;
const INT16_BYTES = 2;
/** Cells of a station in 16 and in 8 bits. */
const INT16_PER_STATION = 3 + 2 * MONTHS;
const BYTES_PER_STATION = 2 * MONTHS + 1;

/**
 * Decodes the table of stations. It makes views of the bytes and copies nothing.
 *
 * @param bytes Little-endian, beginning at an even offset: n; then as 16-bit integers latitudes, longitudes, heights,
 * maxima, rain; then as bytes ranges, deviations, indices of countries; then lines of UTF-8: the credit, the countries
 * separated by tabs, and n labels.
 * @returns The table.
 */
export function decodeStationTable(bytes: Uint8Array): StationTable {
  const { buffer, byteOffset } = bytes;
  const count = new Int16Array(buffer, byteOffset, 1)[0]!;
  let at = byteOffset + INT16_BYTES;
  const int16 = (length: number): Int16Array => {
    const view = new Int16Array(buffer, at, length);
    at += INT16_BYTES * length;
    return view;
  };
  const uint8 = (length: number): Uint8Array => {
    const view = new Uint8Array(buffer, at, length);
    at += length;
    return view;
  };
  const numbers = {
    latitudeHundredths: int16(count),
    longitudeHundredths: int16(count),
    elevationM: int16(count),
    maxTenths: int16(MONTHS * count),
    rainMm: int16(MONTHS * count),
    rangeTenths: uint8(MONTHS * count),
    sdTenths: uint8(MONTHS * count),
    countryOf: uint8(count),
  };
  const textFrom = INT16_BYTES + count * (INT16_BYTES * INT16_PER_STATION + BYTES_PER_STATION);
  const [credit, countries, ...labels] = new TextDecoder().decode(bytes.subarray(textFrom)).split('\n');
  return { credit: credit!, count, ...numbers, countries: countries!.split('\t'), labels };
}

export interface Station {
  /** Its number in the World Meteorological Organization's list. */
  readonly id: string;
  readonly name: string;
  readonly country: string;
  readonly elevationM: number;
}

/** The station at an index of the table. */
export const stationAt = ({ labels, countries, countryOf, elevationM }: StationTable, index: number): Station => ({
  id: labels[index]!.slice(0, ID_CHARS),
  name: labels[index]!.slice(ID_CHARS),
  country: countries[countryOf[index]!]!,
  elevationM: elevationM[index]!,
});
