import { existsSync } from 'node:fs';
import { type Browser, chromium, type Page } from 'playwright-core';
import { CHROMIUM, CHROMIUM_SWITCHES } from '../support/ensure-browser.ts';
import { atRest } from './at-rest.ts';
import { type BuiltPage, builtPage } from './built-page.ts';
import { LONGEST, openPage } from './open-page.ts';
import { type Line, median, type Section, spread } from './report.ts';
import { sortPage } from './sort-page.ts';

const MOST_SORT = 35;

/** One way to sort a table, timed on a page of its own. */
interface Way {
  name: string;
  /** The page with the table. */
  html: string;
  /** Brings the page to the state that is timed. */
  prepare?: (page: Page) => Promise<void>;
  /** What is clicked for a column. */
  button: (column: number) => string;
  columns: readonly number[];
  /** Click every column once before the timed clicks. */
  isWarm: boolean;
  /** Whether every row must be live while it is timed, or fewer. */
  isWhole: boolean;
  /** Held against the budget. */
  isJudged?: boolean;
}

interface Timed {
  way: Way;
  live: number;
  times: number[];
}

/** Places of columns in the head, from 1. */
const NAME = 2;
/** Price, light, efficiency, mean, peak. */
const NUMBERS = [5, 6, 7, 8, 9];

/**
 * Milliseconds from a click on a heading to after the next paint of the page's own thread, over a table of so
 * many rows, each way on its own page. Painting on the screen itself, which a window without one skips, is not in it.
 */
export async function sortTime(site: string, rows: number, clicks: number): Promise<Section> {
  if (!existsSync(CHROMIUM)) throw new Error(`no browser at ${CHROMIUM}; name one: CHROMIUM=/path/to/chromium`);
  const guide = builtPage(site, 'index.html');
  const browser = await chromium.launch({ executablePath: CHROMIUM, args: CHROMIUM_SWITCHES, timeout: LONGEST });
  try {
    const timed: Timed[] = [];
    for (const way of waysToSort(guide, rows)) timed.push(await timeClicks(browser, site, way, rows, clicks));
    const plain = timed.at(-1)?.times ?? [];
    return {
      title: `Sorting ${rows} rows, click to after the next paint, median of ${clicks} clicks (Chromium ${browser.version()})`,
      lines: timed.map((it) => sortLine(it, plain)),
    };
  } finally {
    await browser.close();
  }
}

/** Ours in its states, and last the yardstick. Table libraries are further ways: a page with their script each. */
function waysToSort(guide: BuiltPage, rows: number): Way[] {
  const ours = {
    html: sortPage(guide, rows, true),
    button: (column: number) => `thead th:nth-child(${column}) button`,
    columns: NUMBERS,
    isWhole: false,
  };
  return [
    { ...ours, name: 'ours, by a number', isWarm: true, isJudged: true },
    { ...ours, name: 'ours, a column’s first click', isWarm: false, isJudged: true },
    {
      ...ours,
      name: 'ours, over all sizes',
      isWarm: true,
      isJudged: true,
      prepare: async (page) => void (await page.selectOption('#order-scope', 'all')),
    },
    { ...ours, name: 'ours, by name', columns: [NAME], isWarm: true, isJudged: true },
    { ...ours, name: 'ours, “show all”', isWarm: true, isWhole: true, prepare: (page) => page.click('button.more') },
    {
      name: 'plain, every row put back in order',
      html: sortPage(guide, rows, false),
      button: (column) => `thead th:nth-child(${column})`,
      columns: NUMBERS,
      isWarm: true,
      isWhole: true,
      prepare: (page) => page.evaluate(sortPlainly),
    },
  ];
}

function sortLine({ way, live, times }: Timed, plain: readonly number[]): Line {
  const time = median(times);
  return {
    what: `${way.name}, ${live} rows live`,
    measured: spread(times, 'ms', 1),
    ...(times !== plain && { against: `${median(plain).toFixed(0)} ms plain`, ratio: time / median(plain) }),
    ...(way.isJudged && { budget: `${MOST_SORT} ms`, isWithin: time <= MOST_SORT }),
  };
}

async function timeClicks(browser: Browser, site: string, way: Way, rows: number, clicks: number): Promise<Timed> {
  const times: number[] = [];
  let live = 0;
  // First clicks on a column are used up after one round: then the page is loaded anew.
  while (times.length < clicks) {
    const page = await openPage(browser, site, way.html);
    await way.prepare?.(page);
    await atRest(page);
    live = await page.locator('#ranking tr[data-f]').count();
    if (live > rows || (live === rows) !== way.isWhole)
      throw new Error(`${way.name}: ${live} of ${rows} rows are live`);
    if (way.isWarm) for (const column of way.columns) await timeClick(page, way.button(column));
    const round = way.isWarm ? clicks : Math.min(way.columns.length, clicks - times.length);
    for (let i = 0; i < round; i++) {
      times.push(await timeClick(page, way.button(way.columns[i % way.columns.length] as number)));
    }
    await page.close();
  }
  return { way, live, times };
}

async function timeClick(page: Page, selector: string): Promise<number> {
  await atRest(page);
  const { time, changed } = await page.evaluate(clickToPaint, selector);
  if (!changed) throw new Error(`a click on ${selector} did not change the order`);
  return time;
}

/** Runs in the page: a frame's callback comes before its layout and paint, the most urgent task asked for in it after them. */
function clickToPaint(selector: string): Promise<{ time: number; changed: boolean }> {
  const button = document.querySelector<HTMLElement>(selector);
  if (!button) throw new Error(`nothing to click: ${selector}`);
  const exponent = () => [...document.querySelectorAll('#ranking tr[data-f]')].slice(0, 5);
  const before = exponent();
  return new Promise((resolve) => {
    const start = performance.now();
    button.click();
    requestAnimationFrame(() => {
      void scheduler.postTask(
        () => {
          const time = performance.now() - start;
          resolve({ time, changed: exponent().some((row, i) => row !== before[i]) });
        },
        { priority: 'user-blocking' },
      );
    });
  });
}

/** Runs in the page: the plainest way to sort a table, which reads its cells and puts all rows of a body back in order. */
function sortPlainly(): void {
  document.querySelectorAll('thead th').forEach((head, column) => {
    let sign = -1;
    head.addEventListener('click', () => {
      sign = -sign;
      // A gap comes last.
      const value = (row: HTMLTableRowElement) => {
        const number = Number.parseFloat((row.cells[column]?.textContent ?? '').replace(/[^\d.]/g, ''));
        return Number.isNaN(number) ? Number.POSITIVE_INFINITY : sign * number;
      };
      for (const body of document.querySelectorAll<HTMLTableSectionElement>('#ranking tbody')) {
        const [first, ...rows] = [...body.rows];
        const keys = new Map(rows.map((row) => [row, value(row)]));
        rows.sort((a, b) => (keys.get(a) ?? 0) - (keys.get(b) ?? 0) || 0);
        body.append(...(first ? [first] : []), ...rows);
      }
    });
  });
}
