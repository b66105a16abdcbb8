import type { Browser, CDPSession } from 'playwright-core';
import { LONGEST } from './open-page.ts';

/** A processor so many times slower, and slow 4G: a round trip in ms, bytes a second. */
export const SLOWER = 4;
const ROUND_TRIP = 150;
const BYTES = 1_600_000 / 8;
/** After a page has loaded, ms: what shifts then shifts late. */
const SETTLED = 1000;
const PHONE = { width: 390, height: 844 };

/** What a slow phone sees of a page, and what it waits for. */
export interface Opened {
  /** To the first paint with content in it, and to the largest, s. */
  first: number;
  largest: number;
  /** Sum of all layout shifts. */
  shift: number;
  /** What was sent, bytes, headers with it: the page, what holds back its paint, its faces. */
  sent: { html: number; css: number; fonts: number };
}

/** What a page's observers have noted. */
type Noted = typeof globalThis & { largest?: number; shift?: number };

/**
 * Opens a page in a window with nothing kept, on a slow processor and a slow line.
 *
 * @throws where nothing was painted
 */
export async function openSlowly(browser: Browser, address: string): Promise<Opened> {
  const context = await browser.newContext({ viewport: PHONE });
  try {
    const page = await context.newPage();
    page.setDefaultTimeout(LONGEST);
    const session = await context.newCDPSession(page);
    const sent = await slowDown(session);
    await page.addInitScript(() => {
      const noted = globalThis as Noted;
      noted.shift = 0;
      new PerformanceObserver((list) => {
        noted.largest = list.getEntries().at(-1)?.startTime ?? Number.NaN;
      }).observe({ type: 'largest-contentful-paint', buffered: true });
      new PerformanceObserver((list) => {
        for (const it of list.getEntries())
          noted.shift = (noted.shift ?? 0) + (it as unknown as { value: number }).value;
      }).observe({ type: 'layout-shift', buffered: true });
    });
    await page.goto(address, { waitUntil: 'load' });
    // A busy machine may paint after it has loaded.
    await page.waitForFunction(() => (globalThis as Noted).largest !== undefined);
    await page.waitForTimeout(SETTLED);
    const { first, largest, shift } = await page.evaluate(() => {
      const { largest, shift } = globalThis as Noted;
      return { first: performance.getEntriesByName('first-contentful-paint')[0]?.startTime, largest, shift };
    });
    if (first === undefined || largest === undefined || shift === undefined)
      throw new Error(`nothing is known of the paint of ${address}: ${first}, ${largest}, ${shift}`);
    return { first: first / 1000, largest: largest / 1000, shift, sent };
  } finally {
    await context.close();
  }
}

/** Slows processor and line down, and counts from then on what is sent. */
async function slowDown(session: CDPSession): Promise<Opened['sent']> {
  const sent = { html: 0, css: 0, fonts: 0 };
  const kinds = new Map<string, string>();
  session.on('Network.responseReceived', ({ requestId, type }) => void kinds.set(requestId, type));
  session.on('Network.loadingFinished', ({ requestId, encodedDataLength }) => {
    const kind = kinds.get(requestId);
    if (kind === 'Document') sent.html += encodedDataLength;
    if (kind === 'Stylesheet') sent.css += encodedDataLength;
    if (kind === 'Font') sent.fonts += encodedDataLength;
  });
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWER });
  await session.send('Network.enable');
  await session.send('Network.emulateNetworkConditions', {
    offline: false,
    latency: ROUND_TRIP,
    downloadThroughput: BYTES,
    uploadThroughput: BYTES / 2,
  });
  return sent;
}
