import { expect, test } from 'vitest';
import { idsIn } from '../../../../src/content/read/body-links.ts';
import { CAUTION_IDS, FIXED_PAGES } from '../../../../src/content/rules/site-addresses.ts';
import { METHODS } from '../../../../src/measure/methods.ts';
import { MEANT_PAGES, meantPages } from '../../../../src/site/search/browser/other-words.ts';
import { demoLedger } from '../../../support/demo-ledger.ts';

const asked = (query: string) => meantPages(query).map((it) => it.address);

test('words are met whole, whatever their case and what stands around them', () => {
  expect(asked('LUMENS')).toEqual(['/methods/optical-power/']);
  expect(asked('how many joules?')).toEqual(['/methods/radiant-exposure/']);
  expect(asked('j/cm2 at 30 cm')).toEqual(['/methods/radiant-exposure/']);
  expect(asked('power density')).toContain('/methods/mean-irradiance/');
  expect(asked('do I need eye protection')).toEqual(['/cautions/#eyes']);
  for (const query of ['', ' ', 'lumenous', 'Gannet', 'adverb', 'safest']) expect(asked(query), query).toEqual([]);
});

test('several words give their pages in their order, three at most, each once', () => {
  expect(asked('safe dose for the eyes, and the noise of the fan')).toEqual([
    '/cautions/',
    '/methods/radiant-exposure/',
    '/cautions/#eyes',
  ]);
});

test('no word is listed for two pages that say the same, and every page is there', () => {
  const cautions = [...CAUTION_IDS, ...idsIn(demoLedger().content.cautions.source)].map((it) => `/cautions/#${it}`);
  const known = new Set<string>([
    ...FIXED_PAGES,
    ...METHODS.map((it) => `/methods/${it.id}/`),
    ...cautions,
    '/#disclosure',
  ]);
  for (const it of MEANT_PAGES) expect(known.has(it.address), it.address).toBe(true);
  expect(new Set(MEANT_PAGES.map((it) => it.address)).size).toBe(MEANT_PAGES.length);
});

test('nothing is called safe, and no effect is promised', () => {
  for (const { title, says } of MEANT_PAGES) {
    expect(`${title} ${says}`).not.toMatch(/\b(is|are) safe\b(?! for you)|harmless|heals|helps|improves|effective/);
  }
});
