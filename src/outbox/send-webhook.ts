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
  /** For all of it, from the first redirect to the answer. */
  readonly wholeMs: number;
  /** How long, and how much, is listened to what a receiver says beyond its status. */
  readonly listenMs: number;
  readonly listenBytes: number;
}

const usualLimits: SendLimits = {
  connectMs: 10_000,
  headersMs: 20_000,
  wholeMs: 30_000,
  listenMs: 2000,
  listenBytes: 4096,
};

export interface SenderSettings {
  readonly userAgent: string;
  /** May this address be connected to? */
  readonly isAllowed: (address: string) => boolean;
  /** Messages may go without encryption. */
  readonly allowHttp: boolean;
  readonly resolve?: Resolve;
  readonly limits?: Partial<SendLimits>;
}

/** How it went. `failed`: why, for the owner of the subscription; `gone`: it wants no more messages. */
export type Sent =
  | { readonly outcome: 'delivered' }
  | {
      readonly outcome: 'failed' | 'gone';
      readonly error: Fact;
      readonly retryAfterMs?: number | undefined;
    };

export interface Sender {
  /** Posts a message once. @throws AbortError where the signal says so, and nothing else. */
  send(url: string, headers: Record<string, string>, body: string, signal: AbortSignal): Promise<Sent>;
  close(): Promise<void>;
}

const MAX_REDIRECTS = 3;
/** Those that let the message be sent on as it is; 303 asks for another thing to be fetched (RFC 9110, 15.4). */
const REDIRECTS = [301, 302, 307, 308];

/** What posts messages, within limits, and never to an address that is not allowed. */
export function webhookSender({ userAgent, isAllowed, allowHttp, resolve, ...settings }: SenderSettings): Sender {
  const limits = { ...usualLimits, ...settings.limits };
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
        // Messages are few, and receivers many: no connection is kept.
        reset: true,
      });
      const location = REDIRECTS.includes(response.statusCode) ? headerOf(response, 'location') : null;
      if (location === null) return heard(response, limits);
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

/** What a status says. What else a receiver says is not kept: it may hold anything. */
async function heard(response: Dispatcher.ResponseData, { listenMs, listenBytes }: SendLimits): Promise<Sent> {
  const { statusCode: status } = response;
  const retry = retryAfterMs(response);
  // Cut off at once, some receivers would take it for a broken connection.
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
