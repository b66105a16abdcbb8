import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { COMPARE_METRICS } from '../../src/site/compare/browser/compare-rows.ts';
import { excess, faultsInAllLooks } from './accessibility-checker.ts';
import { DESK, NARROWEST, type OpenSite, openSite, PHONE } from './browser.ts';
import { disagreements } from './printed.ts';
import { attribute, currentFigures, pageAt, panelFiles, panelsJson, textOf } from './site.ts';

const data = panelsJson();

/** The first is known in full; then one without a model, one with gaps and marks, one read elsewhere, a large one. */
const FIVE = ['fennimarsh-sedge', 'ruddlestone-r150', 'quennick-dab', 'ostrel-vagg', 'kelpwright-gannet'];
const TWO = FIVE.slice(0, 2);
const addressOf = (slugs: readonly string[]) => `/compare/?with=${slugs.join(',')}`;
const nameOf = (slug: string) => textOf(pageAt(`/panels/${slug}/`).document.querySelector('h1'));

let site: OpenSite;
beforeAll(async () => {
  site = await openSite();
});
afterAll(() => site.close());

/** Waits until that many panels stand side by side, and the status says so. */
async function settled(page: Page, count: number): Promise<void> {
  const words =
    count === 0 ? 'No panel is chosen' : count === 1 ? 'One panel is shown' : `${count} panels side by side`;
  await page.locator('[data-compare-status]', { hasText: words }).waitFor();
}

const heads = (page: Page) => page.locator('.side-by-side').first().locator('thead th a').allInnerTexts();
const queryOf = (page: Page) => new URL(page.url()).search;
const focused = (page: Page) => page.evaluate(() => document.activeElement?.textContent);
const status = (page: Page) => page.locator('[data-compare-status]').textContent();

describe('the figures', () => {
  test('are those of the data file, each with its uncertainty or a reason, and lead to their working', async () => {
    await using opened = await site.open(addressOf(FIVE));
    const { page, complaints } = opened;
    await settled(page, FIVE.length);
    const shown = await page.locator('tr[data-metric]').evaluateAll((rows) =>
      rows.map((row) => ({
        metric: row.getAttribute('data-metric') ?? '',
        method: row.querySelector('th a')?.getAttribute('href'),
        cells: [...row.querySelectorAll('td')].map((cell) => ({
          href: cell.querySelector('a.figure')?.getAttribute('href'),
          gap: cell.querySelector('.gap')?.textContent,
          // What follows the figure: no mark of doubt, no comparison, no date of a price.
          text: [...cell.childNodes]
            .filter((it) => !(it instanceof Element && it.matches('.dagger, .apart')))
            .map((it) => it.textContent)
            .join('')
            .replace(/ on \d+ \w+ \d{4}$/, ''),
        })),
      })),
    );
    expect(shown.map((it) => it.metric)).toEqual(COMPARE_METRICS);
    const faults = shown.flatMap(({ metric, cells }) =>
      FIVE.flatMap((slug, i) => {
        const cell = cells[i];
        const panel = data.panels.find((it) => it.slug === slug);
        const figure = panel && currentFigures(panel)[metric];
        if (!cell || !figure) return [`${slug} ${metric} is not there`];
        if (figure.value === null) {
          return cell.gap === figure.reason ? [] : [`${slug} ${metric}: "${cell.gap}" for: ${figure.reason}`];
        }
        return [
          ...disagreements(cell.text, figure),
          ...(cell.href === `/panels/${slug}/methodology/#${metric}` ? [] : [`leads to ${cell.href}`]),
        ].map((it) => `${slug} ${metric}: ${it}`);
      }),
    );
    expect(faults).toEqual([]);
    for (const it of shown) expect(it.method).toMatch(/^\/methods\/[\w-]+\/$/);
    expect(complaints).toEqual([]);
  });

  test('of the table by distance are those of the data file', async () => {
    await using opened = await site.open(addressOf(TWO));
    const { page } = opened;
    await settled(page, 2);
    const rows = page.getByRole('group', { name: 'Mean irradiance by distance, in numbers' }).locator('tbody tr');
    const panel = data.panels.find((it) => it.slug === TWO[0]);
    const distances = [5, 10, 15, 30, 45, 60];
    expect(await rows.count()).toBe(distances.length);
    for (const [i, cm] of distances.entries()) {
      const figure = panel && currentFigures(panel)[`mean-irradiance-at-${cm}-cm`];
      if (!figure || figure.value === null) throw new Error(`no mean at ${cm} cm`);
      expect(await rows.nth(i).locator('th').textContent()).toBe(`${cm} cm (${(cm / 2.54).toFixed(1)} in)`);
      const text = (await rows.nth(i).locator('td').first().textContent()) ?? '';
      expect(disagreements(text, figure)).toEqual([]);
    }
    // Every panel of the demonstration has a beam that explains its readings.
    expect(await page.locator('[data-compared]').textContent()).not.toContain('Not drawn');
  });

  test('come from the files of the shown panels alone', async () => {
    await using opened = await site.open('/methods/');
    const { page } = opened;
    const asked: string[] = [];
    page.on('request', (it) => asked.push(new URL(it.url()).pathname));
    await page.goto(site.origin + addressOf(TWO));
    await settled(page, 2);
    expect(asked.filter((it) => it.startsWith('/data/')).toSorted()).toEqual([
      '/data/compare.json',
      ...TWO.map((it) => `/data/compare/${it}.json`),
    ]);
  });
});

