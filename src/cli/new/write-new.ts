import { join } from 'node:path';
import { z } from 'zod';
import { isAround, withoutGaps } from '../../content/read/gaps.ts';
import { parseYaml } from '../../content/read/parse-yaml.ts';
import { counted } from '../../content/read/problem-list.ts';
import { UsageError } from '../../content/read/usage-error.ts';
import { notAhead } from '../../content/rules/days-not-ahead.ts';
import { isBlock, valueAt } from '../../content/schema/block.ts';
import { fieldPath, shown } from '../../content/schema/problem.ts';
import { type Finding, findings } from '../../content/schema/wording.ts';
import { contentFolder } from '../../ledger/load-ledger.ts';
import { todayFrom } from '../../ledger/today.ts';
import { writeNewFile } from '../files/write-new.ts';

export interface WriteFlags {
  print?: boolean;
  json?: boolean;
}

type Said = readonly [about: string, text: string];

/** A file that is to be written. */
export interface NewFile {
  /** Below the content folder. */
  path: string;
  text: string;
  /** What the tester gave for it, in the shape of the file. */
  given: Readonly<Record<string, unknown>>;
  schema: z.ZodType;
  /** What the tester is told of it, line by line. */
  said: ReadonlyArray<Said>;
  /** What to do once it is filled in. */
  next?: ReadonlyArray<Said>;
}

/**
 * Looks at a new file as the checker will, and writes it where nothing is yet, or prints it.
 *
 * @throws UsageError with all that is wrong with what was given; then nothing is written
 */
export function writeNew({ path, text, given, schema, said, next = [] }: NewFile, { print, json }: WriteFlags): void {
  const gaps = gapsOf(text, given, schema);
  if (print) {
    process.stdout.write(text);
    return;
  }
  const file = join(contentFolder(), path);
  writeNewFile(file, text);
  if (json) {
    console.log(
      JSON.stringify({ file, gaps: gaps.map(({ path: at, line }) => ({ field: fieldPath(at), line })) }, null, 2),
    );
    return;
  }
  console.log(`Wrote ${file}`);
  const lines = new Set(gaps.map((it) => it.line)).size;
  const todo = `${counted(gaps.length, 'value')} in ${counted(lines, 'line')}, marked TODO; check lists them`;
  for (const [about, what] of [...said, ['to fill in', gaps.length > 0 ? todo : 'nothing'] as const, ...next]) {
    console.log(wrapped(`  ${about.padEnd(13)}`, what));
  }
}

/** What a new text leaves open, with the lines of the file. */
function gapsOf(
  text: string,
  given: NewFile['given'],
  schema: z.ZodType,
): Array<{ path: readonly PropertyKey[]; line: number }> {
  const [, front] = /^---\n([\s\S]*?)\n---\n/.exec(text) ?? [];
  const read = parseYaml(front ?? text);
  if ('errors' in read) throw new Error(`a new file that can’t be read: ${read.errors[0]?.hint}`);
  const { kept, gaps } = withoutGaps(read.data, schema);
  const inText = faults(schema, kept).filter((it) => !isAround(it.path, gaps));
  // A field that there is not, or a value where a block belongs, never came into the text.
  const inGiven = faults(schema, given).filter((it) => isLost(valueAt(given, it.path), valueAt(read.data, it.path)));
  const ahead = daysAhead(kept, todayFrom(process.env, new Date()));
  const wrong = [...new Map([...inText, ...inGiven, ...ahead].map((it) => [it.field, it])).values()];
  if (wrong.length > 0) throw new UsageError(`${wrong.map(wrongText).join('\n\n')}\n\nNothing was written.`);
  const before = front === undefined ? 0 : 1;
  return gaps.map((path) => ({ path, line: read.lineOf(path) + before }));
}

/** Days that are still to come, of which no field takes one (`rules/days-not-ahead.ts`). */
function daysAhead(data: unknown, today: string, path: PropertyKey[] = []): Finding[] {
  if (Array.isArray(data)) return data.flatMap((it, i) => daysAhead(it, today, [...path, i]));
  if (isBlock(data)) return Object.entries(data).flatMap(([key, it]) => daysAhead(it, today, [...path, key]));
  if (!z.iso.date().safeParse(data).success || String(data) <= today) return [];
  const field = fieldPath(path);
  return [{ path, field, found: shown(data), wanted: notAhead(today) }];
}

/** True where something was given that the text has not. */
const isLost = (given: unknown, there: unknown) =>
  given !== undefined && (there === undefined || (typeof given !== 'object' && given !== there));

function faults(schema: z.ZodType, data: unknown): Finding[] {
  const parsed = schema.safeParse(data);
  return parsed.success ? [] : findings(schema, data, parsed.error.issues);
}

const wrongText = ({ field, found, wanted, hint }: Finding) =>
  [field, `  found   ${found}`, `  wanted  ${wanted}`, ...(hint ? [`  hint    ${hint}`] : [])].join('\n');

/** A line of at most 80 letters, and its rest below, set in. */
function wrapped(head: string, text: string): string {
  const lines = [head];
  for (const word of text.split(' ')) {
    const line = lines.at(-1) ?? '';
    const joined = line === head || line.trim() === '' ? line + word : `${line} ${word}`;
    if (joined.length <= 80 || line.trim() === '') lines[lines.length - 1] = joined;
    else lines.push(' '.repeat(head.length) + word);
  }
  return lines.join('\n');
}
