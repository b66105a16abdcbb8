import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isTie } from '../../../src/measure/difference.ts';
import { costRatio } from '../../../src/measure/money/cost.ts';
import { type Contender, powerSampler, type Rank, rankByPricePerWatt } from '../../../src/measure/money/ranking.ts';
import { seededRandom } from '../../../src/measure/random.ts';
import { verbatim } from '../../../src/measure/statement.ts';
import { figure, line, RUNS, vague } from '../make.ts';

/** A panel whose errors are its own, relative to its power. */
const own = (panel: string, price: number, watts: number, relative: number): Contender => ({
  panel,
  price,
  power: figure(watts, relative === 0 ? [] : [line(`${panel}/own`, relative * watts)]),
});

const byPanel = (ranks: readonly Rank[]) => new Map(ranks.map((rank) => [rank.panel, rank]));
const rangesOf = (contenders: readonly Contender[]) =>
  new Map(rankByPricePerWatt(contenders).map((rank) => [rank.panel, rank.range]));
const names = (ranks: readonly Rank[]) => ranks.map((rank) => rank.panel);

describe('places', () => {
  test('follow the price per watt, lowest first', () => {
    const ranks = rankByPricePerWatt([own('dear', 900, 100, 0), own('cheap', 300, 100, 0), own('middle', 600, 100, 0)]);
    expect(ranks.map((it) => [it.panel, it.place, it.of])).toEqual([
      ['cheap', 1, 3],
      ['middle', 2, 3],
      ['dear', 3, 3],
    ]);
  });

  test('of equal price per watt are equal: one more than the number of cheaper panels', () => {
    const ranks = rankByPricePerWatt([own('b', 600, 100, 0), own('a', 300, 50, 0), own('c', 900, 100, 0)]);
    expect(ranks.map((it) => [it.panel, it.place])).toEqual([
      ['a', 1],
      ['b', 1],
      ['c', 3],
    ]);
  });

  test('of nobody are none, and of one alone the first', () => {
    expect(rankByPricePerWatt([])).toEqual([]);
    expect(rankByPricePerWatt([own('a', 600, 100, 0.1)])).toEqual([
      { panel: 'a', place: 1, of: 1, range: [1, 1], tiedWith: [] },
    ]);
  });
});

describe('ranges', () => {
  test('of exact figures are their places', () => {
    for (const it of rankByPricePerWatt([own('a', 300, 100, 0), own('b', 301, 100, 0), own('c', 302, 100, 0)])) {
      expect(it.range).toEqual([it.place, it.place]);
      expect(it.tiedWith).toEqual([]);
    }
  });

  test('of panels far apart are their places, of panels close together span both', () => {
    const apart = rankByPricePerWatt([own('a', 300, 100, 0.03), own('b', 600, 100, 0.03)]);
    expect(apart.map((it) => it.range)).toEqual([
      [1, 1],
      [2, 2],
    ]);
    const close = rankByPricePerWatt([own('a', 300, 100, 0.03), own('b', 301, 100, 0.03)]);
    expect(close.map((it) => it.range)).toEqual([
      [1, 2],
      [1, 2],
    ]);
    expect(close.map((it) => it.tiedWith)).toEqual([['b'], ['a']]);
  });

  test('are not known where the uncertainty is not, and nobody is tied with such a panel', () => {
    const ranks = rankByPricePerWatt([
      own('a', 300, 100, 0.1),
      { panel: 'b', price: 301, power: vague(100, 'the session does not name the meter') },
      own('c', 302, 100, 0.1),
    ]);
    expect(byPanel(ranks).get('b')).toEqual({
      panel: 'b',
      place: 2,
      of: 3,
      range: null,
      tiedWith: [],
      rangeAbsent: verbatim('the session does not name the meter'),
    });
    expect(byPanel(ranks).get('a')?.tiedWith).toEqual(['c']);
    expect(byPanel(ranks).get('a')?.rangeAbsent).toBeUndefined();
  });

  test('of exactly equal offers are equal: the readings show no order between them', () => {
    const ranks = rankByPricePerWatt([own('b', 600, 100, 0), own('a', 600, 100, 0)]);
    expect(byPanel(ranks).get('a')?.range).toEqual(byPanel(ranks).get('b')?.range);
    expect(byPanel(ranks).get('a')?.tiedWith).toEqual(['b']);
  });

  test('of exactly equal offers do not follow their order in the list', () => {
    const [a, b] = [own('a', 600, 100, 0), own('b', 600, 100, 0)];
    expect(rangesOf([a, b])).toEqual(rangesOf([b, a]));
  });

  test('need not hold the place: it is the figures as they stand, the range is where the panel may truly be', () => {
    // One exact figure a hair ahead of thirty vague ones: about half of those are truly ahead of it.
    const crowd = Array.from({ length: 30 }, (_, i) => own(`crowd-${i}`, 601, 100, 0.08));
    const it = byPanel(rankByPricePerWatt([own('exact', 600, 100, 0), ...crowd])).get('exact');
    expect(it?.place).toBe(1);
    expect(it?.range?.[0]).toBeGreaterThan(5);
    expect(it?.range?.[1]).toBeLessThan(27);
  });

  test('hold a draw of no power at all', () => {
    const ranks = rankByPricePerWatt([own('weak', 600, 10, 3), own('sound', 600, 5, 0.01)]);
    for (const { range } of ranks) expect(range).toEqual([1, 2]);
  });
});

