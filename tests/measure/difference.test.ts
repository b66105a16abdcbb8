import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Difference, differenceFrom, ratioTo, scatterUnknown } from '../../src/measure/difference.ts';
import { NO_INSTRUMENT } from '../../src/measure/instrument/instrument.ts';
import { type InstrumentReading, readingFigure } from '../../src/measure/reading.ts';
import { say } from '../../src/words/say.ts';
import { figure, instrument, line, RUNS, vague } from './make.ts';
import { type Numbers, randomNumbers } from './random-numbers.ts';

/** t(0.975) of infinitely many degrees of freedom. */
const K = 1.959964;

const known = (it: Difference) => {
  if (it.kind === 'unknown') throw new Error(`not known: ${say(it.reason)}`);
  return it;
};

/** A value, an error that may be shared and one of its own, both relative. */
const watts = fc.double({ min: 0.5, max: 500, noNaN: true });
const share = fc.double({ min: 0.001, max: 0.2, noNaN: true });

describe('the ratio to another figure', () => {
  test('by hand: 120 ± 3 W to 100 ± 2 W, independent', () => {
    const it = known(ratioTo(figure(120, [line('a', 3)]), figure(100, [line('b', 2)])));
    // Fieller in watts: (120 − 100 q)² = K² (3² + 2² q²), a quadratic equation in q.
    const [a, b, c] = [100 ** 2 - (2 * K) ** 2, -2 * 120 * 100, 120 ** 2 - (3 * K) ** 2];
    const root = Math.sqrt(b * b - 4 * a * c);
    expect(it.kind).toBe('apart');
    expect(it.value).toBeCloseTo(1.2, 12);
    expect(it.interval95[0]).toBeCloseTo((-b - root) / (2 * a), 6);
    expect(it.interval95[1]).toBeCloseTo((-b + root) / (2 * a), 6);
    expect(it.interval95[0]).toBeCloseTo(1.1265, 4);
    expect(it.interval95[1]).toBeCloseTo(1.2772, 4);
  });

  test('nears the law of propagation where uncertainties are small: u(r)/r = hypot(0.3 %, 0.2 %)', () => {
    const it = known(ratioTo(figure(120, [line('a', 0.36)]), figure(100, [line('b', 0.2)])));
    const reach = K * Math.hypot(0.003, 0.002);
    expect(it.interval95[0]).toBeCloseTo(1.2 * (1 - reach), 3);
    expect(it.interval95[1]).toBeCloseTo(1.2 * (1 + reach), 3);
  });

  test('is a tie where the interval holds 1', () => {
    expect(ratioTo(figure(103, [line('a', 3)]), figure(100, [line('b', 2)])).kind).toBe('tie');
    expect(ratioTo(figure(103, [line('a', 0.3)]), figure(100, [line('b', 0.2)])).kind).toBe('apart');
  });

  test('leaves out what both share: a calibration makes no tie', () => {
    const shared = (value: number) => [line('meter/calibration', 0.1 * value)];
    const it = known(
      ratioTo(figure(103, [...shared(103), line('a', 0.3)]), figure(100, [...shared(100), line('b', 0.2)])),
    );
    const apart = known(ratioTo(figure(103, [line('a', 0.3)]), figure(100, [line('b', 0.2)])));
    expect(it.kind).toBe('apart');
    // Only the size of the ratio's own errors moves with the calibration, by a hair.
    expect(it.interval95[0]).toBeCloseTo(apart.interval95[0], 3);
    const own = ratioTo(
      figure(103, [line('meter-1/calibration', 10.3), line('a', 0.3)]),
      figure(100, [line('meter-2/calibration', 10), line('b', 0.2)]),
    );
    expect(own.kind).toBe('tie');
  });

  test('the other way round is the reciprocal, and of the same kind', () => {
    fc.assert(
      fc.property(watts, watts, share, share, share, (a, b, common, ownA, ownB) => {
        const x = figure(a, [line('common', common * a), line('a', ownA * a)]);
        const y = figure(b, [line('common', common * b), line('b', ownB * b)]);
        const [there, back] = [known(ratioTo(x, y)), known(ratioTo(y, x))];
        expect(back.kind).toBe(there.kind);
        expect(back.value * there.value).toBeCloseTo(1, 9);
        expect(back.interval95[0] * there.interval95[1]).toBeCloseTo(1, 9);
        expect(back.interval95[1] * there.interval95[0]).toBeCloseTo(1, 9);
        const holdsOne = there.interval95[0] <= 1 && there.interval95[1] >= 1;
        expect(there.kind).toBe(holdsOne ? 'tie' : 'apart');
      }),
      RUNS,
    );
  });

  test('of exact figures is exact: the same, or apart', () => {
    expect(ratioTo(figure(199), figure(199))).toEqual({ kind: 'same', value: 1, interval95: [1, 1] });
    expect(ratioTo(figure(238.8), figure(199))).toMatchObject({ kind: 'apart' });
    expect(known(ratioTo(figure(238.8), figure(199))).value).toBeCloseTo(1.2, 12);
  });

  test.each([
    ['an unknown uncertainty', vague(5, NO_INSTRUMENT), figure(4), NO_INSTRUMENT],
    ['an unknown uncertainty of the other', figure(4), vague(5, NO_INSTRUMENT), NO_INSTRUMENT],
    ['a bound', { ...figure(5), bound: 'below' as const }, figure(4), { code: 'one-only-a-bound' }],
    ['nought', figure(0), figure(4), { code: 'no-ratio-to-nought' }],
  ])('is not known with %s', (_, one, other, reason) => {
    expect(ratioTo(one, other)).toEqual({ kind: 'unknown', reason });
  });
});

