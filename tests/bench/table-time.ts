/**
 * Sorting and filtering the guide's table beside general table libraries, in the same browser, at the same rows and
 * columns: milliseconds from the input, in a page at rest, to after the paint in which the rows have changed. All draw a dozen
 * rows with all their columns.
 */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { type Browser, chromium, type Page } from 'playwright-core';
import { CHROMIUM, CHROMIUM_SWITCHES } from '../support/ensure-browser.ts';
import { atRest } from './at-rest.ts';
import { builtPage } from './built-page.ts';
import { libraryPages } from './library-pages.ts';
import { LONGEST, openPage } from './open-page.ts';
import { type Line, median, type Section, spread } from './report.ts';
import { sortPage } from './sort-page.ts';

const MOST_MS = 35;

interface Contestant {
  name: string;
  html: string;
  scriptKb: number;
  isOurs: boolean;
}

interface Result extends Contestant {
  sorts: number[];
  filters: number[];
}

/** Our table and the libraries', timed in turn. */
export async function tableTime(site: string, rows: number, times: number): Promise<Section> {
  if (!existsSync(CHROMIUM)) throw new Error(`no browser at ${CHROMIUM}; name one: CHROMIUM=/path/to/chromium`);
  const guide = builtPage(site, 'index.html');
  const ours: Contestant = {
    name: 'ours',
    html: sortPage(guide, rows, true),
    scriptKb: ourScript(site, guide.html),
    isOurs: true,
  };
  const others = libraryPages(rows).map((it): Contestant => ({ ...it, isOurs: false }));
  const browser = await chromium.launch({ executablePath: CHROMIUM, args: CHROMIUM_SWITCHES, timeout: LONGEST });
  try {
    const results: Result[] = [];
    for (const it of [ours, ...others]) {
      try {
        results.push(await timed(browser, site, it, times));
      } catch (error) {
        throw new Error(`${it.name}: ${error instanceof Error ? error.message : error}`);
      }
    }
    const [own, ...rest] = results as [Result, ...Result[]];
    return {
      title: `Sorting and filtering ${rows} rows beside table libraries, median of ${times} (Chromium ${browser.version()})`,
      lines: [
        ...lines('sort', own, rest, (it) => it.sorts),
        ...lines('filter', own, rest, (it) => it.filters),
        ...results.map(
          (it): Line => ({
            what: `script, ${it.name}`,
            measured: `${it.scriptKb.toFixed(1)} KB gzip`,
            ...(it.isOurs && {
              budget: 'less than each',
              isWithin: rest.every((other) => it.scriptKb < other.scriptKb),
            }),
          }),
        ),
      ],
      remarks: ['simple-datatables has no filter on numbers: its search stands in.'],
    };
  } finally {
    await browser.close();
  }
}

function lines(what: string, own: Result, rest: readonly Result[], of: (it: Result) => readonly number[]): Line[] {
  const time = median(of(own));
  const fastest = Math.min(...rest.map((it) => median(of(it))));
  return [
    {
      what: `${what}, ours`,
      measured: spread(of(own), 'ms', 1),
      against: `${fastest.toFixed(1)} ms the fastest other`,
      ratio: time / fastest,
      budget: `${MOST_MS} ms, and the fastest`,
      isWithin: time <= MOST_MS && time < fastest,
    },
    ...rest.map((it): Line => ({ what: `${what}, ${it.name}`, measured: spread(of(it), 'ms', 1) })),
  ];
}

/** All scripts that the guide's page loads by itself, what they import at once included. */
function ourScript(site: string, html: string): number {
  const seen = new Set<string>();
  const visit = (path: string): number => {
    if (seen.has(path)) return 0;
    seen.add(path);
    const text = readFileSync(join(site, path), 'utf8');
    const imports = [...text.matchAll(/(?:from|import)\s*"(\.\/[^"]+\.js)"/g)].map((it) =>
      join('_astro', it[1] as string),
    );
    return gzipSync(text, { level: 9 }).length / 1000 + imports.reduce((sum, it) => sum + visit(it), 0);
  };
  const sources = [...html.matchAll(/<script\b[^>]*\bsrc="\/([^"]+)"/g)].map((it) => it[1] as string);
  return sources.reduce((sum, it) => sum + visit(it), 0);
}

async function timed(browser: Browser, site: string, it: Contestant, times: number): Promise<Result> {
  const page = await openPage(browser, site, it.html);
  if (it.isOurs) await page.evaluate(ourHandles);
  await page.waitForFunction(() => (window as unknown as { isReady?: boolean }).isReady === true, undefined, {
    timeout: LONGEST,
  });
  const sorts: number[] = [];
  const filters: number[] = [];
  // The first two rounds make things ready, for all alike.
  for (let i = -2; i < times; i++) {
    const sort = await act(page, 'sortBy', 1 + (Math.abs(i) % 4), i % 2 === 0);
    if (i >= 0) sorts.push(sort);
  }
  // By name, so that cheap panels are not all on top.
  await act(page, 'sortBy', 0, false);
  for (let i = -2; i < times; i++) {
    // In turn few and many rows are left, so that each changes what is seen.
    const filter = await act(page, 'filterBelow', it.isOurs ? (i % 2 === 0 ? 60 : 190) : i % 2 === 0 ? 210 : 870);
    if (i >= 0) filters.push(filter);
  }
  await page.close();
  return { ...it, sorts, filters };
}

/** Runs in our page: the two acts as a reader does them, over all sizes as the libraries do. */
function ourHandles(): void {
  const handles = window as unknown as Record<string, unknown>;
  const heads = [...document.querySelectorAll('#ranking thead th:has(button)')];
  const scope = document.querySelector<HTMLSelectElement>('#order-scope') as HTMLSelectElement;
  scope.value = 'all';
  scope.dispatchEvent(new Event('change', { bubbles: true }));
  // A press turns the order round; which way it is now is not of interest here.
  handles.sortBy = (column: number) => heads[column]?.querySelector('button')?.click();
  const field = document.querySelector<HTMLInputElement>('input[name="price-to"]') as HTMLInputElement;
  handles.filterBelow = (value: number) => {
    field.value = String(value);
    field.dispatchEvent(new Event('input', { bubbles: true }));
  };
  handles.isReady = true;
}

async function act(page: Page, handle: 'sortBy' | 'filterBelow', ...args: unknown[]): Promise<number> {
  await atRest(page);
  return page.evaluate(actToPaint, { handle, args });
}

/** Runs in the page: from the act to the end of the first frame whose rows are others than before. */
function actToPaint({ handle, args }: { handle: string; args: unknown[] }): Promise<number> {
  const run = (window as unknown as Record<string, (...given: unknown[]) => unknown>)[handle];
  const rows = () =>
    [...document.querySelectorAll('tbody tr, .ag-center-cols-container [role=row], .tabulator-row')]
      // One library leaves its rows where they are in the page, and numbers them.
      .sort((a, b) => Number(a.getAttribute('row-index')) - Number(b.getAttribute('row-index')))
      .slice(0, 6)
      .map((it) => it.textContent)
      .join();
  const before = rows();
  return new Promise((resolve, reject) => {
    const start = performance.now();
    run?.(...args);
    let frames = 0;
    const frame = () => {
      const isChanged = rows() !== before;
      // Comes before what a page puts off until after its paint.
      void scheduler.postTask(
        () => {
          if (isChanged) resolve(performance.now() - start);
          else if (++frames > 200) reject(new Error(`${handle} changed nothing`));
          else requestAnimationFrame(frame);
        },
        { priority: 'user-blocking' },
      );
    };
    requestAnimationFrame(frame);
  });
}
