/** Cards of panels: everything on them can be read, nothing lies on anything else, and the code leads to the page. */
import sharp from 'sharp';
import { beforeAll, describe, expect, test } from 'vitest';
import { pictureOf } from '../../../src/build/cards/picture-of.ts';
import type { Ledger } from '../../../src/ledger/ledger.ts';
import { CARD_FORMATS, PREVIEW, PREVIEW_LAYOUT } from '../../../src/site/cards/card-formats.ts';
import { roundEnd, scaleEnds, scaleWords } from '../../../src/site/cards/card-scales.ts';
import { drawCard } from '../../../src/site/cards/draw-card.ts';
import type { Drawing } from '../../../src/site/cards/drawing.ts';
import { INK } from '../../../src/site/cards/drawing-ink.ts';
import { drawnCards } from '../../../src/site/cards/drawn-cards.ts';
import { hasLetter } from '../../../src/site/cards/lettering.ts';
import { panelCard } from '../../../src/site/cards/panel-card.ts';
import { type PanelCardView, panelCardView } from '../../../src/site/cards/panel-card-view.ts';
import { demoLedger } from '../../support/demo-ledger.ts';
import { drawingFaults } from '../../support/drawing-faults.ts';
import { readCode } from '../../support/read-code.ts';

const LAYOUTS = [...CARD_FORMATS.map((it) => it.layout), PREVIEW_LAYOUT];

let ledger: Ledger;
let views: PanelCardView[];
/** All of them in each layout, and some with the longest words. */
let drawings: Array<{ layout: (typeof LAYOUTS)[number]; cards: Drawing[]; long: Drawing[] }>;
beforeAll(() => {
  ledger = demoLedger().ledger;
  views = [...ledger.panels.values()].map((it) => panelCardView(it, ledger, scaleEnds(ledger)));
  drawings = LAYOUTS.map((layout) => ({
    layout,
    cards: views.map((it) => panelCard(it, layout)),
    long: views.slice(0, 4).map((it) => panelCard({ ...it, ...LONG }, layout)),
  }));
});

const LONG: Partial<PanelCardView> = {
  name: 'Wallingfordshire Electric Works & Daughters Sedge Mk III Professional Edition with Stand, Wwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwww',
  from: '29 Sep 2026, The quarterly bench ledger of the associated lending libraries of the northern coast and its islands',
  remarks: [
    'Withdrawn.',
    'Lent by the maker.',
    'Price by a code that earns us money.',
    '* impossible as it stands.',
    '† in doubt.',
  ],
};

test('nothing leaves a card, lies on other text or is small on a phone, with the longest words either', () => {
  for (const { cards, long } of drawings) {
    for (const it of [...cards, ...long]) expect(drawingFaults(it), `${it.runs[0]?.text}, ${it.width}`).toEqual([]);
  }
});

test('what has to be said with a price is never cut', () => {
  for (const { long } of drawings) {
    const said = long[0]?.runs.map((it) => it.text).join(' ');
    expect(said).toContain(LONG.remarks?.join(' '));
  }
});

test('every character has a letter in the typefaces', () => {
  const runs = drawings.flatMap(({ cards }) => cards.flatMap((it) => it.runs));
  const characters = [...new Set(runs.flatMap(({ text }) => [...text]))];
  expect(characters.length).toBeGreaterThan(50);
  expect(characters.filter((it) => !hasLetter(it, 'text') || !hasLetter(it, 'strong'))).toEqual([]);
  expect(hasLetter('\u{1f426}', 'text')).toBe(false);
});

test('ink on paper reaches 4.5 to 1', () => {
  for (const ink of [INK.ink, INK.soft, INK.accent]) expect(contrast(ink, INK.paper)).toBeGreaterThan(4.5);
});

test.each(CARD_FORMATS)('its code is read by another library on a phone, $name', async ({ layout, pixels }) => {
  const view = views.find((it) => it.name.includes('Gannet')) as PanelCardView;
  const picture = await pictureOf(panelCard(view, layout), pixels);
  expect(await readCode(picture, 390)).toBe(
    'https://panels.curlewstrand.example/panels/kelpwright-gannet/methodology/',
  );
});

test('the picture of a link has its size, and is light', async () => {
  const cards = drawnCards(ledger).filter((it) => it.address.endsWith('/preview.png'));
  expect(cards).toHaveLength(ledger.panels.size);
  const heavy = cards.map((it) => drawCard(it)).toSorted((a, b) => letters(b) - letters(a))[0] as Drawing;
  const picture = await pictureOf(heavy, PREVIEW.width);
  const { width, height } = await sharp(picture).metadata();
  expect({ width, height }).toEqual(PREVIEW);
  expect(picture.length).toBeLessThan(60_000);
});

test('says in words what it shows', () => {
  const gannet = views.find((it) => it.name.includes('Gannet'));
  expect(gannet?.description).toMatch(
    /^Kelpwright Gannet\. Full length\. Read on 17 Nov 2026\. A watt of light: €4\.10 ± 0\.23\. Price, 18 Nov 2026: €849\. Light in the frame: 207 ± 12 W\. Mean at 15\.24 cm: 48\.0 ± 2\.7 mW\/cm²\./,
  );
  expect(gannet?.description).toContain('LED field 36 × 120 cm.');
  const limpet = views.find((it) => it.name.includes('Limpet'));
  expect(limpet?.remarks).toContain('Price by a code that earns us money.');
});

test('a name is text, whatever is in it', () => {
  const hostile = { ...(views[0] as PanelCardView), name: '<script>alert(1)</script>"&' };
  const svg = panelCard(hostile, PREVIEW_LAYOUT).svg(hostile.name, hostile.name);
  expect(svg).not.toContain('<script');
  expect(svg).toContain('<title id="t">&lt;script&gt;alert(1)&lt;/script&gt;&quot;&amp;</title>');
});

describe('a scale', () => {
  test.each([
    [0.0023, 0.005],
    [1, 1],
    [1.01, 2],
    [20, 20],
    [57, 100],
    [500.1, 1000],
  ])('for %d ends at %d', (most, end) => expect(roundEnd(most)).toBe(end));

  test('holds every panel, and is one for all', () => {
    const end = scaleEnds(ledger)('optical-power') ?? 0;
    for (const { figures } of ledger.panels.values()) {
      const it = figures.get('optical-power');
      if (it && 'value' in it) expect(it.interval95?.[1] ?? it.value).toBeLessThanOrEqual(end);
    }
    expect(scaleWords(end, 'W', 'EUR')).toBe('500 W');
    expect(scaleWords(0.05, 'currency/W', 'EUR')).toBe('€0.05');
  });
});

test('a guide that asks for none has none', () => {
  const cards = { preview: false, show: false, badges: false };
  expect(drawnCards({ ...ledger, guide: { ...ledger.guide, cards } })).toEqual([]);
});

/** How many letters are written on a card. */
const letters = ({ runs }: Drawing) => runs.reduce((sum, it) => sum + it.text.length, 0);

/** WCAG 2.2, contrast ratio (read). */
function contrast(a: string, b: string): number {
  const luminance = (colour: string) => {
    const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((i) => {
      const part = Number.parseInt(colour.slice(i, i + 2), 16) / 255;
      return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
  };
  const [low = 0, high = 0] = [luminance(a), luminance(b)].toSorted((x, y) => x - y);
  return (high + 0.05) / (low + 0.05);
}
