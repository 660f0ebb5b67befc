import { asFact, type Fact, type Params } from '../../basics/fact.js';

/** Maximum length of a parameter: a source's or receiver's own message may be of any length. */
const MAX_PARAM_CHARS = 300;

/** A fact as the store keeps it, in one text; what others said, in its parameters, without control characters and not too long. */
export const factToStore = (fact: Fact): string => JSON.stringify(limited(fact));

const limited = ({ code, params, also }: Fact): Fact => ({
  code,
  params: Object.fromEntries(
    Object.entries(params).map(([name, value]) => [
      name,
      typeof value === 'string' ? value.replaceAll(/\p{Cc}+/gu, ' ').slice(0, MAX_PARAM_CHARS) : value,
    ]),
  ),
  ...(also && { also: limited(also) }),
});

/** The fact that the store keeps; what was stored before there were facts is a sentence. */
export function factStored(text: string): Fact {
  const fact = text.startsWith('{"code":') ? (JSON.parse(text) as { code: string; params: Params; also?: Fact }) : text;
  return asFact(fact);
}
