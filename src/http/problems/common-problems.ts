import type { ErrorCode } from '../../basics/errors.js';

/** Problems of any body, JSON or a file. */
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
  'unknown-locality',
  'choose-locality',
  'no-climate-near',
] as const satisfies readonly ErrorCode[];

/** Further problems of a question about a bed. */
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

/** Problems of a question by link about a stored bed or place. */
export const linkProblems = [
  'not-found',
  'not-understood',
  'no-readings',
  ...bedProblems,
] as const satisfies readonly ErrorCode[];

/** Problems of a place that is named by town or coordinates. */
export const localeProblems = [
  'unknown-locality',
  'choose-locality',
  'no-climate-near',
] as const satisfies readonly ErrorCode[];

/** Problems of the database. */
export const storageProblems = [
  'storage-unavailable',
  'storage-full',
  'storage-damaged',
] as const satisfies readonly ErrorCode[];

/** Problems of reading a resource. */
export const keptProblems = [
  'not-understood',
  'not-acceptable',
  ...storageProblems,
] as const satisfies readonly ErrorCode[];

/** Problems of storing a resource sent as JSON. */
export const changeProblems = [
  'not-json',
  'too-large',
  'unsupported-media-type',
  'precondition-failed',
  'quota-full',
  ...keptProblems,
] as const satisfies readonly ErrorCode[];
