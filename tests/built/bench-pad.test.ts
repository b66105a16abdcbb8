/** The bench pad as a tester uses it: a session by keyboard alone, what survives, what is seen in a dark room. */
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { DEMO_SITE } from '../support/demo-folder.ts';
import { type ServedFolder, serveFolder } from '../support/serve-folder.ts';
import { bringChecker, COLOURS, EVERYTHING, excess, violations } from './accessibility-checker.ts';
import { attribute, PAGES, pageAt } from './site.ts';
import { type WorkerBrowser, workerBrowser } from './worker-browser.ts';

const ADDRESS = '/bench/';
const TABLET = { width: 768, height: 1024 };

/** What a session reads, by place; grid and edges have what a panel of two channels gives. */
const READINGS: Readonly<Record<string, string>> = {
  'mains.standby': '0.7',
  warmUp: '45',
  'grid.rows[0][0]': '31.2',
  'grid.rows[0][1]': '40.3',
  'grid.rows[0][2]': '31',
  'grid.rows[1][0]': '39.6',
  'grid.rows[1][1]': '52.8',
  'grid.rows[1][2]': '39.2',
  'grid.rows[2][0]': '30.9',
  'grid.rows[2][1]': '40.1',
  'grid.rows[2][2]': '30.6',
  'beyond[0].on': '7.8',
  'beyond[1].on': '0.5',
  'beyond[2].on': '<0.1',
  'beyond[3].on': '7.2',
  'beyond[4].on': '0.4',
  'beyond[5].on': '<0.1',
  'beyond[2].off': '<0.1',
  'beyond[5].off': '<0.1',
  'peak.combined': '53.4',
  'mains.combined': '104.2',
  'peak.red': '27.9',
  'mains.red': '52.8',
  'peak.nearInfrared': '26.2',
  'mains.nearInfrared': '53.9',
};

/** The last place of a session. */
const LAST = 'sound.on';

let browser: WorkerBrowser;
let served: ServedFolder;
beforeAll(async () => {
  browser = await workerBrowser();
  served = await serveFolder(DEMO_SITE);
});
afterAll(async () => {
  await browser.close();
  await served.close();
});

/** Errors of pages, since the first was opened. */
const complaints: string[] = [];

/** A device of its own: what one keeps no other has. */
async function device(options = {}): Promise<{ context: BrowserContext; page: Page }> {
  const context = await browser.newContext({ viewport: TABLET, acceptDownloads: true, ...options });
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
  page.on('pageerror', (it) => complaints.push(it.message));
  page.on('console', (it) => {
    if (it.type() === 'error') complaints.push(it.text());
  });
  return { context, page };
}

/** Begins a run of a panel that the guide does not have, by keyboard. */
async function begin(page: Page): Promise<void> {
  await page.goto(`${served.origin}${ADDRESS}`);
  // It shows once its script has everything.
  await page.locator('#start-maker').waitFor();
  await page.locator('#start-maker').focus();
  for (const text of ['Kelpwright', 'Plover', '7 in', '11 in']) {
    await page.keyboard.type(text);
    await page.keyboard.press('Tab');
  }
  await page.locator('#start-date').fill('2026-11-21');
  await page.keyboard.press('Enter');
  await page.locator('#pad-value').waitFor();
}

const placeNow = (page: Page) => page.locator('[data-pad-place]').getAttribute('data-path');
/** Goes to a part of the session by its list. */
const toStep = async (page: Page, step: string) => {
  await page.selectOption('#pad-step', step);
  await page.locator('#pad-value').focus();
};
/** What stands in the file by now. */
const fileText = (page: Page) => page.locator('.pad-text').textContent();
const sessionOf = (text: string | null) => parse((text ?? '').split(/^---$/m)[1] ?? '').sessions[0];

