import { beforeAll, describe, expect, test } from 'vitest';
import { guideSchema } from '../../../../src/content/schema/guide.ts';
import { holdingsWords, payingWords } from '../../../../src/site/guide/answers/first-lines.ts';
import { type Demo, demoLedger } from '../../../support/demo-ledger.ts';

let demo: Demo;
beforeAll(() => {
  demo = demoLedger();
});

describe('what the guide holds', () => {
  test('is counted from what is published, with the newest days', () => {
    const { panels } = demo.ledger;
    const published = [...panels.values()].filter((it) => it.data.status === 'published');
    expect(published.length).toBeLessThan(panels.size);
    expect(holdingsWords(demo.ledger)).toBe(
      `${published.length} panels, readings to 24 Nov 2026, prices to 18 Nov 2026.`,
    );
  });

  test('is one panel, or none, in as many words', () => {
    const one = [...demo.ledger.panels].filter(([slug]) => slug === 'kelpwright-gannet');
    expect(holdingsWords({ panels: new Map(one) })).toMatch(/^1 panel, readings to 17 Nov 2026, prices to /);
    expect(holdingsWords({ panels: new Map() })).toBe('0 panels.');
  });
});

describe('who pays, in a line', () => {
  const { guide } = demoLedger().ledger;

  test('is the guide’s own line, or the first sentence of all of it', () => {
    expect(payingWords({ ...guide, disclosureShort: 'Nobody.' })).toBe('Nobody.');
    const { disclosureShort: _, ...without } = guide;
    expect(payingWords(without)).toBe('The library is paid for by membership fees and the town council.');
    expect(payingWords({ ...without, disclosure: 'Paid by us' })).toBe('Paid by us');
  });

  test('has room for 120 letters', () => {
    const line = guideSchema.shape.disclosureShort;
    expect(line.safeParse('x'.repeat(120)).success).toBe(true);
    expect(line.safeParse('x'.repeat(121)).success).toBe(false);
    expect(line.safeParse(' ').success).toBe(false);
  });
});
