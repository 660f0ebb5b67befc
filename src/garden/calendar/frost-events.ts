import type { PlainDate } from '../../basics/calendar.js';
import type { FrostClass } from '../../germination/crop.js';
import { cropInFacts } from '../../germination/custom-crop.js';
import type { Bed } from '../store/store.js';
import { type Draft, isUp, on, whole } from './calendar-event.js';
import type { BedSeason, GrowingSowing } from './calendar-season.js';

/**
 * A night forecast this cold [°C] calls for a warning over plants of a frost class: 2 K above the limits by which windows
 * and planting out are judged, as a bed under a clear sky is colder than the air. Our assumption.
 */
const warnBelowC: Readonly<Record<FrostClass, number>> = { tender: 2, 'half-hardy': 0, hardy: -3 };

/** Events for frost to come. The night identifies an event, so that the frosts of two nights are two events. */
export function frostDrafts(sowings: readonly GrowingSowing[], coming: BedSeason['comingMinC'], bed: Bed): Draft[] {
  return coming.flatMap(({ date, minC }) => {
    const atRisk = sowings.filter((one) => standsOn(one, date) && minC <= warnBelowC[one.crop.frost ?? 'tender']);
    if (atRisk.length === 0) return [];
    const names = [...new Set(atRisk.map(({ crop }) => cropInFacts(crop)))].sort().join('\n');
    return [
      on(date, {
        kind: 'frost',
        n: date,
        summary: { code: 'event.frost', params: { crops: names } },
        description: [{ code: 'event.frost.detail', params: { bed: bed.name, minC: whole(minC) } }],
      }),
    ];
  });
}

/** Do plants of a sowing stand in the bed on a date, above the ground? */
function standsOn({ sowing, forecast, indoors, harvest }: GrowingSowing, date: PlainDate): boolean {
  if (harvest !== null && date > harvest.to) return false;
  if (sowing.method === 'indoors') return indoors !== null && date >= indoors.plantOut;
  const first = forecast?.emergence.first;
  return first !== undefined && isUp(first) && date >= first.range.from;
}