describe('against a direct simulation', () => {
  const TRIALS = 200_000;

  /** Both figures drawn with their errors, a shared one once for both; the 2.5 and 97.5 % points of their ratio. */
  function simulated(a: number, b: number, draw: (numbers: Numbers) => readonly [number, number]) {
    const numbers = randomNumbers(20_261_125);
    const ratios = new Float64Array(TRIALS);
    for (let n = 0; n < TRIALS; n++) {
      const [x, y] = draw(numbers);
      ratios[n] = (a * (1 + x)) / (b * (1 + y));
    }
    ratios.sort();
    return [ratios[Math.floor(0.025 * TRIALS)], ratios[Math.floor(0.975 * TRIALS)]] as [number, number];
  }

  test.each([
    ['alike', 0.03, 0.03, 0],
    ['one exact', 0.08, 0, 0],
    ['the other exact', 0, 0.08, 0],
    ['unlike', 0.12, 0.02, 0],
    ['wide', 0.15, 0.12, 0],
    ['with a shared error', 0.02, 0.05, 0.1],
  ])('%s: own %d and %d, shared %d of the value', (_, ownA, ownB, common) => {
    const [a, b] = [132, 110];
    const it = known(
      ratioTo(
        figure(a, [line('common', common * a), line('a', ownA * a)]),
        figure(b, [line('common', common * b), line('b', ownB * b)]),
      ),
    );
    const outside = simulated(a, b, (numbers) => {
      const z = common * numbers.normal();
      return [z + ownA * numbers.normal(), z + ownB * numbers.normal()];
    });
    // A 2.5 % point of N draws scatters by sqrt(p (1 - p) / N) / density, with 0.058 / u for the density there.
    const u = 1.2 * Math.hypot(ownA, ownB);
    const scatter = (Math.sqrt((0.025 * 0.975) / TRIALS) / 0.0584) * u;
    // The upper end of a skew ratio scatters more; four times is never met by chance.
    expect(Math.abs(it.interval95[0] - outside[0])).toBeLessThan(4 * scatter);
    expect(Math.abs(it.interval95[1] - outside[1])).toBeLessThan(6 * scatter);
  });
});

