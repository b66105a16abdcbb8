import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';
import { CHROMIUM, CHROMIUM_SWITCHES } from '../support/ensure-browser.ts';
import { serveFolder } from '../support/serve-folder.ts';
import { LONGEST } from './open-page.ts';
import { type Line, median, type Section, spread } from './report.ts';

/** Seconds to the largest contentful paint, and layout shift without a unit. */
const MOST_SECONDS = 1.2;
const MOST_SHIFT = 0.02;
/** A processor so many times slower, and slow 4G: a round trip in ms, bytes a second. */
const SLOWER = 4;
const ROUND_TRIP = 150;
const BYTES = 1_600_000 / 8;
/** After a page has loaded, ms: what shifts then shifts late. */
const SETTLED = 1000;

interface Painted {
  paint: number;
  shift: number;
}

/** How soon a phone on a slow line shows the pages, and whether anything moves then. */
export async function firstPaint(site: string, panels: number, times: number): Promise<Section> {
  if (!existsSync(CHROMIUM)) throw new Error(`no browser at ${CHROMIUM}; name one: CHROMIUM=/path/to/chromium`);
  const [slug = ''] = readdirSync(join(site, 'panels')).filter((it) => !it.includes('.'));
  const pages = [
    ['guide', '/'],
    ['a panel', `/panels/${slug}/`],
    ['its calculation', `/panels/${slug}/methodology/`],
  ] as const;
  const served = await serveFolder(site, {}, { isCompressed: true });
  const browser = await chromium.launch({ executablePath: CHROMIUM, args: CHROMIUM_SWITCHES, timeout: LONGEST });
  try {
    const lines: Line[] = [];
    for (const [name, path] of pages) {
      const painted: Painted[] = [];
      for (let i = 0; i < times; i++) painted.push(await openSlowly(browser, `${served.origin}${path}`));
      lines.push(...judged(name, painted));
    }
    return {
      title: `First paint, ${panels} panels, a ${SLOWER} times slower processor and slow 4G (Chromium ${browser.version()})`,
      lines,
      remarks: ['From this machine, texts by gzip, on a phone’s screen.'],
    };
  } finally {
    await browser.close();
    await served.close();
  }
}

function judged(name: string, painted: readonly Painted[]): Line[] {
  const paints = painted.map((it) => it.paint);
  const shift = Math.max(...painted.map((it) => it.shift));
  return [
    {
      what: `${name}: largest contentful paint`,
      measured: spread(paints, 's', 2),
      ratio: median(paints) / MOST_SECONDS,
      budget: `${MOST_SECONDS} s`,
      isWithin: median(paints) <= MOST_SECONDS,
    },
    {
      what: `${name}: layout shift`,
      measured: shift.toFixed(3),
      budget: `${MOST_SHIFT}`,
      isWithin: shift <= MOST_SHIFT,
    },
  ];
}

/** What a page's observers have noted. */
type Noted = typeof globalThis & { paint?: number; shift?: number };

async function openSlowly(browser: Browser, address: string): Promise<Painted> {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 } });
  try {
    const page = await context.newPage();
    page.setDefaultTimeout(LONGEST);
    const session = await context.newCDPSession(page);
    await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWER });
    await session.send('Network.enable');
    await session.send('Network.emulateNetworkConditions', {
      offline: false,
      latency: ROUND_TRIP,
      downloadThroughput: BYTES,
      uploadThroughput: BYTES / 2,
    });
    await page.addInitScript(() => {
      const noted = globalThis as Noted;
      noted.shift = 0;
      new PerformanceObserver((list) => {
        noted.paint = list.getEntries().at(-1)?.startTime ?? Number.NaN;
      }).observe({ type: 'largest-contentful-paint', buffered: true });
      new PerformanceObserver((list) => {
        for (const it of list.getEntries())
          noted.shift = (noted.shift ?? 0) + (it as unknown as { value: number }).value;
      }).observe({ type: 'layout-shift', buffered: true });
    });
    await page.goto(address, { waitUntil: 'load' });
    await page.waitForTimeout(SETTLED);
    const { paint, shift } = await page.evaluate(() => {
      const noted = globalThis as Noted;
      return { paint: noted.paint, shift: noted.shift };
    });
    if (paint === undefined || shift === undefined) throw new Error(`nothing was painted at ${address}`);
    return { paint: paint / 1000, shift };
  } finally {
    await context.close();
  }
}
