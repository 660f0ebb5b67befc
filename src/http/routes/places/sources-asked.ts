import { isIP } from 'node:net';
import { notUnderstood, RequestError } from '../../../basics/errors.js';
import { fieldFact } from '../../../basics/field-facts.js';
import type { SourceAsked } from '../../../contract/places.js';
import { keptRefusal } from '../../../contract/request/refusal-facts.js';
import { isPublicAddress } from '../../../egress/public-address.js';
import { presetNamed, presetNames, sourcePresets } from '../../../garden/store/source-presets.js';
import type { PlaceSource } from '../../../garden/store/store.js';

/** What the operator allows of sources. */
export interface SourceRules {
  /** Publishers can be told whom to write to. */
  readonly hasContact: boolean;
  /** Sources on this machine and in its network are allowed. */
  readonly allowPrivate: boolean;
}

type Path = readonly (string | number)[];

/**
 * The sources of a place's body.
 *
 * @param asked  Its `source`.
 * @param before The place's sources until now. A place that is sent back as it was shown has the first of them as its
 *   `source`, and all of them as its `sources`: the others stay then.
 * @throws {RequestError} for a source that the service could never ask, unless the place has it already.
 */
export function sourcesOf(
  asked: SourceAsked | SourceAsked[] | null,
  { isSentBack, before }: { readonly isSentBack: boolean; readonly before: readonly PlaceSource[] },
  rules: SourceRules,
): PlaceSource[] {
  if (asked === null) return [];
  const list = Array.isArray(asked) ? asked : [asked];
  const pathOf = (n: number): Path => (Array.isArray(asked) ? ['source', n] : ['source']);
  const sources = list.map((one, n) => sourceOf(one, pathOf(n)));
  for (const [n, source] of sources.entries()) {
    if (!before.some((one) => isSame(one, source))) refuseUnasked(source, pathOf(n), rules);
    if (sources.slice(0, n).some((one) => isSame(one, source))) {
      throw notUnderstood([{ path: pathOf(n), detail: fieldFact('field.once-each') }]);
    }
  }
  const others = isSentBack && !Array.isArray(asked) ? before.slice(1) : [];
  return [...sources, ...others.filter((other) => !sources.some((one) => isSame(one, other)))];
}

const isSame = (a: PlaceSource, b: PlaceSource): boolean =>
  a.preset === b.preset && a.format === b.format && a.url === b.url;

function sourceOf(asked: SourceAsked, path: Path): PlaceSource {
  if ('format' in asked) return { preset: null, ...asked };
  const preset = presetNamed(asked.preset);
  if (!preset) {
    throw new RequestError('unknown-preset', keptRefusal('unknown-preset', { preset: asked.preset }), [
      {
        path: [...path, 'preset'],
        detail: keptRefusal('unknown-preset.field'),
        choices: presetNames.map((value) => ({ value, code: 'preset', params: { preset: value } })),
      },
    ]);
  }
  return { preset, format: null, url: null, everyHours: asked.everyHours ?? sourcePresets[preset].everyHours };
}

/** Refuses an unsuitable literal address at once; a host name is resolved only when it is asked. */
function refuseUnasked({ preset, url }: PlaceSource, path: Path, { hasContact, allowPrivate }: SourceRules): void {
  const known = presetNamed(preset);
  if (known && sourcePresets[known].isContactNeeded && !hasContact) {
    throw new RequestError('contact-needed', keptRefusal('contact-needed', { publisher: sourcePresets[known].name }), [
      { path: [...path, 'preset'], detail: keptRefusal('contact-needed.field') },
    ]);
  }
  if (url === null || allowPrivate) return;
  const hostname = new URL(url).hostname.replace(/^\[|\]$/g, '').replace(/\.$/, '');
  const isPrivate = isIP(hostname) ? !isPublicAddress(hostname) : /(^|\.)localhost$/.test(hostname);
  if (!isPrivate) return;
  throw new RequestError('private-address', keptRefusal('private-address', { host: hostname }), [
    { path: [...path, 'url'], detail: keptRefusal('private-address.field', { host: hostname }) },
  ]);
}
