import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { type FigureOrGap, gap } from '../../../../src/measure/figure.ts';
import { REPEATABILITY } from '../../../../src/measure/instrument/instrument.ts';
import { verbatim } from '../../../../src/measure/statement.ts';
import { COMPARE_GROUPS, type CompareRow } from '../../../../src/site/compare/browser/compare-rows.ts';
import {
  compareRow,
  type Outcome,
  outcomeWords,
  unlikeness,
} from '../../../../src/site/compare/browser/compare-words.ts';
import type { ComparedPanel } from '../../../../src/site/compare/browser/compared-panel.ts';
import { figure, line, RUNS, vague } from '../../../measure/make.ts';
import { contender, panel } from './make-contender.ts';

// A third version of the procedure is supposed, which reads the grid otherwise.
vi.mock('../../../../src/measure/irradiance/bench-procedure.ts', async (original) =>
  (await import('../../../support/third-procedure.ts')).withThird(await original()),
);

const ROWS = COMPARE_GROUPS.flatMap((it) => it.rows);
const row = (metric: string): CompareRow => {
  const it = ROWS.find((one) => one.metric === metric);
  if (!it) throw new Error(`no row ${metric}`);
  return it;
};
const POWER = row('optical-power');
const ANGLE = row('beam-half-angle');

const watts = (value: number, ...own: Array<[key: string, u: number]>) =>
  figure(
    value,
    own.map(([key, u]) => line(key, u)),
  );

/** Words with plain spaces. */
const plain = (text: string) => text.replaceAll('\u00a0', ' ');

/** All of it in one line: "a tie (4 % less to 10 % more)". */
const inFull = (one: CompareRow, outcome: Outcome) => {
  const { text, reach } = outcomeWords(one, outcome);
  return plain(reach === undefined ? text : `${text} (${reach})`);
};

/** What is said of the power of one panel against another's. */
const said = (own: FigureOrGap, others: FigureOrGap, part?: Partial<ComparedPanel>) =>
  inFull(
    POWER,
    compareRow(POWER, contender('B', { 'optical-power': own }, part), contender('A', { 'optical-power': others })),
  );

