/** What a checker of accessibility finds on an open page, and whether the page fits its window. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { AxeResults, RunOptions } from 'axe-core';
import type { Page } from 'playwright-core';
import { DESK, PHONE } from './browser.ts';

const AXE = readFileSync(fileURLToPath(import.meta.resolve('axe-core/axe.min.js')), 'utf8');

/** All that can differ between light and dark. */
const COLOUR_RULES = ['color-contrast', 'link-in-text-block'];
export const COLOURS: RunOptions = { runOnly: { type: 'rule', values: COLOUR_RULES } };
export const EVERYTHING: RunOptions = {
  runOnly: { type: 'tag', values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] },
};
const ALL_BUT_COLOURS: RunOptions = {
  ...EVERYTHING,
  rules: Object.fromEntries(COLOUR_RULES.map((it) => [it, { enabled: false }])),
};

/**
 * Every look of a page with what can only be wrong in it: no style sheet sets a colour by the window's width (a test
 * sees to that), and judging colours takes most of the checker's time.
 */
const LOOKS = [
  { viewport: DESK, colorScheme: 'light', rules: EVERYTHING },
  { viewport: DESK, colorScheme: 'dark', rules: COLOURS },
  { viewport: PHONE, colorScheme: 'light', rules: ALL_BUT_COLOURS },
] as const;

/** Brings the checker into a page; once for each that was opened. */
export async function bringChecker(page: Page): Promise<void> {
  await page.evaluate(AXE);
}

/** What the checker finds on a page as it stands. */
export async function violations(page: Page, rules: RunOptions): Promise<string[]> {
  const found = await page.evaluate(
    (options) => (globalThis as unknown as { axe: { run(options: RunOptions): Promise<AxeResults> } }).axe.run(options),
    { ...rules, resultTypes: ['violations'] } satisfies RunOptions,
  );
  return found.violations.flatMap((it) => it.nodes.map((node) => `${it.id}: ${node.target.join(' ')} ${node.html}`));
}

/** What the checker finds on a page in light and dark, on a desk and on a phone. */
export async function faultsInAllLooks(page: Page): Promise<string[]> {
  await bringChecker(page);
  const faults: string[] = [];
  for (const { viewport, colorScheme, rules } of LOOKS) {
    await page.setViewportSize(viewport);
    await page.emulateMedia({ colorScheme });
    const found = await violations(page, rules);
    faults.push(...found.map((it) => `${viewport.width} pixels, ${colorScheme}: ${it}`));
  }
  return faults;
}

/** Pixels that the page is too wide for its window. */
export async function excess(page: Page): Promise<number> {
  return page.evaluate(() => {
    const scroller = document.scrollingElement ?? document.documentElement;
    return scroller.scrollWidth - scroller.clientWidth;
  });
}
