import { fromUnit, type PlotUnit } from '../../plot/degrees.js';
import { type KeptUnder, keepUnder } from '../form/keep-under.js';
import { numberOrText } from '../form/typed-numbers.js';
import { get, isFailure, type ProblemBody, pathWith, type Result, type Send, unusable } from '../shell/api.js';
import { bedNamed } from '../shell/inventory.js';
import { fieldOf } from '../shell/refusal-words.js';
import type { ActionOf } from '../shell/view.js';
import { dateText, isDate, type PageReader } from '../shell/words.js';

/** No measurement is older; a date field gives such years to fast typists. */
const EARLIEST = '1900-01-01';

type Text = (name: string) => string;
const textsOf =
  (said: URLSearchParams): Text =>
  (name) =>
    (said.get(name) ?? '').trim();

/** Stores a bed under its name, and its place if that is new. */
export const keepBed: ActionOf = async (said, { send, question, reader }) => {
  const text = textsOf(said);
  const bed = bedIn(text, reader);
  if (isFailure(bed)) return bed;
  const place = await placeFor(text, send, reader);
  if (isFailure(place)) return place;
  const json = { ...bed.value, place: place.value.id };
  const kept = await keepUnder(send, 'beds', idFrom(bed.value.name, 'bed'), json);
  if (isFailure(kept)) {
    // The mended form may describe another place.
    if (place.value.isNew) await get(send, { method: 'DELETE', path: `/v1/places/${place.value.id}` });
    return refusedBed(kept.problem, text, reader);
  }
  const { id, isNew } = kept.value;
  return {
    value: {
      said: reader.say('page.done.kept', { isNew: isNew ? 'yes' : 'no', what: bed.value.name }),
      at: `bed-${id}`,
      goesOn: { bed: id, ofBed: question.ofBed && id, source: 'bed' },
    },
  };
};

/** Changes the stored fields of a bed. */
export const changeBed: ActionOf = async (said, { send, reader }) => {
  const text = textsOf(said);
  const bed = bedIn(text, reader);
  if (isFailure(bed)) return bed;
  const json = { ...bed.value, place: text('place') };
  const path = `/v1/beds/${encodeURIComponent(text('about'))}`;
  const got = await get(send, { method: 'PATCH', path, json });
  return isFailure(got)
    ? refusedBed(got.problem, text, reader)
    : { value: { said: reader.say('page.done.changed', { what: bed.value.name }), at: `bed-${text('about')}` } };
};

/** Changes the stored fields of a place. */
export const changePlace: ActionOf = async (said, { send, reader }) => {
  const text = textsOf(said);
  const place = placeIn(text, reader);
  if (isFailure(place)) return place;
  const path = `/v1/places/${encodeURIComponent(text('about'))}`;
  const got = await get(send, { method: 'PATCH', path, json: place.value });
  return isFailure(got)
    ? { problem: ofPlace(got.problem) }
    : { value: { said: reader.say('page.done.changed', { what: place.value.name }), at: `place-${text('about')}` } };
};

/** Deletes the measurements of some days, of a bed or of its place's air. */
export const forgetReadings: ActionOf = async (said, { send, shelf, reader }) => {
  const text = textsOf(said);
  const { say } = reader;
  const [from, to] = [text('from'), text('to')];
  const bed = bedNamed(shelf, text('about'));
  if (!bed) return unusable(say('page.undone.bed-gone'));
  if (![from, to].every((date) => isDate(date) && date >= EARLIEST)) {
    return unusable(say('page.undone.forget-days'));
  }
  if (from > to) return unusable(say('page.undone.days-turned'));
  const isAir = text('probe') === '';
  // A form that names none by mistake asks the service for an impossible one, not for all.
  const named = new URLSearchParams(text('probe'));
  const probe = { medium: named.get('medium') ?? '?', probeDepthCm: named.get('probeDepthCm') ?? '?' };
  const path = isAir
    ? pathWith(`/v1/places/${bed.place}/air`, { from, to })
    : pathWith(`/v1/beds/${bed.id}/readings`, { ...probe, from, to });
  const got = await get<{ readonly deleted: number }>(send, { method: 'DELETE', path });
  if (isFailure(got)) return got;
  const what = say(isAir ? 'page.of.air-days' : 'page.of.readings', { count: got.value.deleted });
  return {
    value: {
      said:
        got.value.deleted === 0
          ? say('page.done.nothing-kept')
          : say('page.done.forgotten-days', { what, from: dateText(from, reader), to: dateText(to, reader) }),
      at: `bed-${bed.id}`,
    },
  };
};

/** A bed in the service's format. */
function bedIn(text: Text, { say }: PageReader): Result<{ readonly name: string; readonly [field: string]: unknown }> {
  const [name, kind, cover, moisture] = [text('name'), text('kind'), text('cover'), text('moisture')];
  if (name === '') return unusable(say('page.undone.bed-name'));
  const room = kind === 'indoors' ? numberOrText(text('roomC')) : null;
  if (kind === 'indoors' && room === null) return unusable(say('page.undone.room'));
  const roomC = typeof room === 'number' ? fromUnit(room, roomUnit(text)) : room;
  const shadePercent = numberOrText(text('shadePercent')) ?? 0;
  return { value: { name, kind, cover, moisture, shadePercent, roomC } };
}

const roomUnit = (text: Text): PlotUnit => (text('roomUnit') === 'F' ? 'F' : 'C');

/** Words a refusal of the room in the degrees that it was typed in. */
const refusedBed = (problem: ProblemBody, text: Text, { say }: PageReader): { readonly problem: ProblemBody } =>
  problem.errors?.some((fault) => fieldOf(fault) === 'roomC')
    ? unusable(say('page.undone.room-odd', { said: text('roomC'), unit: roomUnit(text) }))
    : { problem };

/** The position of a place in the service's format. */
function placeIn(
  text: Text,
  { say }: PageReader,
): Result<{ readonly name: string; readonly [field: string]: unknown }> {
  const [name, timeZone] = [text('placeName') || say('page.field.usual-place'), text('timeZone')];
  const [latitude, longitude] = [numberOrText(text('latitude')), numberOrText(text('longitude'))];
  if (latitude === null || longitude === null) {
    return unusable(say('page.undone.where'));
  }
  if (timeZone === '') return unusable(say('page.undone.time-zone'));
  return { value: { name, latitude, longitude, timeZone } };
}

/** The chosen place, or the described one after storing it. */
async function placeFor(text: Text, send: Send, reader: PageReader): Promise<Result<KeptUnder>> {
  const chosen = text('place');
  if (chosen !== '') return { value: { id: chosen, isNew: false } };
  const place = placeIn(text, reader);
  if (isFailure(place)) return place;
  const kept = await keepUnder(send, 'places', idFrom(place.value.name, 'place'), place.value);
  return isFailure(kept) ? { problem: ofPlace(kept.problem) } : kept;
}

/** A refusal of the place's name is not one of the bed's. */
const ofPlace = (problem: ProblemBody): ProblemBody => ({
  ...problem,
  ...(problem.errors && {
    errors: problem.errors.map((fault) => (fieldOf(fault) === 'name' ? { ...fault, pointer: '/placeName' } : fault)),
  }),
});

const MAX_ID = 40;

/** A name as an id: `North bed` is `north-bed`. */
const idFrom = (name: string, usual: string): string =>
  name
    .normalize('NFKD')
    .replaceAll(/\p{M}+/gu, '')
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .slice(0, MAX_ID)
    .replaceAll(/^-+|-+$/g, '') || usual;
