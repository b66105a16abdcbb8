import { describe, expect, it } from 'vitest';
import { personOutline } from '../../../../src/site/shared/browser/person-outline.ts';
import type { Piece, PieceElement } from '../../../../src/site/shared/browser/pieces.ts';
import { timeStrip } from '../../../../src/site/shared/browser/time-strip.ts';
import { piecesHtml } from '../../../../src/site/shared/html.ts';
import { cornersOf } from '../../../support/path-corners.ts';

const parts = (it: PieceElement): PieceElement[] => [
  it,
  ...it.pieces.filter((of): of is PieceElement => typeof of !== 'string').flatMap(parts),
];
const textOf = (it: PieceElement) => it.pieces.filter((of: Piece) => typeof of === 'string').join('');
const markTexts = (it: PieceElement) => parts(it).filter((of) => of.tag === 'text' && of.attributes.class === 'mark');

describe('the strip of times', () => {
  it('puts equal ratios at equal distances, whatever is drawn on it', () => {
    const lines = parts(
      timeStrip(
        [60, 120, 240].map((seconds) => ({ seconds, label: '' })),
        undefined,
        '',
      ),
    );
    const [a, b, c] = lines
      .filter((of) => of.tag === 'line' && of.attributes.class === 'mark')
      .map((of) => Number(of.attributes.x1));
    expect(Number(b) - Number(a)).toBeCloseTo(Number(c) - Number(b), 0);
    expect(Number(b) - Number(a)).toBeGreaterThan(20);
  });

  it('says so where a time lies past an end, and keeps it on the strip', () => {
    const strip = timeStrip(
      [
        { seconds: 4, label: '15 cm' },
        { seconds: 9000, label: '90 cm' },
      ],
      4,
      'Times',
    );
    expect(markTexts(strip).map(textOf)).toEqual(['15 cm: under 30 s', '90 cm: over 1 h']);
    const width = Number(strip.attributes.width);
    for (const it of markTexts(strip)) expect(Number(it.attributes.x)).toBeLessThan(width);
  });

  it('sets labels that would collide above each other', () => {
    const strip = timeStrip(
      [
        { seconds: 190, label: '15 cm' },
        { seconds: 200, label: '30 cm' },
        { seconds: 1800, label: '60 cm' },
      ],
      190,
      'Times',
    );
    const [near, next, far] = markTexts(strip).map((it) => Number(it.attributes.y));
    expect(near).not.toBe(next);
    expect(far).toBe(near);
    expect(piecesHtml([strip]).text).toContain('aria-label="Times"');
  });
});

describe('the standing figure', () => {
  it('is as tall as it is said to be, and stretched alike', () => {
    const tall = cornersOf(personOutline({ middle: 100, top: 10, scale: 1, height: 190 }).body);
    const small = cornersOf(personOutline({ middle: 100, top: 10, scale: 1, height: 95 }).body);
    expect(Math.max(...tall.map((it) => it[1] ?? 0))).toBeCloseTo(200, 0);
    for (const [i, [x = 0, y = 0]] of tall.entries()) {
      expect((small[i]?.[0] ?? 0) - 100).toBeCloseTo((x - 100) / 2, 0);
      expect((small[i]?.[1] ?? 0) - 10).toBeCloseTo((y - 10) / 2, 0);
    }
  });
});
