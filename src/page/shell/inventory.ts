import type { BedWire } from '../../contract/beds.js';
import type { CropWire } from '../../contract/crop.js';
import type { PlaceWire } from '../../contract/places.js';
import { get, isFailure, pathWith, type Result, type Send } from './api.js';
import { capital, dateIn, type PageReader } from './words.js';

/** Everything to choose from: crops, and stored beds and places. */
export interface Inventory {
  readonly crops: readonly CropWire[];
  readonly beds: readonly BedWire[];
  readonly places: readonly PlaceWire[];
  /** The service's clock at the time of the request [ms]. */
  readonly nowMs: number;
}

const MAX_PAGES = 10;

export async function loadInventory(send: Send): Promise<Result<Inventory>> {
  const [crops, beds, places] = await Promise.all([
    listOf<CropWire>(send, 'crops'),
    listOf<BedWire>(send, 'beds'),
    listOf<PlaceWire>(send, 'places'),
  ]);
  if (isFailure(crops)) return crops;
  if (isFailure(beds)) return beds;
  if (isFailure(places)) return places;
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

/** All stored things of a kind, or those after an id, page by page. */
export async function listOf<T>(
  send: Send,
  kind: string,
  query: Readonly<Record<string, string>> = {},
): Promise<Result<{ all: T[]; issuedAt: string }>> {
  const all: T[] = [];
  let { after = '' } = query;
  for (let page = 1; ; page++) {
    const got = await get<List<T>>(send, { method: 'GET', path: pathWith(`/v1/${kind}`, { ...query, after }) });
    if (isFailure(got)) return got;
    all.push(...got.value[kind]!);
    if (got.value.next === null || page === MAX_PAGES) return { value: { all, issuedAt: got.value.issuedAt } };
    after = got.value.next;
  }
}

export const bedNamed = ({ beds }: Inventory, id: string): BedWire | undefined => beds.find((bed) => bed.id === id);

export const cropNamed = ({ crops }: Inventory, id: string): CropWire | undefined =>
  crops.find((crop) => crop.id === id);

/** A crop's name in the reader's language; a custom response curve may have none. */
export function cropName(shelf: Inventory, crop: unknown, reader: PageReader): string {
  if (typeof crop !== 'string') return (crop as { readonly name?: string }).name ?? reader.say('page.ways.own-crop');
  const known = reader.crop(crop);
  return known === undefined ? (cropNamed(shelf, crop)?.name ?? crop) : capital(known, reader);
}

/** The same within a sentence, as `lettuce`. */
export const cropInSentence = (shelf: Inventory, crop: unknown, reader: PageReader): string =>
  (typeof crop === 'string' ? reader.crop(crop) : undefined) ?? cropName(shelf, crop, reader);

export const bedName = (shelf: Inventory, id: string): string => bedNamed(shelf, id)?.name ?? id;

export const placeOf = ({ places }: Inventory, bed: BedWire | undefined): PlaceWire | undefined =>
  places.find(({ id }) => id === bed?.place);

/** The date at a stored bed, or in a time zone; otherwise at the service. */
export function todayAt(shelf: Inventory, bedId: string, timeZone: string): string {
  const place = placeOf(shelf, bedNamed(shelf, bedId));
  return dateIn(place?.timeZone ?? timeZone, shelf.nowMs);
}
