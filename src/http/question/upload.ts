import type { FastifyRequest } from 'fastify';
import { z } from 'zod';
import type { Zone } from '../../basics/calendar.js';
import { notUnderstood, type RequestError } from '../../basics/errors.js';
import type { Fact } from '../../basics/fact.js';
import type { Medium } from '../../basics/series.js';
import { precisionSchema } from '../../contract/common.js';
import type { ReportWire } from '../../contract/readings.js';
import { seriesSchema } from '../../contract/series.js';
import type { Changes } from '../../garden/store/store.js';
import { type ReadSeries, readSeries } from '../../readings/read-series.js';
import { reportOf } from '../../readings/report.js';
import type { Unworded } from '../negotiation/worded.js';
import { signed } from '../openapi/model.js';
import type { QueryParameter } from '../openapi/route.js';
import { serializeReport } from '../routes/readings/report-serializer.js';
import { askedByQuery, documented, fileParameters } from './csv-query.js';
import { readFileBody } from './file-body.js';
import { askedOfFile, inParameters, isFile, precisionOf } from './file-request.js';
import { read } from './read.js';

/** Query parameters of a series to store. */
export const uploadParameters: readonly QueryParameter[] = [
  { name: 'precision', schema: precisionSchema },
  ...documented(fileParameters),
];

/** A series to store, and the report on it. */
export interface Upload {
  readonly series: ReadSeries;
  readonly understood: Unworded<ReportWire>;
}

/**
 * The series of a request, as JSON or as a file; its zone is the place's.
 *
 * @param medium Medium of a file that does not name it; null: the caller is asked.
 */
export async function uploadOf(request: FastifyRequest, zone: Zone, medium: Medium | null = null): Promise<Upload> {
  const { rounding, query } = precisionOf(request);
  if (isFile(request)) {
    const { hints } = askedOfFile(z.strictObject({}), {}, query);
    const { series, rows, file } = await inParameters({}, () =>
      readFileBody(request, { ...hints, medium: hints.medium ?? medium }, zone),
    );
    return { series, understood: serializeReport(reportOf(series, rows, file), rounding) };
  }
  askedByQuery(query, {});
  const body = read(seriesSchema, request.body);
  const series = readSeries(body, zone, []);
  const rows = body.readings?.length ?? body.daily!.length;
  return { series, understood: serializeReport(reportOf(series, rows), rounding) };
}

/** A fault of a series as sent: in a field of the body, or of a file, which may have a parameter of that name. */
export function seriesFault(request: FastifyRequest, field: string, detail: Fact): RequestError {
  const parameter = Object.hasOwn(fileParameters, field) ? { parameter: field } : {};
  return notUnderstood([{ ...(isFile(request) ? parameter : { path: [field] }), detail }]);
}

/** The answer after storing a series. */
export const kept = ({ series, understood }: Upload, changes: Changes, now: Date) =>
  signed({ ...changes, understood: [understood], warnings: [...series.warnings] }, now);
