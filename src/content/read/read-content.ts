import { existsSync, globSync } from 'node:fs';
import { dirname, join, sep } from 'node:path';
import { mdxToJs } from 'satteri';
import type { z } from 'zod';
import { contentProblems } from '../rules/index.ts';
import { COLLECTIONS, type CollectionName, entryId } from '../schema/collections.ts';
import { type MethodProse, methodSchema } from '../schema/method.ts';
import type { Problem } from '../schema/problem.ts';
import type { Content, Entry } from './content.ts';
import { readBenchFiles } from './files/bench-files.ts';
import { KEEP_NOTHING, type KeptFiles } from './kept-files.ts';
import { panelPhotos } from './listed-photos.ts';
import { otherGuides } from './others/other-guides.ts';
import { betweenFiles, inOrder, parseSource, unfinishedIn } from './parse-source.ts';
import { perSource } from './per-source.ts';
import { productTexts, type TextCollection, textName } from './product-texts.ts';
import { readFrontMatter, readYaml } from './read-source.ts';
import type { Source } from './source.ts';
import { strayFiles } from './stray-files.ts';

/** Where to read, and the day that counts as today (`YYYY-MM-DD`): no date may lie after it. */
export interface ReadOptions {
  /** The content folder. */
  folder: string;
  today: string;
  /** How messages name the folder. */
  shownAs?: string;
  /** Drafts have pages, as on the development server: they can be linked to. */
  drafts?: boolean;
  /** What is known from the last time that the folder was read. */
  kept?: KeptFiles;
}

/** Content without problems, or every problem of every file, in the order of files and lines. */
export type ReadResult = { content: Content; problems: [] } | { content: undefined; problems: Problem[] };

/**
 * Reads and checks the whole content folder: bytes, YAML, schemas, and what files say of one another. All
 * problems of all files are collected; content comes back only when there are none.
 */
export function readContent({
  folder,
  today,
  shownAs = 'content',
  drafts = false,
  kept = KEEP_NOTHING,
}: ReadOptions): ReadResult {
  const problems: Problem[] = [];
  if (!existsSync(folder)) {
    return {
      content: undefined,
      problems: [
        { file: shownAs, field: '', found: 'no such folder', wanted: 'the content folder with guide.yaml in it' },
      ],
    };
  }

  const unread = new Set<string>();
  const sources = (name: CollectionName) => readSources(name, { folder, shownAs, problems, unread, kept });
  const raw = {
    guide: sources('guide'),
    instruments: sources('instruments'),
    standards: sources('standards'),
    makers: sources('makers'),
    panels: sources('panels'),
    methods: withProducts('methods', sources('methods'), { shownAs, problems, unread }),
    corrections: sources('corrections'),
    cautions: withProducts('cautions', sources('cautions'), { shownAs, problems, unread }),
  };
  problems.push(...strayFiles(folder, shownAs));
  problems.push(...betweenFiles(raw, contentProblems(raw, { today, folder, shownAs, unread, drafts })));

  const collections = {
    guide: parseSources(COLLECTIONS.guide.schema, raw.guide, { problems, kept }),
    instruments: parseSources(COLLECTIONS.instruments.schema, raw.instruments, { problems, kept }),
    standards: parseSources(COLLECTIONS.standards.schema, raw.standards, { problems, kept }),
    makers: parseSources(COLLECTIONS.makers.schema, raw.makers, { problems, kept }),
    panels: parseSources(COLLECTIONS.panels.schema, raw.panels, { problems, kept }),
    methods: withHistories(parseSources(COLLECTIONS.methods.schema, raw.methods, { problems, kept })),
    corrections: parseSources(COLLECTIONS.corrections.schema, raw.corrections, { problems, kept }),
    cautions: parseSources(COLLECTIONS.cautions.schema, raw.cautions, { problems, kept }),
  };

  const benchFiles = new Map(
    [...raw.panels].map(([id, source]) => {
      const { files, problems: found } = readBenchFiles(source);
      problems.push(...found);
      return [id, files] as const;
    }),
  );

  const guide = collections.guide.get('guide');
  const cautions = collections.cautions.get('cautions');
  const all = inOrder(raw, problems);
  if (all.length > 0 || !guide || !cautions) return { content: undefined, problems: all };
  const photos = new Map(
    [...collections.panels].map(([id, { source }]) => {
      return [id, panelPhotos(source, dirname(source.path))] as const;
    }),
  );
  const others = otherGuides(folder, guide.data.agreement);
  const corrections = collections.corrections.get('corrections');
  const unfinished = unfinishedIn(raw);
  return {
    content: { ...collections, guide, cautions, corrections, photos, benchFiles, others, unfinished },
    problems: [],
  };
}

