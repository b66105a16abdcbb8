import type { z } from 'zod';
import type { RawCollections } from '../rules/rule.ts';
import { isBlock } from '../schema/block.ts';
import type { Problem } from '../schema/problem.ts';
import { findings } from '../schema/wording.ts';
import type { Entry } from './content.ts';
import { decimalCommas, isEchoOfComma } from './decimal-commas.ts';
import { gapProblems, isEchoOfGap } from './gap-problems.ts';
import { parsedBy } from './parse-once.ts';
import type { Source } from './source.ts';

/** A file held against its schema: its entry, where it fits, and what is wrong with it. */
export interface ParsedSource<T> {
  entry: Entry<T> | undefined;
  problems: readonly Problem[];
}

/** Holds a file against its schema. Touches no disk, and looks at nothing in the body. */
export function parseSource<T>(schema: z.ZodType<T>, id: string, source: Source): ParsedSource<T> {
  const parsed = isBlock(source.data) ? parsedBy(schema, source.data) : schema.safeParse(source.data ?? {});
  if (parsed.success) return { entry: { id, data: parsed.data, source }, problems: [] };
  return { entry: undefined, problems: schemaProblems(schema, source, parsed.error.issues) };
}

/** What a file has wrong by its schema; of one with gaps, what is wrong beside them. */
function schemaProblems(schema: z.ZodType, source: Source, issues: readonly z.core.$ZodIssue[]): Problem[] {
  const { file, unfinished } = source;
  const { data, lineOf } = unfinished ? { data: unfinished.kept, lineOf: unfinished.lineOf } : source;
  const found = unfinished ? (schema.safeParse(data).error?.issues ?? []) : issues;
  return findings(schema, data ?? {}, found)
    .map(({ path, ...finding }) => ({ file, line: lineOf(path), ...finding }))
    .filter((it) => !isEchoOfGap(it, [source]));
}

/** Files in which something is still to be filled in. */
export function unfinishedIn(raw: RawCollections): Source[] {
  return Object.values(raw).flatMap((it) => [...it.values()].filter((source) => source.unfinished));
}

/** What rules have found, without the echoes of gaps, and the gaps that may not be there. */
export function betweenFiles(raw: RawCollections, found: readonly Problem[]): Problem[] {
  const unfinished = unfinishedIn(raw);
  return [...found.filter((it) => !isEchoOfGap(it, unfinished)), ...gapProblems(raw)];
}

/** All problems in the order of files and lines, with the decimal commas, and without what is only their echo. */
export function inOrder(raw: RawCollections, problems: readonly Problem[]): Problem[] {
  const commas = decimalCommas(raw.panels.values());
  return [...problems.filter((it) => !isEchoOfComma(it, commas)), ...commas].sort(byPlace);
}

function byPlace(a: Problem, b: Problem): number {
  return a.file.localeCompare(b.file, 'en') || (a.line ?? 0) - (b.line ?? 0) || a.field.localeCompare(b.field, 'en');
}
