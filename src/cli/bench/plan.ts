import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { parse } from 'yaml';
import { fileHash } from '../../content/read/files/file-hash.ts';
import { UsageError } from '../../content/read/usage-error.ts';
import { sessionsIn } from '../../content/templates/add-session.ts';
import { type Conflict, mergeRuns, type Take } from '../../site/bench/browser/merge-runs.ts';
import { importRun, PadFileError } from '../../site/bench/browser/pad-file.ts';
import { type Run, type RunLog, runOf } from '../../site/bench/browser/run.ts';
import { contentFile, type FileSetup, mergedFile } from '../../site/bench/browser/run-file.ts';
import { runFromFile } from '../../site/bench/browser/run-from-file.ts';
import { type FileChange, readText } from '../files/changes.ts';
import { type PanelFile, panelFiles } from '../files/panel-files.ts';

/** What a pad's file does to a content folder. */
export interface BenchPlan {
  run: Run;
  /** The panel's file. */
  path: string;
  /** Where the folder has a session of that day, what the two say differently. */
  conflicts: readonly Conflict[];
  /** A session of that day was there. */
  isMerged: boolean;
  /** Empty where all of it is there already. */
  files: readonly FileChange[];
}

/**
 * Works out what a pad's file does to a content folder: a new panel, a session more, or one that is put together with that
 * of its day.
 *
 * @param pad the pad's file; its photos lie beside it
 * @throws UsageError where it is none, or lacks a photo
 */
export function planBench(folder: string, pad: string, take: Take): BenchPlan {
  const theirs = runOf(padLog(pad));
  const { slug } = theirs.panel;
  const panel = panelFiles(folder).find((it) => it.slug === slug);
  const setup = setupOf(folder, panel);
  const path = panel?.path ?? `panels/${slug}/index.md`;
  const mine = panel && ownRun(panel, theirs);
  const merged = mine && mergeRuns(mine, theirs, take);
  const run = merged?.run ?? { ...theirs, panel: { ...theirs.panel, isNew: !panel } };
  const after = merged && panel ? mergedFile(run, setup, panel.text) : contentFile(run, setup, panel?.text);
  // Laid out anew, the session that is there shows whether another one says anything else.
  const isSame = mine !== undefined && panel !== undefined && after === mergedFile(mine, setup, panel.text);
  return {
    run,
    path,
    conflicts: merged?.conflicts ?? [],
    isMerged: mine !== undefined,
    files: isSame ? [] : [{ path, before: panel?.text, after }, ...photosOf(run, dirname(path), folder, dirname(pad))],
  };
}

function padLog(pad: string): RunLog {
  let text: string;
  try {
    text = readFileSync(pad, 'utf8');
  } catch {
    throw new UsageError(`${pad} can’t be read; wanted a file that the bench pad has saved. Nothing was written.`);
  }
  try {
    return importRun(text);
  } catch (error) {
    if (!(error instanceof PadFileError)) throw error;
    const { field, wanted } = error;
    throw new UsageError(`${pad}${field && `  ${field}`}\n  wanted  ${wanted}\n\nNothing was written.`);
  }
}

/** The session of the run's day as the folder has it. */
function ownRun({ slug, path, text }: PanelFile, { id, date, panel }: Run): Run | undefined {
  return runFromFile(text, path, { id, date, panel: { ...panel, slug, isNew: false } });
}

function setupOf(folder: string, panel: PanelFile | undefined): FileSetup {
  const data: unknown = parse(readText(folder, 'guide.yaml'), { logLevel: 'silent' });
  return { guide: { data }, panels: panel ? [{ slug: panel.slug, file: panel.path }] : [] };
}

/** Photos of the run that the folder has not yet. */
function photosOf({ photos }: Run, beside: string, folder: string, from: string): FileChange[] {
  const lacking = photos.filter(({ file }) => !existsSync(join(folder, beside, file)));
  const missing = lacking.filter(({ file }) => !existsSync(join(from, file))).map((it) => it.file);
  if (missing.length > 0) {
    throw new UsageError(
      `There is no ${missing.join(', ')} in ${from}; the photos of a run lie beside its file. Nothing was written.`,
    );
  }
  return lacking.map(({ file }) => ({
    path: `${beside}/${file}`,
    before: undefined,
    after: { copyOf: join(from, file), sha256: fileHash(join(from, file)) },
  }));
}

/**
 * The session of a panel as a run, for a pad's file.
 *
 * @param date of the session; the newest one's where it is left out
 * @throws UsageError where there is none
 */
export function sessionRun({ slug, path, text, model }: PanelFile, maker: string, date: string | undefined): Run {
  const days = sessionsIn(text, path).map((it) => String(it.date));
  const day = date ?? days.toSorted().at(-1) ?? '';
  const panel = { slug, isNew: false, maker, model: model ?? '' };
  const run = runFromFile(text, path, { id: `${slug}-${day}`, date: day, panel });
  if (run) return run;
  const there = days.length > 0 ? `its days are ${days.toSorted().join(', ')}` : 'it has none';
  throw new UsageError(`${path} has no session of ${day || 'any day'}; ${there}.`);
}
