/**
 * The browser of the test files that one worker runs, started with the first. It is driven from the worker itself: one for
 * all workers would be driven by the main process, and all that is said to it written and read twice.
 */
import { type Browser, type BrowserContext, chromium } from 'playwright-core';
import { CHROMIUM, CHROMIUM_SWITCHES } from '../support/ensure-browser.ts';

/** What a test file has of it. */
export interface WorkerBrowser {
  newContext: Browser['newContext'];
  /** Closes what was opened through this one; the browser itself ends with the worker. */
  close(): Promise<void>;
}

let started: Promise<Browser> | undefined;

/** The browser of this worker, for a test file to open its windows in. */
export async function workerBrowser(): Promise<WorkerBrowser> {
  started ??= chromium.launch({ executablePath: CHROMIUM, args: [...CHROMIUM_SWITCHES] });
  const browser = await started;
  const opened: BrowserContext[] = [];
  return {
    newContext: async (options) => {
      const context = await browser.newContext(options);
      opened.push(context);
      return context;
    },
    close: async () => {
      await Promise.all(opened.map((it) => it.close()));
    },
  };
}
