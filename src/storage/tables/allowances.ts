import type { TakeAllowance } from '../../garden/store/allowance.js';
import type { Database } from '../database.js';

/** Interval between deletions of full allowances [ms]. */
const SWEEP_EVERY_MS = 10 * 60_000;

const sweptAtMs = new WeakMap<Database, number>();

/** Takes tokens out of a bucket that all instances share. Their clocks may differ, so a bucket never runs backwards. */
export async function takeAllowance(
  database: Database,
  ...[caller, policy, wanted, capacity, perMs, nowMs]: Parameters<TakeAllowance>
): ReturnType<TakeAllowance> {
  const allowance = await database.for(caller).transaction(async (query) => {
    // The update locks the row until the end of the transaction.
    const [before] = await query.all<{ tokens: number; at_ms: number }>(
      `insert into allowances (owner, policy, tokens, at_ms, full_at_ms) values ($1, $2, $3, $4, $4)
       on conflict (owner, policy) do update set tokens = allowances.tokens returning tokens, at_ms`,
      [caller, policy, capacity, nowMs],
    );
    const atMs = Math.max(nowMs, before!.at_ms);
    const available = Math.min(capacity, before!.tokens + (atMs - before!.at_ms) * perMs);
    const granted = Math.min(wanted, Math.floor(available));
    const remaining = available - granted;
    const fullAtMs = atMs + (capacity - remaining) / perMs;
    await query.run('update allowances set tokens = $3, at_ms = $4, full_at_ms = $5 where owner = $1 and policy = $2', [
      caller,
      policy,
      remaining,
      atMs,
      fullAtMs,
    ]);
    return { granted, remaining, fullAtMs };
  });
  await sweep(database, nowMs);
  return allowance;
}

async function sweep(database: Database, nowMs: number): Promise<void> {
  if (nowMs - (sweptAtMs.get(database) ?? Number.NEGATIVE_INFINITY) < SWEEP_EVERY_MS) return;
  sweptAtMs.set(database, nowMs);
  await database.transaction((query) => query.run('delete from allowances where full_at_ms < $1', [nowMs]));
}
