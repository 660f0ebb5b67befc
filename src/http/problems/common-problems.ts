import type { ErrorCode } from '../../basics/errors.js';

/** What can be wrong with any body, be it JSON or a file. */
export const bodyProblems = [
  'not-json',
  'not-csv',
  'too-large',
  'unsupported-media-type',
  'not-acceptable',
  'not-understood',
  'time-zone-needed',
  'choose-medium',
  'choose-unit',
  'choose-column',
  'choose-date-order',
  'choose-clock',
  'choose-decimal-mark',
  'no-readings',
] as const satisfies readonly ErrorCode[];

/** What can be wrong with a question about a bed, beside its body. */
export const bedProblems = [
  'unknown-crop',
  'unknown-place',
  'unknown-bed',
  'no-past-years',
  'busy',
  'no-latitude',
  'ends-too-early',
  'too-few-readings',
  'gap-too-long',
] as const satisfies readonly ErrorCode[];

/** What can be wrong with a question about a kept bed or place that is asked by a link. */
export const linkProblems = [
  'not-found',
  'not-understood',
  'no-readings',
  ...bedProblems,
] as const satisfies readonly ErrorCode[];

/** What can be wrong with the database. */
export const storageProblems = [
  'storage-unavailable',
  'storage-full',
  'storage-damaged',
] as const satisfies readonly ErrorCode[];

/** What can be wrong where something kept is asked for. */
export const keptProblems = [
  'not-understood',
  'not-acceptable',
  ...storageProblems,
] as const satisfies readonly ErrorCode[];

/** What can be wrong where something is to be kept that is sent as JSON. */
export const changeProblems = [
  'not-json',
  'too-large',
  'unsupported-media-type',
  'precondition-failed',
  'quota-full',
  ...keptProblems,
] as const satisfies readonly ErrorCode[];
