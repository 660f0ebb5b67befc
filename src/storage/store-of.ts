import type { Subscription } from '../garden/store/alert-store.js';
import { DEFAULT_QUOTAS, type Quotas } from '../garden/store/quotas.js';
import type { Bed, Put, Store } from '../garden/store/store.js';
import type { Database } from './database.js';
import { deleteDocument, findDocument, listDocuments, putDocument } from './document-table.js';
import { plainSecrets, type Secrets } from './secrets/secrets.js';
import { deleteAir, findComingDays, findNormals, listAir, putAir, putComingDays, putNormals } from './tables/air.js';
import { takeAllowance } from './tables/allowances.js';
import {
  bedOfCalendar,
  deleteBed,
  deleteReadings,
  findBed,
  listBeds,
  putBed,
  putReadings,
  renewCalendarToken,
} from './tables/beds.js';
import { calendarRevisions } from './tables/calendar-events.js';
import { dueDeliveries, endDelivery, leaseDelivery, messagesWaiting } from './tables/deliveries.js';
import { deleteLot, lots } from './tables/lots.js';
import { addNotifications, duePolls, takePoll } from './tables/notifications.js';
import { findPastSoil, keepPastSoil } from './tables/past-soil.js';
import { deletePlace, findPlace, listPlaces, putPlace } from './tables/places.js';
import { plans } from './tables/plans.js';
import { usageOf } from './tables/quotas.js';
import { daysOfSeries, readingsOfSeries, seriesOf } from './tables/reading-days.js';
import { beginSession, endSession, findSession, listSessions, useSession } from './tables/sessions.js';
import { dueSources, endLease, findSourceStates, hurrySources, leaseSource } from './tables/sources.js';
import { deleteCount, findSowing, putCount, sowings, sowingsOfBed } from './tables/sowings.js';
import { deleteSubscription, findSubscription, listSubscriptions, putSubscription } from './tables/subscriptions.js';

/** Limits and secrets of a store. */
export interface StoreSettings {
  readonly quotas: Quotas;
  readonly secrets: Secrets;
}

/** The tables and the settings that their users share. */
interface Tables extends StoreSettings {
  readonly database: Database;
  /** The database for an owner. */
  readonly of: (owner: string) => Database;
  /** The database for an owner's deletions, which also work on a full disk. */
  readonly freeing: (owner: string) => Database;
}

/** The store over a database with the current schema. */
export function storeOf(
  database: Database,
  { quotas = DEFAULT_QUOTAS, secrets = plainSecrets }: Partial<StoreSettings> = {},
): Store {
  const of = (owner: string): Database => database.for(owner);
  const freeing = (owner: string): Database => database.for(owner, 'frees');
  const tables: Tables = { database, of, freeing, quotas, secrets };
  return {
    ...places(tables),
    ...beds(tables),
    ...season(tables),
    ...subscriptions(tables),
    ...deliveries(tables),
    ...sources(tables),
    ...sessions(tables),
    takeAllowance: (...args) => takeAllowance(database, ...args),
    usage: (owner) => usageOf(of(owner), owner),
    ready: () => database.probe(),
    close: () => database.close(),
  };
}

/** Places, their air, and the past soil computed from it. */
function places({ of, freeing, quotas }: Tables) {
  return {
    putPlace: (owner, ...args) => putPlace(of(owner), quotas, owner, ...args),
    place: (owner, ...args) => findPlace(of(owner), owner, ...args),
    places: (owner, ...args) => listPlaces(of(owner), owner, ...args),
    deletePlace: (owner, id, options = {}) => deletePlace(freeing(owner), quotas, owner, id, options),

    putAir: (owner, ...args) => putAir(of(owner), quotas, owner, ...args),
    air: (owner, place, range = {}) => listAir(of(owner), owner, place, range),
    deleteAir: (owner, place, range = {}, ifRevision = undefined) =>
      deleteAir(freeing(owner), quotas, owner, place, range, ifRevision),
    putNormals: (owner, ...args) => putNormals(of(owner), owner, ...args),
    normals: (owner, ...args) => findNormals(of(owner), owner, ...args),
    putComingDays: (owner, ...args) => putComingDays(of(owner), owner, ...args),
    comingDays: (owner, ...args) => findComingDays(of(owner), owner, ...args),
    pastSoil: (owner, ...args) => findPastSoil(of(owner), owner, ...args),
    keepPastSoil: (owner, ...args) => keepPastSoil(of(owner), owner, ...args),
  } satisfies Partial<Store>;
}

/** Beds, their readings and calendars. */
function beds({ database, of, freeing, quotas, secrets }: Tables) {
  // The tables hold secrets as stored; the store's results hold them opened.
  const openedBed = (owner: string, bed: Bed): Bed => ({
    ...bed,
    calendarToken: bed.calendarToken && secrets.open(bed.calendarToken, ['calendar', owner, bed.id]),
  });
  return {
    putBed: async (owner, ...args) =>
      openedPut(await putBed(of(owner), quotas, secrets, owner, ...args), (bed) => openedBed(owner, bed)),
    async bed(owner, id) {
      const bed = await findBed(of(owner), owner, id);
      return bed && openedBed(owner, bed);
    },
    beds: async (owner, page) => (await listBeds(of(owner), owner, page)).map((bed) => openedBed(owner, bed)),
    deleteBed: (owner, id, options = {}) => deleteBed(freeing(owner), quotas, owner, id, options),

    putReadings: async (owner, ...args) => putReadings(of(owner), quotas, owner, ...args),
    series: (owner, ...args) => seriesOf(of(owner), owner, ...args),
    readings: (owner, bed, probe, range = {}) => readingsOfSeries(of(owner), { owner, bed, ...probe }, range),
    readingDays: (owner, bed, probe, range = {}) => daysOfSeries(of(owner), { owner, bed, ...probe }, range),
    deleteReadings: (owner, bed, range = {}, ...rest) =>
      deleteReadings(freeing(owner), quotas, owner, bed, range, ...rest),
    bedOfCalendar: (...args) => bedOfCalendar(database, secrets, ...args),
    renewCalendarToken: (owner, ...args) => renewCalendarToken(of(owner), secrets, owner, ...args),
    calendarRevisions: (owner, ...args) => calendarRevisions(of(owner), owner, ...args),
  } satisfies Partial<Store>;
}

