import { readFile } from 'node:fs/promises';
import { describe, expect, test } from 'vitest';
import { near } from '../../../src/localities/near.js';
import { localities } from '../../api/helper.js';

const { index, zoneAt } = await localities();

/**
 * Towns as gazetteers publish them: coordinates to a hundredth of a degree or a minute of arc, and zones by the table of
 * countries of the IANA time zone database (zone1970.tab) and the rules of its files for countries with several.
 */
const towns: readonly (readonly [asked: string, latitude: number, longitude: number, zone: string])[] = [
  // Ambiguous names, told apart by region or country, or one much larger than the others.
  ['Ithaca', 42.44, -76.5, 'America/New_York'],
  ['Ithaca, MI', 43.29, -84.61, 'America/Detroit'],
  ['Portland, Oregon', 45.52, -122.68, 'America/Los_Angeles'],
  ['portland, me', 43.66, -70.26, 'America/New_York'],
  ['Paris', 48.86, 2.35, 'Europe/Paris'],
  ['Paris, Texas, US', 33.66, -95.56, 'America/Chicago'],
  ['London', 51.51, -0.13, 'Europe/London'],
  ['London, ON', 42.98, -81.25, 'America/Toronto'],
  ['Springfield, Illinois', 39.8, -89.64, 'America/Chicago'],
  ['Springfield MO', 37.21, -93.29, 'America/Chicago'],
  ['Birmingham, England, UK', 52.48, -1.9, 'Europe/London'],
  ['Birmingham, Alabama', 33.52, -86.8, 'America/Chicago'],
  ['Cambridge, Massachusetts, USA', 42.37, -71.11, 'America/New_York'],
  ['Cambridge, Great Britain', 52.2, 0.12, 'Europe/London'],
  ['Victoria, BC', 48.43, -123.37, 'America/Vancouver'],
  ['St. Petersburg, Florida', 27.77, -82.68, 'America/New_York'],
  ['Saint Petersburg, Russia', 59.94, 30.31, 'Europe/Moscow'],
  ['Frankfurt an der Oder', 52.34, 14.55, 'Europe/Berlin'],
  ['Córdoba, Argentina', -31.42, -64.18, 'America/Argentina/Cordoba'],
  ['Cordoba, Spain', 37.89, -4.78, 'Europe/Madrid'],
  ['Valencia, Venezuela', 10.16, -68.0, 'America/Caracas'],
  ['San José, Costa Rica', 9.93, -84.08, 'America/Costa_Rica'],
  ['Santiago de Compostela', 42.88, -8.54, 'Europe/Madrid'],
  // Accents, written or left out, and names of other languages.
  ['sao paulo', -23.55, -46.63, 'America/Sao_Paulo'],
  ['Zürich', 47.37, 8.54, 'Europe/Zurich'],
  ['Kobenhavn', 55.68, 12.57, 'Europe/Copenhagen'],
  ['Reykjavik', 64.15, -21.94, 'Atlantic/Reykjavik'],
  ['Muenchen', 48.14, 11.58, 'Europe/Berlin'],
  ['Wien', 48.21, 16.37, 'Europe/Vienna'],
  ['Łódź', 51.77, 19.46, 'Europe/Warsaw'],
  ['Plzen', 49.75, 13.38, 'Europe/Prague'],
  ['Malmoe', 55.61, 13.0, 'Europe/Stockholm'],
  ['Göteborg', 57.71, 11.97, 'Europe/Stockholm'],
  ['Izmir', 38.42, 27.14, 'Europe/Istanbul'],
  ['St Gallen', 47.42, 9.38, 'Europe/Zurich'],
  ['Hà Nội', 21.03, 105.85, 'Asia/Bangkok'],
  // Other scripts.
  ['Москва', 55.75, 37.62, 'Europe/Moscow'],
  ['Київ', 50.45, 30.52, 'Europe/Kyiv'],
  ['Αθήνα', 37.98, 23.73, 'Europe/Athens'],
  ['東京', 35.69, 139.69, 'Asia/Tokyo'],
  ['札幌市', 43.06, 141.35, 'Asia/Tokyo'],
  ['서울', 37.57, 126.98, 'Asia/Seoul'],
  ['القاهرة', 30.04, 31.24, 'Africa/Cairo'],
  ['दिल्ली', 28.65, 77.23, 'Asia/Kolkata'],
  ['กรุงเทพ', 13.75, 100.5, 'Asia/Bangkok'],
  // Islands.
  ['Honolulu', 21.31, -157.86, 'Pacific/Honolulu'],
  ['Suva', -18.14, 178.44, 'Pacific/Fiji'],
  ['Apia, Samoa', -13.83, -171.77, 'Pacific/Apia'],
  ['Tórshavn', 62.01, -6.77, 'Atlantic/Faroe'],
  ['Stanley, Falkland Islands', -51.69, -57.85, 'Atlantic/Stanley'],
  ['Ponta Delgada', 37.74, -25.67, 'Atlantic/Azores'],
  ['Antananarivo', -18.91, 47.54, 'Indian/Antananarivo'],
  // High towns.
  ['La Paz, Bolivia', -16.5, -68.15, 'America/La_Paz'],
  ['Cusco', -13.53, -71.97, 'America/Lima'],
  ['Leh', 34.16, 77.58, 'Asia/Kolkata'],
  ['Lhasa', 29.65, 91.13, 'Asia/Shanghai'],
  ['Addis Ababa', 9.02, 38.75, 'Africa/Addis_Ababa'],
  ['Leadville', 39.25, -106.29, 'America/Denver'],
  // Far north and far south.
  ['Longyearbyen', 78.22, 15.65, 'Arctic/Longyearbyen'],
  ['Tromsø', 69.65, 18.96, 'Europe/Oslo'],
  ['Barrow, Alaska', 71.29, -156.79, 'America/Anchorage'],
  ['Fairbanks', 64.84, -147.72, 'America/Anchorage'],
  ['Ushuaia', -54.81, -68.31, 'America/Argentina/Ushuaia'],
  ['Invercargill', -46.41, 168.35, 'Pacific/Auckland'],
  // The rest of the continents.
  ['Melbourne', -37.81, 144.96, 'Australia/Melbourne'],
  ['Perth, Australia', -31.95, 115.86, 'Australia/Perth'],
  ['Adelaide', -34.93, 138.6, 'Australia/Adelaide'],
  ['Cape Town', -33.93, 18.42, 'Africa/Johannesburg'],
  ['Nairobi', -1.29, 36.82, 'Africa/Nairobi'],
  ['Kathmandu', 27.71, 85.32, 'Asia/Kathmandu'],
];

