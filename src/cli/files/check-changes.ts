import {
  copyFileSync,
  cpSync,
  linkSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  realpathSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { ContentError } from '../../content/read/problem-list.ts';
import { readContent } from '../../content/read/read-content.ts';
import type { Problem } from '../../content/schema/problem.ts';
import { type Changes, isCopy } from './changes.ts';

/**
 * The problems that content would have after changes, and does not have now: what a command may not write.
 *
 * @param today `YYYY-MM-DD`
 */
export function newProblems(folder: string, changes: Changes, today: string): Problem[] {
  const read = (at: string) => readContent({ folder: at, today, shownAs: folder, drafts: true }).problems;
  const shadow = mkdtempSync(join(tmpdir(), 'panel-ledger-'));
  try {
    lay(resolve(folder), shadow);
    apply(shadow, changes);
    const after = read(shadow);
    if (after.length === 0) return [];
    // Lines move with an edit, and so do places in lists; what is wrong stays the same.
    const known = Map.groupBy(read(folder), keyOf);
    return after.filter((it) => known.get(keyOf(it))?.pop() === undefined);
  } finally {
    rmSync(shadow, { recursive: true });
  }
}

/** @throws ContentError with the problems that changes would bring */
export function refuseProblems(folder: string, changes: Changes, today: string): void {
  const problems = newProblems(folder, changes, today);
  if (problems.length > 0) throw new ContentError(problems);
}

const keyOf = ({ file, field, found, wanted }: Problem) =>
  [file, field.replaceAll(/\[\d+\]/g, '[]'), found, wanted].join('\n');

/** The content folder once more, each file as a link to the real one: photos are large. */
function lay(from: string, to: string): void {
  for (const item of readdirSync(from, { withFileTypes: true })) {
    if (item.name === '.edits') continue;
    const [source, target] = [join(from, item.name), join(to, item.name)];
    if (item.isDirectory()) {
      mkdirSync(target);
      lay(source, target);
    } else if (!link(source, target)) cpSync(source, target, { recursive: true });
  }
}

/** Some systems let nobody make links of the one kind or the other. */
function link(source: string, target: string, makes = [symlinkSync, linkSync, copyFileSync]): boolean {
  for (const make of makes) {
    try {
      make(source, target);
      return true;
    } catch {
      // The next one.
    }
  }
  return false;
}

function apply(folder: string, { moves = [], files }: Changes): void {
  for (const { from, to } of moves) {
    mkdirSync(dirname(join(folder, to)), { recursive: true });
    renameSync(join(folder, from), join(folder, to));
  }
  for (const { path, after } of files) {
    const target = join(folder, path);
    // First the link, or the real file would be written.
    rmSync(target, { force: true });
    if (after === undefined) continue;
    mkdirSync(dirname(target), { recursive: true });
    if (!isCopy(after)) writeFileSync(target, after);
    // No link that leads elsewhere: the check refuses those.
    else if (!link(realpathSync(after.copyOf), target, [linkSync, copyFileSync])) cpSync(after.copyOf, target);
  }
}
