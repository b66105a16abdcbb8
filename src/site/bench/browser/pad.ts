/** The bench pad's page: the list of runs, or the run that the address names. */

import { readJson } from '../../shared/browser/read-json.ts';
import { inSite } from '../../shared/browser/site-path.ts';
import type { BenchSetup } from './bench-data.ts';
import { type BenchStore, openBenchStore } from './bench-store.ts';
import { openRun } from './kept-run.ts';
import { startDarkRoom } from './pad/dark-room.ts';
import { openDesk } from './pad/desk.ts';
import { startImport } from './pad/exchange.ts';
import { startOffline } from './pad/offline.ts';
import { padOf } from './pad/pad-context.ts';
import { type PadSetup, padSetup } from './pad/pad-setup.ts';
import { panelFile } from './pad/panel-file.ts';
import { runAddress, runTitle, showRuns } from './pad/runs-list.ts';
import { startForm } from './pad/start-form.ts';
import { startParts } from './pad/start-parts.ts';
import { storeWords } from './pad/store-words.ts';
import { find } from './sheet-form.ts';

if (document.querySelector('#bench-pad')) void start();

const alarm = (text: string) => {
  find('[data-pad-alarm]').textContent = text;
};

async function start(): Promise<void> {
  startDarkRoom();
  try {
    const bench = await readJson<BenchSetup>('/data/bench.json', 'the bench’s data', 1);
    startOffline(bench.version);
    const store = await openBenchStore();
    const setup = padSetup(bench);
    const id = decodeURIComponent(location.hash.slice(1));
    // Another run is another page: nothing of one is left in the other.
    addEventListener('hashchange', () => location.reload());
    if (id === '') await showHome(setup, store);
    else await showRun(setup, store, id);
  } catch (error) {
    alarm(storeWords(error));
  }
}

async function showHome(setup: PadSetup, store: BenchStore): Promise<void> {
  await showRuns(setup, store);
  store.onChange(() => void showRuns(setup, store));
  startForm(
    setup,
    (slug) => panelFile(setup.bench, store, slug),
    async (log) => {
      await store.begin(log);
      location.assign(inSite(runAddress(log.start.id)));
    },
  );
  startImport(setup, store);
  find('[data-pad-runs]').hidden = false;
}

async function showRun(setup: PadSetup, store: BenchStore, id: string): Promise<void> {
  let changed = () => {};
  const desk = openDesk(await openRun(store, id), () => changed());
  const { panel } = desk.run();
  // Readings can be taken without it, though no figures.
  const data = panel.isNew
    ? undefined
    : await panelFile(setup.bench, store, panel.slug).catch((error: unknown) => {
        alarm(storeWords(error));
        return undefined;
      });
  const pad = padOf({ setup, store, desk, data, alarm });
  changed = () => pad.show();
  find('[data-pad-title]').hidden = true;
  const title = runTitle(setup, desk.run());
  document.title = `${title} – Bench pad`;
  find('[data-pad-run]').hidden = false;
  pad.add(() => {
    find('[data-pad-of]').textContent = runTitle(setup, pad.run);
  });
  await startParts(pad);
}
