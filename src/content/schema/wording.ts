import type { z } from 'zod';
import { isBlock, ownField, valueAt } from './block.ts';
import { dateHint } from './date-hint.ts';
import { blocksWith, isOptionalAt, keysAt, meaningAt } from './inspect.ts';
import { bareNumberHint, isPlaceholder } from './number-words.ts';
import { fieldPath, type Problem, shown } from './problem.ts';
import { NO_LONGER_READ, REPLACED } from './replaced.ts';
import { nearest } from './suggest.ts';
import { synonymOf } from './synonyms.ts';

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
  const all = issues
    .filter((it) => it.code === 'invalid_type' || !wrongKind.has(fieldPath(it.path)))
    .filter((it) => it.path.length !== 1 || !replaced.has(String(it.path[0])))
    .flatMap((issue) => findingsOf(schema, data, issue, issue.path))
    .map((finding) => withPlaceholderHint(schema, data, finding));
  return once(all);
}

/**
 * Of entries of one list that are all of the same wrong kind, the first: a list's name that is missing above them puts
 * them into the list before.
 */
function once(all: readonly Finding[]): Finding[] {
  const alike = Map.groupBy(all, (it) =>
    isEntryOfWrongKind(it) ? `${fieldPath(it.path.slice(0, -1))}\n${it.wanted}` : it,
  );
  return [...alike.values()].flatMap((group) => {
    const [first, ...more] = group;
    if (!first || more.length < 2) return group;
    const hint = `${more.length} more entries of this list are so too: is the name of another list missing above them?`;
    return [{ ...first, hint }];
  });
}

function isEntryOfWrongKind({ path, found }: Finding): boolean {
  return typeof path.at(-1) === 'number' && found === 'a block of fields';
}

/** "n/a" and its like say that nothing was read, which is said by leaving the field out. */
function withPlaceholderHint(schema: z.ZodType, data: unknown, finding: Finding): Finding {
  if (!isPlaceholder(valueAt(data, finding.path)) || finding.found.startsWith('an unknown field')) return finding;
  const isOptional = isOptionalAt(schema, finding.path);
  const hint = isOptional
    ? 'leave the field out: what was not read is left out'
    : 'this field is needed; where its block can do without, leave the whole block out';
  return { ...finding, hint };
}

function findingsOf(schema: z.ZodType, data: unknown, issue: Issue, path: readonly PropertyKey[]): Finding[] {
  const value = valueAt(data, path);
  const at = { path: [...path], field: fieldPath(path), found: shown(value) };
  const meaning = meaningAt(schema, path);

  switch (issue.code) {
    case 'unrecognized_keys': {
      const known = keysAt(schema, path);
      const [first = '', ...more] = issue.keys;
      const [block] = more.length > 1 ? blocksWith(schema, issue.keys) : [];
      // A lost line, not as many slips as it has fields.
      if (block) {
        return [
          {
            path: [...path, first],
            field: fieldPath([...path, first]),
            found: `fields that belong to another block: ${issue.keys.join(', ')}`,
            wanted: `one of: ${known.join(', ')}`,
            hint: `is the line "${block}:" missing above them, or do they start too far to the right or left?`,
          },
        ];
      }
      return issue.keys.map((key) => {
        const replacement = path.length === 0 ? ownField(REPLACED.get(schema), key) : undefined;
        if (replacement) {
          const { by, hint } = replacement;
          return {
            path: [...path, key],
            field: key,
            found: `"${key}", ${NO_LONGER_READ}`,
            wanted: withMeaning(by, meaningAt(schema, [by])),
            hint,
          };
        }
        return {
          path: [...path, key],
          field: fieldPath([...path, key]),
          found: `an unknown field, "${key}"`,
          wanted: `one of: ${known.join(', ')}`,
          ...hinted(unknownKeyHint(key, known)),
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
      const wanted = isOwnMessage(issue) ? issue.message : kindWanted(schema, path, issue.expected);
      return [{ ...at, wanted: withMeaning(wanted, meaning), ...hinted(kindHint(issue.expected, value)) }];
    }
    case 'too_small':
    case 'too_big':
      return [{ ...at, wanted: withMeaning(sizeWanted(issue), meaning) }];
    case 'custom': {
      // What our own checks say of it (IssueParams).
      const said = (key: string) => (typeof issue.params?.[key] === 'string' ? issue.params[key] : undefined);
      const wanted = withMeaning(said('wanted') ?? issue.message, meaning);
      return [{ ...at, found: said('found') ?? at.found, wanted, ...hinted(said('hint')) }];
    }
    case 'invalid_format':
      return [
        {
          ...at,
          wanted: withMeaning(issue.message, meaning),
          ...hinted(issue.format === 'date' ? dateHint(value) : undefined),
        },
      ];
    default:
      return [{ ...at, wanted: withMeaning(issue.message, meaning) }];
  }
}

function hinted(hint: string | undefined): { hint?: string } {
  return hint ? { hint } : {};
}

/** A kind of value in words; a block names its fields. */
function kindWanted(schema: z.ZodType, path: readonly PropertyKey[], expected: string): string {
  const kind = KINDS[expected] ?? expected;
  const known = expected === 'object' ? keysAt(schema, path) : [];
  return known.length > 0 ? `${kind}: ${known.join(', ')}` : kind;
}

/** The likely slip where a value is of another kind than the one wanted. */
function kindHint(expected: string, value: unknown): string | undefined {
  if (expected === 'number' || expected === 'int') return typeof value === 'string' ? bareNumberHint(value) : undefined;
  if (expected === 'array' && isBlock(value)) return 'start each entry of the list with a dash and a space';
  if (expected === 'object' && Array.isArray(value)) return 'one block is wanted here, without dashes';
  if (expected === 'boolean' && typeof value === 'string') {
    if (/^(?:yes|y|on)$/i.test(value)) return 'write true';
    if (/^(?:no|n|off)$/i.test(value)) return 'write false';
  }
  return undefined;
}

function unknownKeyHint(key: string, known: readonly string[]): string | undefined {
  // `{ red: 28,4 }` is a field "red" and a field "4".
  if (/^\d+$/.test(key)) return 'a comma ends a field: write decimals after a point, and thousands without a separator';
  if (/[“”„‘’«»]/.test(key)) return `curly quotes do not hold a text together: write straight ones, "…"`;
  const meant = synonymOf(key, known) ?? nearest(key, known);
  return meant && `did you mean "${meant}"?`;
}

/** Of a union's alternatives, the one that the writer most likely meant: it fails deepest, with the fewest issues. */
function unionFindings(
  schema: z.ZodType,
  data: unknown,
  issue: Extract<Issue, { code: 'invalid_union' }>,
  path: readonly PropertyKey[],
): Finding[] {
  const value = valueAt(data, path);
  const branches = issue.errors;
  const choices = branches.flatMap(([only, ...more]) =>
    only?.code === 'invalid_value' && only.path.length === 0 && more.length === 0 ? [only] : [],
  );
  // Alternatives that are single values are one choice.
  if (choices.length === branches.length && choices[0]) {
    const values = choices.flatMap((it) => it.values);
    return findingsOf(schema, data, { ...choices[0], values }, path);
  }
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
  return issue.code === 'invalid_union' && issue.errors.every((issues) => issues.some(isOfAnotherKind));
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
