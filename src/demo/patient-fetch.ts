import { setTimeout } from 'node:timers/promises';

const BUSY = 503;
/** Tries before giving up; a busy machine may refuse several. */
const MAX_TRIES = 10;

/** `fetch` that tries again after `Retry-After` while the service is overloaded. */
export async function patientFetch(url: string, init: RequestInit): Promise<Response> {
  for (let tries = 1; ; tries++) {
    const response = await fetch(url, init);
    const retryAfter = response.headers.get('retry-after');
    if (response.status !== BUSY || retryAfter === null || tries === MAX_TRIES) return response;
    await response.body?.cancel();
    await setTimeout(1000 * Number(retryAfter));
  }
}
