/** The browser of the tests, with the built site open in it. */
import type { BrowserContextOptions, Page } from 'playwright-core';
import { DEMO_SITE } from '../support/demo-folder.ts';
import { type ServedFolder, serveFolder } from '../support/serve-folder.ts';
import { type Window, windowPool } from './window-pool.ts';
import { workerBrowser } from './worker-browser.ts';

/** A page of the site, and everything that it complained of since it was opened. */
export interface OpenPage extends AsyncDisposable {
  page: Page;
  /** Errors of scripts and on the console, breaches of the policy, requests that failed or left the site. */
  complaints: string[];
}

/** The site in a browser. */
export interface OpenSite {
  origin: string;
  open(address: string, options?: BrowserContextOptions): Promise<OpenPage>;
  close(): Promise<void>;
}

/** Sizes of the window: a phone, the narrowest that must do (also a window of 1280 zoomed to 400 %), a desk. */
export const PHONE = { width: 390, height: 844 };
export const NARROWEST = { width: 320, height: 640 };
export const DESK = { width: 1440, height: 900 };

/**
 * Serves the built site to the browser of this worker.
 *
 * @param extra pages that are not in the site, by their path
 */
export async function openSite(extra: Readonly<Record<string, string>> = {}): Promise<OpenSite> {
  return openServed(await serveFolder(DEMO_SITE, extra));
}

/** Opens what is served already to the browser of this worker; with the site, the server is closed. */
export async function openServed(served: ServedFolder): Promise<OpenSite> {
  const browser = await workerBrowser();
  const windows = windowPool(browser);
  return {
    origin: served.origin,
    open: async (address, options) => {
      const window = await windows.take({ viewport: DESK, ...options });
      return await openPage(window, served.origin, address);
    },
    close: async () => {
      await browser.close();
      await served.close();
    },
  };
}

async function openPage({ page, giveBack }: Window, origin: string, address: string): Promise<OpenPage> {
  // Everything comes from this machine, which may be busy; what is not there by then never comes.
  page.setDefaultTimeout(60_000);
  const complaints: string[] = [];
  page.on('console', (it) => {
    if (it.type() === 'error' || it.type() === 'warning') complaints.push(`${it.type()}: ${it.text()}`);
  });
  page.on('pageerror', (it) => complaints.push(`script: ${it.message}`));
  page.on('requestfailed', (it) => {
    // A request that was still on its way when the page was left is no fault.
    const error = it.failure()?.errorText ?? '';
    if (error !== 'net::ERR_ABORTED') complaints.push(`failed: ${it.url()} ${error}`);
  });
  page.on('response', (it) => {
    if (it.status() >= 400) complaints.push(`${it.status()}: ${it.url()}`);
  });
  page.on('request', (it) => {
    if (new URL(it.url()).origin !== origin) complaints.push(`left the site: ${it.url()}`);
  });
  await page.goto(origin + address);
  return { page, complaints, [Symbol.asyncDispose]: giveBack };
}
