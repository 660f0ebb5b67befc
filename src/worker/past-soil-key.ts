import { depthsWith, MIN_YEARS, pastDepthCm, seriesOfYears, yearsTold } from '../answers/ahead/past-soil.js';
import { type Bedding, seedDepthCm } from '../answers/question.js';
import { HOUR_MS, instantAt, type PlainDate, startOfDay } from '../basics/calendar.js';
import { digestOfJson } from '../basics/digest.js';
import type { ReadSeries } from '../readings/read-series.js';
import type { JobKind, LongQuestions } from './jobs.js';
import { digestOfSeries } from './series-columns.js';

/** A digest of all inputs of past soil, for the depth that is assumed for the seed. */
export function pastSoilKey(
  series: readonly ReadSeries[],
  { site, bed, depthCm }: Bedding,
  phaseMs: number,
  modelVersion: string,
): string {
  const inputs = [
    modelVersion,
    series.map(digestOfSeries),
    { ...site, zone: site.zone.name },
    bed,
    depthsWith(depthCm),
    pastDepthCm(depthCm),
    phaseMs % HOUR_MS,
  ];
  return digestOfJson(inputs);
}

type JobQuestion = { [K in JobKind]: { readonly kind: K; readonly question: LongQuestions[K]['question'] } }[JobKind];

/**
 * The key of the past soil that a question needs first; undefined when it cannot be known beforehand or too few years
 * are known.
 */
export function neededPastSoil(job: JobQuestion, modelVersion: string): string | undefined {
  const { site, bed } = job.question;
  const series = seriesOfYears(job.question);
  if (bed.kind === 'indoors' || yearsTold(series) < MIN_YEARS) return undefined;
  const phaseMs = phaseOf(job);
  if (phaseMs === undefined) return undefined;
  return pastSoilKey(series, { site, bed, depthCm: depthOf(job) }, phaseMs, modelVersion);
}

const depthOf = (job: JobQuestion): number =>
  job.kind === 'forecast' || job.kind === 'growing' ? seedDepthCm(job.question) : job.question.depthCm;

/** An instant at which an hour of the past soil begins. */
function phaseOf(job: JobQuestion): number | undefined {
  const { zone } = job.question.site;
  const from = (date: PlainDate | null): number | undefined => (date === null ? undefined : startOfDay(date, zone));
  switch (job.kind) {
    case 'windows':
    case 'season':
      return from(job.question.from);
    case 'plan':
      return from(job.question.harvest.from);
    case 'soil':
      return from(job.question.from ?? job.question.series[0]?.days[0]?.date ?? null);
    case 'forecast':
    case 'growing': {
      const { sowing, bed } = job.question;
      const sownMs = instantAt(sowing.date, sowing.time, zone);
      return bed.wettedOn === null ? sownMs : Math.max(sownMs, instantAt(bed.wettedOn, '12:00', zone));
    }
  }
}
