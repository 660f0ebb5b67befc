import { fromUnit } from '../plot/degrees.js';
import { unusable } from './act.js';
import { type Got, isRefused, type Send } from './api.js';
import { numberOrText } from './forecast-request.js';
import { keepUnder } from './keep-under.js';
import type { Act } from './view.js';

/** Keeps a bed under its name, and its place where that is new. */
export const keepBed: Act = async (said, { send, question }) => {
  const text = (name: string): string => (said.get(name) ?? '').trim();
  const name = text('name');
  if (name === '') return unusable('Give the bed a name, such as North bed.');
  const [kind, cover, moisture] = [text('kind'), text('cover'), text('moisture')];
  const room = kind === 'indoors' ? numberOrText(text('roomC')) : null;
  const roomC = typeof room === 'number' ? fromUnit(room, text('unit') === 'F' ? 'F' : 'C') : room;
  if (kind === 'indoors' && roomC === null) return unusable('How warm is the room? A bed indoors is as warm as that.');
  const place = await placeIn(text, send);
  if (isRefused(place)) return place;
  const shadePercent = numberOrText(text('shadePercent')) ?? 0;
  const bed = { place: place.value, name, kind, cover, moisture, shadePercent, roomC };
  const kept = await keepUnder(send, 'beds', idFrom(name, 'bed'), bed);
  if (isRefused(kept)) return kept;
  return {
    value: {
      said: `Kept: ${name}`,
      at: `bed-${kept.value}`,
      question: { ...question, bed: kept.value, source: 'bed' },
    },
  };
};

/** The kept place that is chosen, or one that is described, kept now. */
async function placeIn(text: (name: string) => string, send: Send): Promise<Got<string>> {
  const chosen = text('place');
  if (chosen !== '') return { value: chosen };
  const [name, timeZone] = [text('placeName') || 'My garden', text('timeZone')];
  const [latitude, longitude] = [numberOrText(text('latitude')), numberOrText(text('longitude'))];
  if (latitude === null || longitude === null) {
    return unusable('Where does the bed lie? Write its latitude and longitude in degrees; a map shows them.');
  }
  if (timeZone === '') return unusable('Which time zone is the bed in? Write it like Etc/GMT+2.');
  return keepUnder(send, 'places', idFrom(name, 'place'), { name, latitude, longitude, timeZone });
}

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
