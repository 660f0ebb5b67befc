import type { FastifyRequest } from 'fastify';
import { z } from 'zod';
import { findZone } from '../../../basics/calendar.js';
import type { Note } from '../../../basics/errors.js';
import { precisionSchema } from '../../../contract/common.js';
import { placeSchema } from '../../../contract/forecast.js';
import { type CheckAnswer, checkAnswerSchema } from '../../../contract/readings.js';
import { seriesSchema } from '../../../contract/series.js';
import { readSeries, zoneOfStamps } from '../../../readings/read-series.js';
import { reportOf, type SeriesReport } from '../../../readings/report.js';
import type { Unworded } from '../../negotiation/worded.js';
import { signed } from '../../openapi/model.js';
import type { Route } from '../../openapi/route.js';
import { bodyProblems } from '../../problems/common-problems.js';
import { askedByQuery, documented, fileParameters, parameterAt, placeParameters } from '../../question/csv-query.js';
import { exampleCsv, exampleQuestion } from '../../question/examples.js';
import { readFileBody } from '../../question/file-body.js';
import { askedOfFile, inParameters, isFile, precisionOf } from '../../question/file-request.js';
import { read } from '../../question/read.js';
import { serializeReport } from './report-serializer.js';

const placeQuerySchema = z.strictObject({ where: z.strictObject({ place: placeSchema }).optional() });

/** The route that reports on a file or a series. */
export const readingsRoutes = (clock: () => Date): Route[] => [
  {
    method: 'POST',
    url: '/v1/readings/check',
    operation: {
      id: 'checkReadings',
      summary: "The service's reading of a file or a series; nothing is stored",
      query: [{ name: 'precision', schema: precisionSchema }, ...documented({ ...placeParameters, ...fileParameters })],
      json: { schema: seriesSchema, example: exampleQuestion.temperatures[0] },
      csv: { example: exampleCsv },
      answer: { schema: checkAnswerSchema },
      problems: [...bodyProblems],
    },
    async handler(request): Promise<Unworded<CheckAnswer>> {
      const { rounding, query } = precisionOf(request);
      const { report, warnings } = await (isFile(request) ? checkFile(request, query) : checkBody(request, query));
      return signed({ ...serializeReport(report, rounding), warnings: [...warnings] }, clock());
    },
  },
];

interface Checked {
  readonly report: SeriesReport;
  readonly warnings: readonly Note[];
}

async function checkFile(request: FastifyRequest, query: Record<string, unknown>): Promise<Checked> {
  const { asked, hints } = askedOfFile(placeQuerySchema, placeParameters, query);
  const { series, rows, file } = await inParameters(placeParameters, () =>
    readFileBody(request, hints, zoneNamed(asked.where?.place.timeZone)),
  );
  return { report: reportOf(series, rows, file), warnings: series.warnings };
}

function checkBody(request: FastifyRequest, query: Record<string, unknown>): Checked {
  const sent = askedByQuery(query, placeParameters);
  const { where } = read(placeQuerySchema, sent, (path) => parameterAt(path, placeParameters));
  const body = read(seriesSchema, request.body);
  const zone = zoneNamed(where?.place.timeZone) ?? zoneOfStamps(body) ?? (body.daily ? findZone('Etc/UTC') : undefined);
  const series = readSeries(body, zone, []);
  return { report: reportOf(series, body.readings?.length ?? body.daily!.length), warnings: series.warnings };
}

const zoneNamed = (name: string | undefined) => (name === undefined ? undefined : findZone(name));