describe('a common error', () => {
  const watts = [40, 55, 90, 120, 160, 210];
  const prices = [250, 340, 560, 760, 980, 1350];
  const panels = (budgetOf: (power: number, i: number) => ReturnType<typeof line>[]): Contender[] =>
    watts.map((power, i) => ({
      panel: `panel-${i}`,
      price: prices[i] as number,
      power: figure(power, budgetOf(power, i)),
    }));

  test('alone blurs nothing', () => {
    for (const it of rankByPricePerWatt(panels((power) => [line('sensor/calibration', 0.1 * power)]))) {
      expect(it.range).toEqual([it.place, it.place]);
    }
  });

  test('of the same size, but each panel’s own, blurs the order', () => {
    const widths = [...rangesOf(panels((power, i) => [line(`panel-${i}/own`, 0.1 * power)])).values()].map(
      (range) => (range?.[1] ?? 0) - (range?.[0] ?? 0),
    );
    expect(Math.min(...widths)).toBeGreaterThanOrEqual(3);
  });

  test('beside own errors leaves the ranges where they are', () => {
    const without = rangesOf(panels((power, i) => [line(`panel-${i}/own`, 0.01 * power)]));
    const withIt = rangesOf(
      panels((power, i) => [line(`panel-${i}/own`, 0.01 * power), line('sensor/calibration', 0.05 * power)]),
    );
    for (const [panel, range] of without) {
      for (const end of [0, 1] as const) {
        expect(Math.abs((withIt.get(panel)?.[end] ?? Number.NaN) - (range?.[end] ?? Number.NaN))).toBeLessThanOrEqual(
          1,
        );
      }
    }
  });
});

