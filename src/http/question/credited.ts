import type { BedInputs } from '../../garden/bed/bed-inputs.js';
import { type Attribution, attributionOf } from '../../garden/store/source-presets.js';

/** An answer with the credits for the public sources of the air that it rests on. */
export function credited<Content extends object>(
  content: Content,
  kept: Pick<BedInputs, 'credited' | 'series'> | null,
): Content & { readonly attributions?: readonly Attribution[] } {
  const hasAir = kept?.series.some(({ medium }) => medium === 'air');
  if (!hasAir || kept!.credited.length === 0) return content;
  return { ...content, attributions: kept!.credited.map(attributionOf) };
}
