import type { Page } from 'playwright-core';

/** What a page puts off until its rows are painted takes 0.1 s; some of the libraries put work off too. */
const REST_MS = 250;

/**
 * Lets what went before come to an end, so that it does not count, and the screen's beat stop. A page at rest draws a frame as
 * soon as something changes; while frames follow one another an input waits for the next, longest where the page's own work is
 * shortest, and what is timed is the beat.
 */
export async function atRest(page: Page): Promise<void> {
  await page.evaluate(
    (rest) =>
      new Promise<void>((resolve) => {
        requestAnimationFrame(() => requestIdleCallback(() => setTimeout(resolve, rest), { timeout: 500 }));
      }),
    REST_MS,
  );
}
