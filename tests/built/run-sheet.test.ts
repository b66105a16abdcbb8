/** The run sheet: two sides of paper for any field, and a blank for every field of a session. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { sessionSchema } from '../../src/content/schema/session.ts';
import { blocksIn, type JsonSchema, jsonSchemaOf } from '../../src/content/templates/json-schema.ts';
import { DEMO_SITE } from '../support/demo-folder.ts';
import { type OpenSite, openSite } from './browser.ts';
import { attribute, PAGES, pageAt, textOf } from './site.ts';

const ADDRESS = '/bench/sheet/';
const sheet = pageAt(ADDRESS).document;
const all = (selector: string) => sheet.querySelectorAll(selector);

/** The fields of a schema, as the sheet writes them: places of lists have no number here. */
function fieldsOf(schema: JsonSchema, path = ''): string[] {
  const blocks = blocksIn(schema).filter((it) => !('struck' in (it.properties ?? {})));
  if (blocks.length === 0) return [path];
  return blocks.flatMap(({ properties = {} }) =>
    Object.entries(properties).flatMap(([name, field]) => fieldsOf(field, path === '' ? name : `${path}.${name}`)),
  );
}

const FIELDS = new Set(fieldsOf(jsonSchemaOf(sessionSchema)));
const WRITTEN = all('.run-sheet code').map(textOf);
const withoutPlaces = (path: string) => path.replace(/\[[^\]]*\]/g, '');

/** On the sheet in another form than by the whole name of the field. */
const OTHERWISE: Readonly<Record<string, string>> = {
  'beyond.edge': 'beyond[…].edge, .past',
  'beyond.past': 'beyond[…].edge, .past',
  'photos.file': 'photos',
  'photos.shows': 'photos',
  'photos.by': 'photos',
};
/** Said of a file and not read at a bench, or written by a meter itself. */
const NOT_READ =
  /^(carried\b|draft$|instruments\.|(?:spectra|sweeps|warmUpLog|waveforms|wallPhoto|soundClips|otherFiles)\b)/;

describe('the blanks', () => {
  const paths = all('.run-sheet td.blank code').map(textOf);

  test('are fields of a session, each once', () => {
    const own = paths.filter((it) => !it.startsWith('readings[]'));
    expect(own.length).toBeGreaterThan(50);
    expect(new Set(own).size).toBe(own.length);
    for (const path of own) expect(FIELDS, path).toContain(withoutPlaces(path));
  });

  test('and no field of a session is without one', () => {
    const written = new Set(WRITTEN.map(withoutPlaces));
    const absent = [...FIELDS].filter(
      (it) => !NOT_READ.test(it) && !written.has(it) && !WRITTEN.includes(OTHERWISE[it] ?? ''),
    );
    expect(absent).toEqual([]);
  });

  test('the guide’s meters are named by their fields, each with the state of its calibration', () => {
    const meters = all('[data-meter]');
    expect(meters.length).toBeGreaterThan(5);
    for (const it of meters) {
      const [kind, id] = attribute(it, 'data-meter').split(':');
      expect(textOf(it)).toContain(`${kind}: ${id}`);
      expect(textOf(it.querySelector('[data-state]'))).toMatch(/^(holds to|expired|not calibrated yet)/);
    }
  });

  test('the check standard has its expected range', () => {
    expect(textOf(sheet.querySelector('section[aria-labelledby="standard"]'))).toMatch(
      /Bench lamp.*40\.94 to 42\.33 mW\/cm²/,
    );
  });
});

