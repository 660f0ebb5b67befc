import { expect, test } from 'vitest';
import { zoneNamed } from '../../../../src/basics/calendar.js';
import { isZoneAgainstLongitude } from '../../../../src/climate/world/zone-against-longitude.js';

test.each([
  // Where people live farthest from the sun's time: east and west ends of zones, and the date line.
  ['Asia/Shanghai', 79.5, false],
  ['Europe/Madrid', -9.2, false],
  ['America/Anchorage', -165.4, false],
  ['Pacific/Kiritimati', -157.4, false],
  ['Pacific/Auckland', -176.5, false],
  ['Pacific/Pago_Pago', -170.7, false],
  ['Europe/London', 0.1, false],
  // A minus forgotten, or one too many.
  ['America/New_York', 76.5, true],
  ['America/Los_Angeles', 120.9, true],
  ['Australia/Sydney', -151.2, true],
  ['Europe/Helsinki', -24.9, true],
  ['Etc/GMT+2', 30, true],
  ['Etc/GMT+2', -30, false],
  // Three hours are the limit: -45° is three hours west of Greenwich.
  ['UTC', -45, false],
  ['UTC', -45.5, true],
])('%s at longitude %d: %s', (name, longitude, isAgainst) => {
  expect(isZoneAgainstLongitude(zoneNamed(name), longitude)).toBe(isAgainst);
});
