import type { MethodConstants } from '../catalogue/rows.ts';
import { FARTHEST_AHEAD, FEWEST_FOR_DRIFT, SHORTEST_FOR_DRIFT } from './drift.ts';
import { D2, D4, LIMIT_SIGMAS, RUN_LENGTH } from './individuals-chart.ts';

/** Constants of the control chart. */
export const CONTROL_CONSTANTS: MethodConstants = {
  'control-chart': [
    { name: 'd2', value: Number(D2.toFixed(4)), unit: '1', why: '2/√π: mean distance of two draws, recomputed' },
    {
      name: 'D4',
      value: Number(D4.toFixed(4)),
      unit: '1',
      why: 'upper limit of that distance over its mean, recomputed',
    },
    { name: 'limits at', value: LIMIT_SIGMAS, unit: 'standard deviations', why: 'Shewhart’s habit' },
    { name: 'a run', value: RUN_LENGTH, unit: 'days on one side', why: 'our own choice; 8 and 9 are usual' },
    { name: 'drift from', value: FEWEST_FOR_DRIFT, unit: 'days', why: 'our own choice' },
    { name: 'drift over', value: SHORTEST_FOR_DRIFT, unit: 'days or more', why: 'our own choice' },
    { name: 'looked ahead', value: FARTHEST_AHEAD, unit: 'years at most', why: 'our own choice' },
  ],
};
