/**
 * One way to walk through the built site in either browser: Chromium over its own protocol, Firefox over WebDriver BiDi.
 * What a walker can do is what a reader does: go, look, press, type.
 */
import { setTimeout as sleep } from 'node:timers/promises';
import puppeteer, { type Browser as Firefox, type Page as FirefoxPage } from 'puppeteer-core';
import { DEMO_SITE } from '../support/demo-folder.ts';
import { FIREFOX } from '../support/ensure-browser.ts';
import { serveFolder } from '../support/serve-folder.ts';
import { workerBrowser } from './worker-browser.ts';

/** The browsers that are walked. */
export const BROWSERS = ['Chromium', 'Firefox'] as const;

/** A page in one of the browsers. */
export interface Walker extends AsyncDisposable {
  /** Everything that the page complained of: scripts' errors, breaches of the policy, answers of 400 and more. */
  complaints: string[];
  go(address: string): Promise<void>;
  /** Presses what is found first, where it stands on the page. */
  press(selector: string): Promise<void>;
  /** Writes into a field that is empty. */
  type(selector: string, text: string): Promise<void>;
  choose(selector: string, value: string): Promise<void>;
  key(name: 'Tab' | 'Enter' | 'Escape' | 'Space'): Promise<void>;
  /** Runs a function in the page; what it needs goes in as one value. */
  ask<Result, Value = undefined>(question: (value: Value) => Result, value?: Value): Promise<Result>;
  /** Waits until a function in the page answers with something true. */
  until<Value = undefined>(question: (value: Value) => unknown, value?: Value): Promise<void>;
}

/** What a page is opened with. */
export interface Setting {
  width: number;
  height: number;
  hasScript?: boolean;
}

/** A browser with the built site. */
export interface Walk {
  open(setting: Setting): Promise<Walker>;
  close(): Promise<void>;
}

/** Starts a browser on the built site. */
export async function startWalk(name: (typeof BROWSERS)[number]): Promise<Walk> {
  const served = await serveFolder(DEMO_SITE);
  const browser = await (name === 'Chromium' ? inChromium(served.origin) : inFirefox(served.origin));
  return {
    open: browser.open,
    close: async () => {
      await browser.close();
      await served.close();
    },
  };
}

/** Everything comes from this machine, which may be busy; what is not there by then never comes. */
const PATIENCE = 60_000;

async function inChromium(origin: string): Promise<Walk> {
  const browser = await workerBrowser();
  return {
    open: async ({ width, height, hasScript = true }) => {
      const context = await browser.newContext({ viewport: { width, height }, javaScriptEnabled: hasScript });
      const page = await context.newPage();
      page.setDefaultTimeout(PATIENCE);
      const complaints: string[] = [];
      page.on('console', (it) => {
        if (it.type() === 'error' || it.type() === 'warning') complaints.push(`${it.type()}: ${it.text()}`);
      });
      page.on('pageerror', (it) => complaints.push(`script: ${it.message}`));
      page.on('response', (it) => {
        if (it.status() >= 400) complaints.push(`${it.status()}: ${it.url()}`);
      });
      return {
        complaints,
        go: async (address) => {
          await page.goto(origin + address);
        },
        press: (selector) => page.locator(selector).first().click(),
        type: (selector, text) => page.locator(selector).first().pressSequentially(text),
        choose: async (selector, value) => {
          await page.locator(selector).first().selectOption(value);
        },
        key: (key) => page.keyboard.press(key),
        ask: (question, value) => page.evaluate(question as never, value as never),
        until: async (question, value) => {
          await page.waitForFunction(question as never, value as never);
        },
        [Symbol.asyncDispose]: () => context.close(),
      };
    },
    close: () => browser.close(),
  };
}

async function inFirefox(origin: string): Promise<Walk> {
  const browser: Firefox = await puppeteer.launch({
    browser: 'firefox',
    executablePath: FIREFOX,
    headless: true,
    defaultViewport: null,
    extraPrefsFirefox: {
      'datareporting.policy.dataSubmissionEnabled': false,
      'network.captive-portal-service.enabled': false,
    },
  });
  return {
    open: async ({ width, height, hasScript = true }) => {
      const page = await browser.newPage();
      page.setDefaultTimeout(PATIENCE);
      await setSize(page, width, height);
      if (!hasScript) throw new Error('Firefox is asked to go without scripts by its settings alone');
      const complaints: string[] = [];
      page.on('console', (it) => {
        if (it.type() === 'error' || it.type() === 'warn') complaints.push(`${it.type()}: ${it.text()}`);
      });
      page.on('pageerror', (it) => complaints.push(`script: ${String(it)}`));
      page.on('response', (it) => {
        if (it.status() >= 400) complaints.push(`${it.status()}: ${it.url()}`);
      });
      return {
        complaints,
        go: async (address) => {
          await page.goto(origin + address);
        },
        press: (selector) => page.click(selector),
        type: (selector, text) => page.type(selector, text),
        choose: async (selector, value) => {
          await page.select(selector, value);
        },
        key: (key) => page.keyboard.press(key),
        ask: (question, value) => page.evaluate(question as never, value as never) as never,
        until: async (question, value) => {
          await poll(async () => page.evaluate(question as never, value as never));
        },
        [Symbol.asyncDispose]: () => page.close(),
      };
    },
    close: () => browser.close(),
  };
}

/**
 * Sets the window. The library turns the screen with it, which older Firefox does not know; the size is taken all the
 * same.
 */
async function setSize(page: FirefoxPage, width: number, height: number): Promise<void> {
  try {
    await page.setViewport({ width, height });
  } catch (error) {
    if (!(error instanceof Error) || !error.message.includes('unknown command')) throw error;
  }
  await poll(() => page.evaluate((wanted: number) => window.innerWidth === wanted, width));
}

/** Asks again and again, as the library's own way of waiting is shut out by the pages' policy. */
async function poll(question: () => Promise<unknown>): Promise<void> {
  const end = Date.now() + PATIENCE;
  while (!(await question())) {
    if (Date.now() > end) throw new Error('the page has not come to what was waited for');
    await sleep(50);
  }
}
