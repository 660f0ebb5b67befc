import { type Scheduler, scheduler } from '../egress/scheduler.js';
import { type PollSettings, pollDue } from './poll.js';

const EVERY_MS = 60_000;

/** Polls the gardens that are due, every minute until stopped. */
export const keepPolling = (settings: Omit<PollSettings, 'signal'>): Scheduler =>
  scheduler(
    EVERY_MS,
    (signal) => pollDue({ ...settings, signal }),
    (err) => settings.log.error({ err }, 'the gardens cannot be looked at now'),
  );