describe('a session by keyboard', () => {
  let page: Page;
  let context: BrowserContext;
  beforeAll(async () => {
    ({ context, page } = await device());
    await begin(page);
    await toStep(page, 'grid');
    await page.selectOption('#pad-rounds', '1');
    await toStep(page, 'off');
    await page.evaluate(() => {
      Object.assign(globalThis, { presses: 0 });
      addEventListener('keydown', () =>
        Object.assign(globalThis, { presses: Number(Reflect.get(globalThis, 'presses')) + 1 }),
      );
    });
  });
  afterAll(() => context.close());

  test('takes the digits and one key for each reading', async () => {
    let [typed, skipped] = [0, 0];
    for (let path = await placeNow(page); path !== LAST; path = await placeNow(page)) {
      const reading = READINGS[path ?? ''];
      if (reading === undefined) skipped += 1;
      else {
        typed += reading.length + 1;
        await page.keyboard.type(reading);
      }
      await page.keyboard.press('Enter');
      await expect.poll(() => placeNow(page)).not.toBe(path);
    }
    expect(await page.evaluate(() => Number(Reflect.get(globalThis, 'presses')))).toBe(typed + skipped);
    expect(typed).toBeGreaterThan(80);
  });

  test('writes every reading at its place in the content file', async () => {
    await expect.poll(() => fileText(page)).toContain('nearInfrared: 53.9');
    const session = sessionOf(await fileText(page));
    expect(session.grid.rows).toEqual([
      [31.2, 40.3, 31],
      [39.6, 52.8, 39.2],
      [30.9, 40.1, 30.6],
    ]);
    expect(session.beyond.slice(0, 3)).toMatchObject([
      { edge: 'right', past: '8 cm', on: 7.8 },
      { edge: 'right', past: '20 cm', on: 0.5 },
      { edge: 'right', past: '40 cm', on: '<0.1', off: '<0.1' },
    ]);
    expect(session).toMatchObject({ warmUp: '45 min', draft: true });
  });

  test('shows mean, power and efficiency as the build makes them', async () => {
    await expect.poll(() => page.locator('[data-pad-mean]').textContent()).toMatch(/^Mean of all 9 points: 37\.3 ± /);
    const figures = await page.locator('[data-pad-figures]').textContent();
    expect(figures).toMatch(/Power through the field\d+\.\d ± \d\.\d W/);
    expect(figures).toMatch(/Efficiency\d+\.\d ± \d\.\d %/);
    expect(figures).toMatch(/A watt of lightno price/i);
  });

  test('a reading is struck with its reason, and undone and redone by keys', async () => {
    const strike = page.getByRole('button', { name: /^Strike 53\.9/ }).first();
    await strike.press('Enter');
    await page
      .getByRole('form', { name: /^Strike 53\.9/ })
      .getByRole('button', { name: 'Strike' })
      .press('Enter');
    await expect.poll(() => page.locator('[data-pad-last]').textContent()).toContain('struck: The sensor slipped');
    await expect.poll(() => fileText(page)).toContain('The sensor slipped');
    await page.locator('#pad-value').focus();
    await page.keyboard.press('Control+z');
    await expect.poll(() => fileText(page)).not.toContain('The sensor slipped');
    await page.keyboard.press('Control+y');
    await expect.poll(() => fileText(page)).toContain('The sensor slipped');
    await page.keyboard.press('Control+z');
    await expect.poll(() => fileText(page)).not.toContain('The sensor slipped');
  });

  test('what can’t be a reading stays in the field, with what to write instead', async () => {
    await toStep(page, 'grid');
    await page.keyboard.type('40 W');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.locator('#pad-fault').textContent()).toContain('a unit of a power');
    expect(await page.locator('#pad-value').inputValue()).toBe('40 W');
    await page.locator('#pad-value').fill('');
  });

  test('a slip of the decimal point is told with its reason, and accepted with another', async () => {
    await page.keyboard.type('106');
    await page.keyboard.press('Enter');
    const odd = page.locator('.pad-doubt').first();
    await expect.poll(() => odd.textContent()).toMatch(/^Point 1 of 9: (106 mW\/cm² is|Grid point 1 of row 1 reads)/);
    await odd.getByRole('button', { name: /^Accept/ }).click();
    await page
      .getByRole('form', { name: /^Accept 106/ })
      .getByRole('button', { name: 'Accept' })
      .click();
    await expect.poll(() => fileText(page)).toContain('Looked odd, and counts: grid.rows[0][0] = 106');
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');
    await expect.poll(() => fileText(page)).not.toContain('106');
  });

  test('a pasted column shows where it goes before it counts', async () => {
    await toStep(page, 'grid');
    await page.locator('[data-pad-fold="paste"] summary').click();
    await page.fill('#pad-paste', 'E, mW/cm2\n31,4\n40.2');
    expect(await page.locator('[data-pad-pasted] tbody tr').allTextContents()).toEqual(
      ['E, mW/cm2nowhereNo number; left out.', '31,4Point 1 of 931.4', '40.2Point 2 of 940.2'].map((it, i) =>
        i === 0 ? expect.stringContaining('E, mW/cm2') : it,
      ),
    );
    await page.getByRole('button', { name: /^Take 2 readings/ }).click();
    await expect.poll(() => fileText(page)).toContain('[31.2, 31.4]');
  });

  test('nothing is lost by loading the page again, nor the place', async () => {
    const before = await fileText(page);
    const place = await placeNow(page);
    await page.reload();
    await expect.poll(() => fileText(page)).toBe(before);
    expect(await placeNow(page)).toBe(place);
    await page.goto(`${served.origin}${ADDRESS}`);
    await expect
      .poll(() => page.locator('.pad-runs').textContent())
      .toMatch(/^Kelpwright Plover, 21 Nov 2026\d+ of \d+ places read/);
    await page.locator('.pad-runs a').click();
    await expect.poll(() => fileText(page)).toBe(before);
  });

  test('a file of the pad is held against another field by field', async () => {
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      (async () => {
        await page.locator('[data-pad-fold="exchange"] summary').click();
        await page.getByRole('button', { name: 'Save as a pad’s file' }).click();
      })(),
    ]);
    expect(download.suggestedFilename()).toBe('kelpwright-plover-2026-11-21.bench.json');
    const path = join(mkdtempSync(join(tmpdir(), 'pad-')), 'theirs.json');
    await download.saveAs(path);
    await toStep(page, 'grid');
    await page.keyboard.type('31.6');
    await page.keyboard.press('Enter');
    const peak = page.locator('[data-pad-last]');
    await expect.poll(() => peak.textContent()).toContain('31.6');
    await page.setInputFiles('#pad-theirs', path);
    await expect
      .poll(() => page.locator('[data-pad-exchange]').textContent())
      .toContain('Nowhere do the two say different things');
  });

  test('the dark room has no light but red while readings are taken', async () => {
    const fold = (isOpen: boolean) =>
      page.locator('main details').evaluateAll((all, open) => {
        for (const it of all as HTMLDetailsElement[]) it.open = open;
      }, isOpen);
    /** The most of green or blue that is anywhere on the page. */
    const brightest = async () => {
      const { data } = await sharp(await page.screenshot({ fullPage: true }))
        .removeAlpha()
        .raw()
        .toBuffer({ resolveWithObject: true });
      let most = 0;
      for (let i = 0; i < data.length; i += 3) most = Math.max(most, data[i + 1] as number, data[i + 2] as number);
      return most;
    };
    await fold(false);
    await page.locator('[data-pad-dark]').click();
    expect(await brightest()).toBe(0);
    await fold(true);
    // The sign in a field for a day is the browser's own, tinted: half a percent of its light is left.
    expect(await brightest()).toBeLessThanOrEqual(16);
    await fold(false);
    await page.locator('[data-pad-dark]').click();
  });

  test('is free of faults, light, dark and in the dark room, and fits the narrowest window', async () => {
    await bringChecker(page);
    await page.locator('.pad-folds details').evaluateAll((all) => {
      for (const it of all as HTMLDetailsElement[]) it.open = true;
    });
    expect(await violations(page, EVERYTHING)).toEqual([]);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await violations(page, COLOURS)).toEqual([]);
    await page.locator('[data-pad-dark]').click();
    expect(await violations(page, COLOURS)).toEqual([]);
    await page.setViewportSize({ width: 320, height: 640 });
    expect(await excess(page)).toBe(0);
  });
});

