import { expect, test } from 'vitest';
import { skinResult } from '../../../src/measure/exposure/skin.ts';
import { gap } from '../../../src/measure/figure.ts';
import { figure, line } from '../../measure/make.ts';
import { sentenceOf } from '../../support/sentence-of.ts';

test('heating of the skin: the share, what the limit is not for, and where it stands', () => {
  const peak = figure(100, [line('sensor', 6)], 'peak-irradiance-combined', 'mW/cm²');
  const sentence = sentenceOf(skinResult('p/d', peak));
  expect(sentence).toContain('28.1 % of the skin limit for an exposure just under 10 s');
  expect(sentence).toContain('For a session of minutes the limit is not applicable');
  expect(sentence).toContain('clause 4.3.8 (seen in secondary sources only). Directive 2006/25/EC, Annex I, ');
});

test('without a peak it still says what the limit is not for', () => {
  const sentence = sentenceOf(skinResult('p/d', gap('peak-irradiance-combined', { code: 'combined-not-measured' })));
  expect(sentence).toMatch(/^No share of the skin limit can be given: both channels together were not measured\. /);
  expect(sentence).toContain('not applicable');
});
