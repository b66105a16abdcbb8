/** What looks for faults of cards finds them: on drawings that have one each, made of a card that has none. */
import { expect, test } from 'vitest';
import { CARD_FORMATS } from '../../../src/site/cards/card-formats.ts';
import type { Drawing, Run } from '../../../src/site/cards/drawing.ts';
import { methodCard } from '../../../src/site/cards/method-card.ts';
import { methodCardView } from '../../../src/site/cards/method-card-view.ts';
import { drawingFaults } from '../../support/drawing-faults.ts';

const GUIDE = { title: 'Guide', site: 'https://panels.example' };

/** A card with its first line changed. */
function card(change: (first: Run, drawing: Drawing) => void): Drawing {
  const [wide] = CARD_FORMATS;
  const view = methodCardView({ id: 'rank', name: 'Rank', version: 2 }, GUIDE);
  if (!wide || !view) throw new Error('no card');
  const drawing = methodCard(view, wide.layout);
  const [first] = drawing.runs;
  if (!first) throw new Error('nothing is written on it');
  change(first, drawing);
  return drawing;
}

test('a card as it is drawn has none', () => {
  expect(drawingFaults(card(() => {}))).toEqual([]);
});

test.each<[string, (first: Run, drawing: Drawing) => void, RegExp]>([
  ['on other text', (first, { runs }) => Object.assign(first, { x: runs[1]?.x, y: runs[1]?.y }), /^"Rank" lies on "/],
  [
    'a little on other text',
    (first, { runs }) => {
      const second = runs[1];
      if (second) Object.assign(first, { y: second.y - 0.7 * second.size });
    },
    /^"Rank" lies on "/,
  ],
  [
    'past the right edge',
    (first, { width }) => Object.assign(first, { x: width - first.width + 1 }),
    /^"Rank" leaves the card/,
  ],
  ['past the left edge', (first) => Object.assign(first, { x: -1 }), /^"Rank" leaves the card/],
  ['above the upper edge', (first) => Object.assign(first, { y: 0 }), /^"Rank" leaves the card/],
  ['below the lower edge', (first, { height }) => Object.assign(first, { y: height }), /^"Rank" leaves the card/],
  [
    'on the code',
    (first, { free }) => Object.assign(first, { x: free[0]?.x, y: (free[0]?.y ?? 0) + first.size }),
    /^"Rank" lies on the code/,
  ],
  [
    'too small',
    (first, { width }) => Object.assign(first, { size: (11.9 / 390) * width }),
    /^"Rank" has letters of 11.9 px/,
  ],
])('text %s is one', (_name, change, fault) => {
  expect(drawingFaults(card(change))).toEqual([expect.stringMatching(fault)]);
});
