import { beforeAll, describe, expect, test } from 'vitest';
import { madeOf } from '../../../src/ledger/files/file-maker.ts';
import { isFigure } from '../../../src/measure/figure.ts';
import type { MetricId } from '../../../src/measure/metrics.ts';
import { auditWords } from '../../../src/words/spectrum-words.ts';
import { type Demo, demoLedger } from '../../support/demo-ledger.ts';

let demo: Demo;
beforeAll(() => {
  demo = demoLedger();
});

const figure = (slug: string, metric: MetricId) => {
  const it = demo.panel(slug).figures.get(metric);
  if (!isFigure(it)) throw new Error(`${slug}: no ${metric}`);
  return it;
};

/** What the generator put into the files: nm, and mW/cm² or shares. */
describe('what a spectrum is made of comes back out of it', () => {
  test.each([
    ['ruddlestone-r150', 'wavelength-red', 663.4],
    ['ruddlestone-r150', 'fwhm-red', 18.1],
    ['ruddlestone-r150', 'wavelength-near-infrared', 845.3],
    ['ruddlestone-r150', 'spectrum-irradiance-red', 45.7],
    ['ruddlestone-r150', 'spectrum-irradiance-near-infrared', 42.9],
    ['ruddlestone-r150', 'infrared-sum', 42.9],
    ['quennick-tope', 'wavelength-red', 659.6],
    ['quennick-tope', 'spectrum-irradiance-combined', (34 + 31.8) * (60.6 / (33.6 + 31.3))],
    ['quennick-tope', 'red-share-combined', (100 * 34) / (34 + 31.8)],
    ['ostrel-vagg', 'red-share-combined', (100 * 25.3) / (25.3 + 24.2)],
  ] as const)('%s: %s is %d', (slug, metric, truth) => {
    const { value, interval95 } = figure(slug, metric);
    expect(Math.abs(value / truth - 1)).toBeLessThan(0.01);
    if (interval95) expect(truth >= interval95[0] - 0.2 && truth <= interval95[1] + 0.2).toBe(true);
  });
});

test('a peak that nobody claims is found, with its share, and told where the tester works', () => {
  const { current, flags } = demo.panel('ostrel-vagg');
  const audit = current && madeOf(current.made, 'spectra')?.view.audit;
  expect(audit?.claims.map((it) => it.outcome)).toEqual(['within', 'within']);
  expect(audit?.extra).toHaveLength(1);
  expect(audit?.extra[0]?.wavelength).toBeCloseTo(941.5, 0);
  expect(audit?.extra[0]?.share).toBeCloseTo((100 * 3.6) / (25.3 + 24.2), 0);
  expect(audit && auditWords(audit)).toContain('941 nm (7.2 % of the light)');
  expect(flags.find((it) => it.check === 'wavelength-claims')).toMatchObject({
    severity: 'note',
    at: ['claims', 'wavelengths'],
  });
});

test('a relative spectrum gives no irradiance, and its infrared is a share of the meter’s reading', () => {
  expect(demo.panel('ostrel-vagg').figures.get('spectrum-irradiance-combined')).toMatchObject({
    reason: { code: 'spectrum-relative' },
  });
  const { value, inputs } = figure('ostrel-vagg', 'infrared-sum');
  expect(value).toBeCloseTo(24.2, 1);
  expect(inputs.join()).toContain('peak-irradiance-near-infrared');
});

test('the infrared limit rests on the sum where there is one, and on the reading where there is none', () => {
  expect(figure('ruddlestone-r150', 'infrared-share-at-reading').inputs.join()).toContain('infrared-sum');
  expect(figure('kelpwright-gannet', 'infrared-share-at-reading').inputs.join()).toContain(
    'peak-irradiance-near-infrared',
  );
  expect(figure('ruddlestone-r150', 'infrared-sum').notes.map((it) => it.code)).toContain('infrared-beyond-bounded');
});

test('a sound demonstration has no doubt about its spectra, and panels without files no figure of them', () => {
  for (const panel of demo.ledger.panels.values()) {
    const checks = panel.flags.filter((it) => it.severity !== 'note').map((it) => it.check);
    expect(checks.filter((it) => it.startsWith('spectrum'))).toEqual([]);
  }
  expect(isFigure(demo.panel('kelpwright-gannet').figures.get('infrared-sum'))).toBe(false);
});
