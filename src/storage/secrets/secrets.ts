import { createCipheriv, createDecipheriv, createHmac, hkdfSync, randomBytes } from 'node:crypto';
import { StorageError } from '../../garden/store/storage-error.js';

/** The holder of a secret: a secret sealed for one cannot be opened for another. */
export type SecretOf = readonly [kind: 'calendar' | 'webhook', owner: string, id: string];

/** Encryption of stored secrets. */
export interface Secrets {
  /** True when the database alone does not reveal the secrets. */
  readonly isSealing: boolean;
  seal(secret: string, of: SecretOf): string;
  /** @throws StorageError when it was sealed with another key or for another holder. */
  open(sealed: string, of: SecretOf): string;
  /** A digest that finds a secret without opening it. */
  digest(secret: string): string;
}

const SEALED = 'sealed:1:';
/** GCM by NIST SP 800-38D (5.2.1): a nonce of 96 bits, a tag of 128. */
const NONCE_BYTES = 12;
const TAG_BYTES = 16;
const KEY_BYTES = 32;

export const isSealed = (text: string): boolean => text.startsWith(SEALED);

/** Another instance with a key of its own may have sealed it since this one started. */
const SEALED_OTHERWISE = 'a secret in the database is sealed with another key than this instance has';
const ONE_KEY = 'give all instances the same SECRETS_KEY, and restart those that had another';

/** No encryption: the database reveals the secrets. */
export const plainSecrets: Secrets = {
  isSealing: false,
  seal: (secret) => secret,
  open(sealed) {
    if (isSealed(sealed)) throw new StorageError(`${SEALED_OTHERWISE}, which has none; ${ONE_KEY}`);
    return sealed;
  },
  digest: (secret) => createHmac('sha256', 'plain').update(secret).digest('base64url'),
};

/**
 * Secrets sealed by AES-256-GCM. Its nonces are random, which is safe far beyond the possible number of beds and
 * subscriptions (NIST SP 800-38D, 8.3: up to 2^32 under one key).
 *
 * @param key The operator's setting, or the content of the key file; two keys are derived from it.
 */
export function sealedBy(key: string | Uint8Array): Secrets {
  const derived = (use: string) => Buffer.from(hkdfSync('sha256', key, '', `germination-forecaster ${use}`, KEY_BYTES));
  const [sealKey, digestKey] = [derived('seal'), derived('digest')];
  return {
    isSealing: true,
    seal(secret, of) {
      const nonce = randomBytes(NONCE_BYTES);
      const cipher = createCipheriv('aes-256-gcm', sealKey, nonce).setAAD(Buffer.from(JSON.stringify(of)));
      const sealed = Buffer.concat([nonce, cipher.update(secret, 'utf8'), cipher.final(), cipher.getAuthTag()]);
      return SEALED + sealed.toString('base64url');
    },
    open(sealed, of) {
      // An instance without the key has stored it plain while this one was running.
      if (!isSealed(sealed)) return sealed;
      const bytes = Buffer.from(sealed.slice(SEALED.length), 'base64url');
      const end = bytes.length - TAG_BYTES;
      try {
        const decipher = createDecipheriv('aes-256-gcm', sealKey, bytes.subarray(0, NONCE_BYTES), {
          authTagLength: TAG_BYTES,
        });
        decipher.setAAD(Buffer.from(JSON.stringify(of))).setAuthTag(bytes.subarray(end));
        return decipher.update(bytes.subarray(NONCE_BYTES, end), undefined, 'utf8') + decipher.final('utf8');
      } catch (cause) {
        throw new StorageError(`${SEALED_OTHERWISE}; ${ONE_KEY}`, { cause });
      }
    },
    digest: (secret) => createHmac('sha256', digestKey).update(secret).digest('base64url'),
  };
}