test('panels that were not read alike are said not to be comparable, where it matters', async () => {
  await using opened = await site.open(addressOf(['fennimarsh-sedge', 'ostrel-vagg']));
  const { page } = opened;
  await settled(page, 2);
  const row = (metric: string) => page.locator(`tr[data-metric="${metric}"]`);
  const words = 'can’t be compared: read at 30 cm, Fennimarsh Electric Sedge at 15.24 cm';
  expect((await row('optical-power').locator('.apart').textContent())?.trim()).toBe(words);
  expect(await row('optical-power').locator('th').textContent()).toContain('not all measured alike');
  expect(await row('emitted-power').locator('.apart').textContent()).toMatch(/^ \d+ to \d+\s% less$/);
  expect(await row('real-price').locator('.apart').textContent()).toMatch(/^ [\d.]+\s% less$/);
});

describe('choosing', () => {
  test('by the keyboard alone: add, make first, remove; the address follows, and the focus is never lost', async () => {
    await using opened = await site.open('/compare/');
    const { page, complaints } = opened;
    await settled(page, 0);
    const add = async (slug: string) => {
      await page.getByLabel('Add a panel').focus();
      // What a reader does by typing the first letters of the name.
      await page.keyboard.type(nameOf(slug).slice(0, 24));
      await page.keyboard.press('Tab');
      await page.keyboard.press('Enter');
    };
    await add('ostrel-lill');
    await settled(page, 1);
    expect(queryOf(page)).toBe('?with=ostrel-lill');
    expect(await focused(page)).toBe('Add');
    await add('quennick-sprat');
    await settled(page, 2);
    await add('kelpwright-limpet');
    await settled(page, 3);
    expect(queryOf(page)).toBe('?with=ostrel-lill,quennick-sprat,kelpwright-limpet');

    await page.getByRole('button', { name: `Make first ${nameOf('kelpwright-limpet')}` }).focus();
    await page.keyboard.press('Enter');
    await page.locator('h2', { hasText: `Against the ${nameOf('kelpwright-limpet')}` }).waitFor();
    expect(queryOf(page)).toBe('?with=kelpwright-limpet,ostrel-lill,quennick-sprat');
    expect(await focused(page)).toBe(nameOf('kelpwright-limpet'));

    await page.getByRole('button', { name: `Remove ${nameOf('ostrel-lill')}` }).focus();
    await page.keyboard.press('Space');
    await settled(page, 2);
    expect(queryOf(page)).toBe('?with=kelpwright-limpet,quennick-sprat');
    expect(await focused(page)).toBe(`Remove ${nameOf('quennick-sprat')}`);
    expect(await heads(page)).toEqual([nameOf('kelpwright-limpet'), nameOf('quennick-sprat')]);

    await page.keyboard.press('Enter');
    await settled(page, 1);
    await page.keyboard.press('Enter');
    await settled(page, 0);
    expect(queryOf(page)).toBe('');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('compare-with');
    expect(complaints).toEqual([]);
  });

  test('can be gone back and forward over', async () => {
    await using opened = await site.open(addressOf(TWO));
    const { page, complaints } = opened;
    await settled(page, 2);
    await page.getByRole('button', { name: `Make first ${nameOf(TWO[1] as string)}` }).click();
    await page.locator('h2', { hasText: `Against the ${nameOf(TWO[1] as string)}` }).waitFor();
    await page.getByRole('button', { name: `Remove ${nameOf(TWO[0] as string)}` }).click();
    await settled(page, 1);
    await page.goBack();
    await settled(page, 2);
    expect(await heads(page)).toEqual(TWO.toReversed().map(nameOf));
    await page.goBack();
    await page.locator('h2', { hasText: `Against the ${nameOf(TWO[0] as string)}` }).waitFor();
    expect(queryOf(page)).toBe(`?with=${TWO.join(',')}`);
    await page.goForward();
    await page.goForward();
    await settled(page, 1);
    expect(await heads(page)).toEqual([nameOf(TWO[1] as string)]);
    expect(complaints).toEqual([]);
  });

  test('a sixth panel is refused in words, and so is none', async () => {
    await using opened = await site.open(addressOf(FIVE));
    const { page } = opened;
    await settled(page, 5);
    await page.getByRole('button', { name: 'Add' }).click();
    expect(await status(page)).toBe('Pick a panel in the list first.');
    await page.getByLabel('Add a panel').selectOption('ostrel-lill');
    await page.getByRole('button', { name: 'Add' }).click();
    expect(await status(page)).toBe('Five panels are the most; remove one first.');
    expect(await heads(page)).toEqual(FIVE.map(nameOf));
  });

  test('offers no withdrawn panel, but a link to one holds and says so', async () => {
    const slug = panelFiles('withdrawn')[0]?.slug as string;
    await using opened = await site.open(addressOf([slug, TWO[0] as string]));
    const { page } = opened;
    await settled(page, 2);
    expect(await page.locator('.side-by-side').first().locator('thead').textContent()).toContain('withdrawn');
    await page.getByRole('button', { name: `Remove ${nameOf(slug)}` }).click();
    await settled(page, 1);
    expect(await page.locator(`#compare-with option[value="${slug}"]`).count()).toBe(0);
  });
});

