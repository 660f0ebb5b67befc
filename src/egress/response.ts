import type { Dispatcher } from 'undici';

type Response = Dispatcher.ResponseData;

export function headerOf({ headers }: Pick<Response, 'headers'>, name: string): string | null {
  const value = headers[name];
  return (Array.isArray(value) ? value[0] : value) ?? null;
}

/** The wait of a `Retry-After` header [ms]: seconds, or a date relative to the host's own clock (RFC 9110, 10.2.3). */
export function retryAfterMs(response: Pick<Response, 'headers'>): number | undefined {
  const text = headerOf(response, 'retry-after')?.trim() ?? '';
  if (/^\d{1,9}$/.test(text)) return Number(text) * 1000;
  const ms = Date.parse(text) - Date.parse(headerOf(response, 'date') ?? '');
  return Number.isNaN(ms) ? undefined : Math.max(0, ms);
}

/** How long an answer holds by its `Expires` header, relative to the host's own clock [ms] (RFC 9111, 5.3). */
export function expiresMs(response: Pick<Response, 'headers'>): number | undefined {
  const ms = Date.parse(headerOf(response, 'expires') ?? '') - Date.parse(headerOf(response, 'date') ?? '');
  return Number.isNaN(ms) ? undefined : Math.max(0, ms);
}

/** Drops the rest of the body and its connection. */
export function discard({ body }: Pick<Response, 'body'>): void {
  body.on('error', () => {}).destroy();
}
