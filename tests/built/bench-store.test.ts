/** What is entered at the bench, through a browser that is killed, two windows at once, and into a folder. */
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { setTimeout as sleep } from 'node:timers/promises';
import { chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { CHROMIUM, CHROMIUM_SWITCHES } from '../support/ensure-browser.ts';
import { type ServedBench, serveBench } from '../support/serve-bench.ts';
import { START } from '../support/started-run.ts';
import { type WorkerBrowser, workerBrowser } from './worker-browser.ts';

let site: ServedBench;
beforeAll(async () => {
  site = await serveBench();
});
afterAll(() => site[Symbol.asyncDispose]());

describe('a browser that is killed', () => {
  /** A browser of its own, that keeps what it has in a folder. */
  async function started(profile: string): Promise<{ page: Page; end: () => Promise<void> }> {
    const child: ChildProcess = spawn(
      CHROMIUM,
      [...CHROMIUM_SWITCHES, `--user-data-dir=${profile}`, '--remote-debugging-port=0', 'about:blank'],
      { stdio: ['ignore', 'ignore', 'pipe'], detached: true },
    );
    const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()));
    const address = await new Promise<string>((resolve, reject) => {
      child.once('error', reject);
      if (!child.stderr) return;
      createInterface(child.stderr).on('line', (it) => {
        const found = /^DevTools listening on (ws:\S+)/.exec(it)?.[1];
        if (found) resolve(found);
      });
    });
    const browser = await chromium.connectOverCDP(address);
    const page = browser.contexts()[0]?.pages()[0];
    if (!page) throw new Error('the browser has no window');
    return {
      page,
      end: async () => {
        // All of its processes at once, as when the battery is empty.
        if (child.exitCode === null && child.signalCode === null) process.kill(-(child.pid as number), 'SIGKILL');
        await ended;
        await browser.close().catch(() => undefined);
      },
    };
  }

  /** Enters one number after another for ever, and says of each when it is kept. */
  const enterOn = async ([id, size]: readonly [string, number]) => {
    const run = await globalThis.bench.openRun(await globalThis.bench.openBenchStore(), id);
    for (let number = run.log.acts.length + 1; ; number++) {
      // Padded, a write takes so long that it can be cut off.
      const written = String(number).padEnd(size);
      await run.act({ kind: 'set', field: 'texts', key: String(number), value: written });
      console.log(`kept ${number}`);
    }
  };

  test('has every act whose save had resolved, and no half ones', async () => {
    const profile = mkdtempSync(join(tmpdir(), 'bench-profile-'));
    let confirmed = 0;
    try {
      // At the very word, with a write that takes its time; some time after, with many short ones; and a last look.
      for (const kill of [{ size: 4e6, after: 0 }, { size: 4, after: 40 + 200 * Math.random() }, undefined]) {
        const { page, end } = await started(profile);
        await page.goto(`${site.origin}/bench/`);
        const there = await page.evaluate(async (start) => {
          const store = await globalThis.bench.openBenchStore();
          const found = await store.load(start.id);
          const { acts } = found?.log ?? (await store.begin(globalThis.bench.newLog(start))).log;
          return acts.map((it) => (it.kind === 'set' && it.field === 'texts' ? it.value.trim() : it.kind));
        }, START);
        expect(there.length).toBeGreaterThanOrEqual(confirmed);
        expect(there).toEqual(there.map((_, i) => String(i + 1)));
        const word = Promise.withResolvers<void>();
        page.on('console', (it) => {
          confirmed = Number(/^kept (\d+)$/.exec(it.text())?.[1] ?? confirmed);
          // Not by a promise: every moment counts.
          if (kill?.after === 0) end();
          word.resolve();
        });
        if (kill) {
          page.evaluate(enterOn, [START.id, kill.size] as const).catch(() => undefined);
          await word.promise;
          await sleep(kill.after);
        }
        await end();
      }
      expect(confirmed).toBeGreaterThan(1);
    } finally {
      rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
    }
  });
});

