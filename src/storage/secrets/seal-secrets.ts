import { deliveryFact } from '../../garden/store/connection-facts.js';
import { factToStore } from '../../garden/store/stored-fact.js';
import type { Database, Query } from '../database.js';
import { isSealed, type SecretOf, type Secrets } from './secrets.js';

interface SecretRow {
  readonly owner: string;
  readonly id: string;
  readonly secret: string;
}

const LIKE_SEALED = "like 'sealed:1:%'";
const TOKENS = 'select owner, id, calendar_token as secret from beds';
const SECRETS = 'select owner, id, secret from subscriptions';

/** True when the database has sealed secrets. */
export async function hasSealed(database: Database): Promise<boolean> {
  const [some] = await firstSealed(database);
  return some !== undefined;
}

async function firstSealed(database: Database): Promise<{ readonly row: SecretRow; readonly of: SecretOf }[]> {
  const [bed] = await database.all<SecretRow>(`${TOKENS} where calendar_token ${LIKE_SEALED} limit 1`);
  const [subscription] = await database.all<SecretRow>(`${SECRETS} where secret ${LIKE_SEALED} limit 1`);
  return [
    ...(bed ? [{ row: bed, of: ['calendar', bed.owner, bed.id] as const }] : []),
    ...(subscription ? [{ row: subscription, of: ['webhook', subscription.owner, subscription.id] as const }] : []),
  ];
}

/** True when a key opens the sealed secrets of the database. */
export async function opensSealed(database: Database, secrets: Secrets): Promise<boolean> {
  try {
    for (const { row, of } of await firstSealed(database)) secrets.open(row.secret, of);
    return true;
  } catch {
    return false;
  }
}

/**
 * Seals plain secrets and computes the digests that find calendars. Instances that start at once wait for one
 * another.
 *
 * @returns True when there was a plain secret.
 */
export async function sealPlain(database: Database, secrets: Secrets): Promise<boolean> {
  const plainTokens = `${TOKENS} where calendar_token is not null and (calendar_digest is null${
    secrets.isSealing ? ` or calendar_token not ${LIKE_SEALED}` : ''
  })`;
  const plainSecrets = `${SECRETS} where secret not ${LIKE_SEALED}`;
  const work = async (ask: Pick<Query, 'all'>) => ({
    tokens: await ask.all<SecretRow>(plainTokens),
    subscriptions: secrets.isSealing ? await ask.all<SecretRow>(plainSecrets) : [],
  });
  const before = await work(database);
  if (before.tokens.length + before.subscriptions.length === 0) return false;
  await database.transaction(async (query) => {
    for (const statement of database.migrationLock) await query.all(statement);
    const { tokens, subscriptions } = await work(query);
    for (const { owner, id, secret } of tokens) {
      const token = isSealed(secret) ? secrets.open(secret, ['calendar', owner, id]) : secret;
      await query.run(
        'update beds set calendar_token = $4, calendar_digest = $5 where owner = $1 and id = $2 and calendar_token = $3',
        [owner, id, secret, secrets.seal(token, ['calendar', owner, id]), secrets.digest(token)],
      );
    }
    for (const { owner, id, secret } of subscriptions) {
      await query.run('update subscriptions set secret = $4 where owner = $1 and id = $2 and secret = $3', [
        owner,
        id,
        secret,
        secrets.seal(secret, ['webhook', owner, id]),
      ]);
    }
  });
  return secrets.isSealing;
}

/**
 * Gives up secrets that a lost key has sealed: calendars lose their address until the owner asks for a new one, and
 * subscriptions are switched off, because nobody has the secret that would sign their messages.
 */
export const forgetSealed = (database: Database, newSecret: (of: SecretOf) => string, nowMs: number): Promise<void> =>
  database.transaction(async (query) => {
    for (const statement of database.migrationLock) await query.all(statement);
    for (const { owner, id } of await query.all<SecretRow>(`${TOKENS} where calendar_token ${LIKE_SEALED}`)) {
      await query.run('update beds set calendar_token = null, calendar_digest = null where owner = $1 and id = $2', [
        owner,
        id,
      ]);
    }
    for (const { owner, id } of await query.all<SecretRow>(`${SECRETS} where secret ${LIKE_SEALED}`)) {
      await query.run(
        'update subscriptions set secret = $3, off_at_ms = $4, last_error = $5 where owner = $1 and id = $2',
        [owner, id, newSecret(['webhook', owner, id]), nowMs, factToStore(deliveryFact('delivery.key-lost'))],
      );
    }
  });
