import { existsSync, readFileSync } from 'node:fs';
import { extname, join } from 'node:path';
import type { Browser, Page } from 'playwright-core';

/** Milliseconds that anything in the browser may take. */
export const LONGEST = 120_000;

const ORIGIN = 'http://guide.example';
const TYPES: Record<string, string> = { '.css': 'text/css', '.js': 'text/javascript', '.svg': 'image/svg+xml' };

/** Opens a page from memory, its files from the built site; nothing else can be reached. */
export async function openPage(browser: Browser, site: string, html: string): Promise<Page> {
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  page.setDefaultTimeout(LONGEST);
  await page.route('**/*', (route) => {
    const { origin, pathname } = new URL(route.request().url());
    if (origin !== ORIGIN) return route.abort();
    if (pathname === '/') return route.fulfill({ contentType: 'text/html; charset=utf-8', body: html });
    const file = join(site, pathname);
    if (!existsSync(file)) return route.fulfill({ status: 404 });
    return route.fulfill({ contentType: TYPES[extname(file)] ?? 'application/octet-stream', body: readFileSync(file) });
  });
  await page.goto(`${ORIGIN}/`, { waitUntil: 'load' });
  return page;
}
