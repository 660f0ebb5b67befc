import { type Dispatcher, request } from 'undici';
import { type Fact, followedBy } from '../basics/fact.js';
import { AddressRefused } from '../egress/address-refused.js';
import { connectionFault } from '../egress/connection-fault.js';
import { guardedAgent, type Resolve } from '../egress/guarded-agent.js';
import { discard, headerOf, retryAfterMs } from '../egress/response.js';
import { deliveryFact } from '../garden/store/connection-facts.js';
import { webhookUrlFault } from '../garden/store/webhook-url.js';

export interface SendLimits {
  readonly connectMs: number;
  readonly headersMs: number;
  /** Time-out of the whole attempt, from the first redirect to the answer. */
  readonly wholeMs: number;
  /** Time and bytes to read of a receiver's body. */
  readonly listenMs: number;
  readonly listenBytes: number;
}

const DEFAULT_LIMITS: SendLimits = {
  connectMs: 10_000,
  headersMs: 20_000,
  wholeMs: 30_000,
  listenMs: 2000,
  listenBytes: 4096,
};

export interface SenderSettings {
  readonly userAgent: string;
  /** True for an address that may be connected to. */
  readonly isAllowed: (address: string) => boolean;
  /** Allows unencrypted addresses. */
  readonly allowHttp: boolean;
  readonly resolve?: Resolve;
  readonly limits?: Partial<SendLimits>;
}

/**
 * Result of an attempt. `failed`: with the reason for the subscription's owner; `gone`: the receiver wants no more
 * messages.
 */
export type Sent =
  | { readonly outcome: 'delivered' }
  | {
      readonly outcome: 'failed' | 'gone';
      readonly error: Fact;
      readonly retryAfterMs?: number | undefined;
    };

export interface Sender {
  /** Posts a message once. @throws AbortError when the signal is aborted, and nothing else. */
  send(url: string, headers: Record<string, string>, body: string, signal: AbortSignal): Promise<Sent>;
  close(): Promise<void>;
}

const MAX_REDIRECTS = 3;
/** Redirects that keep the method and body; 303 would fetch another resource (RFC 9110, 15.4). */
const REDIRECTS = [301, 302, 307, 308];

/** A client that posts messages within limits, and only to allowed addresses, checked at every redirect. */
export function webhookSender({ userAgent, isAllowed, allowHttp, resolve, ...settings }: SenderSettings): Sender {
  const limits = { ...DEFAULT_LIMITS, ...settings.limits };
  const agent = guardedAgent({
    isAllowed,
    connectMs: limits.connectMs,
    headersMs: limits.headersMs,
    silenceMs: limits.listenMs,
    ...(resolve && { resolve }),
  });

  async function post(url: string, headers: Record<string, string>, body: string, signal: AbortSignal): Promise<Sent> {
    let at = url;
    for (let redirects = 0; ; redirects++) {
      const fault = webhookUrlFault(at, allowHttp);
      if (fault !== null) {
        return failed(
          followedBy(deliveryFact('delivery.address', { isRedirect: redirects > 0 ? 'yes' : 'no' }), fault),
        );
      }
      const response = await request(at, {
        method: 'POST',
        dispatcher: agent,
        headers: { ...headers, 'user-agent': userAgent, 'content-type': 'application/json' },
        body,
        signal,
        // Messages are few and receivers many, so connections are not reused.
        reset: true,
      });
      const location = REDIRECTS.includes(response.statusCode) ? headerOf(response, 'location') : null;
      if (location === null) return resultOf(response, limits);
      discard(response);
      if (redirects === MAX_REDIRECTS)
        return failed(deliveryFact('delivery.redirects', { maxRedirects: MAX_REDIRECTS }));
      if (!URL.canParse(location, at)) return failed(deliveryFact('delivery.redirect-nowhere'));
      const next = new URL(location, at);
      if (next.protocol !== new URL(at).protocol) {
        return failed(deliveryFact('delivery.redirect-scheme', { scheme: `${next.protocol}//` }));
      }
      at = next.href;
    }
  }

  return {
    async send(url, headers, body, signal) {
      const whole = AbortSignal.timeout(limits.wholeMs);
      try {
        return await post(url, headers, body, AbortSignal.any([signal, whole]));
      } catch (error) {
        if (signal.aborted) throw error;
        if (error instanceof AddressRefused) return failed(deliveryFact('delivery.private', { host: error.hostname }));
        if (whole.aborted) {
          const fault = { fault: 'slow', seconds: limits.wholeMs / 1000, errorCode: null } as const;
          return failed(deliveryFact('delivery.connection', fault));
        }
        return failed(deliveryFact('delivery.connection', { ...connectionFault(error, limits.headersMs) }));
      }
    },
    close: () => agent.destroy(),
  };
}

/** The result of a status. The body is neither stored nor logged, because it may hold anything. */
async function resultOf(response: Dispatcher.ResponseData, { listenMs, listenBytes }: SendLimits): Promise<Sent> {
  const { statusCode: status } = response;
  const retry = retryAfterMs(response);
  // Some receivers would report a broken connection if the body were cut off at once.
  await response.body.dump({ limit: listenBytes, signal: AbortSignal.timeout(listenMs) }).catch(() => {});
  if (status >= 200 && status < 300) return { outcome: 'delivered' };
  if (status === 410) return { outcome: 'gone', error: deliveryFact('delivery.gone') };
  if (status === 429) return failed(deliveryFact('delivery.too-often'), retry);
  const reason =
    status === 404
      ? 'missing'
      : status === 401 || status === 403
        ? 'refusing'
        : status >= 500
          ? 'troubled'
          : status >= 300 && status < 400
            ? 'moved'
            : 'unknown';
  return failed(deliveryFact('delivery.status', { status, reason }), retry);
}

const failed = (error: Fact, retryAfter?: number): Sent => ({ outcome: 'failed', error, retryAfterMs: retryAfter });
