import { expect, test } from 'vitest';
import { standardsOf } from '../../../src/site/methods/standards-view.ts';
import { demoLedger } from '../../support/demo-ledger.ts';

const { ledger } = demoLedger();
const [view, ...others] = standardsOf(ledger, 'bench-thermopile');
const plain = (text: string | undefined) => text?.replaceAll('\u00a0', ' ');

test('stands under the meter that reads it', () => {
  expect(view?.anchor).toBe('standard-bench-lamp');
  expect(others).toEqual([]);
  expect(standardsOf(ledger, 'silicon-handheld')).toEqual([]);
});

test('answers first', () => {
  expect(plain(view?.answer)).toBe(
    'Held within its limits on 34 of 35 days; drift −0.4 ± 0.6 % a year since 16 Sep 2025, which may be none.',
  );
});

test('names the day beyond, what the tester wrote of it, and the session in doubt', () => {
  expect(view?.beyond).toMatchObject([{ date: '21 Oct 2025', value: '43.00 mW/cm²' }]);
  expect(view?.beyond[0]?.note).toMatch(/cold car/);
  expect(view?.flagged).toEqual([
    {
      name: 'Kelpwright Cormorant',
      date: '21 Oct 2025',
      address: '/panels/kelpwright-cormorant/methodology/#session-2025-10-21',
    },
  ]);
});

test('has every reading in its table, newest first, struck-out ones with the reason', () => {
  const rows = view?.rows ?? [];
  expect(rows).toHaveLength(35);
  expect(rows[0]?.date).toBe('24 Nov 2026');
  expect(rows.find((it) => it.date === '2 Dec 2025')).toEqual({
    date: '2 Dec 2025',
    value: '41.87',
    readings: [
      { text: '38.6', struck: 'lamp on for ten minutes only' },
      { text: '42', struck: undefined },
      { text: '41.7', struck: undefined },
      { text: '41.9', struck: undefined },
    ],
    range: '1.13',
    words: ['a large step'],
  });
  expect(rows.find((it) => it.date === '21 Oct 2025')?.words).toEqual([
    'beyond the upper limit',
    'a large step',
    expect.stringMatching(/cold car/),
  ]);
});