test('with the network off it opens, takes readings, works them out, and says them', async () => {
  const { context, page } = await device({ viewport: { width: 390, height: 844 }, hasTouch: true });
  await page.addInitScript(() => {
    const said: string[] = [];
    const voice = { localService: true, lang: 'en-GB' };
    Object.defineProperty(globalThis, 'speechSynthesis', {
      value: { getVoices: () => [voice], cancel() {}, speak: ({ text }: { text: string }) => said.push(text) },
    });
    Object.assign(globalThis, {
      said,
      SpeechSynthesisUtterance: class {
        text: string;
        constructor(text: string) {
          this.text = text;
        }
      },
    });
  });
  await begin(page);
  await expect.poll(() => page.locator('[data-pad-offline]').textContent()).toBe('It works with the network off.');
  await context.setOffline(true);
  await page.reload();
  await toStep(page, 'grid');
  // Keys for gloves, each 56 pixels or more; typing needs no other keyboard.
  const keys = page.locator('[data-pad-keys] button');
  for (const key of await keys.all()) {
    const box = await key.boundingBox();
    expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(56);
  }
  await page.locator('[data-pad-fold="meter"] summary').click();
  await page.getByRole('button', { name: 'Read each reading back' }).click();
  for (const key of ['3', '1', '.', '2', 'enter']) await page.locator(`[data-key="${key}"]`).click();
  await expect.poll(() => page.locator('[data-pad-mean]').textContent()).toMatch(/^Mean of 1 of 9 points: 31\.2/);
  expect(await page.evaluate(() => Reflect.get(globalThis, 'said'))).toEqual(['three one point two']);
  await context.close();
});

test('nothing was complained of', () => {
  expect(complaints).toEqual([]);
});

test('no page of readers loads its scripts, and two lead to it', () => {
  const scripts = pageAt(ADDRESS)
    .document.querySelectorAll('script[src]')
    .map((it) => attribute(it, 'src'));
  expect(scripts.length).toBeGreaterThan(0);
  const loading = PAGES.filter((it) => scripts.some((script) => it.html.includes(script))).map((it) => it.address);
  expect(loading).toEqual([ADDRESS]);
  const leading = PAGES.filter((it) => it.html.includes(`href="${ADDRESS}"`)).map((it) => it.address);
  expect(leading.toSorted()).toEqual(['/bench/', '/instruments/', '/methods/bench-procedure/']);
});