describe('in a browser', () => {
  let site: OpenSite;
  beforeAll(async () => {
    site = await openSite();
  });
  afterAll(() => site.close());

  async function sheets(page: Page): Promise<number> {
    const pdf = await page.pdf({ preferCSSPageSize: true });
    return pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0;
  }

  /** Parts of drawings that reach out of their picture. */
  const clipped = (page: Page) =>
    page.evaluate(() =>
      [...document.querySelectorAll<SVGSVGElement>('.bench-field')].flatMap((picture) => {
        const frame = picture.getBoundingClientRect();
        return [...picture.children].flatMap((it) => {
          const { left, right, top, bottom } = it.getBoundingClientRect();
          const isIn =
            left >= frame.left - 1 && right <= frame.right + 1 && top >= frame.top - 1 && bottom <= frame.bottom + 1;
          return isIn ? [] : [it.outerHTML];
        });
      }),
    );

  test('any field takes two sides of A4 at most, and no drawing is cut off', async () => {
    await using opened = await site.open(ADDRESS);
    const { page } = opened;
    await page.evaluate(() => document.fonts.ready);
    const sides = [
      ['5 cm', '5 cm', 3, 3],
      ['60 cm', '200 cm', 3, 3],
      ['60 cm', '200 cm', 5, 8],
      ['60 cm', '5 cm', 3, 3],
      ['20 cm', '60 cm', 2, 5],
    ] as const;
    for (const [width, height, columns, rows] of sides) {
      await page.fill('#sheet-width', width);
      await page.fill('#sheet-height', height);
      await page.fill('#sheet-columns', String(columns));
      await page.fill('#sheet-rows', String(rows));
      expect(await page.locator('.bench-points .bench-field circle').count()).toBe(columns * rows);
      expect(await clipped(page)).toEqual([]);
      expect(await sheets(page), `${width} × ${height}, ${columns} × ${rows}`).toBe(2);
    }
  });

  test('a panel brings its field, its meters and what nine points would miss', async () => {
    await using opened = await site.open(`${ADDRESS}?panel=kelpwright-gannet&date=2031-01-01`);
    const { page } = opened;
    const said = (selector: string) => page.locator(selector).textContent();
    expect(await said('[data-sheet-sides]')).toBe('36 cm × 120 cm');
    expect(await said('[data-sheet-date]')).toBe('1 Jan 2031');
    expect(await said('[data-sheet-bias]')).toMatch(
      /^The mean of 3 × 3 points is expected to be off by −\d+\s% to −\d+\s%\./,
    );
    expect(await said('[data-sheet-bias]')).toMatch(/for 11 more points: 33 readings/);
    expect(await said('.bench-meters')).toContain('irradiance: bench-thermopile');
    // Years later every calibration has run out, and the sheet says so by a word.
    const states = await page.locator('[data-meter]:visible [data-state]').allTextContents();
    expect(states.filter((it) => !it.startsWith('expired'))).toEqual([]);
    expect(states.length).toBeGreaterThan(5);
  });

  test('what is typed goes to the address, and what can’t be used is said', async () => {
    await using opened = await site.open(ADDRESS);
    const { page } = opened;
    await page.fill('#sheet-width', '8 in');
    await page.fill('#sheet-height', '60 W');
    expect(new URL(page.url()).search).toBe('?width=8+in');
    expect(await page.locator('[data-sheet-said]').textContent()).toContain('“60 W” is no height: a length such as');
    await page.fill('#sheet-height', '24 in');
    await page.fill('#sheet-inset', '4 in');
    expect(await page.locator('[data-sheet-said]').textContent()).toContain('An inset of 4 in leaves no room');
    expect(await page.locator('[data-sheet-points] tr').first().textContent()).toContain('4 in');
  });

  test('without a script it is a blank sheet whose places are formulas', async () => {
    await using opened = await site.open(ADDRESS, { javaScriptEnabled: false });
    const { page } = opened;
    expect(await page.locator('[data-sheet-points] tr').nth(2).textContent()).toContain('width − 1 in');
    expect(await page.locator('#bench-sheet').isVisible()).toBe(false);
    expect(await sheets(page)).toBe(2);
  });
});

test('no other page loads its scripts, and three lead to it', () => {
  // By what is in it: its name tells nothing.
  const script = all('script[src]')
    .map((it) => attribute(it, 'src'))
    .find((it) => readFileSync(join(DEMO_SITE, it), 'utf8').includes('data-sheet-points'));
  expect(script).toBeDefined();
  expect(PAGES.filter((it) => it.html.includes(script ?? '-')).map((it) => it.address)).toEqual([ADDRESS]);
  const leading = PAGES.filter((it) => it.html.includes(`href="${ADDRESS}"`)).map((it) => it.address);
  expect(leading.toSorted()).toEqual(['/bench/', '/instruments/', '/methods/bench-procedure/']);
});
