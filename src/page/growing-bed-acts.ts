import { fromUnit } from '../plot/degrees.js';
import { unusable } from './act.js';
import { type Got, get, isRefused, type Problem, type Send } from './api.js';
import { numberOrText } from './forecast-request.js';
import { keepUnder } from './keep-under.js';
import { fieldOf } from './refusal-words.js';
import type { Act } from './view.js';

/** Keeps a bed under its name, and its place where that is new. */
export const keepBed: Act = async (said, { send, question }) => {
  const text = (name: string): string => (said.get(name) ?? '').trim();
  const name = text('name');
  if (name === '') return unusable('Give the bed a name, such as North bed.');
  const [kind, cover, moisture] = [text('kind'), text('cover'), text('moisture')];
  const unit = text('roomUnit') === 'F' ? 'F' : 'C';
  const room = kind === 'indoors' ? numberOrText(text('roomC')) : null;
  if (kind === 'indoors' && room === null) return unusable('How warm is the room? A bed indoors is as warm as that.');
  const place = await placeIn(text, send);
  if (isRefused(place)) return place;
  const roomC = typeof room === 'number' ? fromUnit(room, unit) : room;
  const shadePercent = numberOrText(text('shadePercent')) ?? 0;
  const bed = { place: place.value.id, name, kind, cover, moisture, shadePercent, roomC };
  const kept = await keepUnder(send, 'beds', idFrom(name, 'bed'), bed);
  if (isRefused(kept)) {
    // Mended, it may be another place.
    if (place.value.isNew) await get(send, { method: 'DELETE', path: `/v1/places/${place.value.id}` });
    const isOfRoom = kept.problem.errors?.some((fault) => fieldOf(fault) === 'roomC');
    return isOfRoom ? unusable(`A room of ${text('roomC')} °${unit}? Mend the number, or its degrees.`) : kept;
  }
  const { id, isNew } = kept.value;
  return {
    value: {
      said: `${isNew ? 'Kept' : 'Kept already'}: ${name}`,
      at: `bed-${id}`,
      goesOn: { bed: id, ofBed: question.ofBed && id, source: 'bed' },
    },
  };
};

/** The kept place that is chosen, or one that is described, kept now. */
async function placeIn(
  text: (name: string) => string,
  send: Send,
): Promise<Got<{ readonly id: string; readonly isNew: boolean }>> {
  const chosen = text('place');
  if (chosen !== '') return { value: { id: chosen, isNew: false } };
  const [name, timeZone] = [text('placeName') || USUAL_PLACE, text('timeZone')];
  const [latitude, longitude] = [numberOrText(text('latitude')), numberOrText(text('longitude'))];
  if (latitude === null || longitude === null) {
    return unusable('Where does the bed lie? Write its latitude and longitude in degrees; a map shows them.');
  }
  if (timeZone === '') return unusable('Which time zone is the bed in? Write it like Etc/GMT+2.');
  const kept = await keepUnder(send, 'places', idFrom(name, 'place'), { name, latitude, longitude, timeZone });
  return isRefused(kept) ? { problem: ofPlace(kept.problem) } : kept;
}

/** What a place is called that nobody named. */
export const USUAL_PLACE = 'My garden';

/** A refusal of the place's name is not one of the bed's. */
const ofPlace = (problem: Problem): Problem => ({
  ...problem,
  ...(problem.errors && {
    errors: problem.errors.map((fault) => (fieldOf(fault) === 'name' ? { ...fault, pointer: '/placeName' } : fault)),
  }),
});

const LONGEST_ID = 40;

/** A name as an id: `North bed` is `north-bed`. */
const idFrom = (name: string, usual: string): string =>
  name
    .normalize('NFKD')
    .replaceAll(/\p{M}+/gu, '')
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .slice(0, LONGEST_ID)
    .replaceAll(/^-+|-+$/g, '') || usual;
