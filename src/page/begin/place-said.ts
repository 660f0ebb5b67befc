import type { PlaceWire } from '../../contract/places.js';
import type { PageReader } from '../shell/words.js';

/** The position of a place, as `44.2° N, 30° W`. */
export const placeSaid = (
  { latitude, longitude }: Pick<PlaceWire, 'latitude' | 'longitude'>,
  { say }: PageReader,
): string =>
  say('page.place.at', {
    latitude: Math.round(Math.abs(latitude) * 100) / 100,
    side: latitude < 0 ? 'south' : 'north',
    longitude: Math.round(Math.abs(longitude) * 100) / 100,
    far: longitude < 0 ? 'west' : 'east',
  });
