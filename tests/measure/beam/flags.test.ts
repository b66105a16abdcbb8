import { describe, expect, test } from 'vitest';
import { estimatePanel } from '../../../src/measure/beam/estimate.ts';
import { opticsFlags } from '../../../src/measure/beam/flags.ts';
import type { Estimate } from '../../../src/measure/beam/optics-result.ts';
import { exactBench, lightSource, opticsInput } from './make.ts';

const input = opticsInput(exactBench(lightSource({ halfAngle: 20 }), { grid: [3, 3], beyond: [8, 20, 40] }));

describe('what is said of a beam', () => {
  test('nothing where the readings tell it and no claim is against them', () => {
    expect(opticsFlags(estimatePanel(input))).toEqual([]);
  });

  test('that figures are withheld, and why', () => {
    const [flag, ...more] = opticsFlags({ withheld: { code: 'beam-unexplained' } });
    expect(more).toEqual([]);
    expect(flag).toMatchObject({
      check: 'beam-withheld',
      severity: 'doubt',
      finding: { code: 'beam-withheld', because: { code: 'beam-unexplained' } },
    });
    expect(flag?.concerns).toEqual(expect.arrayContaining(['emitted-power', 'peak-irradiance-at-30-cm']));
    // The eye's share goes by readings alone.
    expect(flag?.concerns.filter((it) => it.startsWith('infrared'))).toEqual([]);
  });

  test('a claim that the readings rule out, with both numbers', () => {
    const result = estimatePanel({ ...input, beamAngle: 120 });
    const [low, high] = result.estimates?.halfAngle.interval95 ?? [];
    expect(low).toBeLessThan(20);
    expect(opticsFlags(result)).toEqual([
      {
        check: 'beam-claim',
        severity: 'note',
        finding: { code: 'beam-claim-ruled-out', claimed: 60, low, high },
        concerns: ['beam-half-angle'],
      },
    ]);
  });

  test('a claim within what they allow is not named', () => {
    const { estimates } = estimatePanel(input);
    const halfAngle = estimates?.halfAngle as Estimate;
    expect(opticsFlags(estimatePanel({ ...input, beamAngle: 2 * halfAngle.value }))).toEqual([]);
  });
});
