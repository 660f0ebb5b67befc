import type { PlainDate } from '../../basics/calendar.js';
import type { CropChoice } from '../../germination/crop-choice.js';
import type { IfRevision, Put, Resource, ResourcePage } from './resource.js';

export type { CropChoice };

/** A seed lot as its owner describes it: a packet, or a counted test of it. */
export interface LotFields {
  readonly crop: CropChoice;
  /** The packet's percent, or that of a test whose seeds are not told. */
  readonly germinationPercent: number | null;
  readonly test: { readonly sown: number; readonly germinated: number } | null;
  /** When the percent or the test was found. */
  readonly testedOn: PlainDate | null;
  readonly packedYear: number | null;
  /** Water in the seed [% of its fresh weight]. */
  readonly moisturePercent: number | null;
  /** Temperature of the store [°C]. */
  readonly storeC: number | null;
  /** Ceiling shift of this lot beside its crop [K]. */
  readonly hotLimitShiftC: number;
}

export interface SeedLot extends LotFields, Resource {}

export const sowingMethods = ['direct', 'indoors'] as const;
export type SowingMethod = (typeof sowingMethods)[number];

/** A sowing as its owner describes it. */
export interface SowingFields {
  /** The id of a bed of the same owner: where it is sown, or will be planted out. */
  readonly bed: string;
  readonly crop: CropChoice;
  readonly date: PlainDate;
  /** Clock time at the place, HH:MM. */
  readonly time: string;
  readonly depthCm: number | null;
  readonly seeds: number | null;
  /** The id of a lot of the same owner. */
  readonly lot: string | null;
  readonly method: SowingMethod;
  /** Temperature of the room of an indoor sowing's tray [°C]. */
  readonly roomC: number | null;
}

export interface Sowing extends SowingFields, Resource {}

/** The grower's count on a date. */
export interface Count {
  readonly date: PlainDate;
  readonly seedlings: number;
  /** Number of seeds in the counted stretch; null: all seeds sown. */
  readonly ofSeeds: number | null;
  /** Seedlings pulled out before this count, in all; true: some were, nobody knows how many; false: what an earlier one says. */
  readonly thinned: boolean | number;
}

/** A count as it is kept. */
export interface KeptCount extends Count {
  /** The owner's revision at which it was last changed; 0: an earlier version of the service kept it. */
  readonly revision: number;
}

/** A sowing, and its counts in the order of dates. */
export interface CountedSowing {
  readonly sowing: Sowing;
  readonly counts: readonly KeptCount[];
}

/** Result of putting a count, as `Put` for other resources. */
export type CountPut =
  | { readonly outcome: 'created' | 'replaced' | 'unchanged'; readonly kept: KeptCount }
  | { readonly outcome: 'stale' };

/** A harvest that is wanted. */
export interface PlanFields {
  readonly bed: string;
  readonly crop: CropChoice;
  readonly harvest: { readonly from: PlainDate; readonly to: PlainDate; readonly perWeek: number };
}

export interface Plan extends PlanFields, Resource {}

/** An event of a bed's calendar as it is now, by the digest of what it says. */
export interface CalendarEntry {
  readonly uid: string;
  readonly digest: string;
}

/** Number of changes of a calendar's event, and time of the last one [ms]. */
export interface CalendarRevision {
  readonly uid: string;
  readonly sequence: number;
  readonly changedAtMs: number;
}

/**
 * What growers have the service keep of a season: lots, sowings, counts, plans, and what their calendars last said. All as
 * `Store` says. A change to a bed's sowings, their counts and lots, or its plans raises the bed's revision; one to a sowing's
 * counts, the sowing's too.
 */
export interface SeasonStore {
  putLot(owner: string, id: string, fields: LotFields, ifRevision?: IfRevision): Promise<Put<SeedLot>>;
  lot(owner: string, id: string): Promise<SeedLot | undefined>;
  lots(owner: string, page: ResourcePage): Promise<SeedLot[]>;
  /** A lot that was sown stays. */
  deleteLot(
    owner: string,
    id: string,
    ifRevision?: IfRevision,
  ): Promise<'deleted' | 'absent' | 'has-sowings' | 'stale'>;

  /** Creates or replaces a sowing; its counts stay. */
  putSowing(owner: string, id: string, fields: SowingFields, ifRevision?: IfRevision): Promise<Put<Sowing>>;
  sowing(owner: string, id: string): Promise<CountedSowing | undefined>;
  sowings(owner: string, page: ResourcePage & { readonly bed?: string | undefined }): Promise<Sowing[]>;
  /** The last `limit` sowings of a bed by their dates, the earliest of them first. */
  sowingsOf(owner: string, bed: string, limit: number): Promise<CountedSowing[]>;
  /** Deletes a sowing with its counts. */
  deleteSowing(owner: string, id: string, ifRevision?: IfRevision): Promise<'deleted' | 'absent' | 'stale'>;

  /** Keeps a count in place of an earlier one of its date. */
  putCount(owner: string, sowing: string, count: Count, ifRevision?: IfRevision): Promise<CountPut | undefined>;
  /** Undefined: there is no such sowing. */
  deleteCount(
    owner: string,
    sowing: string,
    date: PlainDate,
    ifRevision?: IfRevision,
  ): Promise<'deleted' | 'absent' | 'stale' | undefined>;

  putPlan(owner: string, id: string, fields: PlanFields, ifRevision?: IfRevision): Promise<Put<Plan>>;
  plan(owner: string, id: string): Promise<Plan | undefined>;
  plans(owner: string, page: ResourcePage & { readonly bed?: string | undefined }): Promise<Plan[]>;
  deletePlan(owner: string, id: string, ifRevision?: IfRevision): Promise<'deleted' | 'absent' | 'stale'>;

  /** The bed whose calendar a token opens: names no owner, as whoever brings the token need not be known. */
  bedOfCalendar(bed: string, token: string): Promise<{ readonly owner: string } | undefined>;
  /** Gives a bed's calendar a new token, so that the old one opens nothing any more; undefined: there is no such bed. */
  renewCalendarToken(owner: string, bed: string): Promise<string | undefined>;
  /**
   * What is known of a calendar's events, after those that differ from what was last said have had their sequence raised.
   * One that is no longer among them is remembered for three years, so that its sequence goes on where it left off.
   */
  calendarRevisions(
    owner: string,
    bed: string,
    entries: readonly CalendarEntry[],
    nowMs: number,
  ): Promise<CalendarRevision[] | undefined>;
}
