import { z } from 'zod';
import { digestOfJson } from '../../../basics/digest.js';
import { RequestError } from '../../../basics/errors.js';
import { idSchema } from '../../../contract/common.js';
import { keptRefusal } from '../../../contract/refusal-facts.js';
import { bedInputsIn, bedRows } from '../../../garden/bed/bed-inputs.js';
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

/** What grows in a bed: all that it depends on, which is quickly known, and the working out of it, which is not. */
export interface BedGrowing {
  readonly inputs: object;
  season(): Promise<BedSeason>;
}

/** What grows in a bed of an owner; undefined: there is no such bed. */
export type FindGrowing = (owner: string, bed: string, by: AskedBy) => Promise<BedGrowing | undefined>;

/** What grows in a kept bed. */
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

/** What a token can be made of: no database need be asked for anything else, and not each takes it. */
const tokenSchema = z.string().regex(/^[\w-]{1,200}$/);

/**
 * The calendar of each bed, for whoever has its token. What the token does not open is answered like a bed that there is
 * not, before anything is worked out.
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
          'Needs no key: the address that a bed gives as its calendarUrl holds a secret of its own. An event keeps its UID while its dates move.',
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
            ),
          };
        });
      },
    },
  ];
};

/** What an event says, in short: whatever the words, the language and the units, so that none of them changes the event. */
const eventDigest = ({ kind, from, to, summary, description }: CalendarEvent): string =>
  digestOfJson([kind, from, to, summary, description], 27);

/** The same words whatever is wrong. The address may hold a secret, so it is not told back. */
const noCalendar = (): RequestError => new RequestError('not-found', keptRefusal('not-found.calendar'));
