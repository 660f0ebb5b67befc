import type { z } from 'zod';
import { type Fault, RequestError } from '../basics/errors.js';

type Path = readonly (string | number)[];
type Issue = z.core.$ZodIssue;

/** More faults than this say nothing new. */
const MOST_FAULTS = 20;

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
  const faults = result.error.issues.flatMap((issue) => faultsOf(issue, [], sent, whereOf));
  throw notUnderstood(faults);
}

/** One error for all that was found wrong; its message tells the first fault in full. */
export function notUnderstood(faults: readonly Fault[]): RequestError {
  const [first] = faults;
  const name = first?.parameter ?? inWords(first?.path ?? []);
  const rest = faults.length > 1 ? ` (${faults.length - 1} more under "errors")` : '';
  const detail = `${name === '' ? 'The request' : name} ${first?.detail ?? 'cannot be used'}.${rest}`;
  return new RequestError('not-understood', detail, faults.slice(0, MOST_FAULTS));
}

/** A path as a person would write it: `temperatures[0].daily[2].max`. */
const inWords = (path: Path): string =>
  path.map((key, i) => (typeof key === 'number' ? `[${key}]` : `${i > 0 ? '.' : ''}${key}`)).join('');

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

/** Unknown and missing fields say more than others that another shape was meant. */
const weight = (issues: readonly Issue[]): number =>
  issues.reduce((sum, issue) => sum + (issue.path.length === 0 || issue.code === 'invalid_type' ? 2 : 1), 0);

function detailOf(issue: Issue, value: unknown): string {
  switch (issue.code) {
    case 'invalid_type':
      return kindFault(value, [expectation(issue)]);
    case 'too_small':
      return issue.origin === 'array' || issue.origin === 'string'
        ? `must have at least ${issue.minimum}${issue.origin === 'array' ? ' entries' : ' characters'}`
        : `must be at least ${issue.minimum}; it was ${shown(value)}`;
    case 'too_big':
      return issue.origin === 'array' || issue.origin === 'string'
        ? `must have at most ${issue.maximum}${issue.origin === 'array' ? ' entries' : ' characters'}`
        : `must be at most ${issue.maximum}; it was ${shown(value)}`;
    case 'invalid_value':
      return `must be ${issue.values.length > 1 ? 'one of ' : ''}${issue.values.join(', ')}; it was ${shown(value)}`;
    default:
      return issue.code === 'custom' ? issue.message : `${issue.message}; it was ${shown(value)}`;
  }
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
