import type { QuestionBed } from '../../answers/question.js';
import { dateAt, type PlainDate } from '../../basics/calendar.js';
import type { Crop } from '../../germination/crop.js';
import { chosenCrop, isSameCrop } from '../../germination/crop-choice.js';
import { DEFAULT_ROOM_C } from '../../growth/tray-dates.js';
import type { BedInputs } from '../bed/bed-inputs.js';
import { type LotState, lotForQuestion, lotState } from '../lots/lot-now.js';
import type { CountedSowing, SeedLot, Sowing } from '../store/season-store.js';
import type { Store } from '../store/store.js';
import type { GrowingQuestion, Grown } from './growing.js';

/** All that is kept and bears on a sowing. */
export interface KnownSowing extends CountedSowing {
  readonly kept: BedInputs;
  readonly crop: Crop;
  readonly question: GrowingQuestion;
  /** The seed's state on the day of sowing; null: the sowing names no lot. */
  readonly lotState: LotState | null;
  readonly now: Date;
  /** At the place. */
  readonly today: PlainDate;
}

/** Maximum sowings of a bed that are read, and maximum of one crop that teach: each costs a forecast. */
const MAX_LOOKED_AT = 60;
const MAX_LESSONS = 12;

/**
 * Everything stored that bears on a sowing.
 *
 * @param kept What is kept of its bed.
 */
export async function knownSowing(
  store: Store,
  owner: string,
  { sowing, counts }: CountedSowing,
  kept: BedInputs,
  now: Date,
): Promise<KnownSowing> {
  const [others, lot] = await Promise.all([
    lessonsOf(store, owner, sowing.bed, sowing),
    sowing.lot === null ? undefined : store.lot(owner, sowing.lot),
  ]);
  const crop = chosenCrop(sowing.crop);
  const isIndoors = sowing.method === 'indoors';
  const question: GrowingQuestion = {
    ...grown({ sowing, counts }, lot),
    crop,
    site: kept.site,
    zoneFromStamps: false,
    bed: isIndoors ? tray(kept, sowing) : kept.bedMake!,
    timeFactor: null,
    standFactor: null,
    learned: null,
    countDays: null,
    series: isIndoors ? [] : kept.series,
    understood: [],
    beyond: null,
    ...climateOf(kept),
    others,
  };
  return {
    sowing,
    counts,
    kept,
    crop,
    question,
    lotState: lot ? lotState(lot, sowing.date) : null,
    now,
    today: dateAt(now.getTime(), kept.site.zone),
  };
}

/** Typical years stand in only where nothing at all is measured: otherwise the season goes on from the last value. */
const climateOf = ({ normals, typicalAir, series }: BedInputs): Pick<GrowingQuestion, 'normals' | 'typicalAir'> =>
  typicalAir && series.length > 0 ? { normals: null, typicalAir: null } : { normals, typicalAir };

/**
 * A bed's counted sowings of a crop, sown in the same way: what they have taught bears on the next one.
 *
 * @param like The crop and the way; with an id, a sowing that is itself left out.
 */
export async function lessonsOf(
  store: Store,
  owner: string,
  bed: string,
  like: Pick<Sowing, 'crop' | 'method'> & { readonly id?: string },
): Promise<Grown[]> {
  const ofBed = await store.sowingsOf(owner, bed, MAX_LOOKED_AT);
  const alike = ofBed
    .filter(
      ({ sowing: { id, crop, method }, counts }) =>
        id !== like.id && counts.length > 0 && method === like.method && isSameCrop(crop, like.crop),
    )
    .slice(-MAX_LESSONS);
  const ids = [...new Set(alike.flatMap(({ sowing: { lot } }) => lot ?? []))];
  const lots = new Map(await Promise.all(ids.map(async (id) => [id, await store.lot(owner, id)] as const)));
  return alike.map((one) => grown(one, one.sowing.lot === null ? undefined : lots.get(one.sowing.lot)));
}

const grown = ({ sowing, counts }: CountedSowing, lot: SeedLot | undefined): Grown => ({
  sowing,
  lot: lot ? lotForQuestion(lot, sowing.date) : null,
  lotId: sowing.lot,
  counts,
});

/** A tray is as warm as the room: as the sowing says, else the bed, if that is one indoors. */
const tray = ({ bedMake }: BedInputs, { roomC }: Sowing): QuestionBed => ({
  kind: 'indoors',
  cover: 'bare',
  moisture: 'moist',
  shadePercent: 0,
  roomC: roomC ?? bedMake?.roomC ?? DEFAULT_ROOM_C,
  wettedOn: null,
});
