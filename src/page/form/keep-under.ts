import { get, isFailure, type Result, type Send } from '../shell/api.js';
import { listOf } from '../shell/inventory.js';

/** Each time another name is tried, so more than a few people would have to press the same button at once. */
const MAX_TRIES = 5;

export interface KeptUnder {
  readonly id: string;
  /** It was not kept before, with all these fields the same. */
  readonly isNew: boolean;
}

/**
 * Keeps something new under a name that is free, with a number behind it where it is taken. Where the same is kept
 * already, sending it again changes nothing. A name that somebody else takes in the same instant is theirs.
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

/** Has it all these fields, each the same? */
function holds(there: object, fields: object): boolean {
  return Object.entries(fields).every(([name, value]) => {
    const other = (there as Record<string, unknown>)[name];
    return value !== null && typeof value === 'object'
      ? typeof other === 'object' && other !== null && holds(other, value)
      : other === value;
  });
}