describe('a difference in words', () => {
  test('by hand: 120 ± 3 W against 100 ± 2 W', () => {
    // 1.2 × exp(±1.96 × hypot(0.025, 0.02)) = 1.127 and 1.278
    expect(said(watts(120, ['b', 3]), watts(100, ['a', 2]))).toBe('13 to 28 % more');
    // Its reciprocal: 1/1.278 = 0.7827 and 1/1.127 = 0.8873.
    expect(said(watts(100, ['b', 2]), watts(120, ['a', 3]))).toBe('11 to 22 % less');
  });

  test('a shared calibration cancels', () => {
    const own = (value: number, key: string) => watts(value, ['meter', 0.1 * value], [key, 0.02 * value]);
    // Fieller, (120 − 100 q)² = 1.96² (12.2² + 10.2² q² − 2 × 120 q), gives 1.1340 and 1.2698, and 1.1352 and 1.2684
    // without the 10 % that both share: it only makes the own 2 % of each a hair larger or smaller.
    expect(said(own(120, 'b'), own(100, 'a'))).toBe('13 to 27 % more');
  });

  test('a tie names both ends', () => {
    expect(said(watts(103, ['b', 3]), watts(100, ['a', 2]))).toBe('a tie (4 % less to 10 % more)');
  });

  test('multiples from two times up', () => {
    // 2.5 × exp(±1.96 × hypot(0.012, 0.02)) = 2.388 and 2.617
    expect(said(watts(250, ['b', 3]), watts(100, ['a', 2]))).toBe('2.39 to 2.62 times as much');
    expect(said(watts(100, ['b', 2]), watts(250, ['a', 3]))).toBe('58 to 62 % less');
  });

  test('exact figures', () => {
    expect(said(figure(199), figure(199))).toBe('the same');
    expect(said(figure(238.8), figure(199))).toBe('20 % more');
    expect(said(figure(398), figure(199))).toBe('2.0 times as much');
    expect(said(figure(199), figure(238.8))).toBe('17 % less');
  });

  test('a lower end that rounds to nought is none, and nothing is 100 % less', () => {
    expect(said(watts(110, ['b', 5.1]), watts(100))).toMatch(/^(up to|0\.\d+ to) \d+\.?\d* % more$/);
    expect(said(watts(0.5, ['b', 0.4]), watts(100))).toBe('97.6 to 99.9 % less');
  });

  test('angles are subtracted', () => {
    const angle = (value: number, key: string) => figure(value, [line(key, 1)], 'beam-half-angle', '°');
    const words = (own: number, others: number) => {
      const [b, a] = [
        contender('B', { 'beam-half-angle': angle(own, 'b') }),
        contender('A', { 'beam-half-angle': angle(others, 'a') }),
      ];
      return inFull(ANGLE, compareRow(ANGLE, b, a));
    };
    // 1.96 × hypot(1, 1) = 2.77
    expect(words(30, 22)).toBe('5 to 11° wider');
    expect(words(22, 30)).toBe('5 to 11° narrower');
    expect(words(22, 21)).toBe('a tie (2° narrower to 4° wider)');
  });

  test('what is missing has its reason', () => {
    expect(said(vague(100, 'no meter is named'), watts(100))).toBe('not known: no meter is named');
    expect(said(gap('optical-power', verbatim('not measured')), watts(100))).toBe('not known: not measured');
    expect(said(watts(100), gap('optical-power', verbatim('not measured')))).toBe(
      'not known: A has none: not measured',
    );
    expect(said({ ...watts(100), bound: 'below' }, watts(100))).toBe('not known: one of the two is only a bound');
  });

  test('the other way round says the opposite', () => {
    const value = fc.double({ min: 1, max: 300, noNaN: true });
    const share = fc.double({ min: 0.001, max: 0.2, noNaN: true });
    fc.assert(
      fc.property(value, value, share, share, (a, b, ua, ub) => {
        const [x, y] = [watts(a, ['meter', 0.05 * a], ['a', ua * a]), watts(b, ['meter', 0.05 * b], ['b', ub * b])];
        const kind = (words: string) =>
          words.startsWith('a tie')
            ? 'tie'
            : / (more|as much)$/.test(words)
              ? 'more'
              : / less$/.test(words)
                ? 'less'
                : words;
        const [there, back] = [kind(said(x, y)), kind(said(y, x))];
        expect([there, back].toSorted()).toEqual(there === 'tie' ? ['tie', 'tie'] : ['less', 'more']);
        expect(said(x, y)).not.toMatch(/NaN|Infinity|undefined|−/);
      }),
      RUNS,
    );
  });
});