describe('in a browser', () => {
  let browser: WorkerBrowser;
  beforeAll(async () => {
    browser = await workerBrowser();
  });
  afterAll(() => browser.close());

  async function windows(count: number): Promise<{ pages: Page[]; [Symbol.asyncDispose](): Promise<void> }> {
    const context = await browser.newContext();
    const pages = await Promise.all(Array.from({ length: count }, () => context.newPage()));
    for (const it of pages) await it.goto(`${site.origin}/bench/`);
    return { pages, [Symbol.asyncDispose]: () => context.close() };
  }

  test('two windows that write at once lose nothing, and see each other’s entries', async () => {
    await using opened = await windows(2);
    const [one, other] = opened.pages as [Page, Page];
    await one.evaluate(async (start) => {
      await (await globalThis.bench.openBenchStore()).begin(globalThis.bench.newLog(start));
    }, START);
    const written = (page: Page, from: number) =>
      page.evaluate(
        async ([id, first]) => {
          const run = await globalThis.bench.openRun(await globalThis.bench.openBenchStore(), id);
          const at = '2026-11-21T12:00:00Z';
          await Promise.all(
            Array.from({ length: 15 }, (_, i) =>
              run.act({ kind: 'enter', path: 'peak.red', written: String(first + i), at }),
            ),
          );
          // By the other window's message alone.
          const all = () => globalThis.bench.runOf(run.log).entries.map((it) => Number(it.written));
          while (all().length < 30) await new Promise((resolve) => run.onOther(resolve));
          return all();
        },
        [START.id, from] as const,
      );
    const [mine, theirs] = await Promise.all([written(one, 1), written(other, 101)]);
    expect(mine).toEqual(theirs);
    expect(mine.filter((it) => it < 100)).toEqual(Array.from({ length: 15 }, (_, i) => i + 1));
    expect(mine.filter((it) => it > 100)).toEqual(Array.from({ length: 15 }, (_, i) => i + 101));
  });

  test('runs are begun once, listed with the last one first, and removed with their pictures', async () => {
    await using opened = await windows(1);
    const [page] = opened.pages as [Page];
    const said = await page.evaluate(async (start) => {
      const { openBenchStore, openRun, newLog, takePhotos, drawPhoto } = globalThis.bench;
      let clock = 0;
      const store = await openBenchStore('another', () => new Date(clock++).toISOString());
      const faultOf = (work: Promise<unknown>) =>
        work.then(
          () => 'none',
          (it) => it.fault,
        );
      const again = { ...start, id: 'b-run' };
      await store.begin(newLog(start));
      await store.begin(newLog(again));
      const twice = await faultOf(store.begin(newLog(start)));
      const canvas = document.createElement('canvas');
      canvas.width = canvas.height = 400;
      const jpeg = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg'));
      const shot = new File([jpeg as Blob], 'image.jpg', { type: 'image/jpeg' });
      const { taken } = await takePhotos(store, start, [shot, shot]);
      const run = await openRun(store, start.id);
      await run.act({ kind: 'photo', file: taken[0]?.file ?? '', shows: 'Front of it' });
      const small = document.createElement('canvas');
      const drawn = await drawPhoto((await store.photos(start.id))[0]?.picture as Blob, small, 100);
      const order = (await store.list()).map((it) => it.id);
      await store.keep('meter', { baudRate: 9600 });
      await store.remove(start.id);
      return {
        ...{ twice, order, drawn, width: small.width, files: taken.map((it) => it.file) },
        left: (await store.list()).map((it) => it.id),
        photos: await store.photos(start.id),
        kept: await store.kept('meter'),
        gone: [
          await faultOf(run.act({ kind: 'set', field: 'date', value: '2026-11-22' })),
          await faultOf(store.savePhoto(start.id, 'x.jpg', shot)),
          await faultOf(openRun(store, start.id)),
        ],
      };
    }, START);
    expect(said).toEqual({
      twice: 'taken',
      order: ['a-run', 'b-run'],
      drawn: true,
      width: 100,
      files: ['kelpwright-plover-2026-11-21-1.jpg', 'kelpwright-plover-2026-11-21-2.jpg'],
      left: ['b-run'],
      photos: [],
      kept: { baudRate: 9600 },
      gone: ['gone', 'gone', 'gone'],
    });
  });

  test('a folder gets pictures and file, and nothing is written over that was not read', async () => {
    await using opened = await windows(1);
    const [page] = opened.pages as [Page];
    const said = await page.evaluate(async () => {
      const { contentFolderIn, readPanelFile, savePanel } = globalThis.bench;
      const top = await navigator.storage.getDirectory();
      const faultOf = (work: Promise<unknown>) =>
        work.then(
          () => 'none',
          (it) => [it.fault, it.found],
        );
      const none = await faultOf(contentFolderIn(top));
      const inside = await top.getDirectoryHandle('content', { create: true });
      await inside.getFileHandle('guide.yaml', { create: true });
      const folder = await contentFolderIn(top);
      const slug = 'kelpwright-plover';
      const photo = (text: string) => ({ file: 'front.jpg', picture: new Blob([text]) });
      const save = (text: string, before: string | undefined, ...photos: ReturnType<typeof photo>[]) =>
        savePanel(folder, { slug, text, before, photos });
      const first = await save('one', undefined, photo('picture'));
      const read = await readPanelFile(folder, slug);
      const results = {
        ...{ none, name: folder.name, first, read },
        // Again, as after a crash between writing and noting it.
        again: await save('one', undefined, photo('picture')),
        changed: await faultOf(save('three', 'two')),
        isNew: await faultOf(save('three', undefined)),
        photoThere: await faultOf(save('two', 'one', photo('another'))),
        stands: (await readPanelFile(folder, slug))?.text,
        next: await save('two', 'one'),
      };
      const panel = await folder.panels.getDirectoryHandle(slug);
      await panel.removeEntry('index.md');
      return {
        ...results,
        removed: await faultOf(save('three', 'two')),
        absent: await readPanelFile(folder, 'no-panel'),
        same: (await contentFolderIn(inside)).name,
      };
    });
    expect(said).toEqual({
      none: ['no-guide', undefined],
      name: '/content',
      first: ['panels/kelpwright-plover/front.jpg', 'panels/kelpwright-plover/index.md'],
      read: { name: 'index.md', text: 'one', beside: ['front.jpg'] },
      again: [],
      changed: ['changed', 'one'],
      isNew: ['changed', 'one'],
      photoThere: ['photo-there', 'front.jpg'],
      stands: 'one',
      next: ['panels/kelpwright-plover/index.md'],
      removed: ['changed', undefined],
      absent: undefined,
      same: 'content',
    });
  });

  test('without a folder a file is downloaded, under the site’s policy', async () => {
    await using opened = await windows(1);
    const [page] = opened.pages as [Page];
    const downloading = page.waitForEvent('download');
    await page.evaluate(() => globalThis.bench.download('index.md', 'µ\n'));
    const download = await downloading;
    expect(download.suggestedFilename()).toBe('index.md');
    const stream = await download.createReadStream();
    expect(Buffer.concat(await stream.toArray()).toString('utf8')).toBe('µ\n');
  });
});
