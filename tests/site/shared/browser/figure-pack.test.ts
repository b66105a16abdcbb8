import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { type BudgetComponent, type Figure, type FigureOrGap, gap, isFigure } from '../../../../src/measure/figure.ts';
import { REPEATABILITY } from '../../../../src/measure/instrument/instrument.ts';
import { verbatim } from '../../../../src/measure/statement.ts';
import { makeFigure } from '../../../../src/measure/uncertainty.ts';
import { COMPARE_METRICS, DISTANCE_ROWS } from '../../../../src/site/compare/browser/compare-rows.ts';
import { COMPARE_FORMAT } from '../../../../src/site/compare/browser/compared-panel.ts';
import { packFigures, unpackFigures } from '../../../../src/site/shared/browser/figure-pack.ts';
import { COMPARED_METRICS, ERROR_KEYS, placeOrName } from '../../../../src/site/shared/browser/packed-names.ts';
import { packTexts, unpackTexts } from '../../../../src/site/shared/browser/text-pack.ts';
import { showFigure } from '../../../../src/words/format.ts';
import { say } from '../../../../src/words/say.ts';
import { figure, identity, line, RUNS, vague } from '../../../measure/make.ts';
import { type Demo, demoLedger } from '../../../support/demo-ledger.ts';

const sent = (it: FigureOrGap, owner?: string): FigureOrGap => {
  const pack = JSON.parse(JSON.stringify(packFigures([['optical-power', it]], say, owner)));
  return unpackFigures(pack).get('optical-power') as FigureOrGap;
};

/** By what a file has a metric. */
const placeOf = (metric: string) => placeOrName(COMPARED_METRICS, metric);

/** Relative error that six digits leave, with room. */
const CLOSE = 1e-5;

function expectClose(got: number, wanted: number): void {
  if (!Number.isFinite(wanted)) expect(got).toBe(wanted);
  else expect(Math.abs(got - wanted)).toBeLessThanOrEqual(CLOSE * Math.abs(wanted));
}

const contribution: fc.Arbitrary<BudgetComponent> = fc
  .record({
    key: fc.string({ minLength: 1, maxLength: 12 }),
    size: fc.double({ min: -1e3, max: 1e3, noNaN: true }),
    type: fc.constantFrom('A' as const, 'B' as const),
    distribution: fc.constantFrom('normal' as const, 'rectangular' as const, 't' as const),
    degreesOfFreedom: fc.oneof(fc.integer({ min: 1, max: 40 }), fc.constant(Number.POSITIVE_INFINITY)),
  })
  .map(({ key, size, ...part }) => line(key, size, part));

const figures: fc.Arbitrary<Figure> = fc
  .record({
    value: fc.double({ min: 1e-6, max: 1e6, noNaN: true }),
    budget: fc.uniqueArray(contribution, { maxLength: 8, selector: (it) => it.source.key }),
    bound: fc.constantFrom(undefined, 'below' as const, 'above' as const),
  })
  .map(({ value, budget, bound }) => makeFigure({ ...identity(), ...(bound && { bound }) }, value, { budget }));

test('a figure comes back from JSON with its value, uncertainty, interval and budget', () => {
  fc.assert(
    fc.property(figures, (it) => {
      const back = sent(it);
      if (!isFigure(back)) throw new Error('a gap');
      expectClose(back.value, it.value);
      expectClose(back.standardUncertainty as number, it.standardUncertainty as number);
      expectClose(back.coverageFactor as number, it.coverageFactor as number);
      expect(back.degreesOfFreedom).toBe(it.degreesOfFreedom);
      for (const end of [0, 1] as const) {
        expectClose((back.interval95 as [number, number])[end], (it.interval95 as [number, number])[end]);
      }
      expect(back).toMatchObject({ id: it.id, metric: it.metric, unit: it.unit, basis: it.basis, method: it.method });
      expect(back.bound).toBe(it.bound);
      const plain = ({ key, type, distribution, degreesOfFreedom }: BudgetComponent['source']) => ({
        key,
        type,
        distribution,
        degreesOfFreedom,
      });
      expect(back.budget.map((one) => plain(one.source))).toEqual(it.budget.map((one) => plain(one.source)));
      it.budget.forEach((entry, i) => {
        // What is as good as nothing in its budget may come back as nothing.
        const apart = Math.abs((back.budget[i] as BudgetComponent).contribution - entry.contribution);
        expect(apart).toBeLessThanOrEqual(CLOSE * (it.standardUncertainty as number));
      });
    }),
    RUNS,
  );
});

