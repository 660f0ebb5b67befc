import type { LocalityIndex } from './locality-index.js';

/** Whose data the index holds, as its licence asks to say. */
export const localitySource = ({ asOf }: Pick<LocalityIndex, 'asOf'>) => ({
  name: 'GeoNames',
  licence: 'CC BY 4.0',
  url: 'https://www.geonames.org/',
  asOf,
});
