/** A media range of an Accept header, such as `image/*;q=0.8`, or a coding of Accept-Encoding. */
export interface Range {
  readonly type: string;
  readonly quality: number;
}

export const rangesOf = (accept: string): Range[] =>
  accept
    .split(',')
    .map((one) => one.trim().toLowerCase())
    .filter((one) => one !== '')
    .map((one) => {
      const [type, ...parameters] = one.split(';').map((part) => part.trim());
      const quality = parameters.find((part) => /^q\s*=/.test(part))?.replace(/^q\s*=\s*/, '');
      const said = quality === undefined ? 1 : Number(quality);
      return { type: type!, quality: said >= 0 && said <= 1 ? said : 1 };
    });

/** Preference for a media type, 0 (not acceptable) to 1: the most specific range counts (RFC 9110, 12.5.1). */
function qualityOf(mediaType: string, ranges: readonly Range[]): number {
  for (const wanted of [mediaType, mediaType.replace(/\/.*/, '/*'), '*/*']) {
    const named = ranges.filter(({ type }) => type === wanted);
    if (named.length > 0) return Math.max(...named.map(({ quality }) => quality));
  }
  return 0;
}

/** The available media type that an Accept header prefers, the default listed first; undefined: it accepts none. */
export function negotiatedType(accept: string | undefined, mediaTypes: readonly string[]): string | undefined {
  if (accept === undefined) return mediaTypes[0];
  const ranges = rangesOf(accept);
  if (ranges.length === 0) return mediaTypes[0];
  const qualities = mediaTypes.map((mediaType) => qualityOf(mediaType, ranges));
  const best = Math.max(...qualities);
  return best > 0 ? mediaTypes[qualities.indexOf(best)] : undefined;
}