test('texts that begin alike come back', () => {
  const texts = fc.array(
    fc.tuple(fc.constantFrom('', 'no repeats were taken for the ', 'no repeats 🐦🐦'), fc.string()),
  );
  fc.assert(
    fc.property(texts, (parts) => {
      const all = parts.map((it) => it.join(''));
      expect(unpackTexts(JSON.parse(JSON.stringify(packTexts(all))))).toEqual(all);
    }),
    RUNS,
  );
  expect(packTexts(['not known for the meter', 'not known for the probe'])).toEqual([
    'not known for the meter',
    [18, 'probe'],
  ]);
});

test('an unknown uncertainty stays unknown, with its reason', () => {
  expect(sent(vague(5, 'no meter is named'))).toMatchObject({
    value: 5,
    standardUncertainty: null,
    interval95: null,
    coverageFactor: null,
    degreesOfFreedom: null,
    uncertaintyAbsent: verbatim('no meter is named'),
    budget: [],
  });
});

test('an exact figure stays exact', () => {
  expect(sent(figure(199))).toMatchObject({ value: 199, standardUncertainty: 0, interval95: [199, 199], budget: [] });
});

test('a gap stays a gap, with its reason', () => {
  expect(sent(gap('optical-power', verbatim('not measured')))).toEqual(gap('optical-power', verbatim('not measured')));
});

test('an interval without an end has none afterwards', () => {
  const back = sent({ ...figure(5, [line('a', 1)]), interval95: [4, Number.POSITIVE_INFINITY] });
  expect(isFigure(back) && back.interval95).toEqual([4, Number.POSITIVE_INFINITY]);
});

test('ids and keys of its owner are short in a file, and come back whole', () => {
  const owner = 'grebe/2026-03-01/';
  const it = { ...figure(5, [line(`${owner}grid`, 1), line('meter', 2)]), id: `${owner}optical-power` };
  const { lines, figures: packed } = packFigures([['optical-power', it]], say, owner);
  expect(lines).toEqual(['~grid', 'meter']);
  expect(packed[placeOf('optical-power')]).toEqual([5, 0, [0, 1]]);
  const back = sent(it, owner);
  if (!isFigure(back)) throw new Error('a gap');
  expect(back.id).toBe(it.id);
  expect(back.budget.map((one) => one.source.key)).toEqual([`${owner}grid`, 'meter']);
});

test('what is no number is refused', () => {
  expect(() => packFigures([['optical-power', figure(Number.NaN)]], say)).toThrow(RangeError);
});

test('an error that figures share is kept once; one of the same name but another kind is another', () => {
  const {
    kinds,
    lines,
    terms,
    figures: packed,
  } = packFigures(
    [
      ['optical-power', figure(5, [line('meter', 1), line('own', 0.1)])],
      ['emitted-power', figure(7, [line('meter', 2)])],
      ['capture', figure(7, [line('meter', 2, { distribution: 't', degreesOfFreedom: 4 })])],
    ],
    say,
  );
  const kindOf = (it: (typeof lines)[number]) => (typeof it === 'object' ? it : ([it, 0] as const));
  expect(lines.map(kindOf).map(([key, kind]) => [key, kinds[kind]?.[2]])).toEqual([
    ['meter', null],
    ['own', null],
    ['meter', 4],
  ]);
  const shares = (metric: 'emitted-power' | 'capture') => {
    const it = packed[placeOf(metric)];
    return Array.isArray(it) ? it[2]?.map((place) => terms.slice(2 * place, 2 * place + 2)) : undefined;
  };
  expect(shares('emitted-power')).toEqual([[0, Number((2e6 / 7).toPrecision(8))]]);
  expect(shares('capture')).toEqual([[2, Number((2e6 / 7).toPrecision(8))]]);
});

test('what an error is of several figures is said once, with either sign', () => {
  const power = figure(50, [line('meter', 1), line('field', -0.5)]);
  const { terms, figures: packed } = packFigures(
    [
      ['optical-power', power],
      ['price-per-watt', figure(4, [line('meter', -0.08), line('field', 0.04)])],
    ],
    say,
  );
  expect(terms).toEqual([0, 20_000, 1, 10_000]);
  expect(packed[placeOf('optical-power')]).toEqual([50, 0, [0, -2], { id: expect.anything() }]);
  expect(packed[placeOf('price-per-watt')]).toMatchObject([4, 0, [-1, 1], {}]);
  const back = sent(power);
  if (!isFigure(back)) throw new Error('a gap');
  expect(back.budget.map((it) => it.contribution)).toEqual([1, -0.5]);
  expect(back.standardUncertainty).toBeCloseTo(Math.hypot(1, 0.5), 8);
});

