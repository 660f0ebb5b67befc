import { type MessageFormatElement, parse, TYPE } from '@formatjs/icu-messageformat-parser';
import { printAST } from '@formatjs/icu-messageformat-parser/printer.js';
import type { ParamKind } from '../basics/fact.js';
import { type FactCode, factKinds } from './facts.js';
import type { Language } from './reader.js';
import { catalogues } from './say.js';

/** The unit printed after a parameter of each kind, for callers who fill in the plain number. */
const UNITS: Readonly<Record<string, string>> = { celsius: ' °C', kelvin: ' °C', cm: ' cm', mm: ' mm' };

/** The messages of a language for callers who word `code` and `params` themselves: ICU patterns with units. */
export const publishedMessages = (language: Language): Readonly<Record<string, string>> =>
  Object.fromEntries(
    Object.entries(catalogues[language]).map(([code, pattern]) => [
      code,
      printAST(withUnits(parse(pattern, { ignoreTag: true }), factKinds[code as FactCode] ?? {})),
    ]),
  );

const withUnits = (
  elements: readonly MessageFormatElement[],
  kinds: Readonly<Record<string, ParamKind>>,
): MessageFormatElement[] =>
  elements.flatMap((element): MessageFormatElement[] => {
    if (element.type === TYPE.argument) {
      const unit = UNITS[String(kinds[element.value] ?? '').replace('?', '')];
      return unit === undefined ? [element] : [element, { type: TYPE.literal, value: unit }];
    }
    if (element.type !== TYPE.plural && element.type !== TYPE.select) return [element];
    const options = Object.fromEntries(
      Object.entries(element.options).map(([option, { value, ...rest }]) => [
        option,
        { ...rest, value: withUnits(value, kinds) },
      ]),
    );
    return [{ ...element, options } as MessageFormatElement];
  });
