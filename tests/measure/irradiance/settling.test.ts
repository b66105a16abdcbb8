import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bothSettled, SETTLING_EARLY, settling, type WarmUpReading } from '../../../src/measure/irradiance/settling.ts';
import { binned } from '../../../src/measure/log/series.ts';
import { settling as settlingOfLog } from '../../../src/measure/log/settled.ts';
import { SETTLED_WINDOW } from '../../../src/measure/log/settled-criterion.ts';

const MINUTE = 60;
/** Readings at minutes. */
const at = (...pairs: Array<readonly [minute: number, value: number]>): WarmUpReading[] =>
  pairs.map(([minute, value]) => ({ seconds: minute * MINUTE, value }));

describe('three readings, 15 minutes apart', () => {
  // The worked example of the page on warm-up, read from its table.
  const page = readFileSync(new URL('../../../src/texts/methods/warm-up.mdx', import.meta.url), 'utf8');
  const rows = [...page.matchAll(/^\| at (\d+) min \| ([\d.]+) \| ([\d.]+) \|$/gm)].map((it) =>
    it.slice(1).map(Number),
  );
  const spreads = /^\| Spread over the last \| ([\d.]+) % \| ([\d.]+) % \|$/m.exec(page)?.slice(1).map(Number);

  test.each([
    ['A', 1, 'settled'],
    ['B', 2, 'moving'],
  ] as const)('the page’s panel %s', (_, column, state) => {
    expect(rows).toHaveLength(3);
    const found = settling(rows.map((it) => ({ seconds: (it[0] as number) * MINUTE, value: it[column] as number })));
    expect(found.state).toBe(state);
    expect(found.spreadPercent).toBeCloseTo(spreads?.[column - 1] as number, 2);
    expect(found.limitPercent).toBe(0.5);
  });

  test('nothing, one and two readings are too early', () => {
    expect(settling([])).toEqual({ state: 'too-early', nextAt: 0, notBefore: 1800 });
    expect(settling(at([5, 40]))).toEqual({ state: 'too-early', nextAt: 20 * MINUTE, notBefore: 35 * MINUTE });
    expect(settling(at([0, 40], [15, 40]))).toMatchObject({ state: 'too-early', spreadPercent: 0, since: 0 });
  });

  test('under 0.5 % and not 0.5 %', () => {
    expect(settling(at([0, 200], [15, 200], [30, 200 - 0.99])).state).toBe('settled');
    // 201 - 200 is 0.5 % of 200.
    expect(settling(at([0, 201], [15, 200], [30, 200])).state).toBe('moving');
  });

  test('a display that is coarser may move by one step and not by two', () => {
    expect(settling(at([0, 9.4], [15, 9.3], [30, 9.3])).state).toBe('moving');
    expect(settling(at([0, 9.4], [15, 9.3], [30, 9.3]), 0.1)).toMatchObject({ state: 'settled' });
    expect(settling(at([0, 9.4], [15, 9.3], [30, 9.2]), 0.1).state).toBe('moving');
    expect(settling(at([0, 9.4], [15, 9.3], [30, 9.3]), 0.1).limitPercent).toBeCloseTo(1.075, 3);
  });

  test('readings in between count: a dip that came back is no rest', () => {
    expect(settling(at([0, 100], [15, 100], [20, 97], [30, 100])).state).toBe('moving');
  });

  test('a hand may be half a minute early, twice', () => {
    const early = [0, SETTLED_WINDOW - SETTLING_EARLY, 2 * (SETTLED_WINDOW - SETTLING_EARLY)];
    const readings = (times: number[]) => times.map((seconds) => ({ seconds, value: 40 }));
    expect(settling(readings(early)).state).toBe('settled');
    expect(settling(readings([0, 1, 1739])).state).toBe('too-early');
  });

  test('read more often, half an hour counts; without a reading between it does not', () => {
    expect(settling(at([0, 40], [10, 40], [20, 40], [30, 40])).state).toBe('settled');
    expect(settling(at([0, 40], [5, 40], [25, 40], [30, 40])).state).toBe('too-early');
  });

  test('since: the first reading that all later ones agree with', () => {
    expect(settling(at([0, 44], [10, 41], [20, 40.1], [30, 40], [40, 40], [50, 40]))).toMatchObject({
      state: 'settled',
      since: 20 * MINUTE,
      nextAt: 65 * MINUTE,
    });
    const moving = settling(at([0, 100], [15, 99.7], [30, 99.4]));
    expect(moving).toMatchObject({ state: 'moving', since: 15 * MINUTE, notBefore: 45 * MINUTE });
  });

  test('no light never settles', () => {
    expect(settling(at([0, 0], [15, 0], [30, 0])).state).toBe('moving');
    expect(settling(at([0, 0], [15, 0], [30, 0])).spreadPercent).toBeUndefined();
    expect(settling(at([0, 0], [15, 0], [30, 0]), 0.1).state).toBe('moving');
  });
});

test('light and draw together are as far as the one that is behind', () => {
  const [settled, moving, early] = [
    settling(at([0, 40], [15, 40], [30, 40])),
    settling(at([0, 44], [15, 42], [30, 40])),
    settling(at([0, 40])),
  ];
  expect(bothSettled([settled, settled])).toBe('settled');
  expect(bothSettled([settled, moving])).toBe('moving');
  expect(bothSettled([moving, early, settled])).toBe('too-early');
  expect(bothSettled([])).toBe('too-early');
});