describe('every figure of the demo', () => {
  let demo: Demo;
  beforeAll(() => {
    demo = demoLedger();
  });

  test('reads the same after it was packed', () => {
    const faults = [...demo.ledger.panels.values()].flatMap((panel) => {
      const back = unpackFigures(JSON.parse(JSON.stringify(packFigures(panel.figures, say))));
      expect(back.size).toBeGreaterThan(40);
      return [...panel.figures].flatMap(([metric, it]) => {
        const other = back.get(metric) as FigureOrGap;
        if (!isFigure(it))
          return isFigure(other) || say(other.reason) !== say(it.reason) ? [`${panel.slug} ${metric}`] : [];
        const [own, unpacked] = [showFigure(it, 'EUR').text, isFigure(other) ? showFigure(other, 'EUR').text : 'a gap'];
        return own === unpacked ? [] : [`${panel.slug} ${metric}: ${own}, ${unpacked}`];
      });
    });
    expect(faults).toEqual([]);
  });
});

test('that the scatter of readings is not known comes back, since a difference asks for it', () => {
  const reason = 'no repeats were taken, and how readings scatter is not known for the sound meter';
  const others = { what: verbatim('Angular (cosine) response'), reason: verbatim('not stated') };
  const silent = {
    ...figure(43, [line('a', 0.7)]),
    unassessed: [others, { what: REPEATABILITY, reason: verbatim(reason) }],
  };
  const back = sent(silent);
  expect(isFigure(back) && back.unassessed).toEqual([{ what: REPEATABILITY, reason: verbatim(reason) }]);
  const known = sent(figure(43, [line('a', 0.7)]));
  expect(isFigure(known) && known.unassessed).toEqual([]);
});

test.each([true, false])('from which day a figure is comes back (whole: %s)', (isWhole) => {
  const carriedOver = { from: ['2025-10-01', '2026-10-01'], isWhole };
  const back = sent({ ...figure(43, [line('a', 0.7)]), carriedOver });
  expect(isFigure(back) && back.carriedOver).toEqual(carriedOver);
});

test('what files have the places of is of the demonstration’s files, and a place that the list has not got is refused', () => {
  for (const names of [ERROR_KEYS, COMPARED_METRICS]) expect(new Set(names).size).toBe(names.length);
  const own = [...COMPARE_METRICS, 'field-width', 'field-height', ...DISTANCE_ROWS.map((it) => it.metric)];
  expect(own.filter((it) => !(COMPARED_METRICS as readonly string[]).includes(it))).toEqual([]);
  const pack = packFigures(
    [['optical-power', figure(10, [line('gannet/2026-10-06/distance', 1)])]],
    say,
    'gannet/2026-10-06/',
  );
  expect(pack.lines).toEqual([0]);
  expect(() => unpackFigures({ ...pack, lines: [ERROR_KEYS.length] })).toThrow(RangeError);
  expect(() => unpackFigures({ ...pack, figures: { [COMPARED_METRICS.length]: [1, 0] } })).toThrow(RangeError);
});

test('the order of what files have the places of stands, or the format is another', () => {
  // New names go to the end, and to the end of these lines. A change before it raises COMPARE_FORMAT.
  expect(COMPARE_FORMAT).toBe(6);
  expect(ERROR_KEYS.join(' ')).toMatchInlineSnapshot(
    `"~distance ~angular ~grid/resolution ~grid/repeatability ^field-width/edges ^field-height/edges ^light-edge ~peak-irradiance-combined/resolution ~peak-irradiance-combined/repeatability ~peak-irradiance-red/resolution ~peak-irradiance-red/repeatability ~peak-irradiance-near-infrared/resolution ~peak-irradiance-near-infrared/repeatability ~mains-draw-combined/resolution ~uniformity-lowest/resolution ~uniformity-lowest/repeatability ~sound-on/resolution ~magnetic-field-on/resolution ~electric-field-on/resolution ~wavelength-red/resolution ~wavelength-near-infrared/resolution ~flicker-combined/resolution ~beam-shape-1 ~beam-shape-2 ~beam-shape-3 ~beam-shape-4 ~beam-rest-emitted ~beam-rest-half-angle ~beam-rest-mean-0 ~beam-rest-mean-1 ~beam-rest-mean-2 ~beam-rest-mean-3 ~beam-rest-mean-4 ~beam-rest-mean-5"`,
  );
  expect(COMPARED_METRICS.join(' ')).toMatchInlineSnapshot(
    `"real-price optical-power price-per-watt mean-irradiance peak-irradiance-combined efficiency-combined uniformity-lowest sound-on led-area emitted-power price-per-emitted-watt efficiency-emitted beam-half-angle infrared-share-at-reading flicker-combined magnetic-field-on magnetic-field-share magnetic-field-share-at-mains electric-field-share electric-field-share-at-mains wavelength-red wavelength-near-infrared peak-irradiance-red peak-irradiance-near-infrared mains-draw-combined field-width field-height mean-irradiance-at-5-cm mean-irradiance-at-10-cm mean-irradiance-at-15-cm mean-irradiance-at-30-cm mean-irradiance-at-45-cm mean-irradiance-at-60-cm"`,
  );
});
