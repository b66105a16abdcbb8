/** How long the optics model takes: a map of many LEDs, and the fit of one panel. */
import { performance } from 'node:perf_hooks';
import { lambertianExponent } from '../../src/measure/beam/beam.ts';
import { emitterParts, placeLeds } from '../../src/measure/beam/emitter.ts';
import { estimatePanel } from '../../src/measure/beam/estimate.ts';
import type { OpticsInput } from '../../src/measure/beam/optics-input.ts';
import { planeMap } from '../../src/measure/beam/plane-map.ts';
import { TABLE_DISTANCES } from '../../src/measure/beam/table-distances.ts';
import { exactBench, lightSource, opticsInput } from '../measure/beam/make.ts';
import { irradianceAt } from '../references/sum-over-leds.ts';
import { oneExponent } from '../support/one-exponent.ts';
import { median, type Section, spread } from './report.ts';

const FIELD = { width: 60, height: 120 };
const EMITTER = { kind: 'leds', columns: 30, rows: 40, ledSize: 1 } as const;
const RASTER = { width: 100, height: 100, columns: 100, rows: 100 };
/** Places that the sum over single LEDs is timed at; the whole map would take as many times longer. */
const SOME = 200;
const MAP_BUDGET_MS = 50;
const FIT_BUDGET_MS = 200;

function timed(make: () => unknown): number {
  const start = performance.now();
  make();
  return performance.now() - start;
}

/** Another panel each time, as the pages of a guide have. */
function panel(index: number): OpticsInput {
  const source = lightSource({ width: 20 + (index % 7), halfAngle: 22 + (index % 11) });
  const bench = exactBench(source, { grid: [3, 3], sweep: [10, 15.24, 30, 60] });
  return opticsInput({ ...bench, beamAngle: 50, targets: [...TABLE_DISTANCES, 15.24], seed: index });
}

/** @param runs repetitions of each; the first of all is told apart, since nothing is compiled then */
export function opticsTime(runs: number): Section {
  const exponent = lambertianExponent(30);
  const terms = emitterParts(EMITTER, FIELD);
  const map = () => planeMap(terms, oneExponent(exponent, 100), 15.24, RASTER);
  const firstMap = timed(map);
  const maps = Array.from({ length: Math.max(5, runs) }, () => timed(map));
  const leds = placeLeds(EMITTER, FIELD);
  const places = Array.from({ length: SOME }, (_, i) => ({ x: (i % 20) - 10, y: Math.floor(i / 20) * 5 - 25 }));
  const plain = timed(() => {
    for (const { x, y } of places) irradianceAt(leds, exponent, 100, { x, y, z: 15.24 });
  });
  const whole = (plain * RASTER.columns * RASTER.rows) / SOME;

  const inputs = Array.from({ length: 30 }, (_, i) => panel(i));
  const firstFit = timed(() => estimatePanel(inputs[0] as OpticsInput));
  const fits = inputs.slice(1).map((input) => timed(() => estimatePanel(input)));
  return {
    title: 'The optics model',
    lines: [
      {
        what: `map of ${RASTER.columns} × ${RASTER.rows} places before ${leds.length} LEDs`,
        measured: spread(maps, 'ms', 1),
        against: `${whole.toFixed(0)} ms summed LED by LED`,
        ratio: median(maps) / whole,
        budget: `${MAP_BUDGET_MS} ms`,
        isWithin: median(maps) < MAP_BUDGET_MS,
      },
      {
        what: '  the first in a process',
        measured: `${firstMap.toFixed(1)} ms`,
        budget: `${MAP_BUDGET_MS} ms`,
        isWithin: firstMap < MAP_BUDGET_MS,
      },
      {
        what: 'fit of one panel, with its simulation',
        measured: spread(fits, 'ms', 1),
        budget: `${FIT_BUDGET_MS} ms`,
        isWithin: median(fits) < FIT_BUDGET_MS,
      },
      {
        what: '  the first in a process',
        measured: `${firstFit.toFixed(1)} ms`,
        budget: `${FIT_BUDGET_MS} ms`,
        isWithin: firstFit < FIT_BUDGET_MS,
      },
    ],
  };
}
