import type { MethodConstants } from '../catalogue/rows.ts';
import { FEWEST_PERIODS } from '../waveform/lines.ts';
import { FEWEST_CONSTANTS, LARGEST_SHAPE } from './exponential-fit.ts';
import { HOVER_SHARE, SHORTEST_HOVER } from './hovers.ts';
import { DARK_SHARE } from './plateaus.ts';
import { SETTLED_SPREAD, SETTLED_WINDOW, SHORTEST_LOG } from './settled-criterion.ts';
import { SPIKE_SCATTERS, SPIKE_SHARE } from './sweep.ts';

const OWN = 'our own choice';
const CRITERION = 'CIE S 025:2015 and IES LM-79-19; from memory';

/** Constants of what logs against time say. */
export const LOG_CONSTANTS: MethodConstants = {
  sweep: [
    { name: 'a spike stands out by', value: SPIKE_SCATTERS, unit: 'scatters', why: OWN },
    { name: 'and by', value: 100 * SPIKE_SHARE, unit: '%', why: `${OWN}, of its neighbours` },
    { name: 'shortest hover', value: SHORTEST_HOVER, unit: 's', why: OWN },
    {
      name: 'a hover stays within',
      value: 100 * HOVER_SHARE,
      unit: '%',
      why: `${OWN}: the hand that holds the sensor`,
    },
    { name: 'covered below', value: 100 * DARK_SHARE, unit: '%', why: `${OWN}, of the highest hover` },
  ],
  settling: [
    { name: 'window', value: SETTLED_WINDOW, unit: 's', why: CRITERION },
    { name: 'shortest log', value: SHORTEST_LOG, unit: 's', why: CRITERION },
    { name: 'settled under', value: SETTLED_SPREAD, unit: '%', why: CRITERION },
    { name: 'time constants in the log', value: FEWEST_CONSTANTS, unit: '1', why: `${OWN}: after three, 5 % are left` },
    { name: 'shape left by the fit', value: 100 * LARGEST_SHAPE, unit: '%', why: `${OWN}, of the change from cold` },
  ],
  'flicker-waveform': [
    { name: 'periods in the record', value: FEWEST_PERIODS, unit: '1', why: `${OWN}: at least so many` },
  ],
};
