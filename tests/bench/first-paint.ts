import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';
import { CHROMIUM, CHROMIUM_SWITCHES } from '../support/ensure-browser.ts';
import { serveFolder } from '../support/serve-folder.ts';
import { LONGEST } from './open-page.ts';
import { type Opened, openSlowly, SLOWER } from './open-slowly.ts';
import { type PageType, paintPages } from './paint-pages.ts';
import { type Line, median, type Section } from './report.ts';

/** Seconds to the first paint with content, and to the largest; layout shift without a unit. */
const MOST_SECONDS = 1.2;
const MOST_SHIFT = 0.02;
const KB = 1000;
/** Kinds of pages whose largest paint has a budget; of the others a picture or plot may follow. */
const FIRST_READ: readonly string[] = ['guide', 'panel', 'calculation', 'cards'];

/** How soon a phone on a slow line shows each kind of page of a site, and whether anything moves then. */
export async function firstPaint(site: string, title: string, times: number): Promise<Section> {
  if (!existsSync(CHROMIUM)) throw new Error(`no browser at ${CHROMIUM}; name one: CHROMIUM=/path/to/chromium`);
  const served = await serveFolder(site, {}, { isCompressed: true });
  const browser = await chromium.launch({ executablePath: CHROMIUM, args: CHROMIUM_SWITCHES, timeout: LONGEST });
  try {
    const lines: Line[] = [];
    // A browser's first page waits for parts of the browser.
    await openSlowly(browser, `${served.origin}/404.html`);
    for (const type of paintPages(site)) lines.push(await paintLine(browser, served.origin, type, times));
    return {
      title: `First paint, ${title}, a ${SLOWER} times slower processor and slow 4G (Chromium ${browser.version()})`,
      lines,
      remarks: [
        `First and largest contentful paint, ${times === 1 ? 'one opening' : `median of ${times} openings, and the least`}; the heaviest page of each kind.`,
        'From this machine, texts by gzip, on a phone’s screen.',
      ],
    };
  } finally {
    await browser.close();
    await served.close();
  }
}

async function paintLine(browser: Browser, origin: string, { name, path }: PageType, times: number): Promise<Line> {
  const opened: Opened[] = [];
  for (let i = 0; i < times; i++) opened.push(await openSlowly(browser, `${origin}${path}`));
  const of = (what: 'first' | 'largest' | 'shift') => opened.map((it) => it[what]);
  const shift = Math.max(...of('shift'));
  const judged = median(of(FIRST_READ.includes(name) ? 'largest' : 'first'));
  const { html, css, fonts } = opened[0]?.sent ?? { html: 0, css: 0, fonts: 0 };
  const kilobytes = (bytes: number) => (bytes / KB).toFixed(1);
  return {
    what: name,
    measured: `${seconds(of('first'))}, ${seconds(of('largest'))}; shift ${shift.toFixed(3)}`,
    against: `${kilobytes(html)} + ${kilobytes(css)} + ${kilobytes(fonts)} KB of HTML, CSS, typefaces`,
    ratio: judged / MOST_SECONDS,
    budget: `${MOST_SECONDS} s, ${MOST_SHIFT}`,
    isWithin: judged <= MOST_SECONDS && shift <= MOST_SHIFT,
  };
}

/** `0.84 s (0.79)`: the median and the least. */
function seconds(values: readonly number[]): string {
  const middle = `${median(values).toFixed(2)} s`;
  return values.length === 1 ? middle : `${middle} (${Math.min(...values).toFixed(2)})`;
}
