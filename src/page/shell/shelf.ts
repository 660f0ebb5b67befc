import type { BedWire } from '../../contract/beds.js';
import type { CropWire } from '../../contract/crop.js';
import type { PlaceWire } from '../../contract/places.js';
import { type Got, get, isRefused, pathWith, type Send } from './api.js';
import { capital, dateIn, type Reader } from './words.js';

/** What there is to choose from: the crops, and the beds and places that are kept. */
export interface Shelf {
  readonly crops: readonly CropWire[];
  readonly beds: readonly BedWire[];
  readonly places: readonly PlaceWire[];
  /** The service's own clock, when this was asked [ms]. */
  readonly nowMs: number;
}

const MOST_PAGES = 10;

export async function loadShelf(send: Send): Promise<Got<Shelf>> {
  const [crops, beds, places] = await Promise.all([
    listOf<CropWire>(send, 'crops'),
    listOf<BedWire>(send, 'beds'),
    listOf<PlaceWire>(send, 'places'),
  ]);
  if (isRefused(crops)) return crops;
  if (isRefused(beds)) return beds;
  if (isRefused(places)) return places;
  return {
    value: {
      crops: crops.value.all,
      beds: beds.value.all,
      places: places.value.all,
      nowMs: Date.parse(beds.value.issuedAt),
    },
  };
}

type List<T> = { readonly next: string | null; readonly issuedAt: string } & { readonly [kind: string]: readonly T[] };

/** All of a kind that is kept, or those after an id, page by page. */
export async function listOf<T>(
  send: Send,
  kind: string,
  query: Readonly<Record<string, string>> = {},
): Promise<Got<{ all: T[]; issuedAt: string }>> {
  const all: T[] = [];
  let { after = '' } = query;
  for (let page = 1; ; page++) {
    const got = await get<List<T>>(send, { method: 'GET', path: pathWith(`/v1/${kind}`, { ...query, after }) });
    if (isRefused(got)) return got;
    all.push(...got.value[kind]!);
    if (got.value.next === null || page === MOST_PAGES) return { value: { all, issuedAt: got.value.issuedAt } };
    after = got.value.next;
  }
}

export const bedNamed = ({ beds }: Shelf, id: string): BedWire | undefined => beds.find((bed) => bed.id === id);

export const cropNamed = ({ crops }: Shelf, id: string): CropWire | undefined => crops.find((crop) => crop.id === id);

/** A crop by its name in the reader's language; one of the caller's own rows may have none. */
export function cropName(shelf: Shelf, crop: unknown, reader: Reader): string {
  if (typeof crop !== 'string') return (crop as { readonly name?: string }).name ?? reader.say('page.ways.own-crop');
  const known = reader.crop(crop);
  return known === undefined ? (cropNamed(shelf, crop)?.name ?? crop) : capital(known, reader);
}

/** The same within a sentence, as `lettuce`. */
export const cropInSentence = (shelf: Shelf, crop: unknown, reader: Reader): string =>
  (typeof crop === 'string' ? reader.crop(crop) : undefined) ?? cropName(shelf, crop, reader);

export const bedName = (shelf: Shelf, id: string): string => bedNamed(shelf, id)?.name ?? id;

export const placeOf = ({ places }: Shelf, bed: BedWire | undefined): PlaceWire | undefined =>
  places.find(({ id }) => id === bed?.place);

/** The date at a kept bed, or where a zone is named; else at the service. */
export function todayAt(shelf: Shelf, bedId: string, timeZone: string): string {
  const place = placeOf(shelf, bedNamed(shelf, bedId));
  return dateIn(place?.timeZone ?? timeZone, shelf.nowMs);
}
