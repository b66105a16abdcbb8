import type { z } from 'zod';
import { keysAt, meaningAt } from './inspect.ts';
import { fieldPath, type Problem, shown } from './problem.ts';
import { REPLACED } from './replaced.ts';
import { nearest } from './suggest.ts';

type Issue = z.core.$ZodIssue;
/** A problem before its file and line are known. */
export interface Finding extends Omit<Problem, 'file' | 'line' | 'field'> {
  path: PropertyKey[];
  field: string;
}

const KINDS: Record<string, string> = {
  string: 'a text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  object: 'a block of fields',
  array: 'a list',
  date: 'a day as YYYY-MM-DD',
};

/**
 * All issues of one file in the tester's words: what was found, what is wanted, and the likely slip.
 *
 * @param schema that the data was parsed with
 * @param data as the file has it
 */
export function findings(schema: z.ZodType, data: unknown, issues: readonly Issue[]): Finding[] {
  // Where a field is of the wrong kind, what else is wrong with it is an echo of that.
  const wrongKind = new Set(issues.filter((it) => it.code === 'invalid_type').map((it) => fieldPath(it.path)));
  // Where a former field stands in a field's place, that it is missing is an echo too.
  const replaced = new Set(
    Object.entries(REPLACED.get(schema) ?? {}).flatMap(([former, { by }]) =>
      valueAt(data, [by]) === undefined && valueAt(data, [former]) !== undefined ? [by] : [],
    ),
  );
  return issues
    .filter((it) => it.code === 'invalid_type' || !wrongKind.has(fieldPath(it.path)))
    .filter((it) => it.path.length !== 1 || !replaced.has(String(it.path[0])))
    .flatMap((issue) => findingsOf(schema, data, issue, issue.path));
}

function findingsOf(schema: z.ZodType, data: unknown, issue: Issue, path: readonly PropertyKey[]): Finding[] {
  const value = valueAt(data, path);
  const at = { path: [...path], field: fieldPath(path), found: shown(value) };
  const meaning = meaningAt(schema, path);

  switch (issue.code) {
    case 'unrecognized_keys': {
      const known = keysAt(schema, path);
      return issue.keys.map((key) => {
        const replacement = path.length === 0 ? ownOf(REPLACED.get(schema), key) : undefined;
        if (replacement) {
          const { by, hint } = replacement;
          return {
            path: [...path, key],
            field: key,
            found: `"${key}", which is no longer read`,
            wanted: withMeaning(by, meaningAt(schema, [by])),
            hint,
          };
        }
        const near = nearest(key, known);
        return {
          path: [...path, key],
          field: fieldPath([...path, key]),
          found: `an unknown field, "${key}"`,
          wanted: `one of: ${known.join(', ')}`,
          ...(near && { hint: `did you mean "${near}"?` }),
        };
      });
    }
    case 'invalid_union':
      return unionFindings(schema, data, issue, path);
    case 'invalid_value': {
      const values = issue.values.map(String);
      const near = typeof value === 'string' ? nearest(value, values) : undefined;
      return [{ ...at, wanted: `one of: ${values.join(', ')}`, ...(near && { hint: `did you mean "${near}"?` }) }];
    }
    case 'invalid_type': {
      const wanted = isOwnMessage(issue) ? issue.message : (KINDS[issue.expected] ?? issue.expected);
      return [{ ...at, wanted: withMeaning(wanted, meaning) }];
    }
    case 'too_small':
    case 'too_big':
      return [{ ...at, wanted: withMeaning(sizeWanted(issue), meaning) }];
    case 'custom': {
      const params = (issue.params ?? {}) as { wanted?: string; hint?: string; found?: string };
      return [
        {
          ...at,
          ...(params.found && { found: params.found }),
          wanted: withMeaning(params.wanted ?? issue.message, meaning),
          ...(params.hint && { hint: params.hint }),
        },
      ];
    }
    default:
      return [{ ...at, wanted: withMeaning(issue.message, meaning) }];
  }
}

/** Of a union's alternatives, the one that the writer most likely meant: it fails deepest, with the fewest issues. */
function unionFindings(
  schema: z.ZodType,
  data: unknown,
  issue: Extract<Issue, { code: 'invalid_union' }>,
  path: readonly PropertyKey[],
): Finding[] {
  const value = valueAt(data, path);
  const branches = issue.errors as Issue[][];
  const fitting = branches.filter((issues) => !issues.some(isOfAnotherKind));
  const [best] = fitting.toSorted((a, b) => a.length - b.length);
  if (best) return best.flatMap((it) => findingsOf(schema, data, it, [...path, ...it.path]));
  const meaning = meaningAt(schema, path);
  const wanted = isOwnMessage(issue)
    ? issue.message
    : [
        ...new Set(branches.flat().map((it) => ('expected' in it ? (KINDS[it.expected] ?? it.expected) : it.message))),
      ].join(', or ');
  return [{ path: [...path], field: fieldPath(path), found: shown(value), wanted: withMeaning(wanted, meaning) }];
}

/** True where a value is of another kind altogether: a list for a number, a number for a block. */
function isOfAnotherKind(issue: Issue): boolean {
  if (issue.path.length > 0) return false;
  if (issue.code === 'invalid_type') return true;
  return issue.code === 'invalid_union' && (issue.errors as Issue[][]).every((issues) => issues.some(isOfAnotherKind));
}

/** zod's own sentences start with "Invalid" or "Too"; ours say what is wanted. */
function isOwnMessage(issue: Issue): boolean {
  return !/^(Invalid|Too|Unrecognized|Expected)/.test(issue.message);
}

function sizeWanted(issue: Extract<Issue, { code: 'too_small' | 'too_big' }>): string {
  const small = issue.code === 'too_small';
  const limit = small ? issue.minimum : issue.maximum;
  if (issue.origin === 'array') return `a list of at ${small ? 'least' : 'most'} ${limit}`;
  if (issue.origin === 'string')
    return small && limit === 1
      ? 'a text that is not empty'
      : `a text of at ${small ? 'least' : 'most'} ${limit} characters`;
  if (issue.inclusive === false) return `a number ${small ? 'above' : 'below'} ${limit}`;
  return `a number of at ${small ? 'least' : 'most'} ${limit}`;
}

function withMeaning(wanted: string, meaning: string | undefined): string {
  return meaning ? `${wanted} (${meaning.replace(/\.$/, '')})` : wanted;
}

/** A block's own field; what every object inherits ("constructor") is none. */
function ownOf<T>(block: Readonly<Record<string, T>> | undefined, key: string): T | undefined {
  return block && Object.hasOwn(block, key) ? block[key] : undefined;
}

function valueAt(data: unknown, path: readonly PropertyKey[]): unknown {
  let here = data;
  for (const key of path) {
    if (here === null || typeof here !== 'object' || !Object.hasOwn(here, key)) return undefined;
    here = (here as Record<PropertyKey, unknown>)[key];
  }
  return here;
}
