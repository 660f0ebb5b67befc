import { z } from 'zod';
import { type CropSeason, cropNotes } from '../../../answers/week/crop-season.js';
import { WEEK_DAYS, weekAdvice } from '../../../answers/week/this-week.js';
import { addDays, dateAt, type PlainDate } from '../../../basics/calendar.js';
import { notUnderstood } from '../../../basics/errors.js';
import { dateSchema, idSchema } from '../../../contract/common.js';
import { addIssue, fieldFact } from '../../../contract/field-issue.js';
import { type WeekAnswer, weekAnswerSchema } from '../../../contract/this-week.js';
import { type WindowQuery, windowQuerySchema } from '../../../contract/windows.js';
import { inputsOfRows } from '../../../garden/bed/bed-inputs.js';
import { bedInputsIn } from '../../../garden/bed/bed-records.js';
import { chosenCrop } from '../../../germination/crop-choice.js';
import { crops } from '../../../germination/crops.js';
import type { AskedBy } from '../../../worker/worker-pool.js';
import { ownerOf } from '../../auth/owner.js';
import { forPeople } from '../../negotiation/rounding.js';
import type { Unworded } from '../../negotiation/worded.js';
import { asJson } from '../../negotiation/written.js';
import { signed } from '../../openapi/model.js';
import type { Route } from '../../openapi/route.js';
import { linkProblems, localeProblems } from '../../problems/common-problems.js';
import { documented, localeParameters } from '../../question/csv-query.js';
import { knownByQuery, type Linked, linkedRows, type Service } from '../../question/endpoint.js';
import { located } from '../../question/located.js';
import { climateAsked, type Known, windowQuestionOf } from '../../question/question.js';
import { read } from '../../question/read.js';
import { type GrowingThere, growingThere, sownThere } from './growing-there.js';

const MAX_CROPS = 100;

const weekQuery = z
  .strictObject({
    bed: idSchema.optional(),
    place: idSchema.optional(),
    crop: z
      .string()
      .default('all')
      .transform((text) => (text === 'all' ? [...crops.keys()] : [...new Set(text.split(','))]))
      .pipe(z.array(idSchema).min(1).max(MAX_CROPS)),
    on: dateSchema.optional(),
  })
  .superRefine(({ bed, place }, context) => {
    if (bed !== undefined && place !== undefined) addIssue(context, ['bed'], fieldFact('field.bed-or-place'));
  });

/** What can be sown this week, and what is to be done. */
export const thisWeekRoutes = (service: Service): Route[] => [
  {
    method: 'GET',
    url: '/v1/this-week',
    operation: {
      id: 'thisWeek',
      summary: 'What can be sown in the seven days from today, and what there is to do',
      description:
        'Of a bed or a place. Crops are graded as sowing windows grade them; each stands in one of `sow`, `soon` and `notNow`, or, with `bed`, in `sown`.',
      query: [
        {
          name: 'bed',
          schema: idSchema,
          description: 'A stored bed; what grows there is not proposed again.',
        },
        ...documented(localeParameters),
        {
          name: 'place',
          schema: idSchema,
          description: 'A stored place: its open ground, and the sowings of all its beds.',
        },
        {
          name: 'crop',
          schema: z.string().default('all'),
          description: 'Ids separated by commas, or all.',
        },
        {
          name: 'on',
          schema: dateSchema,
          description: 'The first of the seven days. Default: today.',
        },
      ],
      answer: { schema: weekAnswerSchema },
      problems: [...linkProblems, ...localeProblems],
    },
    async handler(request, reply) {
      const { week, locale } = parametersOf(request.query as Record<string, unknown>);
      const { bed, place, crop: asked, on } = read(weekQuery, week, ([name]) => ({ parameter: String(name) }));
      for (const crop of asked) chosenCrop(crop);
      const owner = ownerOf(request);
      const now = service.clock();
      if (bed === undefined && place === undefined) {
        const known = await knownByQuery(service, request, locale);
        const today = dateAt(now.getTime(), known.locale!.site.zone);
        return service.answers.send({ request, reply, owner }, { query: request.query, today }, async () => {
          const by = request.askedBy();
          by.takePlace?.();
          const from = on ?? today;
          const seasons = await seasonsOf(service, by, asked, undefined, known, from);
          return asJson(signed(weekContent(seasons, NOTHING_GROWS, from, known), now), request);
        });
      }
      if (Object.keys(locale).length > 0)
        throw notUnderstood([{ parameter: Object.keys(locale)[0]!, detail: fieldFact('field.bed-or-place') }]);
      const linked: Linked = bed === undefined ? { place: place! } : { bed };
      const rows = await linkedRows(service, owner, linked, now);
      const sown = await sownThere(service.store, owner, rows, now.getTime());
      const inputs = {
        asked,
        on,
        ...bedInputsIn(rows),
        sown: sown.map(({ counted: { sowing } }) => [sowing.id, sowing.revision]),
      };
      return service.answers.send({ request, reply, owner }, inputs, async () => {
        const by = request.askedBy();
        by.takePlace?.();
        const known = { now, kept: await inputsOfRows(service.store, owner, rows) };
        const from = on ?? rows.today;
        const growing = await growingThere(service, request, sown, {
          place: rows.place.id,
          today: rows.today,
          from,
          now,
        });
        const there = new Set(bed === undefined ? [] : growing.sown.map(({ crop }) => String(crop)));
        const seasons = await seasonsOf(
          service,
          by,
          asked.filter((crop) => !there.has(crop)),
          linked,
          known,
          from,
        );
        return asJson(signed(weekContent(seasons, growing, from, known), now), request);
      });
    },
  },
];

