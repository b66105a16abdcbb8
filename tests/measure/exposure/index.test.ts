import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { EXPOSURE_METRICS, EXPOSURE_VERSIONS } from '../../../src/measure/catalogue/exposure.ts';
import { exposureResults } from '../../../src/measure/exposure/index.ts';
import { type Figure, isFigure } from '../../../src/measure/figure.ts';
import { methodReference } from '../../../src/measure/method-versions.ts';
import { say } from '../../../src/words/say.ts';
import { anySession, EMPTY, exposureInput, FULL, readingOf, VALUES } from '../../support/exposure-sessions.ts';
import { RUNS, told } from '../make.ts';

/** The retina has more than a gap only with a spectrum: see retina.test.ts. */
const PLAIN = EXPOSURE_METRICS.filter((it) => !('isOfFiles' in it));

describe('all measures of exposure', () => {
  const results = exposureResults(FULL);

  test('come in one order, whatever was read; pulsing only where there is some', () => {
    const ids = results.map((it) => it.id);
    const plain = ids.filter((id) => !id.startsWith('pulsing-'));
    expect(ids.filter((id) => id.startsWith('pulsing-'))).toEqual(['pulsing-combined', 'pulsing-near-infrared']);
    expect(plain).toEqual(exposureResults(EMPTY).map((it) => it.id));
    expect(plain).toEqual(PLAIN.map((it) => it.id));
  });

  test('have figures of the registered metric, unit and method', () => {
    const registered = new Map<string, (typeof EXPOSURE_METRICS)[number]>(EXPOSURE_METRICS.map((it) => [it.id, it]));
    const figures = results.filter((it) => !it.id.startsWith('pulsing-')).map((it) => it.figure);
    // None for the retina, near-infrared flicker at two lines, and the mains where the frequency was read.
    expect(figures.filter(isFigure)).toHaveLength(PLAIN.length - 4);
    for (const it of figures.filter(isFigure)) {
      const metric = registered.get(it.metric);
      expect(it.unit).toBe(metric?.unit);
      expect(it.method).toBe(metric && methodReference(metric.method));
      expect(it.id).toBe(`lantern-40/2026-03-02/${it.metric}`);
      expect(it.calculation).toBeTruthy();
      expect(Object.keys(EXPOSURE_VERSIONS)).toContain(it.method.id);
    }
  });

  test('have gaps with reasons where nothing was read', () => {
    for (const it of exposureResults(EMPTY)) {
      const { figure } = it;
      expect(isFigure(figure)).toBe(false);
      if (!isFigure(figure)) expect(say(figure.reason).length).toBeGreaterThan(5);
    }
  });

  test('know the mains', () => {
    const without = exposureInput((metric) =>
      metric.endsWith('-field-frequency') ? undefined : (FULL.figure(metric) as Figure),
    );
    const [at50, at60] = [50, 60].map((mains) => exposureResults({ ...without, mains: mains as 50 | 60 }));
    const ratio = (id: string) => {
      const [here, there] = [at60, at50].map((all) => all?.find((it) => it.id === id)?.figure);
      return isFigure(here) && isFigure(there) && here.value / there.value;
    };
    expect(ratio('electric-field-share-at-mains')).toBeCloseTo(1.2, 9);
    expect(ratio('electric-field-share')).toBe(1);
  });
});

describe('whatever was read', () => {
  test('a figure is a number, in its interval, and no bound has lost its side', () => {
    fc.assert(
      fc.property(anySession, (given) => {
        for (const { figure: it } of exposureResults(given)) {
          if (!isFigure(it)) continue;
          expect(Number.isFinite(it.value)).toBe(true);
          expect(told(it.calculation)).not.toMatch(/undefined|null|NaN|Infinity|\[object/);
          if (!it.interval95) {
            expect(it.uncertaintyAbsent).toBeTruthy();
            continue;
          }
          expect(it.interval95[0]).toBeLessThanOrEqual(it.value + 1e-9);
          expect(it.interval95[1]).toBeGreaterThanOrEqual(it.value - 1e-9);
        }
      }),
      RUNS,
    );
  });

  test('bounded readings give bounded figures or gaps, never plain ones', () => {
    for (const bound of ['below', 'above'] as const) {
      const given = exposureInput((metric) => {
        const value = VALUES[metric];
        if (value === undefined) return undefined;
        return readingOf(metric, value, metric.includes('frequency') ? 'unknown' : bound);
      });
      for (const { id, figure: it } of exposureResults(given)) {
        if (!isFigure(it)) continue;
        expect([id, it.bound]).toEqual([id, id.includes('stay') ? (bound === 'below' ? 'above' : 'below') : bound]);
      }
    }
  });
});
