/**
 * Two years of readings of a check standard as a meter would show them, and the truth behind them: the outside check of
 * src/measure/control, and the source of content/standards/bench-lamp.yaml, so it shares no code with src/. Prints the
 * readings of the demonstration when it is run: `npx node tests/support/simulate-standard.ts`.
 */
import { pathToFileURL } from 'node:url';
import { randomNormal } from 'd3-random';
import { uniformSource } from './light-source.ts';

/** Everything about a standard, its meter and its days that the chart tries to find out. */
export interface StandardTruth {
  /** Light at the sensor on the first day, mW/cm². */
  level: number;
  /** Relative change a year. */
  drift: number;
  /** What the meter reads too much, from each day on; the newest counts. */
  gain: ReadonlyArray<readonly [from: string, error: number]>;
  /** Days on which it read so much more besides. */
  upset: Readonly<Record<string, number>>;
  /** Relative standard deviations: of a reading, and of a day's setting-up. */
  repeatability: number;
  setting: number;
  /** Step of the display, mW/cm². */
  resolution: number;
  repeats: number;
}

/** The bench lamp of the demonstration: it dims by 0.3 % a year, and the thermopile was adjusted in September 2025. */
export const BENCH_LAMP: StandardTruth = {
  level: 41.2,
  drift: -0.003,
  gain: [
    ['2024-01-01', -0.008],
    ['2025-09-15', 0.012],
  ],
  upset: { '2025-10-21': 0.035 },
  repeatability: 0.008,
  setting: 0.004,
  resolution: 0.1,
  repeats: 3,
};

/** Monthly at first, twice a week after the adjustment for new limits, then with the sessions. */
export const BENCH_LAMP_DAYS = [
  ...['2024-11-19', '2024-12-17', '2025-01-21', '2025-02-18', '2025-03-25', '2025-05-06', '2025-06-24', '2025-08-12'],
  ...['2025-09-16', '2025-09-19', '2025-09-23', '2025-09-26', '2025-09-30', '2025-10-07', '2025-10-10', '2025-10-14'],
  ...['2025-10-21', '2025-12-02', '2026-02-10', '2026-04-14', '2026-06-16', '2026-08-11', '2026-08-31'],
  ...['2026-09-08', '2026-09-15', '2026-09-22', '2026-09-29', '2026-10-06', '2026-10-13', '2026-10-20', '2026-10-27'],
  ...['2026-11-03', '2026-11-10', '2026-11-17', '2026-11-24'],
];

/** One with which the upset day alone lies beyond the limits, as of most. */
export const BENCH_LAMP_SEED = 17;

const YEAR = 365.25 * 24 * 3600 * 1000;

/** Readings of each day. */
export function simulateStandard(
  truth: StandardTruth,
  days: readonly string[],
  seed: number,
): Array<{ date: string; values: number[] }> {
  const normal = randomNormal.source(uniformSource(seed))();
  const start = Date.parse(days[0] ?? '');
  return days.map((date) => {
    const years = (Date.parse(date) - start) / YEAR;
    const gain = truth.gain.findLast(([from]) => from <= date)?.[1] ?? 0;
    const day = truth.level * (1 + truth.drift * years) * (1 + gain + (truth.upset[date] ?? 0));
    const set = day * (1 + truth.setting * normal());
    const values = Array.from({ length: truth.repeats }, () => {
      const steps = Math.round((set * (1 + truth.repeatability * normal())) / truth.resolution);
      return Number((steps * truth.resolution).toFixed(3));
    });
    return { date, values };
  });
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  for (const { date, values } of simulateStandard(BENCH_LAMP, BENCH_LAMP_DAYS, BENCH_LAMP_SEED)) {
    console.log(`  - { date: ${date}, value: [${values.map((it) => it.toFixed(1)).join(', ')}] }`);
  }
}
