import type { GrowingSowing } from '../garden/calendar-events.js';
import type { CountedSowing } from '../garden/season-store.js';
import type { Store } from '../garden/store.js';
import { cropOf } from './question.js';
import type { FindGrowing } from './routes/calendar.js';

/** The last sowings of a bed that its calendar speaks of. */
const MOST_SOWINGS = 50;

/** What grows in a kept bed. */
export const growingIn =
  (store: Store): FindGrowing =>
  async (owner, id) => {
    const bed = await store.bed(owner, id);
    const place = bed && (await store.place(owner, bed.place));
    if (!bed || !place) return undefined;
    return {
      inputs: { bed: bed.revision, place: place.revision },
      async season() {
        const [sowings, coming] = await Promise.all([
          store.sowingsOf(owner, id, MOST_SOWINGS),
          store.comingDays(owner, bed.place),
        ]);
        const comingMinC = (coming?.days ?? []).flatMap(({ date, min }) => (min === null ? [] : { date, minC: min }));
        return { bed, sowings: sowings.map(sown), plans: [], comingMinC };
      },
    };
  };

const sown = ({ sowing }: CountedSowing): GrowingSowing => ({
  sowing,
  crop: cropOf(sowing.crop),
  forecast: null,
  indoors: null,
  harvest: null,
  resowBy: null,
});
