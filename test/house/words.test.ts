import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parseAst } from 'vitest/node';

/** Rooms that find facts: the room `words` alone makes sentences of them. */
const PURE_ROOMS = ['basics', 'readings', 'seedbed', 'climate', 'germination', 'answers', 'garden'];

/** Calls whose arguments tell a fault: of a caller, or of ours. */
const FAULTS = /^(RequestError|ScienceError|Error|notUnderstood|no[A-Z]\w*)$/;
/** Members that tell a fault. */
const FAULT_MEMBERS = /^(detail|message)$/;
/** Members, calls and constants that name a publication, or a plant. */
const LITERATURE = /^(source|latinName|viabilitySet|HANDBOOK|HANDBOOK_SOURCE|STORAGE|BEDS|COMMON)$/;

/** Three words or more that begin with a capital or end in a full stop. */
const isSentence = (text: string): boolean =>
  text.split(/\s+/).filter((word) => /\p{Ll}/u.test(word)).length >= 3 &&
  (/^\p{Lu}/u.test(text) || /\.$/.test(text.trimEnd()));

/** A node of a syntax tree, as ESTree has it: its kind, where it begins, and its parts. */
interface Node {
  readonly type: string;
  readonly start: number;
  readonly [part: string]: unknown;
}
const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof (value as Node).type === 'string';

/** What a call, a member or a constant is called. */
function nameOf({ type, callee, key, id }: Node): string {
  const named =
    type === 'NewExpression' || type === 'CallExpression'
      ? callee
      : type === 'Property'
        ? key
        : type === 'VariableDeclarator'
          ? id
          : null;
  return isNode(named) ? String(named.name ?? named.value ?? '') : '';
}

/** What tells a fault or names a publication, and modules, are looked into no further. */
const isExempt = (node: Node): boolean => {
  const name = nameOf(node);
  return FAULTS.test(name) || FAULT_MEMBERS.test(name) || LITERATURE.test(name) || node.type === 'ImportDeclaration';
};

function textOf({ type, value, quasis }: Node): string | null {
  if (type === 'Literal') return typeof value === 'string' ? value : null;
  if (type !== 'TemplateLiteral') return null;
  return (quasis as { readonly value: { readonly raw: string } }[]).map((one) => one.value.raw).join('…');
}

/** The sentences of a file, as `line: text`. */
function sentencesIn(text: string): string[] {
  const visit = (node: Node): string[] => {
    if (isExempt(node)) return [];
    const said = textOf(node);
    const own = said !== null && isSentence(said) ? [`${text.slice(0, node.start).split('\n').length}: ${said}`] : [];
    return [...own, ...Object.values(node).flat().filter(isNode).flatMap(visit)];
  };
  return visit(parseAst(text, { lang: 'ts' }) as unknown as Node);
}

const files = PURE_ROOMS.flatMap((room) =>
  readdirSync(`src/${room}`, { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.ts'))
    .map((path) => `src/${room}/${path.replaceAll('\\', '/')}`),
);

describe('the rooms that find facts', () => {
  test('are there', () => {
    expect(files.length).toBeGreaterThan(200);
  });

  test.each(files)('hold no sentence in %s', (path) => {
    expect(sentencesIn(readFileSync(path, 'utf8'))).toEqual([]);
  });
});

describe('a sentence', () => {
  test.each([
    ["const note = 'Sow in the evening.';", 1],
    ["const note = { text: 'the bed is dry.' };", 1],
    [`const note = (n: number) => \`Only \${n} years are known\`;`, 1],
    ["throw new RequestError('not-found', 'There is no such bed.');", 0],
    [`throw new ScienceError('empty', \`Takes \${n} values or more.\`);`, 0],
    ["notUnderstood([{ path: [], detail: 'Must be a date.' }]);", 0],
    ["const caution = { source: 'Brewster 2008, read in a copy' };", 0],
    ["// Sow in the evening.\nconst code = 'sow-in-evening';", 0],
    ["const zone = 'Europe/Berlin';", 0],
  ])('is found in %s', (text, count) => {
    expect(sentencesIn(text)).toHaveLength(count);
  });
});
