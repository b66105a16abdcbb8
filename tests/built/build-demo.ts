/**
 * Before the tests of the built site: the demonstration is laid out, and built for the day that they count on; a browser
 * is started, one for all of them.
 */
import { chromium } from 'playwright-core';
import type { TestProject } from 'vitest/node';
import { TODAY } from '../support/content-folder.ts';
import { DEMO_FOLDER, DEMO_SITE, layDemo } from '../support/demo-folder.ts';
import { CHROMIUM, CHROMIUM_SWITCHES } from '../support/ensure-browser.ts';
import { build } from './build.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** Where the browser listens. */
    browser: string;
  }
}

export async function setup(project: TestProject): Promise<() => Promise<void>> {
  layDemo();
  const { code, stderr } = await build({ LEDGER_CONTENT: DEMO_FOLDER, LEDGER_DIST: DEMO_SITE, LEDGER_TODAY: TODAY });
  if (code !== 0) throw new Error(`the demonstration could not be built:\n${stderr}`);
  const browser = await chromium.launchServer({ executablePath: CHROMIUM, args: [...CHROMIUM_SWITCHES] });
  project.provide('browser', browser.wsEndpoint());
  return () => browser.close();
}
