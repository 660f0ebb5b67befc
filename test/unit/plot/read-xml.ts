/** An element of a document. */
export interface XmlElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly (XmlElement | string)[];
}

const NAME = '[A-Za-z_][\\w.-]*';
const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" };

/**
 * A document without prolog, comments and CDATA, read strictly as XML 1.0 (5th ed.) has it: one root, tags that match,
 * attributes once and quoted, no bare & or <, no entity that was not declared, no character outside of Char (2.2).
 */
export function readXml(text: string): XmlElement {
  for (const character of text) {
    const code = character.codePointAt(0)!;
    const isChar =
      code === 0x9 ||
      code === 0xa ||
      code === 0xd ||
      (code >= 0x20 && code <= 0xd7ff) ||
      (code >= 0xe000 && code < 0xfffe) ||
      code > 0xffff;
    if (!isChar) throw new Error(`character ${code} has no place in XML`);
  }
  const root: { children: (XmlElement | string)[] } = { children: [] };
  const open: { name: string; attributes: Record<string, string>; children: (XmlElement | string)[] }[] = [];
  let at = 0;
  const into = (child: XmlElement | string): void => {
    (open.at(-1) ?? root).children.push(child);
  };
  while (at < text.length) {
    if (text[at] !== '<') {
      const end = text.indexOf('<', at);
      const raw = text.slice(at, end < 0 ? undefined : end);
      if (open.length === 0 && raw.trim() !== '') throw new Error(`text outside of the root: ${raw}`);
      into(decoded(raw));
      at += raw.length;
      continue;
    }
    const tag = new RegExp(`<(/?)(${NAME})((?:\\s+[\\w:-]+="[^"<]*")*)\\s*(/?)>`, 'y');
    tag.lastIndex = at;
    const match = tag.exec(text);
    if (!match) throw new Error(`no tag: ${text.slice(at, at + 80)}`);
    at = tag.lastIndex;
    const [, isEnd, name, written, isEmpty] = match as unknown as [string, string, string, string, string];
    if (isEnd) {
      const closed = open.pop();
      if (closed?.name !== name) throw new Error(`</${name}> closes <${closed?.name}>`);
      into(closed);
      continue;
    }
    const attributes: Record<string, string> = {};
    for (const [, key, value] of written.matchAll(/([\w:-]+)="([^"]*)"/g)) {
      if (Object.hasOwn(attributes, key!)) throw new Error(`${key} twice in <${name}>`);
      attributes[key!] = decoded(value!);
    }
    if (isEmpty) into({ name, attributes, children: [] });
    else open.push({ name, attributes, children: [] });
  }
  if (open.length > 0) throw new Error(`<${open.at(-1)!.name}> is not closed`);
  const [only, ...others] = root.children.filter((child) => typeof child !== 'string');
  if (!only || others.length > 0) throw new Error('there must be one root');
  return only as XmlElement;
}

function decoded(raw: string): string {
  return raw.replaceAll(/&([^;]*);?/g, (all, entity: string) => {
    const meant = all.endsWith(';') ? ENTITIES[entity] : undefined;
    if (meant === undefined) throw new Error(`no entity: ${all}`);
    return meant;
  });
}

/** Every element of a document, the root first. */
export const all = (root: XmlElement): XmlElement[] => [
  root,
  ...root.children.flatMap((child) => (typeof child === 'string' ? [] : all(child))),
];

/** The text in an element. */
export const textIn = (one: XmlElement): string =>
  one.children.map((child) => (typeof child === 'string' ? child : textIn(child))).join('');
