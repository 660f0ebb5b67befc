import type { Delivery, DeliveryEnd, SubscriptionFields, SubscriptionRef } from '../../garden/store/alert-store.js';
import type { Database, Query } from '../database.js';
import { takeOwnerLock } from '../owner-lock.js';

const IS_DUE = `(s.off_at_ms is null and s.next_at_ms <= $1 and (s.leased_until_ms is null or s.leased_until_ms <= $1))`;

export const dueDeliveries = (database: Database, nowMs: number, limit: number): Promise<SubscriptionRef[]> =>
  database.all<SubscriptionRef>(
    `select s.owner as owner, s.id as subscription from subscriptions s
     where ${IS_DUE} and exists (select 1 from messages m where m.owner = s.owner and m.subscription = s.id)
     order by s.next_at_ms, s.owner, s.id limit $2`,
    [nowMs, limit],
  );

/** Counts up to the limit only, so that the cost does not grow with the table. */
export async function messagesWaiting(database: Database, limit: number): Promise<number> {
  const [row] = await database.all<{ n: number }>(
    'select count(*) as n from (select 1 as one from messages limit $1) as waiting',
    [limit],
  );
  return row!.n;
}

export const leaseDelivery = (
  database: Database,
  owner: string,
  id: string,
  nowMs: number,
  untilMs: number,
): Promise<Delivery | undefined> =>
  database.transaction(async (query) => {
    const lease = await takeOwnerLock(query, owner);
    const [row] = await query.all<{
      fields: string;
      secret: string;
      failures: number;
      message_id: string;
      body: string;
    }>(
      `select s.fields, s.secret, s.failures, m.id as message_id, m.body
       from subscriptions s join messages m on m.owner = s.owner and m.subscription = s.id
       where ${IS_DUE} and s.owner = $2 and s.id = $3 order by m.told, m.place limit 1`,
      [nowMs, owner, id],
    );
    if (!row) return undefined;
    await query.run('update subscriptions set lease = $3, leased_until_ms = $4 where owner = $1 and id = $2', [
      owner,
      id,
      lease,
      untilMs,
    ]);
    const { url } = JSON.parse(row.fields) as SubscriptionFields;
    return { lease, messageId: row.message_id, body: row.body, url, secret: row.secret, failures: row.failures };
  });

export const endDelivery = (
  database: Database,
  owner: string,
  id: string,
  { lease, messageId }: Pick<Delivery, 'lease' | 'messageId'>,
  end: DeliveryEnd,
): Promise<boolean> =>
  database.transaction(async (query) => {
    const revision = await takeOwnerLock(query, owner);
    const isOurs = (await write(query, [owner, id, lease], end, revision)) > 0;
    if (isOurs && end.outcome === 'delivered') {
      await query.run('delete from messages where owner = $1 and subscription = $2 and id = $3', [
        owner,
        id,
        messageId,
      ]);
    }
    return isOurs;
  });

function write(
  query: Query,
  of: readonly [string, string, number],
  end: DeliveryEnd,
  revision: number,
): Promise<number> {
  const set = (what: string, values: readonly (string | number)[]) =>
    query.run(
      `update subscriptions set lease = null, leased_until_ms = null ${what} where owner = $1 and id = $2 and lease = $3`,
      [...of, ...values],
    );
  switch (end.outcome) {
    case 'given-up':
      return set('', []);
    case 'failed':
      return set(', next_at_ms = $4, failures = failures + 1, last_error = $5', [end.nextAtMs, end.error]);
    case 'switched-off':
      return set(', off_at_ms = $4, failures = failures + 1, last_error = $5, revision = $6', [
        end.atMs,
        end.error,
        revision,
      ]);
    case 'delivered':
      // The subscription's next message queues behind those of others.
      return set(', next_at_ms = $4, failures = 0, last_error = null, delivered_at_ms = $4', [end.atMs]);
  }
}
