import { type Rounds, rounds } from '../egress/rounds.js';
import { type LookSettings, lookAtDue } from './look.js';

const EVERY_MS = 60_000;

/** Looks at the gardens that are due, every minute, until it is stopped. */
export const keepLooking = (settings: Omit<LookSettings, 'signal'>): Rounds =>
  rounds(
    EVERY_MS,
    (signal) => lookAtDue({ ...settings, signal }),
    (err) => settings.log.error({ err }, 'the gardens cannot be looked at now'),
  );