describe('an address that asks for what can’t be', () => {
  test.each([
    ['/compare/?with=no-such-panel', 0, 'Not in this guide: “no-such-panel”.'],
    [`/compare/?with=${TWO[0]}`, 1, 'Add another to compare it with.'],
    [`/compare/?with=${TWO[0]},${TWO[0]},${TWO[1]}`, 2, 'A panel that the address names twice is shown once.'],
    [`/compare/?with=${[...FIVE, 'ostrel-lill'].join(',')}`, 5, 'names 6 panels; the first five are shown.'],
    [`/compare/?with=%3Cimg%20src%3Dx%20onerror%3Dalert(1)%3E,${TWO.join(',')}`, 2, '“<img src=x onerror=alert(1)>”'],
    ['/compare/?with=%E0%A4%A,__proto__,constructor', 0, 'Not in this guide'],
  ])('%s', async (address, count, words) => {
    await using opened = await site.open(address);
    const { page, complaints } = opened;
    await settled(page, count);
    expect(await status(page)).toContain(words);
    expect(await page.locator('main img').count()).toBe(0);
    expect(complaints).toEqual([]);
  });

  test('of a million characters', async () => {
    await using opened = await site.open('/compare/');
    const { page, complaints } = opened;
    await settled(page, 0);
    // No server takes such an address; a script can still put it there.
    await page.evaluate((slug) => {
      history.pushState(null, '', `/compare/?with=${slug},${'x'.repeat(1_000_000)}`);
      dispatchEvent(new PopStateEvent('popstate'));
    }, TWO[0] as string);
    await settled(page, 1);
    expect(await status(page)).toContain('Only the first 2,000 characters of the address were read.');
    expect(complaints).toEqual([]);
  });
});

