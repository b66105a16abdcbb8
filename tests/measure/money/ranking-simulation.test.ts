import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ErrorSource } from '../../../src/measure/figure.ts';
import { costRatio } from '../../../src/measure/money/cost.ts';
import { type Contender, powerSampler, RANK_TRIALS, rankByPricePerWatt } from '../../../src/measure/money/ranking.ts';
import { seededRandom } from '../../../src/measure/random.ts';
import { say } from '../../../src/words/say.ts';
import { figure, line, RUNS } from '../make.ts';
import { type Numbers, normalBelow, randomNumbers } from '../random-numbers.ts';

interface Offer {
  price: number;
  watts: number;
  /** Standard uncertainty of the power, W. */
  u: number;
}

const pair = (a: Offer, b: Offer): [Contender, Contender] => [
  { panel: 'a', price: a.price, power: figure(a.watts, [line('a/own', a.u)]) },
  { panel: 'b', price: b.price, power: figure(b.watts, [line('b/own', b.u)]) },
];

/**
 * Probability that a's watt costs less than b's where both powers are normal and far above zero:
 * C_a / P_a < C_b / P_b just when C_a P_b − C_b P_a < 0, and that difference is normal.
 */
function firstIsCheaper(a: Offer, b: Offer): number {
  const difference = a.price * b.watts - b.price * a.watts;
  return normalBelow(-difference / Math.hypot(a.price * b.u, b.price * a.u));
}

describe('two panels against the closed form', () => {
  test('the integral behind it is right', () => {
    expect(normalBelow(0)).toBeCloseTo(0.5, 12);
    expect(normalBelow(1.959963984540054)).toBeCloseTo(0.975, 10);
    expect(normalBelow(-1)).toBeCloseTo(0.158655253931457, 10);
  });

  const expectedRanges = (p: number) => [
    [p >= 0.025 ? 1 : 2, p >= 0.975 ? 1 : 2],
    [1 - p >= 0.025 ? 1 : 2, 1 - p >= 0.975 ? 1 : 2],
  ];
  const rangesOf = (contenders: readonly Contender[]) => {
    const ranks = new Map(rankByPricePerWatt(contenders).map((rank) => [rank.panel, rank.range]));
    return contenders.map((it) => ranks.get(it.panel));
  };

  test.each([
    ['next to nothing apart', 100.001],
    ['half a standard uncertainty apart', 102],
    ['nearly two apart', 107],
    ['well apart', 115],
    ['very far apart', 400],
  ])('%s', (_, price) => {
    const [a, b] = [
      { price: 100, watts: 50, u: 1.5 },
      { price, watts: 50, u: 1.5 },
    ];
    expect(rangesOf(pair(a, b))).toEqual(expectedRanges(firstIsCheaper(a, b)));
  });

  test('any separation that is not on the brink', () => {
    const offer = fc.record({
      price: fc.integer({ min: 80, max: 120 }),
      watts: fc.integer({ min: 45, max: 55 }),
      u: fc.double({ min: 0.2, max: 4, noNaN: true }),
    });
    // The share of the draws scatters by √(0.025 × 0.975 / 4000) = 0.0025 about the probability.
    const brink = 4 * Math.sqrt((0.025 * 0.975) / RANK_TRIALS);
    const onTheBrink = (p: number) => Math.abs(p - 0.025) < brink || Math.abs(p - 0.975) < brink;
    fc.assert(
      fc.property(offer, offer, (a, b) => {
        const p = firstIsCheaper(a, b);
        fc.pre(!onTheBrink(p) && a.price * b.watts !== b.price * a.watts);
        expect(rangesOf(pair(a, b))).toEqual(expectedRanges(p));
      }),
      { ...RUNS, numRuns: 150 },
    );
  });

  test('the draws themselves put the first panel first as often', () => {
    const a = { price: 100, watts: 50, u: 2 };
    const b = { price: 104, watts: 50.5, u: 1 };
    const contenders = pair(a, b);
    const draw = powerSampler(
      contenders.map((it) => it.power),
      seededRandom(3),
    );
    let first = 0;
    for (let n = 0; n < 40_000; n++) {
      const [x, y] = draw();
      if (a.price / (x as number) < b.price / (y as number)) first += 1;
    }
    expect(Math.abs(first / 40_000 - firstIsCheaper(a, b))).toBeLessThan(0.01);
  });
});

