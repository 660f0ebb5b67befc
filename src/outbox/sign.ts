import { createHmac } from 'node:crypto';

const PREFIX = 'whsec_';

/**
 * Headers that prove a message's sender and time, so that it cannot be replayed: Standard Webhooks 1.0.0, symmetric
 * scheme. A message keeps its id in all attempts; its time is that of the attempt.
 *
 * @param secret `whsec_` and base64.
 * @param atMs   The attempt's instant [ms].
 */
export function signedHeaders(secret: string, messageId: string, atMs: number, body: string): Record<string, string> {
  const key = Buffer.from(secret.slice(PREFIX.length), 'base64');
  const timestamp = String(Math.floor(atMs / 1000));
  const signature = createHmac('sha256', key).update(`${messageId}.${timestamp}.${body}`).digest('base64');
  return { 'webhook-id': messageId, 'webhook-timestamp': timestamp, 'webhook-signature': `v1,${signature}` };
}
