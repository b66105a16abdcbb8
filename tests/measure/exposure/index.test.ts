import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { EXPOSURE_METRICS, EXPOSURE_VERSIONS } from '../../../src/measure/catalogue/exposure.ts';
import {
  CLOSING,
  cited,
  type ExposureInput,
  exposureResults,
  nearInfraredFromMode,
  sentenceOf,
} from '../../../src/measure/exposure/index.ts';
import { type Figure, type FigureOrGap, gap, isFigure, type Unit } from '../../../src/measure/figure.ts';
import { methodReference } from '../../../src/measure/method-versions.ts';
import { METRICS, type MetricId } from '../../../src/measure/metrics.ts';
import { say } from '../../../src/words/say.ts';
import { figure, line, RUNS, vague } from '../make.ts';

const UNITS = new Map<string, Unit>(METRICS.map((it) => [it.id, it.unit]));
const unitOf = (metric: string): Unit => UNITS.get(metric) ?? '1';

/** A session in which all was read, and the panel pulses; relative uncertainty of 5 %. */
const VALUES: Record<string, number> = {
  'peak-irradiance-near-infrared': 50,
  'peak-irradiance-combined': 100,
  'flicker-combined': 60,
  'flicker-frequency-combined': 10,
  'flicker-red': 8,
  'flicker-frequency-red': 120,
  'flicker-near-infrared': 60,
  'flicker-frequency-near-infrared': 40,
  'magnetic-field-on': 0.31,
  'magnetic-field-off': 0.05,
  'electric-field-on': 18,
  'electric-field-frequency': 65_000,
  'electric-field-off': 4,
  'radio-field-on': 0.007,
  'radio-field-off': 0.005,
  'sound-on': 45.2,
  'sound-off': 32.7,
};

type Kind = 'known' | 'unknown' | 'below' | 'above';
const readingOf = (metric: string, value: number, kind: Kind, relative = 0.05): Figure => {
  if (kind === 'known') return figure(value, [line(`${metric}/error`, relative * value)], metric, unitOf(metric));
  const it = { ...vague(value, kind === 'unknown' ? undefined : 'a bound', metric), unit: unitOf(metric) };
  return kind === 'unknown' ? it : { ...it, bound: kind };
};

function input(read: (metric: MetricId) => FigureOrGap | undefined, part: Partial<ExposureInput> = {}): ExposureInput {
  const metric = 'peak-irradiance-near-infrared';
  return {
    session: 'lantern-40/2026-03-02',
    figure: read,
    infrared: nearInfraredFromMode(read(metric) ?? gap(metric, 'near-infrared alone was not measured'), 15),
    mains: 50,
    distances: { magnetic: '15 cm', sound: '1 m' },
    ...part,
  };
}
const full = input((metric) => {
  const value = VALUES[metric];
  return value === undefined ? undefined : readingOf(metric, value, metric.includes('frequency') ? 'unknown' : 'known');
});
const empty = input(() => undefined, { distances: {} });

const VERDICTS =
  /\b(un)?safe(ly|ty)?\b|\bpass(es|ed|ing)?\b|\bfail(s|ed|ing|ure)?\b|\bok(ay)?\b|\bharmless\b|\bcomplian/i;