/** Lots, sowings, counts and plans. */
function season({ of, freeing, quotas }: Tables) {
  return {
    putLot: (owner, ...args) => putDocument(of(owner), quotas, lots, owner, ...args),
    lot: (owner, ...args) => findDocument(of(owner), lots, owner, ...args),
    lots: (owner, ...args) => listDocuments(of(owner), lots, owner, ...args),
    deleteLot: (owner, ...args) => deleteLot(freeing(owner), owner, ...args),

    putSowing: (owner, ...args) => putDocument(of(owner), quotas, sowings, owner, ...args),
    sowing: (owner, ...args) => findSowing(of(owner), owner, ...args),
    sowings: (owner, ...args) => listDocuments(of(owner), sowings, owner, ...args),
    sowingsOf: (owner, ...args) => sowingsOfBed(of(owner), owner, ...args),
    deleteSowing: (owner, ...args) =>
      freeing(owner).transaction((query) => deleteDocument(query, sowings, owner, ...args)),

    putCount: (owner, ...args) => putCount(of(owner), owner, ...args),
    deleteCount: (owner, ...args) => deleteCount(freeing(owner), owner, ...args),

    putPlan: (owner, ...args) => putDocument(of(owner), quotas, plans, owner, ...args),
    plan: (owner, ...args) => findDocument(of(owner), plans, owner, ...args),
    plans: (owner, ...args) => listDocuments(of(owner), plans, owner, ...args),
    deletePlan: (owner, ...args) => freeing(owner).transaction((query) => deleteDocument(query, plans, owner, ...args)),
  } satisfies Partial<Store>;
}

/** Subscriptions and their polls. */
function subscriptions({ database, of, freeing, quotas, secrets }: Tables) {
  const openedSubscription = (owner: string, subscription: Subscription): Subscription => ({
    ...subscription,
    secret: secrets.open(subscription.secret, ['webhook', owner, subscription.id]),
  });
  return {
    putSubscription: async (owner, ...args) =>
      openedPut(await putSubscription(of(owner), quotas, secrets, owner, ...args), (one) =>
        openedSubscription(owner, one),
      ),
    async subscription(owner, id) {
      const subscription = await findSubscription(of(owner), owner, id);
      return subscription && openedSubscription(owner, subscription);
    },
    subscriptions: async (owner, page) =>
      (await listSubscriptions(of(owner), owner, page)).map((one) => openedSubscription(owner, one)),
    deleteSubscription: (owner, ...args) => deleteSubscription(freeing(owner), owner, ...args),

    duePolls: (...args) => duePolls(database, ...args),
    async takePoll(owner, ...args) {
      const poll = await takePoll(of(owner), owner, ...args);
      return poll && { ...poll, subscription: openedSubscription(owner, poll.subscription) };
    },
    addNotifications: (owner, ...args) => addNotifications(of(owner), owner, ...args),
  } satisfies Partial<Store>;
}

/** Waiting messages. */
function deliveries({ database, of, secrets }: Tables) {
  return {
    dueDeliveries: (...args) => dueDeliveries(database, ...args),
    async leaseDelivery(owner, id, ...args) {
      const delivery = await leaseDelivery(of(owner), owner, id, ...args);
      return delivery && { ...delivery, secret: secrets.open(delivery.secret, ['webhook', owner, id]) };
    },
    endDelivery: (owner, ...args) => endDelivery(of(owner), owner, ...args),
    messagesWaiting: (limit) => messagesWaiting(database, limit),
  } satisfies Partial<Store>;
}

/** Sources of air and their leases. */
function sources({ database, of }: Tables) {
  return {
    dueSources: (...args) => dueSources(database, ...args),
    leaseSource: (owner, ...args) => leaseSource(of(owner), owner, ...args),
    endLease: (owner, ...args) => endLease(of(owner), owner, ...args),
    sourceStates: (owner, ...args) => findSourceStates(of(owner), owner, ...args),
    hurrySources: (owner, ...args) => hurrySources(of(owner), owner, ...args),
  } satisfies Partial<Store>;
}

/** Sessions of the page. */
function sessions({ database, of, freeing }: Tables) {
  return {
    beginSession: (session, ...args) => beginSession(of(session.owner), session, ...args),
    session: (...args) => findSession(database, ...args),
    useSession: (owner, ...args) => useSession(of(owner), owner, ...args),
    sessions: (owner, ...args) => listSessions(of(owner), owner, ...args),
    endSession: (owner, ...args) => endSession(freeing(owner), owner, ...args),
  } satisfies Partial<Store>;
}

const openedPut = <T>(put: Put<T>, opened: (kept: T) => T): Put<T> =>
  'kept' in put ? { ...put, kept: opened(put.kept) } : put;
