import { expect, test } from 'vitest';
import { carriedTogether } from '../../src/measure/carried-over.ts';

const old = { id: 'plover/2026-11-20/mains', carriedOver: { from: ['2026-10-01'], isWhole: true } };
const older = { id: 'plover/2026-11-20/sound', carriedOver: { from: ['2025-10-01'], isWhole: true } };

test('new readings carry nothing over', () => {
  expect(carriedTogether([{ id: 'plover/2026-11-20/power' }, { id: 'plover/real-price' }])).toBeUndefined();
});

test('old readings with new ones are old in part', () => {
  expect(carriedTogether([{ id: 'plover/2026-11-20/power' }, old])).toEqual({ from: ['2026-10-01'], isWhole: false });
});

test('what belongs to the panel is of no session', () => {
  expect(carriedTogether([{ id: 'plover/real-price' }, old])).toEqual({ from: ['2026-10-01'], isWhole: true });
});

test('days are told once, the earliest first', () => {
  expect(carriedTogether([old, older, old])).toEqual({ from: ['2025-10-01', '2026-10-01'], isWhole: true });
});
