/** Works out a run beside the page, so that typing never waits: figures, what looks wrong, and the content file. */
import '../without-eval.ts';
import type { BenchSetup } from '../bench-data.ts';
import type { Run } from '../run.ts';
import { contentFile, panelFileName, RunFileError } from '../run-file.ts';
import { workRun } from '../worked-run.ts';
import type { FromThread, KnownFile, MadeFile, ToThread } from './work-messages.ts';

let setup: BenchSetup | undefined;

addEventListener('message', ({ data }: MessageEvent<ToThread>) => {
  if ('setup' in data) {
    setup = data.setup;
    return;
  }
  if (!setup) throw new Error('the thread has no bench yet');
  const { run, known, number } = data;
  const made: FromThread = { number, worked: worked(run, setup, known), file: madeFile(run, setup, known) };
  postMessage(made);
});

const messageOf = (error: unknown) => (error instanceof Error ? error.message : String(error));

function worked(run: Run, bench: BenchSetup, { text, data }: KnownFile): FromThread['worked'] {
  try {
    return workRun(run, bench, text ?? data);
  } catch (error) {
    return { fault: messageOf(error) };
  }
}

function madeFile(run: Run, bench: BenchSetup, { text }: KnownFile): MadeFile {
  const name = panelFileName(run, bench);
  try {
    return { name, text: contentFile(run, bench, text) };
  } catch (error) {
    return { name, fault: messageOf(error), code: error instanceof RunFileError ? error.code : 'other' };
  }
}
