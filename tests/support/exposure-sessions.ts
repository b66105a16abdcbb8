/** Whole sessions that limits are held against: one in which all was read, one in which nothing was, and any between. */
import fc from 'fast-check';
import { type ExposureInput, nearInfraredFromMode } from '../../src/measure/exposure/index.ts';
import { type Figure, gap, type Unit } from '../../src/measure/figure.ts';
import { METRICS } from '../../src/measure/metrics.ts';
import { figure, line, vague } from '../measure/make.ts';

const UNITS = new Map<string, Unit>(METRICS.map((it) => [it.id, it.unit]));
const unitOf = (metric: string): Unit => UNITS.get(metric) ?? '1';

/** A session in which all was read, and the panel pulses; relative uncertainty of 5 %. */
export const VALUES: Record<string, number> = {
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
export const readingOf = (metric: string, value: number, kind: Kind, relative = 0.05): Figure => {
  if (kind === 'known') return figure(value, [line(`${metric}/error`, relative * value)], metric, unitOf(metric));
  const it = { ...vague(value, kind === 'unknown' ? undefined : 'a bound', metric), unit: unitOf(metric) };
  return kind === 'unknown' ? it : { ...it, bound: kind };
};

export function exposureInput(
  read: (metric: string) => Figure | undefined,
  part: Partial<ExposureInput> = {},
): ExposureInput {
  const metric = 'peak-irradiance-near-infrared';
  return {
    session: 'lantern-40/2026-03-02',
    figure: read,
    infrared: nearInfraredFromMode(read(metric) ?? gap(metric, { code: 'near-infrared-not-measured' }), 15),
    mains: 50,
    distances: { magnetic: '15 cm', sound: '1 m' },
    ...part,
  };
}
export const FULL = exposureInput((metric) => {
  const value = VALUES[metric];
  return value === undefined ? undefined : readingOf(metric, value, metric.includes('frequency') ? 'unknown' : 'known');
});
export const EMPTY = exposureInput(() => undefined, { distances: {} });

const kinds = fc.constantFrom<Kind | 'missing'>('known', 'unknown', 'below', 'above', 'missing');
/** Sessions in which anything was read, or not, each value known, unknown or a bound. */
export const anySession = fc
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
    exposureInput((metric) => {
      const kind = kindOf[metric];
      const value = VALUES[metric];
      if (value === undefined || kind === undefined || kind === 'missing') return undefined;
      return readingOf(metric, value * (scales[metric] ?? 1), kind, relative);
    }),
  );
