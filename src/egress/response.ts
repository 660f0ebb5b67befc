import type { Dispatcher } from 'undici';

type Response = Dispatcher.ResponseData;

export function headerOf({ headers }: Pick<Response, 'headers'>, name: string): string | null {
  const value = headers[name];
  return (Array.isArray(value) ? value[0] : value) ?? null;
}

/** How long a host asks to be left alone [ms]: seconds, or a date, set against its own clock (RFC 9110, 10.2.3). */
export function retryAfterMs(response: Pick<Response, 'headers'>): number | undefined {
  const text = headerOf(response, 'retry-after')?.trim() ?? '';
  if (/^\d{1,9}$/.test(text)) return Number(text) * 1000;
  const ms = Date.parse(text) - Date.parse(headerOf(response, 'date') ?? '');
  return Number.isNaN(ms) ? undefined : Math.max(0, ms);
}

/** Nothing more is read, and the connection is given up. */
export function discard({ body }: Pick<Response, 'body'>): void {
  body.on('error', () => {}).destroy();
}
