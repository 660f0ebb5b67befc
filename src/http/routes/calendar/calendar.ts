import { z } from 'zod';
import { digestOfJson } from '../../../basics/digest.js';
import { RequestError } from '../../../basics/errors.js';
import { idSchema } from '../../../contract/common.js';
import { keptRefusal } from '../../../contract/request/refusal-facts.js';
import { bedInputsIn, bedRows } from '../../../garden/bed/bed-records.js';
import { bedSeason, knownSeason } from '../../../garden/bed/bed-season.js';
import type { CalendarEvent } from '../../../garden/calendar/calendar-event.js';
import { calendarEvents } from '../../../garden/calendar/calendar-events.js';
import type { BedSeason } from '../../../garden/calendar/calendar-season.js';
import { eventInWords, icalendar } from '../../../garden/calendar/icalendar.js';
import { sayer } from '../../../words/say.js';
import { workPortOf } from '../../../worker/work-port-of.js';
import type { AskedBy } from '../../../worker/worker-pool.js';
import type { Route } from '../../openapi/route.js';
import { storageProblems } from '../../problems/common-problems.js';
import type { Service } from '../../question/endpoint.js';

/** A bed's season: its inputs, quickly known, and the slow function that works it out. */
export interface BedGrowing {
  readonly inputs: object;
  season(): Promise<BedSeason>;
}

/** The season of an owner's bed; undefined: there is no such bed. */
export type FindGrowing = (owner: string, bed: string, by: AskedBy) => Promise<BedGrowing | undefined>;

/** Finds the season of a stored bed. */
export const growingIn = ({ store, clock, work }: Service): FindGrowing => {
  return async (owner, id, by) => {
    const now = clock();
    const rows = await bedRows(store, owner, id, now.getTime());
    return (
      rows && {
        inputs: bedInputsIn(rows),
        async season() {
          by.takePlace?.();
          return bedSeason(store, await knownSeason(store, owner, rows, now), workPortOf(work, by));
        },
      }
    );
  };
};

const MEDIA_TYPE = 'text/calendar';

/** The characters of a token: the database is queried for nothing else, as not every database accepts it. */
const tokenSchema = z.string().regex(/^[\w-]{1,200}$/);

/**
 * The calendar of each bed, for callers with its token. A wrong token is answered like a missing bed, before anything
 * is worked out.
 */
export const calendarRoutes = ({ store, clock, answers }: Omit<Service, 'work'>, growing: FindGrowing): Route[] => {
  return [
    {
      method: 'GET',
      url: '/v1/beds/:id/calendar.ics',
      open: 'by-token',
      operation: {
        id: 'bedCalendar',
        summary: 'What to do in a bed, and when, as a calendar to subscribe to (RFC 5545)',
        description:
          "Needs no key: the bed's calendarUrl holds a secret of its own. An event keeps its UID while its dates move.",
        query: [
          {
            name: 'token',
            schema: tokenSchema,
            required: true,
            description: "The bed's own secret, from its calendarUrl.",
          },
        ],
        answer: { mediaType: MEDIA_TYPE },
        problems: ['not-found', ...storageProblems, 'busy'],
      },
      async handler(request, reply) {
        const bed = idSchema.safeParse((request.params as { id: string }).id).data;
        const token = tokenSchema.safeParse((request.query as Record<string, unknown>).token).data;
        const opened = bed !== undefined && token !== undefined && (await store.bedOfCalendar(bed, token));
        const found = opened ? await growing(opened.owner, bed, request.askedBy(opened.owner)) : undefined;
        if (!opened || !found) throw noCalendar();
        const { owner } = opened;
        return answers.send({ request, reply, owner }, found.inputs, async () => {
          const say = sayer(request.reader);
          const season = await found.season();
          const events = calendarEvents(season);
          const entries = events.map((event) => ({ uid: event.uid, digest: eventDigest(event) }));
          const revisions = await store.calendarRevisions(owner, bed, entries, clock().getTime());
          if (!revisions) throw noCalendar();
          const revisionOf = new Map(revisions.map((revision) => [revision.uid, revision]));
          return {
            type: `${MEDIA_TYPE}; charset=utf-8`,
            body: icalendar(
              season.bed.name,
              events.map((event) => ({ ...eventInWords(event, say), ...revisionOf.get(event.uid)! })),
              request.reader.language,
            ),
          };
        });
      },
    },
  ];
};

/** A digest of an event without language and units, so that neither changes the event. */
const eventDigest = ({ kind, from, to, summary, description }: CalendarEvent): string =>
  digestOfJson([kind, from, to, summary, description], 27);

/** The same words for every error, without the address, which may hold a secret. */
const noCalendar = (): RequestError => new RequestError('not-found', keptRefusal('not-found.calendar'));