describe('five panels against a simulation of its own', () => {
  const errorOf = (it: ErrorSource, numbers: Numbers): number => {
    if (it.distribution === 'rectangular') return Math.sqrt(3) * numbers.either();
    if (it.distribution === 't') return numbers.studentT(it.degreesOfFreedom);
    return numbers.normal();
  };

  /** 95 % range of each place: every line of every budget is drawn from its own distribution. */
  function bruteForce(contenders: readonly Contender[], seed: number, trials = 20_000) {
    const numbers = randomNumbers(seed);
    const places = contenders.map((): number[] => []);
    for (let n = 0; n < trials; n++) {
      const errors = new Map<string, number>();
      const costs = contenders.map(({ price, power }) => {
        let drawn = power.value;
        for (const it of power.budget) {
          const z = errors.get(it.source.key) ?? errorOf(it.source, numbers);
          errors.set(it.source.key, z);
          drawn += z * it.contribution;
        }
        return price / drawn;
      });
      costs.forEach((cost, i) => {
        places[i]?.push(1 + costs.filter((other) => other < cost).length);
      });
    }
    return places.map((all) => {
      const sorted = all.toSorted((a, b) => a - b);
      return [sorted[Math.floor(0.025 * trials)], sorted[Math.ceil(0.975 * trials) - 1]] as [number, number];
    });
  }

  /** Ends of the middle 95 % of the ratio of two panels' costs, drawn line by line. */
  function ratioRange(a: Contender, b: Contender, seed: number, trials = 60_000) {
    const numbers = randomNumbers(seed);
    const ratios = new Float64Array(trials);
    for (let n = 0; n < trials; n++) {
      const errors = new Map<string, number>();
      const cost = ({ price, power }: Contender) => {
        let drawn = power.value;
        for (const it of power.budget) {
          const z = errors.get(it.source.key) ?? errorOf(it.source, numbers);
          errors.set(it.source.key, z);
          drawn += z * it.contribution;
        }
        return price / drawn;
      };
      ratios[n] = cost(a) / cost(b);
    }
    ratios.sort();
    return [ratios[Math.floor(0.025 * trials)] as number, ratios[Math.floor(0.975 * trials)] as number] as const;
  }

  const panel = (name: string, price: number, watts: number, relative: number): Contender => ({
    panel: name,
    price,
    power: figure(watts, [
      line('sensor/calibration', 0.04 * watts),
      line(`${name}/distance`, -relative * watts, { distribution: 'rectangular' }),
      line(`${name}/repeats`, 0.5 * relative * watts, { type: 'A', distribution: 't', degreesOfFreedom: 6 }),
      line(`${name}/area`, 0.3 * relative * watts),
    ]),
  });

  test.each([
    ['alike', [300, 305, 310, 315, 320], 0.03],
    ['apart', [300, 400, 500, 600, 700], 0.03],
    ['mixed', [300, 303, 390, 395, 600], 0.02],
    ['vague', [300, 330, 360, 390, 420], 0.12],
  ] as const)('%s: ranges agree to one place', (_, prices, relative) => {
    const contenders = prices.map((price, i) => panel(`panel-${i}`, price, 50 + 3 * i, relative));
    const outside = bruteForce(contenders, 20_260_302);
    const inside = new Map(rankByPricePerWatt(contenders).map((rank) => [rank.panel, rank.range]));
    contenders.forEach(({ panel: name }, i) => {
      const [low, high] = inside.get(name) ?? [Number.NaN, Number.NaN];
      expect(Math.abs(low - (outside[i]?.[0] ?? Number.NaN)), `${name}, low`).toBeLessThanOrEqual(1);
      expect(Math.abs(high - (outside[i]?.[1] ?? Number.NaN)), `${name}, high`).toBeLessThanOrEqual(1);
    });
  });

  test.each([
    ['alike', [300, 305, 310, 315, 320], 0.03],
    ['apart', [300, 400, 500, 600, 700], 0.03],
    ['mixed', [300, 303, 390, 395, 600], 0.02],
  ] as const)('%s: every tie is one in the drawn ratios', (_, prices, relative) => {
    const contenders = prices.map((price, i) => panel(`panel-${i}`, price, 50 + 3 * i, relative));
    const ranks = new Map(rankByPricePerWatt(contenders).map((rank) => [rank.panel, rank.tiedWith]));
    contenders.forEach((a, i) => {
      for (const b of contenders.slice(i + 1)) {
        const [low, high] = ratioRange(a, b, 20_261_125);
        const told = costRatio(a, b);
        if (told.kind === 'unknown') throw new Error(say(told.reason));
        // The setting of the distance is drawn evenly, where the interval takes normal errors: 5 % of its width.
        const width = high - low;
        expect(Math.abs(told.interval95[0] - low), `${a.panel} to ${b.panel}, low`).toBeLessThan(0.05 * width);
        expect(Math.abs(told.interval95[1] - high), `${a.panel} to ${b.panel}, high`).toBeLessThan(0.05 * width);
        const onTheBrink = Math.min(Math.abs(low - 1), Math.abs(high - 1)) < 0.05 * width;
        if (!onTheBrink) expect(ranks.get(a.panel)?.includes(b.panel)).toBe(low <= 1 && high >= 1);
      }
    });
  });
});