test('a file that can’t be read is named, and the others are shown', async () => {
  await using opened = await site.open('/methods/');
  const { page } = opened;
  await page.route(`**/data/compare/${FIVE[1]}.json`, (it) => it.fulfill({ status: 500, body: '' }));
  await page.goto(site.origin + addressOf(FIVE.slice(0, 3)));
  await settled(page, 2);
  expect(await status(page)).toContain(`The figures of ${nameOf(FIVE[1] as string)} could not be read.`);
  expect(await heads(page)).toEqual([nameOf(FIVE[0] as string), nameOf(FIVE[2] as string)]);
});

describe('several panels', () => {
  test.each([
    [2, TWO],
    [5, FIVE],
  ])(
    '%i: has no fault of accessibility, light and dark, at a desk and on a phone, nor scrolls sideways',
    async (count, slugs) => {
      await using opened = await site.open(addressOf(slugs));
      const { page, complaints } = opened;
      await settled(page, count);
      expect(await faultsInAllLooks(page)).toEqual([]);
      for (const viewport of [DESK, PHONE, NARROWEST]) {
        await page.setViewportSize(viewport);
        expect(await excess(page), `${viewport.width}`).toBe(0);
      }
      const small = await page
        .locator('main button, main select')
        .evaluateAll((all) => all.filter((it) => it.getBoundingClientRect().height < 44).map((it) => it.outerHTML));
      expect(small).toEqual([]);
      const names = await page
        .locator('[tabindex="0"]')
        .evaluateAll((all) => all.map((it) => it.getAttribute('aria-label')));
      expect(new Set(names).size).toBe(names.length);
      expect(complaints).toEqual([]);
    },
  );

  test('5: fits a sheet of A4 in print, without the controls', async () => {
    // 186 mm between margins of 12 mm, at 96 px an inch.
    await using opened = await site.open(addressOf(FIVE), { viewport: { width: 703, height: 1000 } });
    const { page } = opened;
    await settled(page, 5);
    await page.emulateMedia({ media: 'print' });
    expect(await excess(page)).toBe(0);
    const wide = await page
      .locator('main table, main svg')
      .evaluateAll((all) =>
        all
          .filter((it) => it.getBoundingClientRect().right > document.documentElement.clientWidth + 1)
          .map((it) => it.tagName),
      );
    expect(wide).toEqual([]);
    expect(await page.getByRole('button', { name: 'Add' }).isVisible()).toBe(false);
    expect(await page.locator('.side-by-side').first().isVisible()).toBe(true);
  });
});

test('without a script the page says what it would do, and leads to every published panel', async () => {
  await using opened = await site.open('/compare/', { javaScriptEnabled: false });
  const { page } = opened;
  expect(await page.getByLabel('Add a panel').isVisible()).toBe(false);
  const main = page.locator('main');
  expect(await main.textContent()).toContain('With a script, this page sets two to five panels side by side');
  for (const { slug } of panelFiles('published')) {
    expect(await main.locator(`a[href="/panels/${slug}/"]`).isVisible(), slug).toBe(true);
  }
  const links = pageAt('/compare/')
    .document.querySelectorAll('main a')
    .map((it) => attribute(it, 'href'));
  expect(links).toEqual(expect.arrayContaining(['/cautions/', '/methods/uncertainty/', '/methods/rank/']));
});
