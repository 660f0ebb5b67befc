import { parentPort } from 'node:worker_threads';
import { forecast } from '../answers/forecast.js';
import { soilTemperatures } from '../answers/soil-temperatures.js';
import { sowingWindows, type WindowQuestion } from '../answers/sowing-windows.js';
import { zoneNamed } from '../basics/calendar.js';
import { RequestError } from '../basics/errors.js';
import { growing } from '../garden/growing.js';
import type { Job, JobDone, Sendable } from './long-work.js';
import { rememberedPast } from './remembered-past.js';
import { rememberedPlan } from './remembered-plan.js';

/** Runs in a thread of its own: one question after another. */
parentPort!.on('message', (job: Job) => {
  parentPort!.postMessage(done(job));
});

const findPast = rememberedPast();
const findPlan = rememberedPlan(findPast);

function done(job: Job): JobDone {
  try {
    return { id: job.id, answer: answerTo(job) };
  } catch (error) {
    if (!(error instanceof RequestError)) return { id: job.id, failed: String((error as Error)?.stack ?? error) };
    const { code, message, faults } = error;
    return { id: job.id, refused: { code, message, faults } };
  }
}

function answerTo({ kind, question }: Job): unknown {
  switch (kind) {
    case 'windows':
      return sowingWindows(arrived(question), findPast);
    case 'forecast':
      return forecast(arrived(question), findPast);
    case 'growing':
      return growing(arrived(question), findPast);
    case 'plan':
      return findPlan(arrived(question));
    case 'soil':
      return soilTemperatures(arrived(question), findPast);
  }
}

/** A question with its zones, which cannot be sent, looked up again by their names. */
function arrived<Asked extends Pick<WindowQuestion, 'site' | 'series'>>(sent: Sendable<Asked>): Asked {
  return {
    ...sent,
    site: { ...sent.site, zone: zoneNamed(sent.site.zone) },
    series: sent.series.map((one) => ({ ...one, zone: zoneNamed(one.zone) })),
  } as unknown as Asked;
}
