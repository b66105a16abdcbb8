import type { z } from 'zod';
import { isBlock } from '../schema/block.ts';
import { type Finding, findings } from '../schema/wording.ts';
import { gridRows } from './decimal-commas.ts';
import { isAround, withoutGaps } from './gaps.ts';
import { type Judged, mendYaml } from './mend-yaml.ts';
import { judgedBy } from './parse-once.ts';
import { parseYaml, TWICE, type YamlData, type YamlError } from './parse-yaml.ts';
import { plainYaml } from './plain-yaml.ts';
import { type ReadYaml, told, type YamlProblem } from './read-as-is.ts';

/** Slips that are mended in one file; more are left to the next run. */
const MOST_SLIPS = 3;
/** Faults that a text made readable may have: with more of them it is not what was meant. */
const MOST_LEFT = 3;

/**
 * YAML as it was meant: where one line's slip makes it unreadable, or makes its schema refuse much of it, that slip
 * becomes the problem, and the rest is read as if it were mended. Lines stay where they are.
 */
export function readMended(yaml: string, schema: z.ZodType): ReadYaml {
  const problems: YamlProblem[] = [];
  let read: YamlData | { errors: YamlError[] } = plainYaml(yaml) ?? parseYaml(yaml);
  let text = yaml;
  // A second document is no slip of a line.
  while (problems.length < MOST_SLIPS && !/^---(?:\s|$)/m.test(text)) {
    const faults = 'errors' in read ? undefined : faultsOf(read.data, schema);
    if (faults?.length === 0) break;
    const mended = mendYaml(
      {
        text,
        lines: 'errors' in read ? read.errors.map((it) => it.line) : linesOf(read, faults ?? [], text),
        judged: 'errors' in read ? undefined : judged(read.data, faults ?? []),
      },
      (it) => {
        const tried = parseYaml(it);
        return 'errors' in tried ? undefined : judged(tried.data, faultsOf(tried.data, schema));
      },
    );
    if (!mended || ('errors' in read && mended.left > mostLeft(read.errors))) break;
    const wanted = 'errors' in read ? 'YAML that can be read' : 'YAML that says what was meant';
    problems.push({ ...mended.slip, wanted });
    text = mended.text;
    read = parseYaml(text);
  }
  return { ...told(read), problems: [...problems, ...told(read).problems] };
}

/** A field that stands twice is read as no other slip, such as a lost dash, unless that explains all of it. */
function mostLeft(errors: readonly YamlError[]): number {
  return errors.every((it) => it.hint === TWICE) ? 0 : MOST_LEFT;
}

function faultsOf(data: unknown, schema: z.ZodType): Finding[] {
  const { kept, gaps } = withoutGaps(data ?? {}, schema);
  const parsed = isBlock(kept) ? judgedBy(schema, kept) : schema.safeParse(kept);
  const faults = parsed.success ? [] : findings(schema, kept, parsed.error.issues);
  return [...faults.filter((it) => !isAround(it.path, gaps)), ...unevenRows(kept)];
}

/** Rows of a grid that differ in length: the schema takes them, and a line in the wrong place makes them. */
function unevenRows(data: unknown): Finding[] {
  const rows = gridRows(data);
  const first = (path: readonly PropertyKey[]) => rows.find((it) => it.path[1] === path[1])?.row.length;
  return rows
    .filter(({ path, row }) => row.length !== first(path))
    .map(({ path }) => ({ path, field: '', found: 'a row of another length', wanted: 'rows of one length' }));
}

/** Where the faults are, and where a field that is missing stands all the same, as part of another text. */
function linesOf(read: YamlData, faults: readonly Finding[], text: string): number[] {
  const missing = new Set(faults.filter((it) => it.found === 'nothing').map((it) => String(it.path.at(-1))));
  const swallowed = text
    .split('\n')
    .flatMap((line, i) => (missing.has(/^\s*(?:- )?([A-Za-z]+):/.exec(line)?.[1] ?? '') ? [i + 1] : []));
  return [...swallowed, ...faults.map((it) => read.lineOf(it.path)).toSorted((a, b) => a - b)];
}

function judged(data: unknown, faults: readonly Finding[]): Judged {
  return { faults: faults.map((it) => `${it.found}\n${it.wanted}`), values: valuesIn(data) };
}

/** Numbers, texts and the like that data holds, at any depth; empty fields are none. */
function valuesIn(data: unknown): number {
  if (data === null || data === undefined) return 0;
  if (typeof data !== 'object' || data instanceof Date) return 1;
  return Object.values(data).reduce((sum: number, it) => sum + valuesIn(it), 0);
}
