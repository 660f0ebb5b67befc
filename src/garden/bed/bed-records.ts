import type { Site } from '../../answers/soil/known-hours.js';
import { dateAt, type PlainDate, zoneNamed } from '../../basics/calendar.js';
import type { Note } from '../../basics/errors.js';
import type { Bed, Place, Store } from '../store/store.js';
import { sourceNote } from './source-note.js';

/** Stored rows of a place or a bed without their series; they show whether a cached answer still holds. */
export interface PlaceRecords {
  readonly place: Place;
  /** null: a place alone was asked for. */
  readonly bed: Bed | null;
  readonly site: Site;
  /** At the place. */
  readonly today: PlainDate;
  /** Note on the place's source; null: none is needed. */
  readonly sourceNote: Note | null;
}

export interface BedRecords extends PlaceRecords {
  readonly bed: Bed;
}

/** The rows of a place; undefined where it is not there. */
export async function placeRows(
  store: Store,
  owner: string,
  id: string,
  nowMs: number,
): Promise<PlaceRecords | undefined> {
  const place = await store.place(owner, id);
  return place && { ...(await rowsOf(store, owner, place, nowMs)), bed: null };
}

/** The rows of a bed and of its place; undefined where it is not there. */
export async function bedRows(store: Store, owner: string, id: string, nowMs: number): Promise<BedRecords | undefined> {
  const bed = await store.bed(owner, id);
  const place = bed && (await store.place(owner, bed.place));
  return bed && place && { ...(await rowsOf(store, owner, place, nowMs)), bed };
}

async function rowsOf(store: Store, owner: string, place: Place, nowMs: number): Promise<Omit<PlaceRecords, 'bed'>> {
  const { latitude, longitude, annualRainMm } = place;
  const zone = zoneNamed(place.timeZone);
  return {
    place,
    site: { zone, latitude, longitude, annualRainMm },
    today: dateAt(nowMs, zone),
    sourceNote: place.source && sourceNote(await store.sourceState(owner, place.id), nowMs),
  };
}

/**
 * All that an answer from what is kept changes with: a bed's revision is raised by its readings, sowings, counts, plans and
 * the lots that were sown in it, a place's by its air.
 */
export const bedInputsIn = ({ place, bed, today, sourceNote }: PlaceRecords): object => ({
  place: [place.id, place.revision],
  bed: bed && [bed.id, bed.revision],
  today,
  notes: sourceNote ? [sourceNote] : [],
});
