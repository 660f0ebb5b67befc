import type { FastifyRequest } from 'fastify';
import { z } from 'zod';
import { findZone } from '../../basics/calendar.js';
import type { Note } from '../../basics/errors.js';
import { readSeries, zoneOfStamps } from '../../readings/read-series.js';
import { reportOf, type SeriesReport } from '../../readings/report.js';
import { askedByQuery, documented, fileParameters, parameterAt, placeParameters } from '../csv-query.js';
import { exampleCsv, exampleQuestion } from '../examples.js';
import { readFileBody } from '../file-body.js';
import { askedOfFile, inParameters, isFile, precisionOf } from '../file-request.js';
import { signed } from '../model.js';
import { read } from '../read.js';
import type { Route } from '../route.js';
import { precisionSchema } from '../schemas/common.js';
import { placeSchema } from '../schemas/forecast.js';
import { type CheckAnswer, checkAnswerSchema } from '../schemas/readings.js';
import { seriesSchema } from '../schemas/series.js';
import { bodyProblems } from '../usual-problems.js';
import { reportOnWire } from '../wire-report.js';
import type { Unworded } from '../worded.js';

const placeQuerySchema = z.strictObject({ where: z.strictObject({ place: placeSchema }).optional() });

/** What does this file, or this series, say? */
export const readingsRoutes = (clock: () => Date): Route[] => [
  {
    method: 'POST',
    url: '/v1/readings/check',
    operation: {
      id: 'checkReadings',
      summary: 'What a file or a series says, as the service understands it; nothing is kept',
      query: [{ name: 'precision', schema: precisionSchema }, ...documented({ ...placeParameters, ...fileParameters })],
      json: { schema: seriesSchema, example: exampleQuestion.temperatures[0] },
      csv: { example: exampleCsv },
      answer: { schema: checkAnswerSchema },
      problems: [...bodyProblems],
    },
    async handler(request): Promise<Unworded<CheckAnswer>> {
      const { rounding, query } = precisionOf(request);
      const { report, warnings } = await (isFile(request) ? checkFile(request, query) : checkBody(request, query));
      return signed({ ...reportOnWire(report, rounding), warnings: [...warnings] }, clock());
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
