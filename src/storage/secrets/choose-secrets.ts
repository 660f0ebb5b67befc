import { randomBytes } from 'node:crypto';
import { existsSync } from 'node:fs';
import type { Database } from '../database.js';
import { newSecret } from '../tables/subscriptions.js';
import { forgetSealed, hasSealed, opensSealed, sealPlain } from './seal-secrets.js';
import { plainSecrets, type SecretOf, type Secrets, sealedBy } from './secrets.js';
import { keyFromFile, keyPathOf, readKeyFile } from './secrets-key.js';

export interface SecretsSettings {
  /** The key that seals secrets. Without it SQLite has one in a file beside its own, PostgreSQL has none. */
  readonly secretsKey?: string | undefined;
  /** Give up the secrets that a lost key had sealed, at this instant [ms]. */
  readonly forgetSecrets?: { readonly atMs: number } | undefined;
  /** Called with warnings for the operator of the service. */
  readonly warn?: ((text: string) => void) | undefined;
}

const IF_LOST =
  'If it is lost for good, start once with FORGET_SECRETS=1: calendars then need new addresses, and subscriptions new secrets';

const KEPT_PLAIN =
  'Webhook secrets and calendar addresses are kept plain: whoever copies the database has them. Set SECRETS_KEY to a secret of 32 characters or more, and keep it apart from the database; what is kept is then sealed at the next start.';

/**
 * Decides how a database stores secrets, and seals those stored plain.
 *
 * @param file Path of an SQLite database; undefined: another kind, or in memory.
 * @throws Error in one line when the key is missing or the database was sealed with another.
 */
export async function chooseSecrets(
  database: Database,
  file: string | 'memory' | undefined,
  { secretsKey, forgetSecrets, warn = () => {} }: SecretsSettings,
): Promise<Secrets> {
  const secrets = await secretsFor(database, file, secretsKey, forgetSecrets !== undefined);
  if (!(await opensSealed(database, secrets))) {
    if (!forgetSecrets) throw new Error(keyFault(file, secretsKey));
    const sealed = (of: SecretOf) => secrets.seal(newSecret(), of);
    await forgetSealed(database, sealed, forgetSecrets.atMs);
    warn('What a lost key had sealed was given up: calendars need new addresses, and subscriptions new secrets.');
  }
  if (!secrets.isSealing) warn(KEPT_PLAIN);
  const isSealedNow = await sealPlain(database, secrets);
  if (isSealedNow && database.scrub) {
    await database.scrub().catch(() => {
      warn(
        'Secrets were sealed, but copies of them may still lie in free pages of the database: there was no room to clean it.',
      );
    });
  }
  return secrets;
}

async function secretsFor(
  database: Database,
  file: string | undefined,
  secretsKey: string | undefined,
  forgetSecrets: boolean,
): Promise<Secrets> {
  if (secretsKey !== undefined) return sealedBy(secretsKey);
  if (file === undefined) return plainSecrets;
  if (file === 'memory') return sealedBy(randomBytes(32));
  const path = keyPathOf(file);
  const known = await readKeyFile(path);
  // A new key would open none of the sealed secrets and hide that the old one is missing.
  if (!known && !forgetSecrets && (await hasSealed(database))) throw new Error(keyFault(file, secretsKey));
  return sealedBy(known ?? (await keyFromFile(path)));
}

function keyFault(file: string | undefined, secretsKey: string | undefined): string {
  const sealed = 'the calendar addresses and webhook secrets in it were sealed with another key';
  if (secretsKey !== undefined) {
    const keyFile = file === undefined ? undefined : keyPathOf(file);
    return keyFile !== undefined && existsSync(keyFile)
      ? `${sealed} than SECRETS_KEY; take SECRETS_KEY away again, as the key is probably the one in ${keyFile}. ${IF_LOST}`
      : `${sealed} than SECRETS_KEY; set the one that it had. ${IF_LOST}`;
  }
  if (file === undefined) return `${sealed}, and SECRETS_KEY is not set; set the one that it had. ${IF_LOST}`;
  return `${sealed} than is in ${keyPathOf(file)}, or that file is gone; put it back from your backup, or set SECRETS_KEY if that was used. ${IF_LOST}`;
}