/** Questions of one request under way at once: a second thread helps, and other owners wait behind two of ours at most. */
const AT_ONCE = 2;

/**
 * The season of each crop. What is raised in trays is judged from so many weeks earlier as its plants are old when they go
 * out, so that this week's planting out is known too.
 */
async function seasonsOf(
  { work }: Service,
  by: AskedBy,
  asked: readonly string[],
  where: WindowQuery['where'],
  known: Known,
  on: PlainDate,
): Promise<CropSeason[]> {
  const seasons = new Array<CropSeason>(asked.length);
  const seasonOf = (crop: string): Promise<CropSeason> => {
    const from = addDays(on, -7 * (chosenCrop(crop).plantingOut?.weeksFromSowing ?? 0));
    return work.ask('season', windowQuestionOf(read(windowQuerySchema, { crop, where, from }), [], known), by);
  };
  const lane = async (first: number): Promise<void> => {
    for (let i = first; i < asked.length; i += AT_ONCE) seasons[i] = await seasonOf(asked[i]!);
  };
  await Promise.all(Array.from({ length: AT_ONCE }, (_, first) => lane(first)));
  return seasons;
}

function weekContent(
  seasons: readonly CropSeason[],
  { sown, toDo, plantOut, ahead }: GrowingThere,
  from: PlainDate,
  known: Known,
): Omit<Unworded<WeekAnswer>, 'model' | 'issuedAt'> {
  const advice = weekAdvice(seasons, from);
  const content = {
    from,
    to: addDays(from, WEEK_DAYS),
    years: seasons[0]?.years ?? { from: null, to: null, count: 0 },
    ...advice,
    sow: advice.sow.map((one) => ({ ...one, reasons: [...one.reasons] })),
    plantOut: [...plantOut, ...advice.plantOut],
    sown,
    toDo,
    ahead,
    ...cropNotes(seasons),
  };
  return located(content, climateAsked(known), known, forPeople);
}

const NOTHING_GROWS: GrowingThere = { sown: [], toDo: [], plantOut: [], ahead: [] };

/** The parameters of the week, and those of a place that the query describes. */
function parametersOf(query: Record<string, unknown>) {
  const isOfPlace = (name: string): boolean => Object.hasOwn(localeParameters, name);
  const some = (wanted: boolean) =>
    Object.fromEntries(Object.entries(query).filter(([name]) => isOfPlace(name) === wanted));
  return { week: some(false), locale: some(true) };
}
