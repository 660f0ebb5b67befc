import { setTimeout } from 'node:timers/promises';

const BUSY = 503;
/** A machine that is busy with other things may put a question off so often. */
const MAX_TRIES = 10;

/** Asks as `fetch` does, and again when `Retry-After` says, where the service has too much to work out. */
export async function patientFetch(url: string, init: RequestInit): Promise<Response> {
  for (let tries = 1; ; tries++) {
    const response = await fetch(url, init);
    const retryAfter = response.headers.get('retry-after');
    if (response.status !== BUSY || retryAfter === null || tries === MAX_TRIES) return response;
    await response.body?.cancel();
    await setTimeout(1000 * Number(retryAfter));
  }
}
