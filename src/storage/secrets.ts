import { createCipheriv, createDecipheriv, createHmac, hkdfSync, randomBytes } from 'node:crypto';
import { StorageError } from '../garden/store/storage-error.js';

/** Whose a secret is: sealed for one, it opens for no other. */
export type SecretOf = readonly [kind: 'calendar' | 'webhook', owner: string, id: string];

/** How secrets are kept. */
export interface Secrets {
  /** Are they kept so that the database alone does not tell them? */
  readonly isSealing: boolean;
  seal(secret: string, of: SecretOf): string;
  /** @throws StorageError where it was sealed with another key, or for another. */
  open(sealed: string, of: SecretOf): string;
  /** By which a secret is found again without being opened. */
  digest(secret: string): string;
}

const SEALED = 'sealed:1:';
/** As NIST SP 800-38D (5.2.1) has it for GCM: a nonce of 96 bits, a tag of 128. */
const NONCE_BYTES = 12;
const TAG_BYTES = 16;
const KEY_BYTES = 32;

export const isSealed = (text: string): boolean => text.startsWith(SEALED);

/** Another instance may have sealed it since this one started, where each was given a key of its own. */
const SEALED_OTHERWISE = 'a secret in the database is sealed with another key than this instance has';
const ONE_KEY = 'give all instances the same SECRETS_KEY, and restart those that had another';

/** Secrets as they are: whoever has the database has them. */
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
 * Secrets sealed by AES-256-GCM. Its nonces are drawn at random, which is safe far beyond the number of beds and
 * subscriptions that there may be (NIST SP 800-38D, 8.3: up to 2^32 under one key).
 *
 * @param key Whatever whoever runs the service has set, or the key file holds; two keys are derived from it.
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
      // Kept plain by an instance without the key, while this one was running.
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
