import type { ClimateOf } from '../../answers/climate/climate-of.js';
import type { PlainDate } from '../../basics/calendar.js';
import type { Medium } from '../../basics/series.js';
import type { Normals } from '../../climate/normals.js';
import type { Day } from '../../readings/daily/days.js';
import type { Readings } from '../../readings/readings.js';
import type { BedMake } from '../../seedbed/bed.js';
import type { AlertStore } from './alert-store.js';
import type { TakeAllowance } from './allowance.js';
import type { Usage } from './quotas.js';
import type { IfRevision, Put, Resource, ResourcePage } from './resource.js';
import type { SeasonStore } from './season-store.js';
import type { SessionStore } from './session-store.js';

export type { IfRevision, Put, Resource as Kept, ResourcePage as Page } from './resource.js';

/** Where a place's air temperatures are fetched from: a publisher by name, or an address of the owner's own. */
export interface PlaceSource {
  /** null: the owner's own address. */
  readonly preset: string | null;
  /** null, as is `url`: those of the preset. */
  readonly format: string | null;
  readonly url: string | null;
  readonly everyHours: number;
}

/** A place as its owner describes it. */
export interface PlaceFields {
  readonly name: string;
  readonly latitude: number;
  readonly longitude: number;
  readonly elevationM: number | null;
  /** An IANA name that the calendar knows. */
  readonly timeZone: string;
  readonly annualRainMm: number | null;
  /** What the owner knows of frost by heart, as MM-DD: the last of spring and the first of autumn in half of the years. */
  readonly lastFrostAround: string | null;
  readonly firstFrostAround: string | null;
  /** In the order of the owner's list, each another. */
  readonly sources: readonly PlaceSource[];
}

/** A thing whose revision rises with what lies in it; its fields have one of their own. */
export interface KeptWithSeries extends Resource {
  /** The revision at which its fields last changed: a PUT, a PATCH or a DELETE rests on this one. */
  readonly fieldsRevision: number;
}

export interface Place extends PlaceFields, KeptWithSeries {}

/** A bed as its owner describes it. */
export interface BedFields extends BedMake {
  /** The id of a place of the same owner. */
  readonly place: string;
  readonly name: string;
  readonly roomC: number | null;
}

export interface Bed extends BedFields, KeptWithSeries {
  /** Opens the bed's calendar to whoever has it; null: kept before there were calendars, and not renewed since. */
  readonly calendarToken: string | null;
}

/** The air of one day [°C]; null where it is not known. */
export interface AirDay {
  readonly date: PlainDate;
  readonly min: number | null;
  readonly mean: number | null;
  readonly max: number | null;
}

/** A forecast of the air, and the instant that it was put or fetched at [ms]. */
export interface ComingDays {
  readonly atMs: number;
  readonly days: readonly AirDay[];
}

/** One of a place's sources. */
export interface SourceRef {
  readonly owner: string;
  readonly place: string;
  /** Its place in the list of sources, from 0 on. */
  readonly n: number;
  /** Since when it is to be asked [ms]; left out or null: it was never asked. */
  readonly dueSinceMs?: number | null;
}

/** The days that a source has given: the first, the last, and how many are kept from the first to the last. */
export interface DaysGiven {
  readonly from: PlainDate;
  readonly to: PlainDate;
  readonly count: number;
}

/** How it stands with a source, as long as the place has it. */
export interface SourceState {
  readonly source: PlaceSource;
  /** When it last answered well, and what it said was kept [ms]; null: never yet. */
  readonly fetchedAtMs: number | null;
  readonly triedAtMs: number | null;
  readonly nextAtMs: number;
  /** Its publisher asks not to be asked before [ms]. */
  readonly notBeforeMs: number | null;
  /** How often it has failed since it last answered well. */
  readonly failures: number;
  /** What went wrong last, as `factToStore` writes it; null where nothing did since it last answered well. */
  readonly lastError: string | null;
  readonly days: DaysGiven | null;
}

/** The right of one instance to fetch a source, for a while, and what it knows of the last good answer. */
export interface SourceLease {
  readonly lease: number;
  readonly place: Place;
  readonly source: PlaceSource;
  /** The address that was asked, its placeholders filled in. */
  readonly askedUrl: string | null;
  readonly etag: string | null;
  readonly lastModified: string | null;
  readonly fetchedAtMs: number | null;
  readonly failures: number;
  readonly days: DaysGiven | null;
}

