import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { filterWords, knownBy } from '../../../../src/site/guide/browser/filter-words.ts';
import { readAddress } from '../../../../src/site/guide/browser/guide-address.ts';
import { placeNames } from '../../../../src/site/guide/browser/plot-names.ts';
import { RUNS } from '../../../measure/make.ts';

const AREA = { left: 0, right: 300, top: 0, bottom: 200 };

describe('names of a plot’s points', () => {
  test('stand to the right, and to the left where there is no room', () => {
    expect(placeNames([{ x: 100, y: 100, width: 40 }], AREA)).toEqual([{ x: 109, y: 100 }]);
    expect(placeNames([{ x: 290, y: 100, width: 40 }], AREA)).toEqual([{ x: 241, y: 100 }]);
  });

  test('lie on no other name, on no point, and within the area', () => {
    const point = fc.record({
      x: fc.integer({ min: 0, max: 300 }),
      y: fc.integer({ min: 0, max: 200 }),
      width: fc.integer({ min: 10, max: 90 }),
    });
    fc.assert(
      fc.property(fc.array(point, { maxLength: 30 }), (points) => {
        const boxes = placeNames(points, AREA).flatMap((it, i) =>
          it ? [{ left: it.x, right: it.x + (points[i]?.width ?? 0), top: it.y - 7, bottom: it.y + 7 }] : [],
        );
        boxes.forEach((box, i) => {
          expect(box.left >= 0 && box.right <= 300 && box.top >= 0 && box.bottom <= 200).toBe(true);
          const isClear = boxes.every(
            (other, j) =>
              i === j ||
              box.right <= other.left ||
              other.right <= box.left ||
              box.bottom <= other.top ||
              other.bottom <= box.top,
          );
          expect(isClear).toBe(true);
          for (const { x, y } of points)
            expect(x > box.left && x < box.right && y > box.top && y < box.bottom).toBe(false);
        });
      }),
      RUNS,
    );
  });
});

describe('filters in words', () => {
  const names = {
    ranges: [
      { name: 'price', label: 'Price', sign: '€' },
      { name: 'sound', label: 'Sound', unit: 'dB(A)' },
    ],
    sets: {
      class: [
        { value: 'desk', label: 'Desk' },
        { value: 'palm', label: 'Palm' },
      ],
      maker: [{ value: 'knot', label: 'Knot' }],
      nm: [
        { value: '660', label: '660 nm' },
        { value: '850', label: '850 nm' },
      ],
      flicker: [{ value: 'steady', label: 'steady' }],
    },
  };
  test.each([
    ['', []],
    ['?price-to=600', ['price up to €600']],
    ['?price-from=100&price-to=600', ['price €100 to €600']],
    ['?sound-from=3&class=palm&class=desk&nm=660&nm=850', ['sound from 3 dB(A)', 'Palm or Desk', '660 nm and 850 nm']],
    ['?since=2026-10-01&claims=held', ['tested since 1 Oct 2026', 'no checked claim missed']],
    ['?class=none&spend=3&sort=a.b.ascending', []],
  ])('%s', (address, words) => {
    expect(filterWords(readAddress(address, knownBy(names)).state, names)).toEqual(words);
  });
});
