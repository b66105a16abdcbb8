import { describe, expect, test } from 'vitest';
import { meterNamed } from '../../../src/measure/checks/meter-named.ts';
import type { MetricId } from '../../../src/measure/metrics.ts';
import { facts } from './facts.ts';

const use = (kind: string, name: string | undefined, ...metrics: MetricId[]) => ({ kind, name, metrics });

describe('readings', () => {
  test('of light without a meter: a doubt, since the panel is not ranked', () => {
    const [flag] = meterNamed.run(
      facts({
        instruments: [
          use('irradiance', undefined, 'peak-irradiance-combined', 'mean-irradiance'),
          use('mains', undefined, 'mains-draw-combined'),
          use('sound', 'sound meter', 'sound-on'),
        ],
      }),
    );
    expect(flag).toMatchObject({
      severity: 'doubt',
      concerns: ['peak-irradiance-combined', 'mean-irradiance', 'mains-draw-combined'],
      at: ['session', 'instruments'],
    });
    expect(flag?.finding).toEqual({
      code: 'instruments-not-named',
      kinds: ['irradiance', 'mains'],
      figures: 3,
      isRanked: false,
    });
    expect(flag?.hint).toEqual({ code: 'name-instruments', kinds: ['irradiance', 'mains'] });
  });

  test('of something else without one: a note', () => {
    expect(meterNamed.run(facts({ instruments: [use('flicker', undefined, 'flicker-combined')] }))).toMatchObject([
      {
        severity: 'note',
        finding: { code: 'instruments-not-named', kinds: ['flicker'], figures: 1, isRanked: true },
      },
    ]);
  });

  test('all with their meters, or none at all, are right', () => {
    expect(meterNamed.run(facts({ instruments: [use('mains', 'wattmeter', 'mains-draw-red')] }))).toEqual([]);
    expect(meterNamed.run(facts({ instruments: [use('mains', undefined)] }))).toEqual([]);
  });
});
