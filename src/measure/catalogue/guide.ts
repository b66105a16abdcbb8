import type { MethodPage } from './rows.ts';

/* What the guide makes of all panels together, and what it notes of one without a number. */

/** Versions of these methods. */
export const GUIDE_VERSIONS = {
  'hot-spots': 1,
  'warm-up': 1,
  'size-class': 1,
  rank: 2,
  'step-up': 3,
  frontier: 2,
  claims: 2,
  'control-chart': 1,
  plausibility: 4,
} as const;

/** The pages of these methods. */
export const GUIDE_METHODS = {
  'hot-spots': { name: 'Hot spots', unit: null, file: 'src/content/schema/session.ts' },
  'warm-up': { name: 'Warm-up', unit: null, file: 'src/content/schema/session.ts' },
  'size-class': { name: 'Size class', unit: null, file: 'src/measure/money/size-class.ts' },
  rank: {
    name: 'Rank and its range',
    unit: null,
    formula: '\\mathrm{rank}_i=1+\\#\\{j:c_j<c_i\\}',
    symbols: [['c_i', 'price per optical watt of panel i in one draw of the simulation']],
    file: 'src/measure/money/ranking.ts',
  },
  'step-up': {
    name: 'Step-up',
    unit: 'currency/W',
    formula: 'c_{A\\to B}=\\frac{C_B-C_A}{P_B-P_A}<\\frac{C_A}{P_A}',
    symbols: [
      ['C_A,C_B', 'prices of the panel and of the larger one, base currency'],
      ['P_A,P_B', 'their optical powers at the reference plane, W'],
    ],
    file: 'src/measure/money/step-ups.ts',
  },
  frontier: {
    name: 'Price–power frontier',
    unit: null,
    formula: 'F=\\{A:\\nexists B\\;(C_B\\le C_A\\wedge P_B\\ge P_A)\\},\\qquad\\text{one of the two strictly}',
    symbols: [
      ['C', 'price, base currency'],
      ['P', 'optical power at the reference plane, W'],
    ],
    file: 'src/measure/money/frontier.ts',
  },
  claims: {
    name: 'Claims against measurements',
    unit: '%',
    formula: '\\Delta=\\frac{x-x_\\mathrm{claim}}{x_\\mathrm{claim}}',
    symbols: [
      ['x', 'measured figure'],
      ['x_\\mathrm{claim}', 'the maker’s figure, converted to the same unit'],
    ],
    file: 'src/measure/irradiance/claims.ts',
  },
  'control-chart': {
    name: 'Check standard and control chart',
    unit: null,
    formula: '\\bar x\\pm 3\\,\\hat\\sigma,\\qquad\\hat\\sigma=\\frac{1}{d_2\\,(k-1)}\\sum_{i=2}^{k}|x_i-x_{i-1}|',
    symbols: [
      ['\\bar x', 'centre line: mean of the first k days'],
      ['\\hat\\sigma', 'standard deviation from one day to the next'],
      ['x_i', 'reading of the standard on day i: the mean of its repeats'],
      ['k', 'first days that set the limits'],
      ['d_2', 'mean range of two draws with standard deviation 1'],
    ],
    file: 'src/measure/control/control-chart.ts',
  },
  plausibility: {
    name: 'Plausibility flags',
    unit: null,
    formula:
      'M_j=\\frac{0.6745\\,(r_j-\\tilde r)}{\\mathrm{MAD}},\\qquad r_j=\\ln E_j-(\\text{level}+\\text{row}+\\text{column})',
    symbols: [
      ['M_j', 'modified z-score of grid point j'],
      ['r_j', 'logarithm of the reading less level, row and column effect by median polish'],
      ['\\tilde r', 'median of the r of all points'],
      ['\\mathrm{MAD}', 'median absolute deviation from that median'],
    ],
    file: 'src/measure/checks/index.ts',
  },
} as const satisfies Record<keyof typeof GUIDE_VERSIONS, MethodPage>;