describe('what was not measured alike', () => {
  const at = (distance: number, methodVersion = 1) => ({
    conditions: { distance, methodVersion, isReference: false },
  });

  test('another distance keeps what hangs on it from being compared, and nothing else', () => {
    const [own, others] = [panel('B', at(30)), panel('A')];
    const apart = ROWS.filter((it) => unlikeness(it, own, others));
    expect(apart.map((it) => it.metric)).toEqual([
      'optical-power',
      'price-per-watt',
      'mean-irradiance',
      'peak-irradiance-combined',
      'efficiency-combined',
      'uniformity-lowest',
      'sound-on',
      'infrared-share-at-reading',
      'peak-irradiance-red',
      'peak-irradiance-near-infrared',
    ]);
    expect(unlikeness(POWER, own, others)).toBe('it was read at 30 cm, A at 15.24 cm');
    expect(said(watts(120, ['b', 3]), watts(100, ['a', 2]), at(30))).toBe(
      'not read alike: it was read at 30 cm, A at 15.24 cm',
    );
  });

  test('a version of the procedure that reads the grid alike keeps nothing from it', () => {
    const [own, others] = [panel('B', at(15.24, 2)), panel('A')];
    expect(ROWS.filter((it) => unlikeness(it, own, others))).toEqual(ROWS.filter((it) => it.alike === 'sound'));
  });

  test('another version of the procedure keeps all readings from it, not prices and sizes', () => {
    const [own, others] = [panel('B', at(15.24, 3)), panel('A')];
    const fine = ROWS.filter((it) => !unlikeness(it, own, others)).map((it) => it.metric);
    expect(fine).toEqual(['real-price', 'led-area']);
    expect(unlikeness(POWER, own, others)).toBe('bench procedure version 3, A’s version 1');
  });

  test('readings with a distance of their own go by that', () => {
    const magnetic = row('magnetic-field-on');
    const far = {
      distances: { magnetic: { value: 30, written: '30 cm' }, electric: null, sound: null },
    };
    expect(unlikeness(magnetic, panel('B', far), panel('A'))).toBe('it was read at 30 cm, A at 6 in');
    expect(unlikeness(magnetic, panel('B'), panel('A'))).toBeUndefined();
    expect(unlikeness(row('electric-field-share'), panel('B', far), panel('A'))).toBe(
      'the distance of a reading is not recorded',
    );
    expect(unlikeness(row('sound-on'), panel('B'), panel('A'))).toBe('the distance of a reading is not recorded');
  });

  test('a share at a frequency that was read and one at the strict end', () => {
    const share = row('electric-field-share');
    const one = (name: string, part: Partial<ComparedPanel> = {}) =>
      contender(name, { 'electric-field-share': figure(40, [line(name, 1)], 'electric-field-share', '%') }, part);
    const outcome = (here: Partial<ComparedPanel>, there: Partial<ComparedPanel>) =>
      compareRow(share, one('B', here), one('A', there));
    expect(outcome({ frequencies: ['electric'] }, {})).toEqual({
      kind: 'unlike',
      reason: 'the frequency of the field was read for one of the two only',
    });
    expect(outcome({ frequencies: ['electric'] }, { frequencies: ['electric', 'magnetic'] }).kind).toBe('tie');
    // The frequency of another field does not matter.
    expect(outcome({ frequencies: ['magnetic'] }, {}).kind).toBe('tie');
  });

  test('another version of the method', () => {
    const old = { ...watts(100), method: { id: 'optical-power', version: 2 } as const };
    expect(said(old, watts(100))).toBe('not read alike: the two were worked out by different versions of the method');
  });
});

test('no words of a verdict', () => {
  const words = JSON.stringify(COMPARE_GROUPS);
  expect(words).not.toMatch(/\b(safe|best|better|worse|recommend|winner|beats?|effective)\b/i);
});

test('a level without a known scatter tells no difference, and says why', () => {
  const sound = row('sound-on');
  const calibration = line('meter@2026-01-19/calibration', 0.7);
  const reason = 'no repeats were taken, and how readings scatter is not known for the sound meter';
  const single = {
    ...figure(43, [calibration, line('43/resolution', 0.03)], 'sound-on', 'dB(A)'),
    unassessed: [{ what: REPEATABILITY, reason: verbatim(reason) }],
  };
  const at = { distances: { magnetic: null, electric: null, sound: { value: 100, written: '1 m' } } };
  const [a, b] = [
    contender('A', { 'sound-on': single }, at),
    contender('B', { 'sound-on': { ...single, value: 44.7 } }, at),
  ];
  expect(outcomeWords(sound, compareRow(sound, b, a)).text).toBe(`not known: ${reason}`);
  const stated = (value: number) =>
    figure(value, [calibration, line(`${value}/repeatability`, 0.5)], 'sound-on', 'dB(A)');
  const known = compareRow(
    sound,
    contender('B', { 'sound-on': stated(44.7) }, at),
    contender('A', { 'sound-on': stated(43) }, at),
  );
  // 1.7 dB; u = 0.5 √2 = 0.707 dB, so 0.31 to 3.09 dB.
  expect(known).toMatchObject({ kind: 'apart', interval95: [expect.closeTo(0.31, 2), expect.closeTo(3.09, 2)] });
});
