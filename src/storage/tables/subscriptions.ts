import { randomBytes } from 'node:crypto';
import type { Subscription, SubscriptionFields } from '../../garden/store/alert-store.js';
import type { Quotas } from '../../garden/store/quotas.js';
import { type IfRevision, isAtRevision, type Put, type ResourcePage } from '../../garden/store/resource.js';
import type { Database, Query } from '../database.js';
import { takeOwnerLock } from '../owner-lock.js';
import { sameFields } from '../same-fields.js';
import type { Secrets } from '../secrets/secrets.js';
import { refuseOneMore } from './quotas.js';

interface SubscriptionRow {
  readonly id: string;
  readonly revision: number;
  readonly fields: string;
  readonly secret: string;
  readonly pending: number;
  readonly delivered_at_ms: number | null;
  readonly next_at_ms: number;
  readonly failures: number;
  readonly last_error: string | null;
  readonly off_at_ms: number | null;
}

const SELECT = `select s.id, s.revision, s.fields, s.secret, s.delivered_at_ms, s.next_at_ms, s.failures, s.last_error,
    s.off_at_ms,
    (select count(*) from messages m where m.owner = s.owner and m.subscription = s.id) as pending
  from subscriptions s where s.owner = $1`;

const subscriptionOf = (row: SubscriptionRow): Subscription => ({
  ...(JSON.parse(row.fields) as SubscriptionFields),
  id: row.id,
  revision: row.revision,
  secret: row.secret,
  pending: row.pending,
  deliveredAtMs: row.delivered_at_ms,
  failures: row.failures,
  lastError: row.last_error,
  nextAtMs: row.next_at_ms,
  switchedOff: row.off_at_ms === null ? null : { atMs: row.off_at_ms, reason: row.last_error ?? '' },
});

export async function findSubscription(
  ask: Pick<Query, 'all'>,
  owner: string,
  id: string,
): Promise<Subscription | undefined> {
  const rows = await ask.all<SubscriptionRow>(`${SELECT} and s.id = $2`, [owner, id]);
  return rows[0] && subscriptionOf(rows[0]);
}

export async function listSubscriptions(
  database: Database,
  owner: string,
  { after = '', limit }: ResourcePage,
): Promise<Subscription[]> {
  const rows = await database.all<SubscriptionRow>(`${SELECT} and s.id > $2 order by s.id limit $3`, [
    owner,
    after,
    limit,
  ]);
  return rows.map(subscriptionOf);
}

export const putSubscription = (
  database: Database,
  quotas: Quotas,
  secrets: Secrets,
  owner: string,
  id: string,
  fields: SubscriptionFields,
  nowMs: number,
  ifRevision?: IfRevision,
): Promise<Put<Subscription>> =>
  database.transaction(async (query) => {
    const revision = await takeOwnerLock(query, owner);
    const before = await findSubscription(query, owner, id);
    if (!before) await refuseOneMore(query, quotas, 'subscriptions', owner);
    if (!isAtRevision(before?.revision, ifRevision)) return { outcome: 'stale' };
    const isSame = before !== undefined && sameFields({ ...before, ...fields }, before);
    if (isSame && before.switchedOff === null) return { outcome: 'unchanged', kept: before };
    await query.run(
      `insert into subscriptions (owner, id, revision, fields, secret, next_at_ms, failures, look_at_ms)
       values ($1, $2, $3, $4, $5, $6, 0, $6)
       on conflict (owner, id) do update set
         revision = excluded.revision, fields = excluded.fields, look_at_ms = excluded.look_at_ms`,
      [
        owner,
        id,
        revision,
        JSON.stringify(fields),
        before?.secret ?? secrets.seal(newSecret(), ['webhook', owner, id]),
        nowMs,
      ],
    );
    // A delivery under way to the previous address loses its lease.
    if (before && (before.switchedOff !== null || before.url !== fields.url)) {
      await query.run(
        `update subscriptions set next_at_ms = $3, failures = 0, last_error = null, off_at_ms = null,
           lease = null, leased_until_ms = null
         where owner = $1 and id = $2`,
        [owner, id, nowMs],
      );
    }
    return { outcome: before ? 'replaced' : 'created', kept: (await findSubscription(query, owner, id))! };
  });

export const deleteSubscription = (
  database: Database,
  owner: string,
  id: string,
  ifRevision?: IfRevision,
): Promise<'deleted' | 'absent' | 'stale'> =>
  database.transaction(async (query) => {
    await takeOwnerLock(query, owner);
    const before = await findSubscription(query, owner, id);
    if (!before) return 'absent';
    if (!isAtRevision(before.revision, ifRevision)) return 'stale';
    await query.run('delete from subscriptions where owner = $1 and id = $2', [owner, id]);
    return 'deleted';
  });

/** A secret of 256 random bits in the form of Standard Webhooks. */
export const newSecret = (): string => `whsec_${randomBytes(32).toString('base64')}`;
