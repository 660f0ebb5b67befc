import type { z } from 'zod';
import { type Fault, notUnderstood } from '../../basics/errors.js';
import { MAX_ROW_FAULTS } from '../../contract/rows.js';

type Path = readonly (string | number)[];
type Issue = z.core.$ZodIssue;

/** So many issues are put into words; a list of empty rows can have hundreds of thousands. */
const MOST_ISSUES = 20;

/**
 * What a caller sent, as the schema understands it.
 *
 * @param schema  What is expected.
 * @param sent    What came.
 * @param whereOf Where to say the fault lies; by default a path in the body.
 * @throws {RequestError} `not-understood`, with every fault in words that say how to mend it.
 */
export function read<Schema extends z.ZodType>(
  schema: Schema,
  sent: unknown,
  whereOf: (path: Path) => Pick<Fault, 'path' | 'parameter'> = (path) => ({ path }),
): z.output<Schema> {
  const result = schema.safeParse(sent);
  if (result.success) return result.data;
  const { issues } = result.error;
  const faults = issues.slice(0, MOST_ISSUES).flatMap((issue) => faultsOf(issue, [], sent, whereOf));
  const count = faults.length + Math.max(0, issues.length - MOST_ISSUES);
  throw notUnderstood(faults, count, issues.length >= MAX_ROW_FAULTS);
}

function faultsOf(
  issue: Issue,
  base: Path,
  sent: unknown,
  whereOf: (path: Path) => Pick<Fault, 'path' | 'parameter'>,
): Fault[] {
  const path = [...base, ...(issue.path as (string | number)[])];
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => ({
      ...whereOf([...path, key]),
      detail: 'is not a field known here; check the spelling, or leave it out',
    }));
  }
  if (issue.code === 'invalid_union') {
    const branch = nearestBranch(issue.errors);
    if (branch) return branch.flatMap((inner) => faultsOf(inner, path, sent, whereOf));
    if (issue.message.startsWith('must ')) {
      return [{ ...whereOf(path), detail: inOwnWords(issue.message, valueAt(sent, path)) }];
    }
    return [{ ...whereOf(path), detail: kindFault(valueAt(sent, path), issue.errors.flat().map(expectation)) }];
  }
  return [{ ...whereOf(path), detail: detailOf(issue, valueAt(sent, path)) }];
}

/** Of a choice of shapes, the one the caller meant: the one whose own kind (text, number, object) fits, with fewest faults. */
function nearestBranch(branches: readonly (readonly Issue[])[]): readonly Issue[] | undefined {
  const ofTheKind = branches.filter(
    (issues) => !issues.some((issue) => issue.code === 'invalid_type' && issue.path.length === 0),
  );
  return [...ofTheKind].sort((a, b) => weight(a) - weight(b))[0];
}

/** Fields of another shape, and missing ones, say more than others that another shape was meant. */
const weight = (issues: readonly Issue[]): number =>
  issues.reduce((sum, { code }) => sum + (code === 'unrecognized_keys' ? 3 : code === 'invalid_type' ? 2 : 1), 0);

function detailOf(issue: Issue, value: unknown): string {
  const was = value === undefined ? '' : `; it was ${shown(value)}`;
  switch (issue.code) {
    case 'invalid_type':
      if (issue.message.startsWith('must ')) return inOwnWords(issue.message, value);
      return kindFault(value, [expectation(issue)]);
    case 'too_small':
      return `must ${atLimit(issue.origin, 'at least', Number(issue.minimum))}${was}`;
    case 'too_big':
      return `must ${atLimit(issue.origin, 'at most', Number(issue.maximum))}${was}`;
    case 'invalid_value':
      return `${value === undefined ? 'is missing; it ' : ''}must be ${issue.values.length > 1 ? 'one of ' : ''}${issue.values.join(', ')}${was}`;
    default:
      return typeof value === 'object' || !issue.message.startsWith('must ') ? issue.message : issue.message + was;
  }
}

/** What the schema itself says must be sent. */
const inOwnWords = (must: string, value: unknown): string =>
  value === undefined ? `is missing; it ${must}` : `${must}; it was ${shown(value)}`;

function atLimit(origin: string, side: string, limit: number): string {
  if (origin === 'array') return `have ${side} ${limit === 1 ? 'one entry' : `${limit} entries`}`;
  if (origin === 'string') return `have ${side} ${limit === 1 ? 'one character' : `${limit} characters`}`;
  return `be ${side} ${limit}`;
}

const kinds: Record<string, string> = {
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  object: 'an object',
};

const expectation = (issue: Issue): string =>
  issue.code === 'invalid_type' ? (kinds[issue.expected] ?? issue.expected) : 'something else';

function kindFault(value: unknown, expected: readonly string[]): string {
  const wanted = [...new Set(expected)].join(' or ');
  return value === undefined ? `is missing; it must be ${wanted}` : `must be ${wanted}; it was ${shown(value)}`;
}

function shown(value: unknown): string {
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : `a list of ${value.length}`;
  if (value !== null && typeof value === 'object') return 'an object';
  if (typeof value === 'number' && !Number.isFinite(value)) return 'too large a number to reckon with';
  const text = JSON.stringify(value) ?? 'left out';
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
}

function valueAt(sent: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (value, key) =>
      value !== null && typeof value === 'object' ? (value as Record<string | number, unknown>)[key] : undefined,
    sent,
  );
}
