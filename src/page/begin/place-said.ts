import type { PlaceWire } from '../../contract/places.js';

/** Where a place lies, as `44.2° N, 30° W`. */
export const placeSaid = ({ latitude, longitude }: Pick<PlaceWire, 'latitude' | 'longitude'>): string =>
  `${side(latitude, 'N', 'S')}, ${side(longitude, 'E', 'W')}`;

const side = (degrees: number, positive: string, negative: string): string =>
  `${Math.round(Math.abs(degrees) * 100) / 100}° ${degrees < 0 ? negative : positive}`;
