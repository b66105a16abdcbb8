/** Windows of a browser that serve one test after another: to open one afresh takes as long as to load a page into it. */
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';

/** What opens windows. */
type Opener = Pick<Browser, 'newContext'>;

/** A window with an empty page in it. */
export interface Window {
  page: Page;
  /** As it was, for the next test. */
  giveBack(): Promise<void>;
}

/** Gives windows out, one to each that asks; those that were given back first. */
export function windowPool(browser: Opener) {
  const idle = new Map<string, Page[]>();
  return {
    async take({
      viewport,
      colorScheme,
      reducedMotion,
      forcedColors,
      ...lasting
    }: BrowserContextOptions): Promise<Window> {
      // All else that a window is opened with stays with it.
      const kind = JSON.stringify(lasting);
      const free = idle.get(kind) ?? [];
      idle.set(kind, free);
      const page = free.pop() ?? (await newPage(browser, lasting));
      if (viewport) await page.setViewportSize(viewport);
      await page.emulateMedia({
        media: null,
        colorScheme: colorScheme ?? 'light',
        reducedMotion: reducedMotion ?? 'no-preference',
        forcedColors: forcedColors ?? 'none',
      });
      return {
        page,
        giveBack: async () => {
          if (await emptied(page)) free.push(page);
          else await page.context().close();
        },
      };
    },
  };
}

async function newPage(browser: Opener, options: BrowserContextOptions): Promise<Page> {
  const context = await browser.newContext(options);
  await context.addInitScript(() => {
    addEventListener('securitypolicyviolation', (it) => {
      console.error(`policy: ${it.violatedDirective} ${it.blockedURI}`);
    });
  });
  return await context.newPage();
}

/** Takes out of a window what a test has left in it; false where something may be left. */
async function emptied(page: Page): Promise<boolean> {
  try {
    page.removeAllListeners();
    await page.unrouteAll({ behavior: 'wait' });
    await page.evaluate(() => {
      localStorage.clear();
      sessionStorage.clear();
    });
    await page.context().clearCookies();
    await page.mouse.move(-1, -1);
    await page.goto('about:blank');
    return page.context().pages().length === 1;
  } catch {
    return false;
  }
}
