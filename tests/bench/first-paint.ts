import { globSync, readFileSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { type Browser, chromium } from 'playwright-core';
import { CHROMIUM, CHROMIUM_SWITCHES } from '../support/ensure-browser.ts';
import { type Line, median, type Section } from './report.ts';

const SLOWER = 4;
/** Slow 4G as it is usually emulated: 1.6 Mbit/s down, 750 kbit/s up, 150 ms to the server and back. From memory. */
const NETWORK = { offline: false, latency: 150, downloadThroughput: 1.6e6 / 8, uploadThroughput: 750e3 / 8 };
const MOST_SECONDS = 1.2;
const MOST_SHIFT = 0.02;

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css',
  '.js': 'text/javascript',
  '.svg': 'image/svg+xml',
  '.json': 'application/json',
  '.woff2': 'font/woff2',
  '.avif': 'image/avif',
  '.webp': 'image/webp',
};
const COMPRESSED = new Set(['.html', '.css', '.js', '.svg', '.json']);

/** How soon the largest thing of a page stands there, and how much moves, on a slow phone with a slow line. */
export async function firstPaint(site: string, runs: number): Promise<Section> {
  const panel = heaviestPanel(site);
  await using host = await compressing(site);
  const browser = await chromium.launch({ executablePath: CHROMIUM, args: [...CHROMIUM_SWITCHES] });
  try {
    const lines: Line[] = [];
    for (const [what, path] of [
      ['guide', '/'],
      ['panel', `/panels/${panel}/`],
      ['calculation', `/panels/${panel}/methodology/`],
    ] as const) {
      const seen = [];
      for (let i = 0; i < runs; i++) seen.push(await watched(browser, host.origin + path));
      const paint = median(seen.map((it) => it.paint)) / 1000;
      const shift = Math.max(...seen.map((it) => it.shift));
      lines.push(
        {
          what: `${what}: largest contentful paint`,
          measured: `${paint.toFixed(2)} s`,
          ratio: paint / MOST_SECONDS,
          budget: `${MOST_SECONDS} s`,
          isWithin: paint <= MOST_SECONDS,
        },
        {
          what: `${what}: layout shift`,
          measured: shift.toFixed(4),
          ratio: shift / MOST_SHIFT,
          budget: String(MOST_SHIFT),
          isWithin: shift <= MOST_SHIFT,
        },
      );
    }
    return {
      title: 'A phone four times slower than this machine, on slow 4G',
      lines,
      remarks: ['1.6 Mbit/s, 150 ms; 390 x 844; everything from an empty cache, compressed as hosts do.'],
    };
  } finally {
    await browser.close();
  }
}

/** The panel whose calculation page is the longest. */
function heaviestPanel(site: string): string {
  const pages = globSync('panels/*/methodology/index.html', { cwd: site });
  const [heaviest] = pages.toSorted((a, b) => statSync(join(site, b)).size - statSync(join(site, a)).size);
  const slug = heaviest?.split(/[/\\]/)[1];
  if (slug === undefined) throw new Error('the built guide has no page of a panel');
  return slug;
}

/** One visit with nothing in the cache. */
async function watched(browser: Browser, address: string): Promise<{ paint: number; shift: number }> {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 } });
  try {
    const page = await context.newPage();
    const session = await context.newCDPSession(page);
    await session.send('Network.enable');
    await session.send('Network.emulateNetworkConditions', NETWORK);
    await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWER });
    await page.addInitScript(() => {
      const seen = { paint: 0, shift: 0 };
      Object.assign(globalThis, { seen });
      new PerformanceObserver((list) => {
        for (const it of list.getEntries()) seen.paint = it.startTime;
      }).observe({ type: 'largest-contentful-paint', buffered: true });
      new PerformanceObserver((list) => {
        for (const it of list.getEntries()) {
          const shift = it as PerformanceEntry & { value: number; hadRecentInput: boolean };
          if (!shift.hadRecentInput) seen.shift += shift.value;
        }
      }).observe({ type: 'layout-shift', buffered: true });
    });
    await page.goto(address, { waitUntil: 'networkidle' });
    await page.waitForTimeout(500);
    return await page.evaluate(() => (globalThis as unknown as { seen: { paint: number; shift: number } }).seen);
  } finally {
    await context.close();
  }
}

/** Serves a folder as a host does, what is text compressed. */
async function compressing(folder: string): Promise<{ origin: string } & AsyncDisposable> {
  const server = createServer((request, response) => {
    const { pathname } = new URL(request.url ?? '/', 'http://localhost');
    const path = pathname.endsWith('/') ? `${pathname}index.html` : pathname;
    try {
      const ending = extname(path);
      const file = readFileSync(join(folder, path));
      const isText = COMPRESSED.has(ending);
      response.writeHead(200, {
        'content-type': TYPES[ending] ?? 'application/octet-stream',
        ...(isText && { 'content-encoding': 'gzip' }),
      });
      response.end(isText ? gzipSync(file) : file);
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return {
    origin: `http://127.0.0.1:${port}`,
    [Symbol.asyncDispose]: () => new Promise<void>((resolve) => server.close(() => resolve())),
  };
}
