import { type MethodPage, perMode, rows } from './rows.ts';

/* What logs against time say: the sensor moved over the face, the light from cold, and flicker. */

/** Versions of these methods. */
export const LOG_VERSIONS = {
  sweep: 1,
  settling: 1,
  'flicker-waveform': 1,
} as const;

/** The pages of these methods. */
export const LOG_METHODS = {
  sweep: {
    name: 'Sweeps',
    unit: 'mW/cm²',
    formula: 'E_\\mathrm{peak}=\\max_{i\\notin S}E_i,\\qquad S=\\{i: E_i-\\hat E_i>\\max(6s,\\,0.05\\,E_{i\\pm1})\\}',
    symbols: [
      ['E_i', 'reading i of the log, mW/cm²'],
      ['S', 'readings that are spikes of one sample'],
      ['\\hat E_i', 'where the two readings on either side lead to, (4(E_{i−1} + E_{i+1}) − E_{i−2} − E_{i+2}) / 6'],
      ['s', 'scatter of single readings, from the second differences of neighbours'],
    ],
    file: 'src/measure/log/sweep.ts',
  },
  settling: {
    name: 'Warm-up log',
    unit: '%',
    formula:
      'd=100\\left(1-\\frac{E_s}{E_0}\\right),\\qquad E(t)=E_s+\\Delta\\,e^{-t/\\tau},\\qquad 100\\,\\frac{E_\\mathrm{max}-E_\\mathrm{min}}{E_\\mathrm{last}}<0.5',
    symbols: [
      ['d', 'drop from cold, %'],
      ['E_s', 'settled value: mean of the last 15 minutes'],
      ['E_0', 'value from cold: where the fit begins, else the first readings'],
      ['\\Delta', 'how far above the settled value the light begins'],
      ['\\tau', 'time constant of the fit, s'],
      ['E_\\mathrm{max},E_\\mathrm{min},E_\\mathrm{last}', 'highest, lowest and last minute of 15'],
    ],
    file: 'src/measure/log/warm-up.ts',
  },
  'flicker-waveform': {
    name: 'Flicker waveform',
    unit: '%',
    formula:
      'M=100\\,\\frac{E_\\mathrm{max}-E_\\mathrm{min}}{E_\\mathrm{max}+E_\\mathrm{min}},\\qquad F=\\frac{\\int_T\\max(E-\\bar E,0)\\,dt}{\\int_T E\\,dt}',
    symbols: [
      ['M', 'modulation depth (percent flicker), %'],
      ['F', 'flicker index'],
      ['E', 'the light over one period, averaged over all periods of the record'],
      ['E_\\mathrm{max},E_\\mathrm{min},\\bar E', 'its highest, lowest and mean value'],
      ['T', 'one period'],
    ],
    file: 'src/measure/waveform/flicker-waveform.ts',
  },
} as const satisfies Record<keyof typeof LOG_VERSIONS, MethodPage>;

/** They are had from files alone. */
const OF_FILES = { isOfFiles: true } as const;

/** These metrics, in the order of the page of a panel's files. */
export const LOG_METRICS = /* @__PURE__ */ rows(() => [
  ...perMode('sweep-maximum', 'Highest sample of the sweep', 'sweep', 'mW/cm²', '').map(ofFiles),
  ...perMode('sweep-percentile', '99th percentile of the sweep', 'sweep', 'mW/cm²', '').map(ofFiles),
  { id: 'warm-up-drop', name: 'Drop from cold', method: 'settling', unit: '%', ...OF_FILES },
  { id: 'settling-time', name: 'Time to settle', method: 'settling', unit: 's', ...OF_FILES },
  { id: 'warm-up-constant', name: 'Time constant of the warm-up', method: 'settling', unit: 's', ...OF_FILES },
  ...perMode('flicker-index', 'Flicker index', 'flicker-waveform', '1', '').map(ofFiles),
]);

function ofFiles<const Row extends object>(row: Row): Row & { isOfFiles: true } {
  return { ...row, ...OF_FILES };
}
