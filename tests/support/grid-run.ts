import type { TimeSeries } from '../../src/measure/log/series.ts';
import { seededRandom } from '../../src/measure/random.ts';

interface RunOptions {
  noise?: number;
  seed?: number;
  /** s between samples. */
  step?: number;
  /** How long the sensor is held at each level, s. */
  hold?: (point: number) => number;
  /** Time constant of the meter, s. */
  response?: number;
}

/**
 * A meter that logs while its sensor is set to one place after another: 2.4 s on the way, past darker places, then held still. The
 * meter follows with a time constant.
 */
export function gridRun(
  levels: readonly number[],
  { noise = 0.1, seed = 1, step = 0.2, hold = () => 8, response = 0.5 }: RunOptions = {},
): TimeSeries {
  const random = seededRandom(seed);
  const values: number[] = [];
  const follow = 1 - Math.exp(-step / response);
  let shown = 0;
  let before = 0;
  const log = (light: number) => {
    shown += follow * (light - shown);
    values.push(Math.max(0, shown + noise * random.normal()));
  };
  levels.forEach((level, point) => {
    const steps = Math.round(2.4 / step);
    for (let i = 1; i <= steps; i++) {
      const share = i / steps;
      log((before + share * (level - before)) * (1 - 0.5 * Math.sin(Math.PI * share)));
    }
    for (let i = 0; i < hold(point) / step; i++) log(level);
    before = level;
  });
  return { times: Float64Array.from(values, (_, i) => i * step), values: Float64Array.from(values) };
}
