import { globSync } from 'node:fs';
import { sep } from 'node:path';
import { parse } from 'yaml';
import { openContent } from '../../content/edit/content-text.ts';
import type { Edit } from '../../content/edit/edit.ts';
import { editContent } from '../../content/edit/edit-content.ts';
import { UsageError } from '../../content/read/usage-error.ts';
import { isBlock } from '../../content/schema/block.ts';
import { COLLECTIONS, entryId } from '../../content/schema/collections.ts';
import { SLUG } from '../../content/schema/fields.ts';
import { makerSchema } from '../../content/schema/maker.ts';
import { panelSchema } from '../../content/schema/panel.ts';
import { nearest } from '../../content/schema/suggest.ts';
import { type Changes, type FileChange, readText } from '../files/changes.ts';
import { type RenamedBody, renamedBody } from './renamed-links.ts';

/** What can get another name: both are parts of what readers or other files call it by. */
export type Kind = 'panel' | 'maker';

/** A new name, and all that follows from it. */
export interface RenamePlan extends Changes {
  kind: Kind;
  from: string;
  to: string;
  moves: ReadonlyArray<{ from: string; to: string }>;
  /** What changes in a file besides its place, a line each. */
  lines: Array<{ path: string; line: number | undefined; what: string }>;
  /** Links that have to be changed by hand. */
  left: Array<{ path: string; line: number; address: string }>;
}

/** Order of the fields of the two, for what is added. */
const ORDER = { panel: Object.keys(panelSchema.shape), maker: Object.keys(makerSchema.shape) };

/**
 * Works out what another name of a panel or maker changes: the place of its file, the names it had before, and what
 * names it elsewhere.
 *
 * @param folder the content folder
 * @throws UsageError where the name is none, is taken, or nothing has the old one
 */
export function planRename(folder: string, kind: Kind, from: string, to: string): RenamePlan {
  const files = contentTexts(folder);
  const collection = kind === 'panel' ? 'panels' : 'makers';
  const all = new Map(files.filter((it) => it.path.startsWith(`${collection}/`)).map((it) => [entryId(it.path), it]));
  const own = all.get(from);
  if (!own) {
    const near = nearest(from, [...all.keys()]);
    throw new UsageError(`There is no ${kind} "${from}"${near ? `; did you mean ${near}?` : '.'} Nothing was changed.`);
  }
  if (!SLUG.test(to)) {
    throw new UsageError(
      `"${to}" can't be a name: it takes lower-case letters, digits and single hyphens. Nothing was changed.`,
    );
  }
  if (from === to) throw new UsageError(`The ${kind} has that name already. Nothing was changed.`);
  const taken = [...all].find(([id, it]) => id === to || (it !== own && formerly(it).includes(to)));
  if (taken) {
    const how = taken[0] === to ? 'is a name that it has' : 'is a name that it had before, and leads to it';
    throw new UsageError(`${taken[1].path}: "${to}" ${how}. Nothing was changed.`);
  }
  const moved = (path: string) => movedPath(path, kind, from, to);
  const plan: RenamePlan = {
    kind,
    from,
    to,
    moves: [
      kind === 'panel' ? { from: `panels/${from}`, to: `panels/${to}` } : { from: own.path, to: moved(own.path) },
    ],
    files: [],
    lines: [],
    left: [],
  };
  const changes: FileChange[] = files.flatMap(({ path, text }) => {
    let after = text;
    const tell = (line: number | undefined, what: string) => plan.lines.push({ path: moved(path), line, what });
    if (kind === 'panel' && /\.mdx?$/.test(path)) {
      const body: RenamedBody = renamedBody(text, path, { from, to });
      after = body.text;
      for (const it of body.links) tell(it.line, `${it.from} becomes ${it.to}`);
      plan.left.push(...body.left.map(({ line, address }) => ({ path: moved(path), line, address })));
    }
    if (kind === 'maker' && path.startsWith('panels/') && makerOf(text, path) === from) {
      after = editContent(after, path, [{ do: 'set', field: ['maker'], value: to }]);
      tell(undefined, `maker: ${to}`);
    }
    if (path === own.path) {
      after = editContent(after, path, formerEdits(own, kind, from, to));
      tell(undefined, `formerly: ${from}`);
    }
    return after === text ? [] : [{ path: moved(path), before: text, after }];
  });
  return { ...plan, files: changes };
}

interface ContentText {
  path: string;
  text: string;
}

/** Every text of the content folder that may name a panel or a maker. */
function contentTexts(folder: string): ContentText[] {
  return [COLLECTIONS.panels, COLLECTIONS.makers, COLLECTIONS.methods, COLLECTIONS.cautions]
    .flatMap(({ pattern }) => globSync(pattern, { cwd: folder }))
    .map((it) => it.split(sep).join('/'))
    .toSorted()
    .map((path) => ({ path, text: readText(folder, path) }));
}

function movedPath(path: string, kind: Kind, from: string, to: string): string {
  if (kind === 'maker') return path === `makers/${from}.yaml` ? `makers/${to}.yaml` : path;
  return path.startsWith(`panels/${from}/`) ? `panels/${to}/${path.slice(`panels/${from}/`.length)}` : path;
}

/** The name of before goes into the list; the new one, where it stands in it, is no name of before any more. */
function formerEdits(own: ContentText, kind: Kind, from: string, to: string): Edit[] {
  const before = formerly(own);
  const after = [...before.filter((it) => it !== to), from];
  if (before.length === 0) return [{ do: 'add', field: ['formerly'], value: after, order: ORDER[kind] }];
  if (!before.includes(to)) return [{ do: 'insert', list: ['formerly'], item: from }];
  return [{ do: 'set', field: ['formerly', before.indexOf(to)], value: from }];
}

function dataOf({ path, text }: ContentText): unknown {
  try {
    return parse(openContent(text, path).yaml, { logLevel: 'silent' });
  } catch {
    return undefined;
  }
}

function formerly(it: ContentText): string[] {
  const data = dataOf(it);
  const names = isBlock(data) ? data.formerly : undefined;
  return Array.isArray(names) ? names.filter((one) => typeof one === 'string') : [];
}

function makerOf(text: string, path: string): unknown {
  const data = dataOf({ path, text });
  return isBlock(data) ? data.maker : undefined;
}