/** How a fetch has ended. `given-up`: by us, and nothing is known of the source; `put-off`: to spare its publisher. */
export type FetchEnd =
  | {
      readonly outcome: 'fetched';
      readonly atMs: number;
      readonly nextAtMs: number;
      readonly notBeforeMs: number | null;
      readonly askedUrl: string;
      readonly etag: string | null;
      readonly lastModified: string | null;
      readonly days: DaysGiven | null;
    }
  | {
      readonly outcome: 'failed';
      readonly nextAtMs: number;
      readonly notBeforeMs: number | null;
      readonly error: string;
    }
  | { readonly outcome: 'put-off'; readonly nextAtMs: number }
  | { readonly outcome: 'given-up' };

/** Which thermometer of a bed; a soil probe without a depth lies at the seed. */
export interface Probe {
  readonly medium: Medium;
  readonly probeDepthCm: number | null;
}

/** One thermometer of a bed: first and last date at the place, and number of readings. */
export interface KeptSeries extends Probe {
  readonly from: PlainDate;
  readonly to: PlainDate;
  readonly readings: number;
}

/** Number of rows that were new, unchanged and changed. */
export interface Changes {
  readonly added: number;
  readonly unchanged: number;
  readonly replaced: number;
}

/** Dates from and to, both included; left out: no bound. */
export interface DateRange {
  readonly from?: PlainDate | undefined;
  readonly to?: PlainDate | undefined;
}

/** Instants [ms] from `fromMs` on and before `toMs`; left out: no bound. */
export interface InstantRange {
  readonly fromMs?: number | undefined;
  readonly toMs?: number | undefined;
}

/**
 * Everything that growers store in the service.
 *
 * Every call but those that say so names the owner first, and sees and changes only what is that owner's. A call that has
 * ended well is kept, even where the power fails right after it; one that fails has changed nothing. Calls at the same
 * time, from any number of instances, act one after the other. Texts must not hold the character U+0000.
 *
 * Reading what is not there gives undefined or nothing; writing to a place or bed that is not there gives undefined.
 * A change that names a revision happens only if the thing is still at it; else it gives `stale`. Places and beds are named
 * by the revision of their fields, their air and readings by `revision`. Other faults come before `stale`.
 * An answer made from several reads belongs to the revisions read before them.
 *
 * @throws {QuotaError} from calls that create, or add air or readings: the owner has as many as there may be.
 * @throws {StorageError} from every call: the database cannot be used now.
 */
export interface Store extends SeasonStore, AlertStore, SessionStore {
  /** The climate of any place, from a table that whoever opens the store passes on; left out: none is known. */
  readonly climateOf?: ClimateOf;
  /** Creates or replaces a place. Its beds' readings are sorted into days anew where the time zone is another. */
  putPlace(owner: string, id: string, fields: PlaceFields, ifRevision?: IfRevision): Promise<Put<Place>>;
  place(owner: string, id: string): Promise<Place | undefined>;
  places(owner: string, page: ResourcePage): Promise<Place[]>;
  /**
   * Deletes a place with its air, normals and coming days. A place that has beds stays, and nothing is deleted, unless
   * `withBeds` says that they go too, with all that they have.
   */
  deletePlace(
    owner: string,
    id: string,
    options?: { withBeds?: boolean; ifRevision?: IfRevision },
  ): Promise<'deleted' | 'absent' | 'has-beds' | 'stale'>;

  /** Keeps days of a place's air, each in place of an earlier one of its date. Of a date given twice the last counts. */
  putAir(
    owner: string,
    place: string,
    days: readonly AirDay[],
    ifRevision?: IfRevision,
  ): Promise<Changes | 'stale' | undefined>;
  /** Days in the order of dates. */
  air(owner: string, place: string, range?: DateRange): Promise<AirDay[]>;
  /** Number of days deleted. */
  deleteAir(
    owner: string,
    place: string,
    range?: DateRange,
    ifRevision?: IfRevision,
  ): Promise<number | 'stale' | undefined>;

  /** The place's revision with them. */
  putNormals(
    owner: string,
    place: string,
    normals: Normals,
    ifRevision?: IfRevision,
  ): Promise<{ readonly revision: number } | 'stale' | undefined>;
  normals(owner: string, place: string): Promise<Normals | undefined>;

