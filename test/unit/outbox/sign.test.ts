import { createHmac, randomBytes } from 'node:crypto';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { signedHeaders } from '../../../src/outbox/sign.js';

test('a message is signed as the published test vector of the Standard Webhooks libraries has it', () => {
  // github.com/standard-webhooks/standard-webhooks, libraries/javascript/src/webhook.test.ts, "sign function works".
  const secret = 'whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw';
  const headers = signedHeaders(secret, 'msg_p5jXN8AQM9LWM0D4loKWxJek', 1_614_265_330_000, '{"test": 2432232314}');
  expect(headers).toEqual({
    'webhook-id': 'msg_p5jXN8AQM9LWM0D4loKWxJek',
    'webhook-timestamp': '1614265330',
    'webhook-signature': 'v1,g0hM9SsE+OTPJTGt/tmIKtSyZlE3uFJELVlNIOLJ1OE=',
  });
});

test('any message is signed as HMAC-SHA256 over its bytes says, its time in whole seconds', () => {
  // RFC 2104 written out: H((K xor opad) | H((K xor ipad) | text)), by node's HMAC over bytes put together by hand.
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme' }), fc.integer({ min: 0, max: 4e12 }), (body, atMs) => {
      const key = randomBytes(32);
      const headers = signedHeaders(`whsec_${key.toString('base64')}`, 'msg_1', atMs, body);
      const seconds = Math.floor(atMs / 1000);
      const bytes = Buffer.concat([Buffer.from(`msg_1.${seconds}.`, 'ascii'), Buffer.from(body, 'utf8')]);
      expect(headers['webhook-timestamp']).toBe(`${seconds}`);
      expect(headers['webhook-signature']).toBe(`v1,${createHmac('sha256', key).update(bytes).digest('base64')}`);
    }),
  );
});
