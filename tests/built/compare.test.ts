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
  // What is shown is said to those alone who don't see it.
  await page.locator('[data-compare-status]', { hasText: words }).waitFor({ state: 'attached' });
}

/** Full names of the panels that are picked, in their order. */
const picked = (page: Page) => page.locator('[data-chosen] li > span').allTextContents();
/** Of several panels, who stands against whom in the first table. */
const rowsOf = (page: Page) => page.locator('#compared-figures tbody').first().locator('.who').allTextContents();
const heading = (page: Page) =>
  page
    .locator('main h1')
    .textContent()
    .then((it) => it ?? '');
const queryOf = (page: Page) => new URL(page.url()).search;
/** What went wrong; what is shown is said to those alone who don't see it. */
const status = (page: Page) => page.locator('[data-compare-status]').textContent();

describe('the figures', () => {
  test('are those of the data file, each with its uncertainty or a reason, and lead to their working', async () => {
    await using opened = await site.open(addressOf(FIVE));
    const { page, complaints } = opened;
    await settled(page, FIVE.length);
    const all = await page.locator('tbody[data-metric]').evaluateAll((rows) =>
      rows.map((row) => ({
        metric: row.getAttribute('data-metric') ?? '',
        method: row.querySelector('th.what a')?.getAttribute('href'),
        cells: [...row.querySelectorAll('td.n')].map((cell) => ({
          href: cell.querySelector('a.figure')?.getAttribute('href'),
          gap: cell.querySelector('.gap')?.textContent,
          // The figure alone: no mark of doubt, no date of a price, no sides of a field.
          text: [...cell.childNodes]
            .filter((it) => !(it instanceof Element && it.matches('.dagger')))
            .map((it) => it.textContent)
            .join('')
            .replace(/ (\d+ \w+ \d{4}|[\d.]+ × [\d.]+)$/, '')
            .replace(/ [\d.]+ × [\d.]+ [\d.]+ × [\d.]+$/, ''),
        })),
      })),
    );
    const shown = all.filter((it) => !it.metric.startsWith('mean-irradiance-at-'));
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
    await page.getByText('Light by distance, modelled').click();
    const rows = page.getByRole('table', { name: 'Mean irradiance by distance' }).locator('tbody tr');
    const panel = data.panels.find((it) => it.slug === TWO[0]);
    const distances = [5, 10, 15, 30, 45, 60];
    expect(await rows.count()).toBe(distances.length);
    for (const [i, cm] of distances.entries()) {
      const figure = panel && currentFigures(panel)[`mean-irradiance-at-${cm}-cm`];
      if (!figure || figure.value === null) throw new Error(`no mean at ${cm} cm`);
      expect(await rows.nth(i).locator('th').textContent()).toMatch(new RegExp(`^${cm}\\scm`));
      const text = (await rows.nth(i).locator('td').first().textContent()) ?? '';
      expect(disagreements(text, figure)).toEqual([]);
    }
    // Its plot is drawn when it is asked for.
    await page.locator('#compared-distances .plot svg').waitFor();
    // Every panel of the demonstration has a beam that explains its readings.
    expect(await page.locator('#compared-distances').textContent()).not.toContain('Not drawn');
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

test('the sentence is the heading, by the intervals of the guide’s own ratios, and each row has its words', async () => {
  await using opened = await site.open(addressOf(['kelpwright-gannet', 'quennick-tope']));
  const { page } = opened;
  await settled(page, 2);
  expect(await heading(page)).toMatch(
    /^The Tope gives \d+ to \d+\s% more light, and each watt of it costs \d+ to \d+\s% more\.$/,
  );
  const words = (metric: string) => page.locator(`tr[data-metric="${metric}"] .apart`).textContent();
  const [, light, cost] = /gives (.+ more) light, .+ costs (.+)\.$/.exec(await heading(page)) ?? [];
  expect(await words('optical-power')).toBe(light);
  expect(await words('price-per-watt')).toBe(cost);
  expect(await words('efficiency-combined')).toMatch(/^a tie /);
  expect(await page.locator('#compared-against').textContent()).toContain('Efficiency is a tie');
  expect(await page.locator('main h1').count()).toBe(1);
});

test('panels that were not read alike are said not to be comparable, where it matters', async () => {
  await using opened = await site.open(addressOf(['fennimarsh-sedge', 'ostrel-vagg']));
  const { page } = opened;
  await settled(page, 2);
  const words = (metric: string) => page.locator(`tr[data-metric="${metric}"] .apart`).textContent();
  // The reason once, not in each row.
  expect(await page.locator('#compared-against').textContent()).toContain(
    'Rows not read alike: it was read at 30 cm, Fennimarsh Electric Sedge at 15.24 cm.',
  );
  expect(await words('optical-power')).toBe('not read alike');
  expect(await heading(page)).toMatch(/^Counting all that leaves the LEDs, the Vagg gives \d+ to \d+\s% less light/);
  expect(await words('emitted-power')).toMatch(/^\d+ to \d+\s% less$/);
  expect(await words('real-price')).toMatch(/^[\d.]+\s% less$/);
});

test('every line of a difference lies where its words say', async () => {
  await using opened = await site.open(addressOf(['kelpwright-gannet', 'quennick-tope']));
  const { page } = opened;
  await settled(page, 2);
  const rows = await page.locator('#compared-figures tbody tr').evaluateAll((all) =>
    all.flatMap((row) => {
      const line = row.querySelector('rect.interval');
      if (!line) return [];
      const [x, width] = ['x', 'width'].map((it) => Number(line.getAttribute(it)));
      return [{ x: x as number, width: width as number, words: row.querySelector('.apart')?.textContent ?? '' }];
    }),
  );
  expect(rows.length).toBeGreaterThan(5);
  for (const { x, width, words } of rows) {
    // 100 units are 40 %, from nought at 110.
    const ends = [x, x + width].map((it) => (40 * (it - 110)) / 100);
    const said = /^([\d.]+) to ([\d.]+)\s% (\w+)/.exec(words);
    if (!said) {
      expect(words).toMatch(/^a tie/);
      expect((ends[0] as number) * (ends[1] as number)).toBeLessThan(0);
      continue;
    }
    const [low, high] = [Number(said[1]), Number(said[2])];
    const wanted = /less|lower|smaller/.test(said[3] ?? '') ? [-high, -low] : [low, high];
    ends.forEach((end, i) => {
      expect(Math.abs(end - Math.min(40, wanted[i] as number)), words).toBeLessThan(1);
    });
  }
});

describe('choosing', () => {
  test('by the keyboard alone: add, make first, remove; the address follows, and the focus is never lost', async () => {
    await using opened = await site.open('/compare/');
    const { page, complaints } = opened;
    await settled(page, 0);
    const add = async (words: string) => {
      await page.getByLabel('Add a panel').focus();
      await page.keyboard.type(words);
      await page.keyboard.press('Enter');
    };
    await add(nameOf('ostrel-lill'));
    await settled(page, 1);
    expect(queryOf(page)).toBe('?with=ostrel-lill');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('compare-with');
    // Some of a name does, if it is of one panel alone.
    await add('sprat');
    await settled(page, 2);
    await add('limpet');
    await settled(page, 3);
    expect(queryOf(page)).toBe('?with=ostrel-lill,quennick-sprat,kelpwright-limpet');
    expect(await rowsOf(page)).toEqual(['Lill', 'Sprat', 'Limpet']);

    await page.getByRole('button', { name: 'Against the Limpet instead' }).focus();
    await page.keyboard.press('Enter');
    await page.locator('h2', { hasText: 'Against the Limpet' }).waitFor();
    expect(queryOf(page)).toBe('?with=kelpwright-limpet,ostrel-lill,quennick-sprat');
    expect(await page.evaluate(() => document.activeElement?.tagName)).toBe('H1');

    await page.getByRole('button', { name: `Remove ${nameOf('ostrel-lill')}` }).focus();
    await page.keyboard.press('Space');
    await settled(page, 2);
    expect(queryOf(page)).toBe('?with=kelpwright-limpet,quennick-sprat');
    expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe(
      `Remove ${nameOf('quennick-sprat')}`,
    );
    expect(await picked(page)).toEqual([nameOf('kelpwright-limpet'), nameOf('quennick-sprat')]);

    await page.keyboard.press('Enter');
    await settled(page, 1);
    await page.keyboard.press('Enter');
    await settled(page, 0);
    expect(queryOf(page)).toBe('');
    expect(await heading(page)).toBe('Side by side');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('compare-with');
    expect(complaints).toEqual([]);
  });

  test('from the list of all, while there is nothing to compare yet', async () => {
    await using opened = await site.open('/compare/');
    const { page } = opened;
    await settled(page, 0);
    await page.getByRole('button', { name: nameOf('ostrel-lill'), exact: true }).click();
    await settled(page, 1);
    await page.getByRole('button', { name: nameOf('quennick-sprat'), exact: true }).click();
    await settled(page, 2);
    expect(queryOf(page)).toBe('?with=ostrel-lill,quennick-sprat');
    expect(await page.locator('.choices').count()).toBe(0);
  });

  test('a name taken from the list of names is added at once; one that is typed through is not', async () => {
    await using opened = await site.open('/compare/');
    const { page } = opened;
    await settled(page, 0);
    const field = page.getByLabel('Add a panel');
    expect(await page.locator('#compare-names option').count()).toBe(panelFiles('published').length);
    await field.pressSequentially(nameOf('ostrel-lill'));
    expect(queryOf(page)).toBe('');
    // What a browser tells of a choice from its list.
    await field.evaluate((it) => it.dispatchEvent(new InputEvent('input', { inputType: 'insertReplacementText' })));
    await settled(page, 1);
    expect(queryOf(page)).toBe('?with=ostrel-lill');
  });

  test('can be gone back and forward over', async () => {
    await using opened = await site.open(addressOf(TWO));
    const { page, complaints } = opened;
    await settled(page, 2);
    const first = await heading(page);
    await page.getByRole('button', { name: 'Against the R150 instead' }).click();
    await expect.poll(() => picked(page)).toEqual(TWO.toReversed().map(nameOf));
    await page.getByRole('button', { name: `Remove ${nameOf(TWO[0] as string)}` }).click();
    await settled(page, 1);
    await page.goBack();
    await settled(page, 2);
    expect(await picked(page)).toEqual(TWO.toReversed().map(nameOf));
    await page.goBack();
    await expect.poll(() => heading(page)).toBe(first);
    expect(queryOf(page)).toBe(`?with=${TWO.join(',')}`);
    await page.goForward();
    await page.goForward();
    await settled(page, 1);
    expect(await picked(page)).toEqual([nameOf(TWO[1] as string)]);
    expect(complaints).toEqual([]);
  });

  test('a sixth panel is refused in words, and so is none, a name that no panel has, and one that several have', async () => {
    await using opened = await site.open(addressOf(FIVE));
    const { page } = opened;
    await settled(page, 5);
    const field = page.getByLabel('Add a panel');
    await field.fill('lill');
    await page.getByRole('button', { name: 'Add', exact: true }).click();
    expect(await status(page)).toContain('Five panels are the most; remove one first.');
    expect(await picked(page)).toEqual(FIVE.map(nameOf));
    await page.getByRole('button', { name: `Remove ${nameOf('quennick-dab')}` }).click();
    await settled(page, 4);
    await field.fill('');
    await field.press('Enter');
    expect(await status(page)).toContain('Type some of a panel’s name first.');
    await field.fill('gull');
    await field.press('Enter');
    expect(await status(page)).toContain('No other panel has “gull” in its name.');
    await field.fill('quennick');
    await field.press('Enter');
    expect(await status(page)).toContain('Which one: Quennick Sprat, Quennick Dab, Quennick Tope?');
  });

  test('offers no withdrawn panel, but a link to one holds and says so', async () => {
    const slug = panelFiles('withdrawn')[0]?.slug as string;
    await using opened = await site.open(addressOf([slug, TWO[0] as string]));
    const { page } = opened;
    await settled(page, 2);
    expect(await page.locator('[data-chosen] li').first().textContent()).toContain('withdrawn');
    await page.getByRole('button', { name: `Remove ${nameOf(slug)}` }).click();
    await settled(page, 1);
    expect(await page.locator(`#compare-names option[value="${nameOf(slug)}"]`).count()).toBe(0);
    expect(await page.getByRole('button', { name: nameOf(slug), exact: true }).count()).toBe(0);
  });
});

test('the address can be copied, and it is said', async () => {
  await using opened = await site.open(addressOf(TWO), { permissions: ['clipboard-read', 'clipboard-write'] });
  const { page } = opened;
  await settled(page, 2);
  await page.getByRole('button', { name: 'Copy this page’s address' }).press('Enter');
  await page.getByText('Copied.').waitFor();
  expect(await page.evaluate(() => navigator.clipboard.readText())).toBe(page.url());
});

test('the first screen has the answer and its first figures, on a phone and at a desk', async () => {
  await using opened = await site.open(addressOf(['kelpwright-gannet', 'quennick-tope']));
  const { page } = opened;
  await settled(page, 2);
  const bottomOf = (selector: string) =>
    page
      .locator(selector)
      .first()
      .evaluate((it) => it.getBoundingClientRect().bottom);
  await page.setViewportSize(PHONE);
  expect(await bottomOf('tr[data-metric="optical-power"]')).toBeLessThan(PHONE.height);
  await page.setViewportSize(DESK);
  expect(await bottomOf('tr[data-metric="sound-on"]')).toBeLessThan(DESK.height);
  expect(await bottomOf('.one-scale svg')).toBeLessThan(DESK.height);
});

test('a part that the address names is opened', async () => {
  await using opened = await site.open(`${addressOf(TWO)}#compared-distances`);
  const { page } = opened;
  await settled(page, 2);
  expect(await page.locator('#compared-distances table').isVisible()).toBe(true);
  await page.locator('#compared-distances .plot svg').first().waitFor();
});

describe('an address that asks for what can’t be', () => {
  test.each([
    ['/compare/?with=no-such-panel', 0, 'Not in this guide: “no-such-panel”.'],
    [`/compare/?with=${TWO[0]}`, 1, 'One panel is shown'],
    [`/compare/?with=${TWO[0]},${TWO[0]},${TWO[1]}`, 2, 'A panel that the address names twice is shown once.'],
    [`/compare/?with=${[...FIVE, 'ostrel-lill'].join(',')}`, 5, 'names 6 panels; the first five are shown.'],
    [`/compare/?with=%3Cimg%20src%3Dx%20onerror%3Dalert(1)%3E,${TWO.join(',')}`, 2, '“<img src=x onerror=alert(1)>”'],
    ['/compare/?with=%E0%A4%A,__proto__,constructor', 0, 'Not in this guide'],
  ])('%s', async (address, count, words) => {
    await using opened = await site.open(address);
    const { page, complaints } = opened;
    await settled(page, count);
    expect(await status(page)).toContain(words);
    // But for the photos of the chosen panels.
    expect(await page.locator('main img:not([src^="/photos/"])').count()).toBe(0);
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
  expect(await page.locator('#compared-figures thead a').allInnerTexts()).toEqual(['Sedge', 'Dab']);
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
      await page.evaluate(() => {
        for (const it of document.querySelectorAll<HTMLDetailsElement>('main details')) it.open = true;
      });
      await page.locator('#compared-distances .plot svg').first().waitFor();
      expect(await faultsInAllLooks(page)).toEqual([]);
      for (const viewport of [DESK, PHONE, NARROWEST]) {
        await page.setViewportSize(viewport);
        expect(await excess(page), `${viewport.width}`).toBe(0);
      }
      // The narrowest: a phone.
      const small = await page
        .locator('main button:visible, main input:visible, main summary')
        .evaluateAll((all) => all.filter((it) => it.getBoundingClientRect().height < 44).map((it) => it.outerHTML));
      expect(small).toEqual([]);
      // Nothing on a phone lies beside what can be seen, in a box of its own either.
      const boxes = await page
        .locator('main *')
        .evaluateAll((all) =>
          all
            .filter((it) => it.scrollWidth > it.clientWidth + 1 && getComputedStyle(it).overflowX === 'auto')
            .map((it) => it.className),
        );
      expect(boxes).toEqual([]);
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
    expect(await page.locator('form[data-compare]').isVisible()).toBe(false);
    // What is folded on the screen stands open on paper, with its drawing.
    for (const it of await page.locator('main table').all()) expect(await it.isVisible()).toBe(true);
    await page.locator('#compared-distances .plot svg').first().waitFor();
  });
});

test('without a script the page says what it needs, and leads to the guide and the panels', async () => {
  await using opened = await site.open('/compare/', { javaScriptEnabled: false });
  const { page } = opened;
  expect(await page.getByLabel('Add a panel').isVisible()).toBe(false);
  const main = page.locator('main');
  expect(await main.textContent()).toContain('Panels are compared by a script.');
  for (const href of ['/', '/panels/'])
    expect(await main.locator(`a[href="${href}"]`).last().isVisible(), href).toBe(true);
  const links = pageAt('/compare/')
    .document.querySelectorAll('main a')
    .map((it) => attribute(it, 'href'));
  expect(links).toEqual(expect.arrayContaining(['/cautions/', '/methods/uncertainty/', '/methods/rank/']));
});
