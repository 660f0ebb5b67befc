import { get, isFailure, type Result, type Send } from '../shell/api.js';
import { listOf } from '../shell/inventory.js';

/** Each try takes another name, so it fails only if more than this many people press the same button at once. */
const MAX_TRIES = 5;

export interface KeptUnder {
  readonly id: string;
  /** False if it was already stored with the same fields. */
  readonly isNew: boolean;
}

/**
 * Stores something new under a free name, with a number added if the name is taken. Sending the same again changes
 * nothing, and a name taken by somebody else at the same instant stays theirs.
 */
export async function keepUnder(
  send: Send,
  kind: 'places' | 'beds' | 'sowings' | 'plans',
  name: string,
  json: object,
): Promise<Result<KeptUnder>> {
  for (let tries = 1; ; tries++) {
    const put = await keepOnce(send, kind, name, json);
    if (!isFailure(put) || put.problem.status !== 412 || tries === MAX_TRIES) return put;
  }
}

async function keepOnce(
  send: Send,
  kind: 'places' | 'beds' | 'sowings' | 'plans',
  name: string,
  json: object,
): Promise<Result<KeptUnder>> {
  const kept = await listOf<{ readonly id: string }>(send, kind, { after: name.slice(0, -1) });
  if (isFailure(kept)) return kept;
  const alike = kept.value.all.filter(({ id }) => id === name || id.startsWith(`${name}-`));
  const same = alike.find((one) => holds(one, json));
  if (same) return { value: { id: same.id, isNew: false } };
  let id = name;
  for (let n = 2; alike.some((one) => one.id === id); n++) id = `${name}-${n}`;
  const put = await get(send, { method: 'PUT', path: `/v1/${kind}/${encodeURIComponent(id)}`, json, isNew: true });
  return isFailure(put) ? put : { value: { id, isNew: true } };
}

/** True if all these fields are the same. */
function holds(there: object, fields: object): boolean {
  return Object.entries(fields).every(([name, value]) => {
    const other = (there as Record<string, unknown>)[name];
    return value !== null && typeof value === 'object'
      ? typeof other === 'object' && other !== null && holds(other, value)
      : other === value;
  });
}