  /** Replaces all coming days; by none, there are none. */
  putComingDays(
    owner: string,
    place: string,
    coming: ComingDays,
    ifRevision?: IfRevision,
  ): Promise<{ readonly revision: number } | 'stale' | undefined>;
  comingDays(owner: string, place: string): Promise<ComingDays | undefined>;

  /** Creates or replaces a bed; its readings stay. */
  putBed(owner: string, id: string, fields: BedFields, ifRevision?: IfRevision): Promise<Put<Bed>>;
  bed(owner: string, id: string): Promise<Bed | undefined>;
  beds(owner: string, page: ResourcePage): Promise<Bed[]>;
  /**
   * Deletes a bed with its readings, plans and calendar. A bed that has sowings stays, and nothing is deleted, unless
   * `withSowings` says that they and their counts go too.
   */
  deleteBed(
    owner: string,
    id: string,
    options?: { withSowings?: boolean; ifRevision?: IfRevision },
  ): Promise<'deleted' | 'absent' | 'has-sowings' | 'stale'>;

  /**
   * Keeps readings of a bed, each in place of an earlier one of the same thermometer and instant.
   *
   * @param readings In time order, one to an instant, as the type says; finite values.
   */
  putReadings(
    owner: string,
    bed: string,
    probe: Probe,
    readings: Readings,
    ifRevision?: IfRevision,
  ): Promise<Changes | 'stale' | undefined>;
  /** Which thermometers a bed has readings of. */
  series(owner: string, bed: string): Promise<KeptSeries[]>;
  /** One thermometer's readings as they were sent. */
  readings(owner: string, bed: string, probe: Probe, range?: InstantRange): Promise<Readings>;
  /** The same as days at the place, without looking at each reading. */
  readingDays(owner: string, bed: string, probe: Probe, range?: DateRange): Promise<Day[]>;
  /** Number of readings deleted, of the named thermometers or of all of the bed; all or none. */
  deleteReadings(
    owner: string,
    bed: string,
    range?: InstantRange,
    probes?: readonly Probe[],
    ifRevision?: IfRevision,
  ): Promise<number | 'stale' | undefined>;

  /**
   * Sources of all owners that are to be asked by now, the longest due first. Names no owner, as it is for the
   * service's own use.
   */
  dueSources(nowMs: number, limit: number, options?: { readonly presetsOnly?: boolean }): Promise<SourceRef[]>;
  /** Takes a source on, so that nobody else asks it until then; undefined where it is not due, or is taken. */
  leaseSource(
    owner: string,
    place: string,
    n: number,
    nowMs: number,
    untilMs: number,
  ): Promise<SourceLease | undefined>;
  /** Whether the lease was still held, and so the end is kept. */
  endLease(owner: string, place: string, lease: number, end: FetchEnd): Promise<boolean>;
  /** How it stands with each source of a place, in the order of its list. */
  sourceStates(owner: string, place: string): Promise<SourceState[]>;
  /** Has a place's sources be due now: those last tried at `triedBeforeMs` or before, or never, that may be asked by now. */
  hurrySources(owner: string, place: string, nowMs: number, triedBeforeMs: number): Promise<void>;

  /** Past soil stored under a key; undefined: none is stored, and it is worked out again when needed. */
  pastSoil(owner: string, key: string): Promise<Uint8Array | undefined>;
  /**
   * Keeps past soil so that it need not be worked out again after a restart. There is room for so much of an owner's:
   * what was least lately kept goes first. A failure loses nothing, so callers go on without it.
   */
  keepPastSoil(owner: string, key: string, packed: Uint8Array, nowMs: number): Promise<void>;

  /**
   * Takes from buckets that all instances on one database share. A failure says nothing of the bucket: callers then go by
   * what they know themselves.
   */
  readonly takeAllowance: TakeAllowance;

  /** Use of each quota by an owner. */
  usage(owner: string): Promise<Usage>;

  /**
   * Resolves where a write would succeed, as far as that was tried within the last seconds.
   *
   * @throws StorageError as a write would.
   */
  ready(): Promise<void>;
  /** Lets what was begun end, and closes. */
  close(): Promise<void>;
}
