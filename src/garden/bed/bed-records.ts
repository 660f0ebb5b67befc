import type { Site } from '../../answers/soil/known-hours.js';
import { dateAt, type PlainDate, zoneNamed } from '../../basics/calendar.js';
import type { Note } from '../../basics/errors.js';
import type { Fact } from '../../basics/fact.js';
import type { PresetName } from '../store/source-presets.js';
import type { Bed, Place, Store } from '../store/store.js';
import { creditedPresets, failedSources, sourceNotes } from './source-note.js';

/** Stored rows of a place or a bed without their series; they show whether a cached answer still holds. */
export interface PlaceRecords {
  readonly place: Place;
  /** null: a place alone was asked for. */
  readonly bed: Bed | null;
  readonly site: Site;
  /** At the place. */
  readonly today: PlainDate;
  /** Notes on the place's sources. */
  readonly sourceNotes: readonly Note[];
  /** The sources that have not given what they should have. */
  readonly failedSources: readonly Fact[];
  /** The presets that an answer credits. */
  readonly credited: readonly PresetName[];
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
  const states = place.sources.length > 0 ? await store.sourceStates(owner, place.id) : [];
  return {
    place,
    site: { zone, latitude, longitude, annualRainMm },
    today: dateAt(nowMs, zone),
    sourceNotes: sourceNotes(states, nowMs),
    failedSources: failedSources(states, nowMs),
    credited: creditedPresets(states),
  };
}

/**
 * All that an answer from what is kept changes with: a bed's revision is raised by its readings, sowings, counts, plans and
 * the lots that were sown in it, a place's by its air.
 */
export const bedInputsIn = ({ place, bed, today, sourceNotes, credited }: PlaceRecords): object => ({
  place: [place.id, place.revision],
  bed: bed && [bed.id, bed.revision],
  today,
  notes: sourceNotes,
  ...(credited.length > 0 && { credited }),
});