test('a slow panel passes with as much to go as the docstring says', () => {
  const output = (seconds: number) => 100 * (1 + 0.1 * Math.exp(-seconds / 3600));
  const readings: WarmUpReading[] = [];
  for (let seconds = 0; settling(readings).state !== 'settled'; seconds += MINUTE) {
    readings.push({ seconds, value: output(seconds) });
  }
  const { seconds = 0 } = readings.at(-1) ?? {};
  expect(seconds).toBeGreaterThan(7200);
  // Read every minute half an hour is 29 minutes.
  expect(output(seconds) - 100).toBeCloseTo(0.5 / (Math.exp(29 / 60) - 1), 1);
});

describe('any readings', () => {
  const reading = fc.record({
    seconds: fc.integer({ min: 0, max: 7200 }),
    value: fc.double({ min: 1, max: 100, noNaN: true }),
  });
  const series = fc.uniqueArray(reading, { maxLength: 20, selector: (it) => it.seconds });

  /** The rule by another road: are there three readings over half an hour, and what do all since the first span? */
  function byHand(readings: readonly WarmUpReading[]): boolean {
    const sorted = readings.toSorted((a, b) => a.seconds - b.seconds);
    const last = sorted.at(-1);
    if (!last) return false;
    return sorted.some((first) =>
      sorted.some((middle) => {
        const gaps = [middle.seconds - first.seconds, last.seconds - middle.seconds];
        if (gaps.some((it) => it < 10 * MINUTE)) return false;
        if (last.seconds - first.seconds < 2 * (SETTLED_WINDOW - SETTLING_EARLY)) return false;
        const values = sorted.filter((it) => it.seconds >= first.seconds).map((it) => it.value);
        return (Math.max(...values) - Math.min(...values)) / last.value < 0.005;
      }),
    );
  }

  test('what settles has three readings so far apart, with all since within the limit', () => {
    const close = fc
      .tuple(series, fc.double({ min: 0.0001, max: 0.01, noNaN: true }))
      .map(([all, by]) => all.map((it) => ({ ...it, value: 40 * (1 + by * (it.value / 100)) })));
    fc.assert(fc.property(fc.oneof(series, close), (all) => settling(all).state !== 'settled' || byHand(all)));
  });

  test('read every quarter of an hour the two roads agree', () => {
    const values = fc.array(fc.double({ min: 39.8, max: 40.2, noNaN: true }), { maxLength: 9 });
    fc.assert(
      fc.property(values, (all) => {
        const readings = all.map((value, i) => ({ seconds: i * SETTLED_WINDOW, value }));
        return (settling(readings).state === 'settled') === byHand(readings);
      }),
    );
  });

  test('unit and order don’t matter, and two steady readings more leave it settled', () => {
    fc.assert(
      fc.property(series, fc.constantFrom(0.1, 10, 1000), (all, factor) => {
        const [one, other] = [
          settling(all),
          settling(all.toReversed().map((it) => ({ ...it, value: factor * it.value }))),
        ];
        expect(other.state).toBe(one.state);
        expect(other.since).toBe(one.since);
      }),
    );
    fc.assert(
      fc.property(series, (all) => {
        const last = all.toSorted((a, b) => a.seconds - b.seconds).at(-1);
        if (!last || settling(all).state !== 'settled') return;
        const later = { seconds: last.seconds + SETTLED_WINDOW, value: last.value };
        expect(settling([...all, later]).state).toBe('settled');
      }),
    );
  });
});

describe('a log of every ten seconds and readings of the same curve every 15 minutes', () => {
  const END = 90 * MINUTE;
  /** Both judged at the end of an hour and a half. */
  const both = (curve: (seconds: number) => number) => {
    const times = Float64Array.from({ length: END / 10 + 1 }, (_, i) => 10 * i);
    const log = settlingOfLog(binned({ times, values: times.map(curve) }, MINUTE), 0);
    const byHand = [0, 15, 30, 45, 60, 75, 90].map((it) => ({ seconds: it * MINUTE, value: curve(it * MINUTE) }));
    return { log: log.isSettled, hand: settling(byHand).state === 'settled' };
  };

  test('agree where the light falls or climbs one way: settled by hand is settled by the log', () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(
        fc.double({ min: -0.1, max: 0.1, noNaN: true }),
        fc.double({ min: 3, max: 90, noNaN: true }),
        fc.double({ min: 0, max: 0.02, noNaN: true }),
        (excess, minutes, drift) => {
          const { log, hand } = both(
            (s) => 50 * (1 + excess * Math.exp(-s / MINUTE / minutes) + (Math.sign(excess) * -drift * s) / 3600),
          );
          seen.add(`${hand} ${log}`);
          expect(hand && !log).toBe(false);
        },
      ),
      { numRuns: 200, seed: 5 },
    );
    expect([...seen].toSorted()).toEqual(['false false', 'false true', 'true true']);
  });

  test('differ where a drift is slow enough for one window and not for two', () => {
    // 0.4 % in 15 minutes, 0.8 % in 30.
    expect(both((s) => 50 * (1 - (0.016 * s) / 3600))).toEqual({ log: true, hand: false });
  });

  test('differ where something comes and goes between the readings', () => {
    // A fan that turns the light by 1 % every 15 minutes.
    expect(both((s) => 50 * (1 + 0.005 * Math.sin((2 * Math.PI * s) / SETTLED_WINDOW)))).toEqual({
      log: false,
      hand: true,
    });
  });
});
