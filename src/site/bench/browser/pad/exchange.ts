/** Runs that come from another pad or from the command line, and go there. */

import { html } from '../../../shared/browser/dom.ts';
import { inSite } from '../../../shared/browser/site-path.ts';
import { type BenchStore, BenchStoreError } from '../bench-store.ts';
import { exportRun, importRun, PadFileError, padFileName } from '../pad-file.ts';
import { type Run, type RunLog, runOf } from '../run.ts';
import { runFromFile } from '../run-from-file.ts';
import { download } from '../save-folder.ts';
import { find } from '../sheet-form.ts';
import { keepAsOwn, mergeForm } from './merge-form.ts';
import type { Pad } from './pad-context.ts';
import type { PadSetup } from './pad-setup.ts';
import { gridOf, placesOf } from './places.ts';
import { runAddress } from './runs-list.ts';
import { storeWords } from './store-words.ts';

const wordsOf = (error: unknown) =>
  error instanceof PadFileError
    ? `That is no file of a pad. ${error.field === '' ? 'Wanted' : `At ${error.field}, wanted`}: ${error.wanted}.`
    : storeWords(error);

/** A place in words, and a field that is none by its own name. */
const namer = (setup: PadSetup, run: Run) => {
  const names = new Map(placesOf(run, gridOf(run, setup.field(run.panel.slug))).map((it) => [it.path, it.name]));
  return (path: string) => names.get(path) ?? path;
};

const open = (id: string) => location.assign(inSite(runAddress(id)));

/** The field for a pad's file, beside the list of runs: it is opened, or held against the run of that session that is here. */
export function startImport(setup: PadSetup, store: BenchStore): void {
  const input = find('[data-pad-import]') as HTMLInputElement;
  const said = find('[data-pad-import-said]');
  const take = async (log: RunLog) => {
    const theirs = runOf(log);
    const mine = await sameSession(store, theirs);
    if (mine) {
      said.replaceChildren(
        html('p', {}, 'A run of that panel and day is on this device already.'),
        mergeForm(mine, theirs, namer(setup, mine), async (run) => open(await keepAsOwn(store, run))),
      );
      return;
    }
    try {
      await store.begin(log);
      open(log.start.id);
    } catch (error) {
      // One of the same name, of another day or panel by now.
      if (!(error instanceof BenchStoreError) || error.fault !== 'taken') throw error;
      open(await keepAsOwn(store, theirs));
    }
  };
  input.addEventListener('change', async () => {
    const file = input.files?.[0];
    if (!file) return;
    try {
      said.replaceChildren();
      await take(importRun(await file.text()));
    } catch (error) {
      said.replaceChildren(html('p', { class: 'pad-fault' }, wordsOf(error)));
    }
    input.value = '';
  });
}

async function sameSession(store: BenchStore, { panel, date }: Run): Promise<Run | undefined> {
  for (const { id } of await store.list()) {
    const stored = await store.load(id);
    const run = stored && runOf(stored.log);
    if (run && run.panel.slug === panel.slug && run.date === date) return run;
  }
  return undefined;
}

/** Gives an open run to another pad, and holds another’s against it: a pad’s file, or the panel’s content file. */
export function startExchange(pad: Pad): void {
  const said = html('div', { role: 'status' });
  const input = html('input', { id: 'pad-theirs', type: 'file', accept: '.json,.md,.mdx' });
  const give = html('button', { type: 'button' }, 'Save as a pad’s file');
  find('[data-pad-exchange]').replaceChildren(
    html('p', {}, 'For another tester’s pad, or the command line: everything that was entered, struck and undone.'),
    html('p', { class: 'pad-actions' }, give),
    html(
      'p',
      {},
      html('label', { for: input.id }, 'Hold another’s file against this run: a pad’s, or the panel’s content file'),
      input,
    ),
    said,
  );
  give.addEventListener('click', () => {
    const log = pad.desk.log();
    download(padFileName(log), new Blob([exportRun(log)], { type: 'application/json' }));
  });
  input.addEventListener('change', async () => {
    const file = input.files?.[0];
    if (!file) return;
    try {
      const theirs = await theirsOf(file, pad.run);
      said.replaceChildren(
        mergeForm(pad.run, theirs, namer(pad.setup, pad.run), async (run) => open(await keepAsOwn(pad.store, run))),
      );
    } catch (error) {
      said.replaceChildren(html('p', { class: 'pad-fault' }, wordsOf(error)));
    }
    input.value = '';
  });
}

/** @throws PadFileError where the file has no run to hold against this one */
async function theirsOf(file: File, { id, date, panel }: Run): Promise<Run> {
  const text = await file.text();
  if (!/\.mdx?$/.test(file.name)) return runOf(importRun(text));
  const run = runFromFile(text, file.name, { id, date, panel });
  if (!run) throw new PadFileError(file.name, `a session of ${date}`);
  return run;
}
