import { z } from 'zod';
import { modelSchema } from '../../../contract/common.js';
import { publishedMessages } from '../../../words/published.js';
import { type Language, languages } from '../../../words/reader.js';
import { VARY } from '../../negotiation/etag.js';
import { readyAnswer, type SendReady } from '../../negotiation/ready-answer.js';
import { asJson } from '../../negotiation/written.js';
import { modelInFull } from '../../openapi/model.js';
import type { Route } from '../../openapi/route.js';

const messagesSchema = z.strictObject({
  language: z.enum(languages),
  messages: z
    .record(z.string(), z.string())
    .describe(
      'ICU messages by code. A null parameter selects `none`; a code selects itself with underscores for hyphens.',
    ),
});

const sendModel = readyAnswer({ ...asJson(modelInFull), headers: { 'cache-control': 'public, max-age=3600' } });

/** The messages of each language, made on the first request. */
const ready = new Map<Language, SendReady>();

/** Messages for callers who word codes and parameters themselves, and the model's sources. */
export const messageRoutes: readonly Route[] = [
  {
    method: 'GET',
    url: '/v1/messages',
    open: true,
    operation: {
      id: 'listMessages',
      summary: 'Every sentence as an ICU message by code, in one language, to word `code` and `params` yourself',
      answer: { schema: messagesSchema },
      problems: ['not-understood'],
    },
    handler(request, reply) {
      const { language } = request.reader;
      const send =
        ready.get(language) ??
        readyAnswer({
          ...asJson({ language, messages: publishedMessages(language) }),
          headers: { 'cache-control': 'public, max-age=3600', vary: VARY },
        });
      ready.set(language, send);
      return send(request, reply);
    },
  },
  {
    method: 'GET',
    url: '/v1/model',
    open: true,
    operation: {
      id: 'getModel',
      summary: 'The model: its version and sources',
      answer: { schema: modelSchema },
      problems: [],
    },
    handler: (request, reply) => sendModel(request, reply),
  },
];
