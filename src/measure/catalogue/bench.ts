import type { MethodPage } from './rows.ts';

/* How readings are taken and what is made of their doubts: methods that yield no figure of their own. */

/** Versions of these methods. */
export const BENCH_VERSIONS = {
  'bench-procedure': 2,
  uncertainty: 2,
} as const;

/** The pages of these methods. */
export const BENCH_METHODS = {
  'bench-procedure': { name: 'Bench procedure', unit: null, file: 'src/content/schema/session.ts' },
  uncertainty: {
    name: 'Uncertainty',
    unit: null,
    formula: 'u_c(y)=\\sqrt{\\sum_i c_i^2\\,u^2(x_i)},\\qquad U=k\\,u_c,\\qquad k=t_{0.975}(\\nu_\\mathrm{eff})',
    symbols: [
      ['u_c', 'combined standard uncertainty, in the figure’s unit'],
      ['c_i', 'sensitivity: how far the figure moves when input i moves by one'],
      ['u(x_i)', 'standard uncertainty of input i'],
      ['U', 'half the width of the 95 % coverage interval'],
      ['k', 'coverage factor from Student’s t'],
      ['\\nu_\\mathrm{eff}', 'effective degrees of freedom (Welch–Satterthwaite), rounded down'],
    ],
    file: 'src/measure/uncertainty.ts',
  },
} as const satisfies Record<keyof typeof BENCH_VERSIONS, MethodPage>;
