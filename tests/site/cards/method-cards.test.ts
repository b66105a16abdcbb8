/** Cards of methods: the sketch explains, its words fit, and the code leads to the method. */
import jsQR from 'jsqr';
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { pictureOf } from '../../../src/build/cards/card-store.ts';
import { METHODS, methodById } from '../../../src/measure/methods.ts';
import { CARD_FORMATS } from '../../../src/site/cards/card-formats.ts';
import { methodCard, methodCardView } from '../../../src/site/cards/method-card.ts';

const GUIDE = { title: 'The Curlew Strand panel ledger', site: 'https://panels.curlewstrand.example' };
const VIEWS = METHODS.flatMap((it) => methodCardView(it, GUIDE) ?? []);

test('each method with a sketch has one, others have none', () => {
  expect(VIEWS.length).toBeGreaterThan(20);
  expect(methodCardView(methodById('optical-power'), GUIDE)?.address).toBe(
    'https://panels.curlewstrand.example/methods/optical-power/',
  );
  expect(METHODS.length).toBeGreaterThan(VIEWS.length);
});

test.each(CARD_FORMATS)('all its words stand on the card, $name', ({ layout }) => {
  for (const view of VIEWS) {
    const { runs, width, height } = methodCard(view, layout);
    const outside = runs.filter(
      (it) => it.x < 0 || it.x + it.width > width || it.y - 0.68 * it.size < 0 || it.y + 0.2 * it.size > height,
    );
    expect(
      outside.map((it) => it.text),
      view.name,
    ).toEqual([]);
    const said = runs.map((it) => it.text).join(' ');
    expect(said).toContain(view.words);
    expect(said.startsWith(view.name)).toBe(true);
    // What explains it is no smaller than what is written on a phone's screen in the upright formats.
    if (layout.sides === 'under') {
      expect(Math.min(...runs.map((it) => it.size)) / width).toBeGreaterThanOrEqual(11 / 390);
    }
  }
});

test('its code is read by another library', async () => {
  const [wide] = CARD_FORMATS;
  const view = methodCardView(methodById('rank'), GUIDE);
  if (!wide || !view) throw new Error('no card');
  const picture = await pictureOf(methodCard(view, wide.layout).svg(view.name, view.words), wide.pixels);
  const { data, info } = await sharp(picture).ensureAlpha().raw().toBuffer({ resolveWithObject: true });
  expect(jsQR(new Uint8ClampedArray(data), info.width, info.height)?.data).toBe(view.address);
});
