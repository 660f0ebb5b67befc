import type { PageQuestion } from '../form/question.js';
import { inQuery, numberIn, numberOrText, wholeOrText } from '../form/typed-numbers.js';
import { type ApiRequest, type Failure, pathWith, unusable } from '../shell/api.js';
import type { FileGiven } from '../shell/view.js';
import { daysLater, type PageReader } from '../shell/words.js';

/** The typed days as a series; the failure names a value that is not a number. */
function typedSeries(question: PageQuestion, { say }: Pick<PageReader, 'say'>): { readonly series: object } | Failure {
  const { firstDay, days, medium, probeDepthCm, unit } = question;
  if (firstDay === '') return unusable(say('page.refused.first-day'));
  const daily: object[] = [];
  for (const [i, { min, max }] of days.entries()) {
    if (min.trim() === '' && max.trim() === '') continue;
    const [low, high] = [numberIn(min), numberIn(max)];
    if (Number.isNaN(low) || Number.isNaN(high)) {
      const [which, said] = Number.isNaN(low) ? ['min', min] : ['max', max];
      return unusable(say('page.refused.no-number', { which, said, day: i + 1 }));
    }
    if (low !== null && high !== null && low > high) {
      return unusable(say('page.refused.turned', { day: i + 1, min, max }));
    }
    daily.push({
      date: daysLater(firstDay, i),
      ...(low === null ? {} : { min: low }),
      ...(high === null ? {} : { max: high }),
    });
  }
  if (daily.length === 0) {
    return unusable(say('page.refused.no-temperature'));
  }
  const depthCm = medium === 'air' ? null : numberOrText(probeDepthCm);
  return {
    series: {
      medium: medium || 'soil',
      unit,
      ...(depthCm === null ? {} : { probeDepthCm: depthCm }),
      daily,
    },
  };
}

/** How to read a file, as a query. */
export const fileQuery = (question: PageQuestion): Record<string, string> => ({
  medium: question.medium,
  probeDepthCm: question.medium === 'air' ? '' : inQuery(question.probeDepthCm),
  unit: question.unit,
  column: question.column,
  timeColumn: question.timeColumn,
  dateOrder: question.dateOrder,
  clock: question.clock,
  decimalMark: question.decimalMark,
});

/** The bed, as the query beside a file. */
const whereQuery = (question: PageQuestion): Record<string, string> =>
  question.bed !== ''
    ? { 'where.bed': question.bed }
    : {
        latitude: inQuery(question.latitude),
        longitude: inQuery(question.longitude),
        timeZone: question.timeZone,
        'where.bed.kind': question.kind,
        'where.bed.cover': question.cover,
        'where.bed.moisture': question.moisture,
        'where.bed.shadePercent': inQuery(question.shadePercent),
        'where.bed.roomC': question.kind === 'indoors' ? inQuery(question.roomC) : '',
      };

/** The bed, as JSON. */
function whereJson(question: PageQuestion): object {
  const { bed, latitude, longitude, timeZone, kind, cover, moisture, shadePercent, roomC } = question;
  if (bed !== '') return { bed };
  return {
    place: filled({ latitude: numberOrText(latitude), longitude: numberOrText(longitude), timeZone: timeZone || null }),
    bed: {
      kind,
      cover,
      moisture,
      ...filled({ shadePercent: numberOrText(shadePercent), roomC: kind === 'indoors' ? numberOrText(roomC) : null }),
    },
  };
}

/** A record without its empty values. */
export const filled = (record: Readonly<Record<string, unknown>>): object =>
  Object.fromEntries(Object.entries(record).filter(([, value]) => value !== null));

/** The request for a sowing in a stored bed, with hours. */
export const bedForecastRequest = (question: PageQuestion, bed: string, sowing: string): ApiRequest => ({
  method: 'GET',
  path: pathWith(`/v1/beds/${encodeURIComponent(bed)}/forecast`, sowingQuery(question, sowing)),
});

const sowingQuery = (
  { crop, time, depthCm, seeds, countDays }: PageQuestion,
  sowing: string,
): Record<string, string> => ({
  crop,
  sowing,
  depthCm: inQuery(depthCm),
  seeds,
  countDays,
  'sowing.time': time,
  hourly: 'true',
});

/** The request for this sowing's forecast, with hours for the picture. */
export function forecastRequest(
  question: PageQuestion,
  file: FileGiven | null,
  reader: Pick<PageReader, 'say'>,
): { readonly request: ApiRequest } | Failure {
  const { crop, sowing, time, depthCm, seeds, countDays, bed, source } = question;
  if (source === 'bed') return { request: bedForecastRequest(question, bed, sowing) };
  if (source === 'file') {
    if (!file) return unusable(reader.say('page.refused.no-file'));
    const path = pathWith('/v1/forecasts', {
      ...sowingQuery(question, sowing),
      ...whereQuery(question),
      ...fileQuery(question),
    });
    return { request: { method: 'POST', path, file: file.body } };
  }
  const typed = typedSeries(question, reader);
  if ('problem' in typed) return typed;
  const json = {
    crop,
    where: whereJson(question),
    sowing: {
      date: sowing,
      ...filled({ depthCm: numberOrText(depthCm), seeds: wholeOrText(seeds), time: time || null }),
    },
    ...filled({ countDays: wholeOrText(countDays) }),
    temperatures: [typed.series],
  };
  return { request: { method: 'POST', path: '/v1/forecasts?hourly=true', json } };
}
