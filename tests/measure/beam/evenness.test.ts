import { expect, test } from 'vitest';
import { estimatePanel } from '../../../src/measure/beam/estimate.ts';
import { exactBench, lightSource, opticsInput } from './make.ts';

test.each([
  [12, 5],
  [12, 10],
  [30, 10],
  [60, 60],
])(
  'half angle %d°, %d cm: the dimmest place lies between nought and the mean, and so does its interval',
  (halfAngle, distance) => {
    const bench = exactBench(lightSource({ halfAngle }), { grid: [3, 3] });
    const target = estimatePanel(opticsInput({ ...bench, targets: [distance, 30] })).estimates?.targets[0];
    // Where single LEDs may show there is none, with a reason.
    if (!target?.evenness) {
      expect(['beam-leds-uncounted', 'beam-single-leds-open']).toContain(target?.peakAbsent?.code);
      return;
    }
    const [low, high] = target.evenness.interval95;
    expect(low).toBeGreaterThanOrEqual(0);
    expect(high).toBeLessThanOrEqual(1);
    expect(target.evenness.value).toBeGreaterThanOrEqual(low);
    expect(target.evenness.value).toBeLessThanOrEqual(high);
  },
);
