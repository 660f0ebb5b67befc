import { depthsWith, MIN_YEARS, pastDepthCm, yearsTold } from '../answers/ahead/past-soil.js';
import { type Bedding, seedDepthCm } from '../answers/question.js';
import { HOUR_MS, instantAt, type PlainDate, startOfDay } from '../basics/calendar.js';
import { digestOfJson } from '../basics/digest.js';
import type { ReadSeries } from '../readings/read-series.js';
import type { JobKind, LongQuestions } from './jobs.js';
import { digestOfSeries } from './series-columns.js';

/** A digest of all that past soil is worked out from, its depth as the seed's is taken. */
export function pastSoilKey(
  series: readonly ReadSeries[],
  { site, bed, depthCm }: Bedding,
  phaseMs: number,
  modelVersion: string,
): string {
  const said = [
    modelVersion,
    series.map(digestOfSeries),
    { ...site, zone: site.zone.name },
    bed,
    depthsWith(depthCm),
    pastDepthCm(depthCm),
    phaseMs % HOUR_MS,
  ];
  return digestOfJson(said);
}

type Asked = { [K in JobKind]: { readonly kind: K; readonly question: LongQuestions[K]['question'] } }[JobKind];

/**
 * The key of the past soil that a question will need first; undefined where that cannot be told beforehand, or too few
 * years are known.
 */
export function neededPastSoil(asked: Asked, modelVersion: string): string | undefined {
  const { series, site, bed } = asked.question;
  if (bed.kind === 'indoors' || yearsTold(series) < MIN_YEARS) return undefined;
  const phaseMs = phaseOf(asked);
  if (phaseMs === undefined) return undefined;
  return pastSoilKey(series, { site, bed, depthCm: depthOf(asked) }, phaseMs, modelVersion);
}

const depthOf = (asked: Asked): number =>
  asked.kind === 'forecast' || asked.kind === 'growing' ? seedDepthCm(asked.question) : asked.question.depthCm;

/** An instant at which an hour of the past soil begins. */
function phaseOf(asked: Asked): number | undefined {
  const { zone } = asked.question.site;
  const from = (date: PlainDate | null): number | undefined => (date === null ? undefined : startOfDay(date, zone));
  switch (asked.kind) {
    case 'windows':
      return from(asked.question.from);
    case 'plan':
      return from(asked.question.harvest.from);
    case 'soil':
      return from(asked.question.from ?? asked.question.series[0]?.days[0]?.date ?? null);
    case 'forecast':
    case 'growing': {
      const { sowing, bed } = asked.question;
      const sownMs = instantAt(sowing.date, sowing.time, zone);
      return bed.wettedOn === null ? sownMs : Math.max(sownMs, instantAt(bed.wettedOn, '12:00', zone));
    }
  }
}
