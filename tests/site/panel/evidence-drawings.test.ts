import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { frameBar } from '../../../src/site/panel/frame-bar.ts';
import { type Share, shareBar, shareScale } from '../../../src/site/panel/share-bar.ts';
import { wavelengthAxis } from '../../../src/site/panel/wavelength-axis.ts';
import type { PieceElement } from '../../../src/site/shared/browser/pieces.ts';

const parts = (drawing: PieceElement, name: string) =>
  drawing.pieces.filter(
    (it): it is PieceElement =>
      typeof it !== 'string' &&
      String(it.attributes.class ?? '')
        .split(' ')
        .includes(name),
  );
const rects = (drawing: PieceElement) =>
  drawing.pieces.filter((it): it is PieceElement => typeof it !== 'string' && it.tag === 'rect');
const lines = (drawing: PieceElement) =>
  drawing.pieces.filter((it): it is PieceElement => typeof it !== 'string' && it.tag === 'line');
const share = (value: unknown) => Number.parseFloat(String(value));
const drawn = (of: Share) => {
  const bar = shareBar(of);
  // In the order that the style sheet knows them by: axis, tip, what is sure, what is open where there is that, the limit.
  const [sure, open] = rects(bar).slice(2, -1);
  return {
    sure: share(sure?.attributes.width),
    to: share(sure?.attributes.width) + share(open?.attributes.width ?? '0'),
    breaks: parts(bar, 'break').length,
  };
};

describe('a share of a limit', () => {
  test('is drawn on one scale, whatever it is, with the limit in one place', () => {
    for (const part of [0.001, 3, 100, 312, 9000].map((it) => ({ least: it, most: it }))) {
      expect(rects(shareBar(part)).at(-1)?.attributes).toEqual({});
    }
    // The style sheet has its place in all bars, and the head of the column its mark over it.
    expect(readFileSync('src/site/panel/exposure-limits.css', 'utf8')).toMatch(
      /rect:last-of-type \{\s*x: calc\(20% - 1px\)/,
    );
    expect(share(lines(shareScale())[0]?.attributes.x1)).toBe(20);
    expect(drawn({ least: 100, most: 100 }).sure).toBe(20);
    expect(drawn({ least: 200, most: 200 }).sure).toBe(40);
  });

  test('is full up to the least that it may be, and open to the most', () => {
    expect(drawn({ least: 19, most: 329 })).toEqual({ sure: 3.8, to: 65.8, breaks: 0 });
    expect(drawn({ least: 0, most: 50 })).toMatchObject({ sure: 0, to: 10 });
  });

  test('beyond the scale is broken at its end, and no longer than it', () => {
    expect(drawn({ least: 1120, most: 1230 })).toEqual({ sure: 100, to: 100, breaks: 2 });
    expect(drawn({ least: 90, most: Number.POSITIVE_INFINITY })).toMatchObject({ to: 100, breaks: 2 });
    expect(drawn({ least: 480, most: 500 }).breaks).toBe(0);
  });
});

test('the frame’s part of the light is a part of all of it, its interval within', () => {
  const bar = frameBar({ value: 67, low: 63.9, high: 104 });
  expect(parts(bar, 'in')[0]?.attributes.width).toBe('67%');
  expect(lines(bar).map((it) => [it.attributes.x1, it.attributes.x2])).toEqual([
    ['63.9%', '100%'],
    ['63.9%', '63.9%'],
    ['100%', '100%'],
  ]);
});

test('wavelengths stand on one axis, broken where the eye can’t see them', () => {
  const peaks = parts(wavelengthAxis([660, 850, 1060]), 'peak');
  expect(peaks.map((it) => [it.attributes.x1, it.attributes.class])).toEqual([
    ['20%', 'peak'],
    ['83.3%', 'peak unseen-light'],
    // At the end of the axis.
    ['100%', 'peak unseen-light'],
  ]);
});
