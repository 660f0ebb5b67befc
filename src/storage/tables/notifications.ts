import { randomBytes } from 'node:crypto';
import { MAX_PENDING, type Notification, type Poll, type SubscriptionRef } from '../../garden/store/alert-store.js';
import type { Database, Query } from '../database.js';
import { takeOwnerLock } from '../owner-lock.js';
import { findSubscription } from './subscriptions.js';

export const duePolls = (database: Database, nowMs: number, limit: number): Promise<SubscriptionRef[]> =>
  database.all<SubscriptionRef>(
    `select owner, id as subscription from subscriptions where look_at_ms <= $1 and off_at_ms is null
     order by look_at_ms, owner, id limit $2`,
    [nowMs, limit],
  );

export const takePoll = (
  database: Database,
  owner: string,
  id: string,
  nowMs: number,
  nextMs: number,
): Promise<Poll | undefined> =>
  database.transaction(async (query) => {
    await takeOwnerLock(query, owner);
    const of = [owner, id];
    const taken = await query.all<{ seen: string | null }>(
      `update subscriptions set look_at_ms = $4
       where owner = $1 and id = $2 and look_at_ms <= $3 and off_at_ms is null returning seen`,
      [...of, nowMs, nextMs],
    );
    const subscription = await findSubscription(query, owner, id);
    if (!taken[0] || !subscription) return undefined;
    const beds = await query.all<{ id: string; revision: number; place_revision: number; time_zone: string }>(
      `select b.id, b.revision, p.revision as place_revision, p.time_zone
       from beds b join places p on p.owner = b.owner and p.id = b.place where b.owner = $1 order by b.id`,
      [owner],
    );
    return {
      subscription,
      watermark: taken[0].seen,
      marks: await marksOf(query, owner, id),
      beds: beds.map(({ id: bed, revision, place_revision, time_zone }) => ({
        id: bed,
        revision,
        placeRevision: place_revision,
        timeZone: time_zone,
      })),
    };
  });

export const addNotifications = (
  database: Database,
  owner: string,
  id: string,
  notifications: readonly Notification[],
  watermark: string,
): Promise<number | undefined> =>
  database.transaction(async (query) => {
    const revision = await takeOwnerLock(query, owner);
    const subscription = await findSubscription(query, owner, id);
    if (!subscription) return undefined;
    const marks = await marksOf(query, owner, id);
    const current = notifications.filter(({ subject, before }) => (marks.get(subject) ?? null) === before);
    let added = 0;
    let left = notifications.length - current.length;
    for (const { subject, mark, body } of current) {
      if (body !== null && subscription.pending + added >= MAX_PENDING) {
        left++;
        continue;
      }
      await putMark(query, [owner, id, subject], mark);
      if (body === null) continue;
      await query.run(
        'insert into messages (owner, subscription, told, place, id, body) values ($1, $2, $3, $4, $5, $6)',
        [owner, id, revision, added, newMessageId(), body],
      );
      added++;
    }
    if (left === 0)
      await query.run('update subscriptions set seen = $3 where owner = $1 and id = $2', [owner, id, watermark]);
    return added;
  });

async function marksOf(query: Query, owner: string, subscription: string): Promise<Map<string, string>> {
  const rows = await query.all<{ subject: string; mark: string }>(
    'select subject, mark from tellings where owner = $1 and subscription = $2',
    [owner, subscription],
  );
  return new Map(rows.map(({ subject, mark }) => [subject, mark]));
}

const putMark = (query: Query, of: readonly [string, string, string], mark: string | null): Promise<number> =>
  mark === null
    ? query.run('delete from tellings where owner = $1 and subscription = $2 and subject = $3', of)
    : query.run(
        `insert into tellings (owner, subscription, subject, mark) values ($1, $2, $3, $4)
         on conflict (owner, subscription, subject) do update set mark = excluded.mark`,
        [...of, mark],
      );

/** Has no full stop, because full stops separate the signed parts. */
const newMessageId = (): string => `msg_${randomBytes(20).toString('base64url')}`;