/**
 * A zone of today by its offsets from UTC in January and July: the database links zones that have agreed since 1970, and
 * sources differ in which of the names they use.
 */
const offsets = (zone: string): string[] =>
  ['2027-01-15T12:00Z', '2027-07-15T12:00Z'].map((at) =>
    new Intl.DateTimeFormat('en', { timeZone: zone, timeZoneName: 'longOffset' }).format(new Date(at)),
  );

describe('a town of the world', () => {
  test.each(towns)('%s lies at %d, %d', (asked, latitude, longitude, zone) => {
    const found = near(index, asked);
    if (found.found !== 'one') throw new Error(`${asked}: ${JSON.stringify(found)}`);
    const { locality } = found;
    expect(Math.abs(locality.latitude - latitude), locality.near).toBeLessThanOrEqual(0.1);
    expect(Math.abs(locality.longitude - longitude), locality.near).toBeLessThanOrEqual(0.1);
    expect(offsets(locality.timeZone)).toEqual(offsets(zone));
    expect(offsets(zoneAt(locality.latitude, locality.longitude))).toEqual(offsets(zone));
  });

  test.each([
    ['La Paz, Bolivia', 3640],
    ['Leadville', 3094],
    ['Cusco', 3399],
    ['Lhasa', 3656],
    ['Denver', 1609],
    ['Amsterdam', -2],
  ])('%s lies %i m above the sea, within 150 m: steep towns have many heights', (asked, heightM) => {
    const found = near(index, asked);
    expect(found.found).toBe('one');
    if (found.found === 'one') expect(Math.abs(found.locality.elevationM! - heightM)).toBeLessThanOrEqual(150);
  });
});

describe('the capitals of the United States, as another data set has them', async () => {
  const file = new URL('../../../node_modules/vega-datasets/data/us-state-capitals.json', import.meta.url);
  const capitals = JSON.parse(await readFile(file, 'utf8')) as {
    readonly lat: number;
    readonly lon: number;
    readonly state: string;
    readonly city: string;
  }[];

  test.each(capitals)('$city, $state', ({ city, state, lat, lon }) => {
    const found = near(index, `${city}, ${state}, USA`);
    if (found.found !== 'one') throw new Error(JSON.stringify(found));
    expect(Math.abs(found.locality.latitude - lat)).toBeLessThanOrEqual(0.1);
    expect(Math.abs(found.locality.longitude - lon)).toBeLessThanOrEqual(0.1);
  });
});