describe('the difference from another figure', () => {
  test('by hand: 30 ± 1° less 22 ± 0.5°', () => {
    const it = known(differenceFrom(figure(30, [line('a', 1)]), figure(22, [line('b', 0.5)])));
    // u = hypot(1, 0.5) = 1.118034
    expect(it).toMatchObject({ kind: 'apart', value: 8 });
    expect(it.interval95[0]).toBeCloseTo(8 - K * 1.118034, 5);
    expect(it.interval95[1]).toBeCloseTo(8 + K * 1.118034, 5);
  });

  test('changes its sign the other way round, and nothing else', () => {
    fc.assert(
      fc.property(watts, watts, share, share, (a, b, ownA, ownB) => {
        const x = figure(a, [line('common', 0.5), line('a', ownA * a)]);
        const y = figure(b, [line('common', 0.5), line('b', ownB * b)]);
        const [there, back] = [known(differenceFrom(x, y)), known(differenceFrom(y, x))];
        expect(back.kind).toBe(there.kind);
        expect(back.value).toBeCloseTo(-there.value, 9);
        expect(back.interval95[0]).toBeCloseTo(-there.interval95[1], 9);
      }),
      RUNS,
    );
  });

  test('leaves out what moves both alike', () => {
    const level = (value: number, own: string) => figure(value, [line('meter/calibration', 0.7), line(own, 0.1)]);
    const it = known(differenceFrom(level(45, 'a'), level(44, 'b')));
    expect(it.interval95[1] - it.interval95[0]).toBeCloseTo(2 * K * Math.hypot(0.1, 0.1), 5);
  });

  test('is not known with a bound', () => {
    expect(differenceFrom(figure(3), { ...figure(5), bound: 'below' }).kind).toBe('unknown');
  });
});

describe('readings whose scatter is not known', () => {
  /** A sound meter good to 1.4 dB at k = 2, with steps of 0.1 dB. */
  const SOUND = instrument({ id: 'sound', name: 'sound meter', calibrationAbsolute: 0.7, resolution: 0.1 });
  const level = (
    value: number,
    part: Partial<InstrumentReading['instrument']> = {},
    session = `panel-${value}/2026-03-02`,
  ) =>
    readingFigure({
      metric: 'sound-on',
      value,
      session,
      path: 'sound.on',
      instrument: { ...SOUND, repeatability: undefined, ...part } as NonNullable<InstrumentReading['instrument']>,
    });

  test('by one meter tell no difference: rounding alone would make 1.7 dB known to 0.08 dB', () => {
    for (const compare of [differenceFrom, ratioTo]) {
      expect(compare(level(44.7), level(43))).toEqual({
        kind: 'unknown',
        reason: { code: 'scatter-not-known', instrument: 'sound meter' },
      });
    }
    // Equal displays are no "same" either.
    expect(differenceFrom(level(43, {}, 'a/2026-03-02'), level(43, {}, 'b/2026-03-02')).kind).toBe('unknown');
  });

  test('with a stated scatter tell it: by hand, 0.5 dB each', () => {
    const it = known(
      differenceFrom(level(44.7, { repeatabilityDecibels: 0.5 }), level(43, { repeatabilityDecibels: 0.5 })),
    );
    const u = Math.hypot(0.5, 0.5, 0.1 / Math.sqrt(12), 0.1 / Math.sqrt(12));
    expect(it.kind).toBe('apart');
    expect(it.interval95[0]).toBeCloseTo(1.7 - K * u, 6);
    expect(it.interval95[1]).toBeCloseTo(1.7 + K * u, 6);
  });

  test('one that is known and one that is not tell none', () => {
    expect(differenceFrom(level(44.7, { repeatabilityDecibels: 0.5 }), level(43)).kind).toBe('unknown');
    expect(differenceFrom(level(44.7), level(43, { repeatabilityDecibels: 0.5 })).kind).toBe('unknown');
  });

  test('a scatter that is stated as nought is known', () => {
    expect(differenceFrom(level(44.7, { repeatability: 0 }), level(43, { repeatability: 0 })).kind).toBe('apart');
  });

  test('by two meters, or under two calibrations, both calibrations stand in full and tell what they can', () => {
    const other = known(differenceFrom(level(44.7), level(43, { id: 'another' })));
    expect(other.interval95[1] - other.interval95[0]).toBeGreaterThan(2 * K * Math.hypot(0.7, 0.7));
    expect(differenceFrom(level(44.7), level(43, { calibrationDate: '2027-01-10' })).kind).toBe('tie');
  });

  test('a figure and itself are the same', () => {
    const it = level(43);
    expect(scatterUnknown(it, it)).toBeUndefined();
    expect(differenceFrom(it, it).kind).toBe('same');
  });
});
