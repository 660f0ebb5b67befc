import { placesAndBeds } from './001-places-and-beds.js';
import { air } from './002-air.js';
import { readingDays } from './003-reading-days.js';
import { sources } from './004-sources.js';
import { season } from './005-season.js';
import { outbox } from './006-outbox.js';
import { airYears } from './007-air-years.js';
import { pastSoil } from './008-past-soil.js';
import { allowances } from './009-allowances.js';
import { revisions } from './010-revisions.js';
import { sessions } from './011-sessions.js';
import { secrets } from './012-secrets.js';
import { placeSources } from './013-place-sources.js';
import { frostTold } from './014-frost-told.js';
import type { Migration } from './migration.js';

/**
 * All steps, in order. Never change a released step. Add a new one at the end, with a test in
 * `test/storage/contract.ts` that migrates a filled database of the step before.
 */
export const migrations: readonly Migration[] = [
  placesAndBeds,
  air,
  readingDays,
  sources,
  season,
  outbox,
  airYears,
  pastSoil,
  allowances,
  revisions,
  sessions,
  secrets,
  placeSources,
  frostTold,
];