/** What a reading collects, and what it has from the one before. */
interface Reading {
  problems: Problem[];
  kept: KeptFiles;
}

/** Every file of a collection that can be read as YAML, by name; what can't be read becomes a problem. */
function readSources(
  name: CollectionName,
  { folder, shownAs, problems, unread, kept }: Reading & { folder: string; shownAs: string; unread: Set<string> },
): Map<string, Source> {
  const sources = new Map<string, Source>();
  const paths = globSync(COLLECTIONS[name].pattern, { cwd: folder })
    .map((path) => path.split(sep).join('/'))
    .toSorted();
  const files = new Map<string, string>();
  for (const path of paths) {
    const file = `${shownAs}/${path}`;
    const id = entryId(path);
    const twin = files.get(id);
    if (twin) {
      problems.push({
        file,
        field: '',
        found: `the name "${id}", which ${twin} has too`,
        wanted: 'one file for each name',
        hint: 'merge the two, or rename one',
      });
    }
    files.set(id, file);
    const read = path.endsWith('.yaml') ? readYaml : readFrontMatter;
    const place = join(folder, path);
    const result = kept.source(place, file, () => read(place, file, COLLECTIONS[name].schema));
    if (result.source) sources.set(twin ? `${id} (${path})` : id, result.source);
    else unread.add(file);
    problems.push(...result.problems);
  }
  return sources;
}

/** Adds the product's texts, but those whose place a file of the tester's takes, be it one that can't be read. */
function withProducts(
  name: TextCollection,
  own: ReadonlyMap<string, Source>,
  { shownAs, problems, unread }: { shownAs: string; problems: Problem[]; unread: ReadonlySet<string> },
): Map<string, Source> {
  const all = new Map(own);
  for (const [id, read] of productTexts(name)) {
    if (all.has(id) || unread.has(`${shownAs}/${textName(name, id)}`)) continue;
    if (read.source) all.set(id, read.source);
    problems.push(...read.problems);
  }
  return all;
}

/** A page of the tester's own that tells no history has the product's. */
function withHistories(methods: Map<string, Entry<MethodProse>>): Map<string, Entry<MethodProse>> {
  for (const [id, { data }] of methods) {
    if (data.versions.length > 0) continue;
    const products = methodSchema.safeParse(productTexts('methods').get(id)?.source?.data);
    if (products.success) data.versions = products.data.versions;
  }
  return methods;
}

/** Holds every file of a collection against its schema. */
function parseSources<T>(
  schema: z.ZodType<T>,
  sources: ReadonlyMap<string, Source>,
  { problems, kept }: Reading,
): Map<string, Entry<T>> {
  const entries = new Map<string, Entry<T>>();
  for (const [id, source] of sources) {
    const parsed = kept.parsed(id, source, () => {
      const { entry, problems: own } = parseSource(schema, id, source);
      return { entry, problems: [...mdxProblems(source), ...own] };
    });
    problems.push(...parsed.problems);
    if (parsed.entry) entries.set(id, parsed.entry);
  }
  return entries;
}

/** An MDX body that does not compile, found by the compiler that renders it. */
const mdxProblems = perSource((source): Problem[] => {
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
        // The compiler counts lines from the body's first; the problem's own line counts from the file's.
        found: message.slice(place?.[0].length ?? 0).replace(/ \(\d+:\d+\)/g, ''),
        wanted: 'a body that MDX can read',
        hint: 'write &lt; and &#123; for a plain < and {',
      },
    ];
  }
});
