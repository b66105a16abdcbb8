/** Cards of methods: the sketch explains, its words fit, and the code leads to the method. */
import { expect, test } from 'vitest';
import { pictureOf } from '../../../src/build/cards/picture-of.ts';
import { METHODS, methodById } from '../../../src/measure/methods.ts';
import { cardCode } from '../../../src/site/cards/card-code.ts';
import { CARD_FORMATS, LEAST_ON_PHONE, onPhone } from '../../../src/site/cards/card-formats.ts';
import { methodCard } from '../../../src/site/cards/method-card.ts';
import { methodCardView } from '../../../src/site/cards/method-card-view.ts';
import { qrCode } from '../../../src/site/cards/qr-code.ts';
import { drawingFaults } from '../../support/drawing-faults.ts';
import { readCode } from '../../support/read-code.ts';

const GUIDE = { title: 'The Curlew Strand panel ledger', site: 'https://panels.curlewstrand.example' };
const VIEWS = METHODS.map((it) => methodCardView(it, GUIDE));

test('each method has one, and it leads to the method', () => {
  expect(VIEWS.map((it) => it.address)).toEqual(
    METHODS.map((it) => `https://panels.curlewstrand.example/methods/${it.id}/`),
  );
});

test.each(CARD_FORMATS)('its sentence and its sketch stand on the card, $name', ({ layout }) => {
  for (const view of VIEWS) {
    const card = methodCard(view, layout);
    expect(drawingFaults(card), view.name).toEqual([]);
    const said = card.runs.map((it) => it.text).join(' ');
    expect(said.startsWith(view.name)).toBe(true);
    expect(said).toContain(view.says);
    expect(said.includes(view.words)).toBe(layout.sides === 'under');
    const drawn = view.sketch.pieces.flatMap((it) => (it.tag === 'text' ? it.pieces : []));
    for (const words of drawn) expect(said).toContain(words);
  }
});

test('each has a sentence of its own, no longer than two lines', () => {
  const sentences = VIEWS.map((it) => it.says);
  expect(new Set(sentences).size).toBe(VIEWS.length);
  for (const it of sentences) expect(it).toMatch(/^[A-Z].{20,83}\.$/);
});

test.each(CARD_FORMATS)('its code is read by another library on a phone, $name', async ({ layout, pixels }) => {
  const view = methodCardView(methodById('rank'), GUIDE);
  const picture = await pictureOf(methodCard(view, layout), pixels);
  expect(await readCode(picture, 390)).toBe(view.address);
});

test('modules of a code are no smaller on a phone than 3 px, unless the address is long', () => {
  for (const { layout } of CARD_FORMATS) {
    for (const { address } of VIEWS) {
      const { count } = qrCode(address);
      const size = cardCode(address, layout)?.size ?? 0;
      expect(onPhone(size / count, layout)).toBeGreaterThanOrEqual(LEAST_ON_PHONE.module);
    }
    expect(cardCode(`https://panels.example/${'long-'.repeat(60)}`, layout)?.size).toBeLessThan(0.4 * layout.width);
  }
});
