import { presetsAnswerSchema } from '../../../contract/places.js';
import { attributionOf, presetFact, presetNames, sourcePresets } from '../../../garden/store/source-presets.js';
import { sendWithETag } from '../../negotiation/etag.js';
import { signed } from '../../openapi/model.js';
import type { Route } from '../../openapi/route.js';
import { refuseQuery } from '../../resource/resource.js';
import type { AllowedSources } from './source-serializer.js';

/** The route of the public sources that a place can name. */
export const sourcePresetRoutes = (clock: () => Date, allowed: AllowedSources): Route[] => [
  {
    method: 'GET',
    url: '/v1/source-presets',
    operation: {
      id: 'listSourcePresets',
      summary: 'Public sources of air temperatures that a place can name, with their terms',
      description: 'Nothing is asked of any of them until a place names one as its `source`.',
      answer: { schema: presetsAnswerSchema },
      problems: ['not-understood'],
    },
    handler(request, reply) {
      refuseQuery(request);
      reply.header('cache-control', 'public, max-age=3600');
      const content = { presets: presetNames.map(serializePreset), allowed };
      return sendWithETag(request, reply, content, () => signed(content, clock()));
    },
  },
];

function serializePreset(preset: (typeof presetNames)[number]) {
  const { name, host, licence, url, termsUrl, everyHours, isContactNeeded } = sourcePresets[preset];
  return {
    preset,
    name,
    gives: presetFact('preset.reads', { preset }),
    terms: presetFact('preset.consequence', { preset }),
    attribution: attributionOf(preset),
    host,
    licence,
    url,
    termsUrl,
    everyHours,
    contactNeeded: isContactNeeded,
  };
}
