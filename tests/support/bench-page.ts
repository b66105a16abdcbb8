/** What the bench's pages are made of, within reach of a test: `globalThis.bench` on a page that does nothing by itself. */
import { keepOffline } from '../../src/site/bench/browser/bench-offline.ts';
import { openBenchStore } from '../../src/site/bench/browser/bench-store.ts';
import { drawPhoto, takePhotos } from '../../src/site/bench/browser/camera-photo.ts';
import { openRun } from '../../src/site/bench/browser/kept-run.ts';
import { newLog, runOf } from '../../src/site/bench/browser/run.ts';
import {
  contentFolderIn,
  download,
  readPanelFile,
  sameFolder,
  savePanel,
} from '../../src/site/bench/browser/save-folder.ts';
import { serialMeter } from '../../src/site/bench/browser/serial-meter.ts';
import { speech } from '../../src/site/bench/browser/speech.ts';

const modules = {
  keepOffline,
  openBenchStore,
  openRun,
  newLog,
  runOf,
  takePhotos,
  drawPhoto,
  contentFolderIn,
  sameFolder,
  readPanelFile,
  savePanel,
  download,
  serialMeter,
  speech,
};
declare global {
  var bench: typeof modules;
}

globalThis.bench = modules;
