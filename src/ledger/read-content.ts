import { existsSync, globSync } from 'node:fs';
import { join, sep } from 'node:path';
import { mdxToJs } from 'satteri';
import type { z } from 'zod';
import type { Problem } from '../schema/problem.ts';
import { findings } from '../schema/wording.ts';
import { COLLECTIONS, type CollectionName, entryId } from './collections.ts';
import type { Content, Entry } from './content.ts';
import { contentRules } from './content-rules.ts';
import { readFrontMatter, readYaml, type Source } from './read-source.ts';
import { strayFiles } from './stray-files.ts';

/** Where to read, and the day that counts as today (`YYYY-MM-DD`): no date may lie after it. */
export interface ReadOptions {
  /** The content folder. */
  folder: string;
  today: string;
  /** How messages name the folder. */
  shownAs?: string;
}

/** Content without problems, or every problem of every file, in the order of files and lines. */
export type ReadResult = { content: Content; problems: [] } | { content: undefined; problems: Problem[] };

/**
 * Reads and checks the whole content folder: bytes, YAML, schemas, and what files say of one another. All
 * problems of all files are collected; content comes back only when there are none.
 */
export function readContent({ folder, today, shownAs = 'content' }: ReadOptions): ReadResult {
  const problems: Problem[] = [];
  if (!existsSync(folder)) {
    return {
      content: undefined,
      problems: [
        { file: shownAs, field: '', found: 'no such folder', wanted: 'the content folder with guide.yaml in it' },
      ],
    };
  }

  const read = <Name extends CollectionName>(
    name: Name,
  ): Map<string, Entry<z.output<(typeof COLLECTIONS)[Name]['schema']>>> =>
    readCollection(name, folder, shownAs, problems) as never;
  const collections = {
    guide: read('guide'),
    instruments: read('instruments'),
    makers: read('makers'),
    panels: read('panels'),
    methods: read('methods'),
    cautions: read('cautions'),
  };
  problems.push(
    ...strayFiles(folder, shownAs),
    ...contentRules(collections, { today, shownAs, unread: unreadIds(problems) }),
  );

  const guide = collections.guide.get('guide');
  const cautions = collections.cautions.get('cautions');
  if (problems.length > 0 || !guide || !cautions) {
    return { content: undefined, problems: problems.sort(byPlace) };
  }
  return { content: { ...collections, guide, cautions }, problems: [] };
}

function readCollection(
  name: CollectionName,
  folder: string,
  shownAs: string,
  problems: Problem[],
): Map<string, Entry<unknown>> {
  const { pattern, schema } = COLLECTIONS[name];
  const entries = new Map<string, Entry<unknown>>();
  const paths = globSync(pattern, { cwd: folder })
    .map((path) => path.split(sep).join('/'))
    .toSorted();
  for (const path of paths) {
    const file = `${shownAs}/${path}`;
    const id = entryId(path);
    const twin = [...entries.values()].find((it) => it.id === id);
    if (twin) {
      problems.push({
        file,
        field: '',
        found: `the name "${id}", which ${twin.source.file} has too`,
        wanted: 'one file for each name',
        hint: 'merge the two, or rename one',
      });
      continue;
    }
    const result = path.endsWith('.yaml')
      ? readYaml(join(folder, path), file)
      : readFrontMatter(join(folder, path), file);
    if ('problems' in result) {
      problems.push(...result.problems);
      continue;
    }
    const { source } = result;
    problems.push(...mdxProblems(source));
    const parsed = (schema as z.ZodType).safeParse(source.data ?? {});
    if (parsed.success) {
      entries.set(id, { id, data: parsed.data, source });
      continue;
    }
    for (const { path: at, ...finding } of findings(schema, source.data ?? {}, parsed.error.issues)) {
      problems.push({ file, line: source.lineOf(at), ...finding });
    }
  }
  return entries;
}

/** An MDX body that does not compile, found by the compiler that renders it. */
function mdxProblems(source: Source): Problem[] {
  if (!source.file.endsWith('.mdx')) return [];
  try {
    mdxToJs(source.body);
    return [];
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    const place = /^(\d+):\d+: /.exec(message);
    return [
      {
        file: source.file,
        line: source.bodyLine + Number(place?.[1] ?? 1) - 1,
        field: '',
        found: message.slice(place?.[0].length ?? 0),
        wanted: 'a body that MDX can read',
        hint: 'write &lt; and &#123; for a plain < and {',
      },
    ];
  }
}

/** Names of files that could not be used: a reference to one is not a second problem. */
function unreadIds(problems: readonly Problem[]): Set<string> {
  return new Set(problems.map((problem) => problem.file));
}

function byPlace(a: Problem, b: Problem): number {
  return a.file.localeCompare(b.file, 'en') || (a.line ?? 0) - (b.line ?? 0) || a.field.localeCompare(b.field, 'en');
}
