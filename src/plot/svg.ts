/** Attributes of an element; undefined ones are left out. */
export type Attributes = Readonly<Record<string, string | number | undefined>>;

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Printable ASCII without XML markup: most text, above all long paths. */
const PLAIN = /^[ !#-%(-;=?-~]*$/;

/** Text for XML: markup escaped, invalid characters dropped. */
export const escapeText = (text: string): string =>
  PLAIN.test(text)
    ? text
    : [...text]
        .filter(isXmlCharacter)
        .join('')
        .replaceAll(/[&<>"']/g, (character) => ENTITIES[character]!);

/** Char of XML 1.0 (fifth edition, 2.2): no controls but tab and line ends, no half of a surrogate pair. */
function isXmlCharacter(character: string): boolean {
  const code = character.codePointAt(0)!;
  if (code < 0x20) return code === 0x9 || code === 0xa || code === 0xd;
  return code < 0xd800 || (code > 0xdfff && code !== 0xfffe && code !== 0xffff);
}

/** An element whose children are markup already. Numbers are written to a tenth. */
export function element(name: string, attributes: Attributes, ...children: readonly string[]): string {
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => ` ${key}="${typeof value === 'number' ? tenth(value) : escapeText(value!)}"`)
    .join('');
  return children.length === 0 ? `<${name}${written}/>` : `<${name}${written}>${children.join('')}</${name}>`;
}

/** A number to a tenth of a unit. @throws for a number that is not finite: a picture must not have a hole. */
export function tenth(value: number): string {
  if (!Number.isFinite(value)) throw new Error(`${value} cannot be drawn`);
  return String(Math.round(value * 10) / 10 + 0);
}