describe('properties of ranks', () => {
  const contenders = fc
    .array(
      fc.record({
        price: fc.integer({ min: 100, max: 140 }),
        watts: fc.integer({ min: 20, max: 24 }),
        relative: fc.constantFrom(0.005, 0.02, 0.06),
      }),
      { minLength: 2, maxLength: 7 },
    )
    .map((all) => all.map(({ price, watts, relative }, i) => own(`panel-${i}`, price, watts, relative)));
  const few = { ...RUNS, numRuns: 60 };

  test('the same panels get the same ranks', () => {
    fc.assert(
      fc.property(contenders, (all) => {
        expect(rankByPricePerWatt(all)).toEqual(rankByPricePerWatt(structuredClone(all)));
      }),
      few,
    );
  });

  test('the order of the panels in the list does not matter', () => {
    fc.assert(
      fc.property(
        contenders.chain((all) =>
          fc.tuple(fc.constant(all), fc.shuffledSubarray(all, { minLength: all.length, maxLength: all.length })),
        ),
        ([all, shuffled]) => {
          expect(rankByPricePerWatt(shuffled)).toEqual(rankByPricePerWatt(all));
        },
      ),
      few,
    );
  });

  test('every place is taken in the order of the price per watt, and ranges lie among the places', () => {
    fc.assert(
      fc.property(contenders, (all) => {
        const ranks = rankByPricePerWatt(all);
        expect(names(ranks).toSorted()).toEqual(all.map((it) => it.panel).toSorted());
        const cost = new Map(all.map((it) => [it.panel, it.price / it.power.value]));
        ranks.forEach(({ place, range, of }, i) => {
          expect(of).toBe(all.length);
          if (i > 0) {
            expect(place).toBeGreaterThanOrEqual(ranks[i - 1]?.place ?? Number.NaN);
            expect(cost.get(ranks[i]?.panel ?? '')).toBeGreaterThanOrEqual(cost.get(ranks[i - 1]?.panel ?? '') ?? 0);
          }
          const [low, high] = range ?? [Number.NaN, Number.NaN];
          expect(low).toBeGreaterThanOrEqual(1);
          expect(high).toBeGreaterThanOrEqual(low);
          expect(high).toBeLessThanOrEqual(all.length);
        });
      }),
      few,
    );
  });

  test('of two panels each place lies within its range', () => {
    fc.assert(
      fc.property(contenders, (all) => {
        for (const { place, range } of rankByPricePerWatt(all.slice(0, 2))) {
          expect(range?.[0]).toBeLessThanOrEqual(place);
          expect(range?.[1]).toBeGreaterThanOrEqual(place);
        }
      }),
      few,
    );
  });

  test('one panel is tied with another just when that is tied with it, and never with itself', () => {
    fc.assert(
      fc.property(contenders, (all) => {
        const ranks = byPanel(rankByPricePerWatt(all));
        for (const it of ranks.values()) {
          expect(it.tiedWith).not.toContain(it.panel);
          for (const other of ranks.values()) {
            if (other.panel === it.panel) continue;
            expect(it.tiedWith.includes(other.panel)).toBe(other.tiedWith.includes(it.panel));
          }
        }
      }),
      few,
    );
  });

  test('two panels tie just when a normal difference holds nought: C_a P_b − C_b P_a, in closed form', () => {
    fc.assert(
      fc.property(contenders, (all) => {
        const ranks = byPanel(rankByPricePerWatt(all));
        for (const a of all) {
          for (const b of all) {
            if (a === b) continue;
            const lead = a.price * b.power.value - b.price * a.power.value;
            const u = Math.hypot(
              a.price * (b.power.standardUncertainty ?? Number.NaN),
              b.price * (a.power.standardUncertainty ?? Number.NaN),
            );
            const isTied = Math.abs(lead) <= 1.959964 * u;
            expect(ranks.get(a.panel)?.tiedWith.includes(b.panel), `${a.panel} and ${b.panel}`).toBe(isTied);
          }
        }
      }),
      few,
    );
  });
});

