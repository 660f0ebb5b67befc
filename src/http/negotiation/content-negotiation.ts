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

/** How gladly a caller takes a media type, 0 (not at all) to 1: what names it most exactly counts (RFC 9110, 12.5.1). */
function qualityOf(mediaType: string, ranges: readonly Range[]): number {
  for (const wanted of [mediaType, mediaType.replace(/\/.*/, '/*'), '*/*']) {
    const named = ranges.filter(({ type }) => type === wanted);
    if (named.length > 0) return Math.max(...named.map(({ quality }) => quality));
  }
  return 0;
}

/** Of the media types that there are, usual one first, the one that an Accept header likes best; undefined: it takes none. */
export function negotiatedType(accept: string | undefined, mediaTypes: readonly string[]): string | undefined {
  if (accept === undefined) return mediaTypes[0];
  const ranges = rangesOf(accept);
  if (ranges.length === 0) return mediaTypes[0];
  const qualities = mediaTypes.map((mediaType) => qualityOf(mediaType, ranges));
  const best = Math.max(...qualities);
  return best > 0 ? mediaTypes[qualities.indexOf(best)] : undefined;
}
