import { expect, test } from 'vitest';
import { nextInRank } from '../../../src/site/panel/next-in-rank.ts';
import { demoLedger } from '../../support/demo-ledger.ts';

const against = (slug: string) => {
  const { panel, ledger } = demoLedger();
  return nextInRank(panel(slug), ledger);
};

test('is the panel one place before, and for the first the one after', () => {
  expect(against('kelpwright-gannet')).toEqual({
    model: 'Tope',
    address: '/compare/?with=kelpwright-gannet,quennick-tope',
  });
  expect(against('quennick-tope')?.model).toBe('Gannet');
  expect(against('quennick-dab')?.model).toBe('R60');
});

test('is none for a panel that ranks with no other, or not at all', () => {
  expect(against('ostrel-vagg')).toBeUndefined();
  expect(against('ostrel-bord')).toBeUndefined();
});