const BROKEN = /undefined|null|NaN|Infinity|\[object|\s{2}|\.\.|: \./;

describe('all measures of exposure', () => {
  const results = exposureResults(full);

  test('come in one order, whatever was read; pulsing only where there is some', () => {
    const ids = results.map((it) => it.id);
    const plain = ids.filter((id) => !id.startsWith('pulsing-'));
    expect(ids.filter((id) => id.startsWith('pulsing-'))).toEqual(['pulsing-combined', 'pulsing-near-infrared']);
    expect(plain).toEqual(exposureResults(empty).map((it) => it.id));
    expect(plain).toEqual(EXPOSURE_METRICS.map((it) => it.id));
  });

  test('have figures of the registered metric, unit and method', () => {
    const registered = new Map<string, (typeof EXPOSURE_METRICS)[number]>(EXPOSURE_METRICS.map((it) => [it.id, it]));
    const figures = results.filter((it) => !it.id.startsWith('pulsing-')).map((it) => it.figure);
    // None for the retina, near-infrared flicker at two lines, and the mains where the frequency was read.
    expect(figures.filter(isFigure)).toHaveLength(EXPOSURE_METRICS.length - 4);
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
    for (const it of exposureResults(empty)) {
      const { figure } = it;
      expect(isFigure(figure)).toBe(false);
      if (!isFigure(figure)) expect(say(figure.reason).length).toBeGreaterThan(5);
      expect(sentenceOf(it)).toMatch(/^(No |The guide says nothing)/);
    }
  });

  test('name the limit with its source and year, and where its text was not read', () => {
    for (const it of [...results, ...exposureResults(empty)]) {
      const { limit } = it;
      const sentence = sentenceOf(it);
      if (!limit) continue;
      expect(sentence).toContain(cited(limit));
      expect(cited(limit)).toContain(String(limit.year));
      expect(cited(limit)).toContain(limit.source);
      if (limit.standing === 'secondary') expect(sentence).toContain('(seen in secondary sources only)');
      if (limit.standing === 'memory') expect(sentence).toContain('(from memory)');
    }
  });

  test('stand beside a caution', () => {
    const anchors = new Set(results.map((it) => it.caution));
    expect([...anchors]).toEqual(
      ['eyes', 'skin-and-heat', 'flicker', 'implants-and-fields', 'sound'].toSorted(
        (a, b) => [...anchors].indexOf(a as never) - [...anchors].indexOf(b as never),
      ),
    );
    expect(anchors.size).toBe(5);
  });

  test('know the mains', () => {
    const without = input((metric) => (metric.endsWith('-field-frequency') ? undefined : full.figure(metric)));
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
  const kinds = fc.constantFrom<Kind | 'missing'>('known', 'unknown', 'below', 'above', 'missing');
  const session = fc
    .record({
      kinds: fc.record(Object.fromEntries(Object.keys(VALUES).map((metric) => [metric, kinds]))),
      scales: fc.record(
        Object.fromEntries(
          Object.keys(VALUES).map((metric) => [
            metric,
            fc.oneof(fc.constant(0), fc.double({ min: 0.001, max: 30, noNaN: true })),
          ]),
        ),
      ),
      relative: fc.double({ min: 0, max: 0.6, noNaN: true }),
    })
    .map(({ kinds: kindOf, scales, relative }) =>
      input((metric) => {
        const kind = kindOf[metric];
        const value = VALUES[metric];
        if (value === undefined || kind === undefined || kind === 'missing') return undefined;
        return readingOf(metric, value * (scales[metric] ?? 1), kind, relative);
      }),
    );

  test('the words give no verdict, have no hole in them and end with what they are not', () => {
    fc.assert(
      fc.property(session, (given) => {
        for (const it of exposureResults(given)) {
          const { title } = it;
          const sentence = sentenceOf(it);
          expect(`${title} ${sentence}`).not.toMatch(VERDICTS);
          expect(`${title} ${sentence}`).not.toMatch(BROKEN);
          expect(sentence.endsWith(CLOSING)).toBe(true);
        }
      }),
      RUNS,
    );
  });

  test('a figure is a number, in its interval, and no bound has lost its side', () => {
    fc.assert(
      fc.property(session, (given) => {
        for (const { figure: it } of exposureResults(given)) {
          if (!isFigure(it)) continue;
          expect(Number.isFinite(it.value)).toBe(true);
          expect(it.calculation ?? '').not.toMatch(BROKEN);
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
      const given = input((metric) => {
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

test('the verdict words would be found', () => {
  for (const word of ['It is safe.', 'passed', 'Fails', 'OK', 'safely', 'unsafe']) expect(word).toMatch(VERDICTS);
  expect('at the cautious end').not.toMatch(VERDICTS);
});
