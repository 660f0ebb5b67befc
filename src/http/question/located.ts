import type { z } from 'zod';
import type { Climate } from '../../answers/climate/climate.js';
import { climateOfQuestion } from '../../answers/climate/climate-of-question.js';
import type { Question } from '../../answers/question.js';
import type { ClimateWire } from '../../contract/climate.js';
import type { localeShape } from '../../contract/locale.js';
import type { Rounding } from '../negotiation/rounding.js';
import { credited } from './credited.js';
import type { Known } from './question.js';

type PlaceWire = z.infer<(typeof localeShape)['place']>;

/** Fields of an answer that say where it is about, and which climate it rests on. */
export interface Located {
  readonly place: PlaceWire;
  readonly climate: ClimateWire | null;
}

/**
 * Adds to an answer where it is about, the climate it rests on, and what is to be said of both.
 *
 * @param question What was asked, with the temperatures that it was answered from.
 */
export function located<
  Content extends { readonly assumptions: readonly unknown[]; readonly warnings: readonly unknown[] },
>(
  content: Content,
  question: Pick<Question, 'series' | 'typicalAir' | 'normals' | 'site'>,
  known: Known,
  rounding: Rounding,
): Content & Located {
  const table = (known.kept ?? known.locale)?.climate ?? null;
  const climate = climateOfQuestion(question, table);
  // Of the place's own years; the table's typical ones were tuned as they were made.
  const tuning = climate?.basis === 'past-years' ? (known.kept?.tuning ?? null) : null;
  const told = climate?.basis === 'climate-table' ? table : null;
  return {
    ...credited(content, known.kept),
    place: placeOf(known),
    climate: climate && climateOnWire(tuning ? { ...climate, tunedBy: tuning.tunedBy } : climate, rounding),
    assumptions: [
      ...content.assumptions,
      ...(known.locale?.assumptions ?? []),
      ...((told ?? tuning)?.assumptions ?? []),
    ],
    warnings: [
      ...content.warnings,
      ...((told ?? tuning)?.warnings ?? []),
      ...(told ? (known.kept?.failedSources ?? []) : []),
    ],
  };
}

function placeOf({ kept, locale }: Known): PlaceWire {
  if (kept) {
    const { id, latitude, longitude, elevationM, timeZone } = kept.place;
    return { id, latitude, longitude, elevationM, timeZone };
  }
  if (!locale) return null;
  const { site, near, elevationM } = locale;
  const { latitude, longitude, zone } = site;
  return { ...(near === null ? {} : { near }), latitude, longitude, elevationM, timeZone: zone.name };
}

const climateOnWire = (
  { plusMinusC, stations, tunedBy, ...climate }: Climate,
  { temperature, share }: Rounding,
): ClimateWire => ({
  ...climate,
  plusMinusC: plusMinusC === null ? null : temperature(plusMinusC),
  stations: stations.map((one) => ({ ...one, km: Math.round(one.km), share: share(one.share) })),
  tunedBy: tunedBy && { ...tunedBy, minimaMovedC: temperature(tunedBy.minimaMovedC) },
});
