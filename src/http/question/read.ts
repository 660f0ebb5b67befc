import type { z } from 'zod';
import { type FactText, type Fault, notUnderstood } from '../../basics/errors.js';
import type { Fact, Params } from '../../basics/fact.js';
import {
  type FieldCode,
  fieldFact,
  fieldFacts,
  type SentKind,
  type ValueKind,
  type wasValue,
} from '../../basics/field-facts.js';
import { MAX_ROW_FAULTS } from '../../contract/rows.js';

type Path = readonly (string | number)[];
type Issue = z.core.$ZodIssue;

/** Maximum issues put into words; a list of empty rows can have hundreds of thousands. */
const MAX_ISSUES = 20;

/**
 * Parses a caller's input by its schema.
 *
 * @param schema  The expected input.
 * @param sent    The actual input.
 * @param whereOf Locates a fault; by default a path in the body.
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
  const faults = issues.slice(0, MAX_ISSUES).flatMap((issue) => faultsOf(issue, [], sent, whereOf));
  const count = faults.length + Math.max(0, issues.length - MAX_ISSUES);
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
    return issue.keys.map((key) => ({ ...whereOf([...path, key]), detail: fieldFact('field.unknown') }));
  }
  const value = valueAt(sent, path);
  if (issue.code === 'invalid_union') {
    const branch = nearestBranch(issue.errors);
    if (branch) return branch.flatMap((inner) => faultsOf(inner, path, sent, whereOf));
    const detail = ownFact(issue, value) ?? kindFact(issue.errors.flat().map(expectation), value);
    return [{ ...whereOf(path), detail }];
  }
  return [{ ...whereOf(path), detail: detailOf(issue, value) }];
}

/** The shape in a union that the caller meant: the one whose type (text, number, object) fits, with fewest faults. */
function nearestBranch(branches: readonly (readonly Issue[])[]): readonly Issue[] | undefined {
  const ofTheKind = branches.filter(
    (issues) => !issues.some((issue) => issue.code === 'invalid_type' && issue.path.length === 0),
  );
  return [...ofTheKind].sort((a, b) => weight(a) - weight(b))[0];
}

/** Foreign and missing fields say more than other faults that another shape was meant. */
const weight = (issues: readonly Issue[]): number =>
  issues.reduce((sum, { code }) => sum + (code === 'unrecognized_keys' ? 3 : code === 'invalid_type' ? 2 : 1), 0);

function detailOf(issue: Issue, value: unknown): FactText {
  switch (issue.code) {
    case 'invalid_type':
      return ownFact(issue, value) ?? kindFact([expectation(issue)], value);
    case 'too_small':
      return fieldFact('field.at-least', {
        limit: Number(issue.minimum),
        of: measureOf(issue.origin),
        ...sentOf(value),
      });
    case 'too_big':
      return fieldFact('field.at-most', {
        limit: Number(issue.maximum),
        of: measureOf(issue.origin),
        ...sentOf(value),
      });
    case 'invalid_value':
      return fieldFact('field.one-of', {
        values: issue.values.join(', '),
        isSeveral: issue.values.length > 1 ? 'yes' : 'no',
        ...sentOf(value),
      });
    default:
      return ownFact(issue, value) ?? issue.message;
  }
}

/** The schema's own statement about a value: its message is the code of a fact. */
function ownFact(issue: Issue, value: unknown): Fact | undefined {
  const { message: code } = issue;
  if (!isFieldCode(code)) return undefined;
  const params = 'params' in issue ? (issue.params as Params) : {};
  return { code, params: 'wasKind' in fieldFacts[code] ? { ...sentOf(value), ...params } : params };
}

const isFieldCode = (code: string): code is FieldCode => Object.hasOwn(fieldFacts, code);

const measureOf = (origin: string): 'entries' | 'characters' | 'number' =>
  origin === 'array' ? 'entries' : origin === 'string' ? 'characters' : 'number';

const kinds: Readonly<Record<string, ValueKind>> = {
  string: 'text',
  number: 'number',
  int: 'wholeNumber',
  boolean: 'trueOrFalse',
  array: 'list',
  object: 'object',
};

const expectation = (issue: Issue): ValueKind =>
  issue.code === 'invalid_type' ? (kinds[issue.expected] ?? 'something') : 'something';

function kindFact(all: readonly ValueKind[], value: unknown): Fact {
  const [expected = 'something', orExpected = 'nothing'] = new Set(all);
  return fieldFact('field.wrong-kind', { expected, orExpected, ...sentOf(value) });
}

const MAX_SHOWN = 60;

/** A value as faults quote it. */
function sentOf(value: unknown): ReturnType<typeof wasValue> | { was: string; wasKind: SentKind } {
  if (value === undefined) return { was: '', wasKind: 'missing' };
  if (Array.isArray(value)) return { was: String(value.length), wasKind: value.length === 0 ? 'emptyList' : 'list' };
  if (value !== null && typeof value === 'object') return { was: '', wasKind: 'object' };
  if (typeof value === 'number' && !Number.isFinite(value)) return { was: '', wasKind: 'largeNumber' };
  const text = JSON.stringify(value) ?? '';
  return { was: text.length > MAX_SHOWN ? `${text.slice(0, MAX_SHOWN - 3)}...` : text, wasKind: 'value' };
}

function valueAt(sent: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (value, key) =>
      value !== null && typeof value === 'object' ? (value as Record<string | number, unknown>)[key] : undefined,
    sent,
  );
}
