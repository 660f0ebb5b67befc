import { setTimeout as sleep } from 'node:timers/promises';
import { DAY_MS, HOUR_MS } from '../basics/calendar.js';

/** So many calls within so long. */
export interface Allowance {
  readonly calls: number;
  readonly withinMs: number;
}

/** A publisher asks for fewer calls: what was to be asked waits until then. */
export class PutOff extends Error {
  override readonly name = 'PutOff';
  constructor(readonly untilMs: number) {
    super(`put off until ${new Date(untilMs).toISOString()}`);
  }
}

/** A shorter wait is waited for [ms]. */
const SHORT_MS = 2000;
const MINUTE_MS = 60_000;

/**
 * What this service allows itself of each publisher, for all its places together: below what their terms allow, as other
 * programs at the same address count too.
 *
 * Open-Meteo: under 10,000 calls a day, 5,000 an hour, 600 a minute (open-meteo.com/en/terms, read 2026-11-30).
 * MET Norway: under 20 requests a second (api.met.no/doc/TermsOfService, read 2026-11-30).
 */
const OPEN_METEO: readonly Allowance[] = [
  { calls: 9000, withinMs: DAY_MS },
  { calls: 4500, withinMs: HOUR_MS },
  { calls: 540, withinMs: MINUTE_MS },
];
export const ALLOWANCES: Readonly<Record<string, readonly Allowance[]>> = {
  'open-meteo.com': OPEN_METEO,
  'met.no': [{ calls: 10, withinMs: 1000 }],
};

export interface Pace {
  /**
   * Runs one request of a publisher once it may be asked. Its requests go out one at a time.
   *
   * @param publisher Key of its allowances; another one has none.
   * @param calls     How many calls the request counts as, >= 0.
   * @throws {PutOff} when it would have to wait for longer.
   */
  inTurn<T>(publisher: string, calls: number, ask: () => Promise<T>): Promise<T>;
}

/** The pace of one instance of the service. */
export function publisherPace(clock: () => Date): Pace {
  const sent = new Map<string, { atMs: number; calls: number }[]>();
  const turns = new Map<string, Promise<unknown>>();

  /** How long until so many calls more are within all allowances [ms]; one that is larger than an allowance waits for all of it. */
  function waitMs(publisher: string, calls: number): number {
    const nowMs = clock().getTime();
    const all = sent.get(publisher) ?? [];
    return (ALLOWANCES[publisher] ?? []).reduce((longest, allowance) => {
      const within = all.filter(({ atMs }) => atMs > nowMs - allowance.withinMs);
      let over = within.reduce((sum, one) => sum + one.calls, 0) + Math.min(calls, allowance.calls) - allowance.calls;
      let wait = 0;
      for (const one of within) {
        if (over <= 0) break;
        over -= one.calls;
        wait = one.atMs + allowance.withinMs - nowMs;
      }
      return Math.max(longest, wait);
    }, 0);
  }

  async function whenAllowed<T>(publisher: string, calls: number, ask: () => Promise<T>): Promise<T> {
    for (;;) {
      const wait = waitMs(publisher, calls);
      if (wait > SHORT_MS) throw new PutOff(clock().getTime() + wait);
      if (wait <= 0) break;
      await sleep(wait);
    }
    const nowMs = clock().getTime();
    const recent = (sent.get(publisher) ?? []).filter(({ atMs }) => atMs > nowMs - DAY_MS);
    if (ALLOWANCES[publisher]) sent.set(publisher, [...recent, { atMs: nowMs, calls }]);
    return ask();
  }

  return {
    inTurn(publisher, calls, ask) {
      const before = turns.get(publisher) ?? Promise.resolve();
      const turn = before.then(() => whenAllowed(publisher, calls, ask));
      turns.set(
        publisher,
        turn.catch(() => {}),
      );
      return turn;
    },
  };
}
