import type { z } from 'zod';
import type { ErrorCode } from '../../basics/errors.js';
import type { Kept } from '../../garden/store/store.js';
import type { Route } from '../openapi/route.js';
import { changeProblems } from '../problems/common-problems.js';
import { read } from '../question/read.js';
import {
  fieldsOf,
  idIn,
  putAndAnswer,
  type Repository,
  type ResourceKind,
  readOnlyOf,
  readPut,
  refuseQuery,
  resourceNotFound,
} from './resource.js';
import { named } from './resource-routes.js';

/** A PUT's body and answer. */
export interface Replacement<Put extends z.ZodObject> {
  readonly kind: ResourceKind;
  readonly summary: string;
  readonly description?: string;
  readonly put: Put;
  readonly answer: z.ZodObject;
  /** Fields of the answer that may be sent back; left out: all. */
  readonly sentBack?: z.ZodObject;
  /** An example of a body that works. */
  readonly example: object;
  /** Problems beyond those of every change. */
  readonly problems?: readonly ErrorCode[];
  /** Refuses fields that a schema cannot. */
  readonly refuse?: (fields: z.output<Put>) => void;
}

/** The OpenAPI entry of a PUT. */
export const putOperation = <Put extends z.ZodObject>({
  kind,
  summary,
  description,
  put,
  answer,
  sentBack = answer,
  example,
  problems = [],
}: Replacement<Put>): Route['operation'] => ({
  id: `put${named(kind)}`,
  summary,
  ...(description === undefined ? {} : { description }),
  json: { schema: put, example, readOnly: readOnlyOf(put, sentBack) },
  answer: { schema: answer, mayCreate: true },
  ifMatch: true,
  ifNoneMatch: true,
  problems: [...problems, ...changeProblems],
});

/** Creates or replaces a resource. */
export const putRoute = <Put extends z.ZodObject, T extends Kept>(
  replacement: Replacement<Put>,
  repository: Repository<T, z.output<Put>>,
  clock: () => Date,
): Route => ({
  method: 'PUT',
  url: `/v1/${replacement.kind}s/:id`,
  operation: putOperation(replacement),
  handler(request, reply) {
    const { kind, put, answer, sentBack = answer, refuse } = replacement;
    refuseQuery(request);
    const id = idIn(request, kind);
    const fields = readPut(put, sentBack, request.body);
    refuse?.(fields);
    return putAndAnswer(request, reply, id, repository, () => fields, clock);
  },
});

/** A PATCH's body and answer. */
export interface Change<Put extends z.ZodObject, T extends Kept> {
  readonly kind: ResourceKind;
  readonly summary: string;
  readonly patch: z.ZodObject;
  readonly put: Put;
  readonly answer: z.ZodObject;
  readonly example: object;
  /** Problems beyond those of every change. */
  readonly problems?: readonly ErrorCode[];
  /** The fields that a PUT takes, among others. */
  readonly onWire: (kept: T) => object;
}

/** The OpenAPI entry of a PATCH. */
export const patchOperation = <Put extends z.ZodObject, T extends Kept>({
  kind,
  summary,
  patch,
  answer,
  example,
  problems = [],
}: Change<Put, T>): Route['operation'] => ({
  id: `change${named(kind)}`,
  summary,
  json: { schema: patch, example },
  answer: { schema: answer },
  ifMatch: true,
  problems: ['not-found', ...problems, ...changeProblems],
});

/** A resource's fields after a change. @throws {RequestError} `not-found` if there is no resource. */
export function fieldsAfter<Put extends z.ZodObject, T extends Kept>(
  { kind, put, onWire }: Pick<Change<Put, T>, 'kind' | 'put' | 'onWire'>,
  id: string,
  before: T | undefined,
  changes: object,
): z.output<Put> {
  if (!before) throw resourceNotFound(kind, id);
  return read(put, { ...fieldsOf(put, onWire(before)), ...changes });
}

/** Changes some fields of a resource. */
export const patchRoute = <Put extends z.ZodObject, T extends Kept>(
  change: Change<Put, T>,
  repository: Repository<T, z.output<Put>>,
  clock: () => Date,
): Route => ({
  method: 'PATCH',
  url: `/v1/${change.kind}s/:id`,
  operation: patchOperation(change),
  handler(request, reply) {
    refuseQuery(request);
    const id = idIn(request, change.kind);
    const changes = read(change.patch, request.body);
    return putAndAnswer(request, reply, id, repository, (before) => fieldsAfter(change, id, before, changes), clock);
  },
});
