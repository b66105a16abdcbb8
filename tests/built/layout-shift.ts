import type { Page } from 'playwright-core';

/** The most that counts as standing still: a fifth of what Web Vitals call good (0.1, from memory). */
export const STILL = 0.02;

/** The sum of all that has moved on a page since it was opened, without what a reader's own act moved. */
export function layoutShift(page: Page): Promise<number> {
  return page.evaluate(
    () =>
      new Promise<number>((tell) => {
        let sum = 0;
        new PerformanceObserver((list) => {
          for (const it of list.getEntries()) if ('value' in it) sum += Number(it.value);
        }).observe({ type: 'layout-shift', buffered: true });
        setTimeout(() => tell(sum), 500);
      }),
  );
}