describe('ties', () => {
  // The shared calibration of 5 % cancels; 3 % each are their own.
  const three = (ownError: number) =>
    [6, 6.35, 6.8].map(
      (perWatt, i): Contender => ({
        panel: `panel-${i}`,
        price: 100 * perWatt,
        power: figure(100, [line('meter/calibration', 5), line(`panel-${i}/own`, ownError)]),
      }),
    );

  test('reach from neighbour to neighbour and no farther, though all three ranges overlap', () => {
    const ranks = byPanel(rankByPricePerWatt(three(3)));
    expect(ranks.get('panel-0')?.range?.[1]).toBeGreaterThanOrEqual(ranks.get('panel-2')?.range?.[0] ?? 9);
    expect([...ranks.values()].map((it) => it.tiedWith)).toEqual([['panel-1'], ['panel-0', 'panel-2'], ['panel-1']]);
  });

  test('begin where the interval of the ratio holds 1: 6.80 to 6.00 at 4.5 % each, by hand', () => {
    // (6.8 − 6)² = K² u² (6.8² + 6²) gives u = 4.501 %; the calibration widens it by less than 2 % of that.
    expect(byPanel(rankByPricePerWatt(three(4.4))).get('panel-0')?.tiedWith).not.toContain('panel-2');
    expect(byPanel(rankByPricePerWatt(three(4.6))).get('panel-0')?.tiedWith).toContain('panel-2');
  });

  test('are no farther than any interval reaches, in a class of hundreds too', () => {
    const all = Array.from({ length: 300 }, (_, i) =>
      own(`panel-${String(i).padStart(3, '0')}`, 300 + 1.3 * i, 50, [0.01, 0.06, 0.15][i % 3] as number),
    );
    const ranks = byPanel(rankByPricePerWatt(all));
    for (const [i, a] of all.entries()) {
      const tied = all.filter((b, j) => i !== j && isTie(costRatio(a, b))).map((it) => it.panel);
      expect(ranks.get(a.panel)?.tiedWith.toSorted()).toEqual(tied);
    }
  });
});

describe('drawing powers together', () => {
  const TRIALS = 20_000;
  const sample = (powers: Parameters<typeof powerSampler>[0]) => {
    const draw = powerSampler(powers, seededRandom(11));
    return Array.from({ length: TRIALS }, () => [...draw()] as [number, number]);
  };
  const meanOf = (values: readonly number[]) => values.reduce((sum, it) => sum + it, 0) / values.length;
  const covariance = (pairs: readonly (readonly [number, number])[], i: 0 | 1, j: 0 | 1) => {
    const [x, y] = [meanOf(pairs.map((pair) => pair[i])), meanOf(pairs.map((pair) => pair[j]))];
    return meanOf(pairs.map((pair) => (pair[i] - x) * (pair[j] - y)));
  };

  test('gives each its value and its uncertainty', () => {
    const pairs = sample([
      figure(100, [line('a', 3), line('b', 4, { distribution: 'rectangular' })]),
      figure(50, [line('shared', 1), line('c', 1)]),
    ]);
    expect(Math.abs(meanOf(pairs.map((pair) => pair[0])) - 100)).toBeLessThan(0.15);
    expect(Math.sqrt(covariance(pairs, 0, 0))).toBeCloseTo(5, 0);
    expect(Math.abs(Math.sqrt(covariance(pairs, 0, 0)) - 5)).toBeLessThan(0.1);
    expect(Math.abs(Math.sqrt(covariance(pairs, 1, 1)) - Math.SQRT2)).toBeLessThan(0.03);
    expect(Math.abs(covariance(pairs, 0, 1))).toBeLessThan(0.2);
  });

  test('draws a shared error once, with the sign it has in each', () => {
    const together = sample([
      figure(100, [line('shared', 3), line('a', 4)]),
      figure(50, [line('shared', 2), line('b', 1)]),
    ]);
    expect(Math.abs(covariance(together, 0, 1) - 6)).toBeLessThan(0.3);
    const apart = sample([
      figure(100, [line('shared', 3), line('a', 4)]),
      figure(50, [line('shared', -2), line('b', 1)]),
    ]);
    expect(Math.abs(covariance(apart, 0, 1) + 6)).toBeLessThan(0.3);
  });

  test('leaves an exact figure and one of unknown uncertainty at their values', () => {
    for (const [exact, unknown] of sample([figure(100), vague(50)]).slice(0, 50)) {
      expect(exact).toBe(100);
      expect(unknown).toBe(50);
    }
  });
});
