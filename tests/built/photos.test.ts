/** Photos on the built pages: they are there, they are what they say, and nothing moves when they come. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { DEMO_FOLDER, DEMO_SITE } from '../support/demo-folder.ts';
import { DESK, NARROWEST, type OpenSite, openSite, PHONE } from './browser.ts';
import { attribute, FILES, PAGES, pageAt, panelFiles, textOf } from './site.ts';

interface Listed {
  slug: string;
  file: string;
  shows: string;
}

const listed: Listed[] = panelFiles('published').flatMap(({ slug, data }) => {
  const panel = data as unknown as PhotosOf & { sessions?: PhotosOf[] };
  const lists = [panel, ...(panel.sessions ?? [])].flatMap(({ photos }) => photos ?? []);
  return lists.map(({ file, shows }) => ({ slug, file, shows }));
});
interface PhotosOf {
  photos?: Array<{ file: string; shows: string }>;
}

const TYPES: Record<string, string> = { avif: 'heif', webp: 'webp', jpg: 'jpeg' };
const published = FILES.filter((it) => it.startsWith('/photos/'));
const onDisk = (address: string) => readFileSync(join(DEMO_SITE, address));

let site: OpenSite;
beforeAll(async () => {
  site = await openSite();
});
afterAll(() => site.close());

test('the demonstration has some, of a session too', () => {
  expect(new Set(listed.map((it) => it.slug)).size).toBeGreaterThan(2);
  expect(pageAt('/panels/kelpwright-gannet/').document.querySelectorAll('#photos figure').length).toBe(2);
});

test('each stands on its panel’s page with what it shows, in its sizes, and they are there', async () => {
  const named = new Set<string>();
  for (const { slug, shows } of listed) {
    const figure = pageAt(`/panels/${slug}/`)
      .document.querySelectorAll('#photos figure')
      .find((it) => attribute(it.querySelector('img'), 'alt') === shows);
    expect(textOf(figure?.querySelector('figcaption') ?? null), shows).toContain(shows);
    const image = figure?.querySelector('img') ?? null;
    expect([attribute(image, 'loading'), attribute(image, 'decoding')], shows).toEqual(['lazy', 'async']);
    const sources = figure?.querySelectorAll('source') ?? [];
    expect(sources.map((it) => attribute(it, 'type'))).toEqual(['image/avif', 'image/webp']);
    const addresses = sources.flatMap((it) =>
      attribute(it, 'srcset')
        .split(', ')
        .map((entry) => entry.split(' ') as [string, string]),
    );
    expect(addresses.length, shows).toBeGreaterThan(3);
    for (const [address, width] of addresses) {
      named.add(address);
      expect(`${(await sharp(onDisk(address)).metadata()).width}w`, address).toBe(width);
    }
    const fallback = attribute(image, 'src');
    named.add(fallback).add(attribute(figure?.querySelector('a') ?? null, 'href'));
    const { width, height } = await sharp(onDisk(fallback)).metadata();
    expect([attribute(image, 'width'), attribute(image, 'height')], fallback).toEqual([`${width}`, `${height}`]);
  }
  // Pickers of panels have the others.
  const small = ['/data/compare.json', '/data/plan.json'].flatMap((path) => {
    const { panels } = JSON.parse(onDisk(path).toString()) as { panels: Array<{ photo?: { src: string } }> };
    return panels.flatMap((it) => (it.photo ? [it.photo.src] : []));
  });
  expect(small.length).toBeGreaterThan(2);
  for (const it of small) expect(published).toContain(it);
});

test('every published picture is what its ending says, and has nothing in it but the picture', async () => {
  expect(published.length).toBeGreaterThan(6 * listed.length);
  for (const address of published) {
    const { format, exif, icc, xmp, iptc } = await sharp(onDisk(address)).metadata();
    expect(format, address).toBe(TYPES[address.split('.').at(-1) as string]);
    expect([exif, icc, xmp, iptc], address).toEqual(Array(4).fill(undefined));
  }
});

test('no file that the tester laid there is published as it is', () => {
  const originals = listed.map(({ slug, file }) => readFileSync(join(DEMO_FOLDER, 'panels', slug, file)));
  const pictures = FILES.filter((it) => /\.(avif|jpe?g|png|webp)$/.test(it)).map(onDisk);
  expect(originals.some((one) => pictures.some((other) => other.equals(one)))).toBe(false);
});

test('a page without photos has no empty place for them', () => {
  const withPhotos = new Set(listed.map((it) => `/panels/${it.slug}/`));
  const without = PAGES.filter((it) => /^\/panels\/[^/]+\/$/.test(it.address) && !withPhotos.has(it.address));
  expect(without.length).toBeGreaterThan(0);
  for (const it of without) expect(it.document.querySelectorAll('#photos').length, it.address).toBe(0);
});

describe.each([
  ['a phone', PHONE],
  ['the narrowest window', NARROWEST],
  ['a desk', DESK],
])('in %s', (_name, viewport) => {
  test.each(['/panels/kelpwright-gannet/', '/panels/ostrel-lill/', '/panels/'])(
    '%s: their places are kept before they come',
    async (address) => {
      await using opened = await site.open('/404.html', { viewport });
      const { page, complaints } = opened;
      const places = async () =>
        page.locator('main img').evaluateAll((them) =>
          them.map((it) => {
            const { width, height } = it.getBoundingClientRect();
            return [Math.round(width), Math.round(height)];
          }),
        );
      const held: Array<() => void> = [];
      let isHeld = true;
      await page.route('**/photos/**', async (route) => {
        if (isHeld) await new Promise<void>((resolve) => held.push(resolve));
        await route.continue();
      });
      await page.goto(site.origin + address, { waitUntil: 'domcontentloaded' });
      await page.locator('main img').first().waitFor({ state: 'attached' });
      const before = await places();
      expect(before.length).toBeGreaterThan(0);
      for (const [width, height] of before) expect(Math.min(width as number, height as number)).toBeGreaterThan(30);
      isHeld = false;
      for (const go of held) go();
      for (const it of await page.locator('main img').all()) {
        await it.scrollIntoViewIfNeeded();
        await expect.poll(() => it.evaluate((image: HTMLImageElement) => image.naturalWidth)).toBeGreaterThan(0);
      }
      expect(await places()).toEqual(before);
      const widest = await page
        .locator('main img')
        .evaluateAll((them) => Math.max(...them.map((it) => it.getBoundingClientRect().right)));
      expect(widest).toBeLessThanOrEqual(viewport.width);
      expect(complaints.filter((it) => !it.includes('404'))).toEqual([]);
    },
  );
});

test('a browser takes the newest format that it knows, no larger than it needs', async () => {
  await using opened = await site.open('/panels/kelpwright-gannet/', { viewport: PHONE });
  const image = opened.page.locator('#photos img').first();
  await image.scrollIntoViewIfNeeded();
  await expect.poll(() => image.evaluate((it: HTMLImageElement) => it.currentSrc)).toMatch(/-320\.avif$/);
});

test('the comparison has a panel’s picture before its name where there is room, and none for a panel without one', async () => {
  await using opened = await site.open('/compare/?with=kelpwright-gannet,quennick-tope');
  const { page, complaints } = opened;
  const chips = page.locator('[data-chosen] li');
  await expect.poll(() => chips.count()).toBe(2);
  const image = chips.first().locator('img');
  await expect.poll(() => image.evaluate((it: HTMLImageElement) => it.naturalWidth)).toBeGreaterThan(0);
  expect(await image.getAttribute('alt')).toBe('');
  expect(await image.evaluate((it) => it.getBoundingClientRect().height)).toBe(40);
  expect(await chips.last().locator('img').count()).toBe(0);
  await page.setViewportSize(PHONE);
  expect(await image.isVisible()).toBe(false);
  expect(complaints).toEqual([]);
});

test('the planner has the picture of the panel that is chosen, and none before or for a panel without one', async () => {
  await using opened = await site.open('/plan/?panel=kelpwright-gannet');
  const { page } = opened;
  const photo = page.locator('#plan img');
  await expect.poll(() => photo.getAttribute('src')).toMatch(/^\/photos\/kelpwright-gannet\//);
  await expect.poll(() => photo.evaluate((it: HTMLImageElement) => it.naturalWidth)).toBeGreaterThan(0);
  await page.selectOption('#plan-panel', 'quennick-tope');
  await expect.poll(() => photo.count()).toBe(0);
});
