import { keepUnder } from '../form/keep-under.js';
import { isFailure } from '../shell/api.js';
import type { ActionOf } from '../shell/view.js';

/** Stores a town as a place, with a bed of open ground in it. */
export const keepTown: ActionOf = async (said, { send, reader }) => {
  const text = (name: string): string => (said.get(name) ?? '').trim();
  const [name = ''] = text('town').split(',');
  const town = name || reader.say('page.week.my-garden');
  const elevationM = text('elevationM');
  const place = await keepUnder(send, 'places', 'garden', {
    name: town,
    latitude: Number(text('latitude')),
    longitude: Number(text('longitude')),
    timeZone: text('timeZone'),
    elevationM: elevationM === '' ? null : Number(elevationM),
  });
  if (isFailure(place)) return place;
  const bed = await keepUnder(send, 'beds', 'bed', { name: reader.say('page.week.my-bed'), place: place.value.id });
  if (isFailure(bed)) return bed;
  const { id, isNew } = bed.value;
  return {
    value: {
      said: reader.say('page.done.kept', { isNew: isNew ? 'yes' : 'no', what: town }),
      at: 'answer',
      goesOn: { view: 'week', bed: id, source: 'bed' },
    },
  };
};
