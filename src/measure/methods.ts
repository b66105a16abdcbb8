import { OPTICS_METHODS } from './beam/methods.ts';
import { NEAREST_BENCH } from './checks/bench-distance.ts';
import { LARGEST_PITCH, LONGEST_SIDE, SMALLEST_PITCH, SMALLEST_SHARE } from './checks/field-size.ts';
import { AROUND_FACTOR, FEWEST_ROOMS } from './checks/room-fields.ts';
import { MAGNETIC_OFF_ODD } from './checks/unit-slips.ts';
import { SHORTEST_WARM_UP } from './checks/warm-up-time.ts';
import { EXPOSURE_METHODS } from './exposure/methods.ts';
import { versionOf } from './method-versions.ts';
import { RANK_TRIALS } from './money/ranking.ts';

/**
 * The registry of methods: what is calculated, under which version, by which formula, in which file.
 * The prose of a method page is joined to its entry here by id, so that page and calculation cannot disagree.
 *
 * A version goes up whenever published numbers can move for the same readings; the page's history says how.
 */
export interface Method {
  /** The page's address: `/methods/<id>/`; never reused for something else. */
  id: string;
  name: string;
  /** How readers see the unit; `null` where the method yields no number with a unit. */
  unit: string | null;
  version: number;
  /** TeX of the defining formula; absent for methods that are a procedure. */
  formula?: string;
  /** The symbols of the formula: TeX and meaning with unit. */
  symbols: ReadonlyArray<readonly [tex: string, meaning: string]>;
  /** Named constants that the calculation uses. */
  constants: ReadonlyArray<{ name: string; value: number; unit: string; why: string }>;
  /** The file that computes it, from the repository's top. */
  file: string;
}

/** A method without its version, which stands in method-versions.ts. */
export type MethodEntry = Omit<Method, 'version'>;

/** Share of the light that LEDs can plausibly give, above which a figure is odd, or cannot be. */
export const ODD_EFFICIENCY = 0.6;
/** Near-limit wall-plug efficiency of 660 nm LEDs: Kusuma, Pattison and Bugbee 2020, Horticulture Research 7:56. */
export const IMPOSSIBLE_EFFICIENCY = 0.81;
/** Iglewicz and Hoaglin 1993: modified z-scores beyond this are labelled potential outliers. */
export const OUTLIER_Z = 3.5;
/** Smallest relative distance of a grid point from what its row and column make likely, to be called out. Our own choice. */
export const SMALLEST_OUTLIER = 0.1;
/** Age at which a price is called stale, days. Our own choice. */
export const STALE_PRICE_DAYS = 90;
/** A measured peak wavelength further than this from the claim is said to be off, nm. Our own choice. */
export const WAVELENGTH_TOLERANCE_NM = 10;

const grid = 'src/measure/irradiance/grid.ts';

const ENTRIES: readonly MethodEntry[] = [
  {
    id: 'bench-procedure',
    name: 'Bench procedure',
    unit: null,
    symbols: [],
    constants: [{ name: 'reference distance', value: 15.24, unit: 'cm', why: '6 in; common practice, no source' }],
    file: 'src/content/schema/session.ts',
  },
  {
    id: 'uncertainty',
    name: 'Uncertainty',
    unit: null,
    formula: 'u_c(y)=\\sqrt{\\sum_i c_i^2\\,u^2(x_i)},\\qquad U=k\\,u_c,\\qquad k=t_{0.975}(\\nu_\\mathrm{eff})',
    symbols: [
      ['u_c', "combined standard uncertainty, in the figure's unit"],
      ['c_i', 'sensitivity: how far the figure moves when input i moves by one'],
      ['u(x_i)', 'standard uncertainty of input i'],
      ['U', 'half the width of the 95 % coverage interval'],
      ['k', 'coverage factor from Student’s t'],
      ['\\nu_\\mathrm{eff}', 'effective degrees of freedom (Welch–Satterthwaite), rounded down'],
    ],
    constants: [
      { name: 'coverage probability', value: 0.95, unit: '1', why: 'two-sided, as is usual for bench reports' },
    ],
    file: 'src/measure/uncertainty.ts',
  },
  {
    id: 'wavelength',
    name: 'Peak wavelength',
    unit: 'nm',
    formula: '\\lambda_p=\\arg\\max_\\lambda S(\\lambda)',
    symbols: [
      ['\\lambda_p', 'peak wavelength of one mode, nm'],
      ['S(\\lambda)', 'spectral reading after the dark reading is subtracted'],
    ],
    constants: [
      {
        name: 'tolerance against the claim',
        value: WAVELENGTH_TOLERANCE_NM,
        unit: 'nm',
        why: 'our own choice: half of a usual LED’s width at half maximum',
      },
    ],
    file: 'src/ledger/reading-figures.ts',
  },
  {
    id: 'peak-irradiance',
    name: 'Peak irradiance',
    unit: 'mW/cm²',
    formula: 'E_\\mathrm{peak}=\\max_{(x,y)}E(x,y)\\;\\text{at}\\;d',
    symbols: [
      ['E_\\mathrm{peak}', 'highest steady reading of a sweep over the panel, mW/cm²'],
      ['d', 'distance from the LED plane to the sensor, cm'],
    ],
    constants: [],
    file: 'src/ledger/reading-figures.ts',
  },
  {
    id: 'mean-irradiance',
    name: 'Mean irradiance',
    unit: 'mW/cm²',
    formula: '\\bar E=\\frac1n\\sum_{j=1}^{n}E_j',
    symbols: [
      ['\\bar E', 'mean irradiance of the grid at the measuring distance, mW/cm²'],
      ['E_j', 'mean of the readings kept at grid point j, mW/cm²'],
      ['n', 'number of grid points with a kept reading'],
    ],
    constants: [],
    file: grid,
  },
  {
    id: 'uniformity',
    name: 'Uniformity',
    unit: '%',
    formula:
      'U_0=\\frac{E_\\mathrm{min}}{\\bar E},\\qquad \\frac{E_\\mathrm{max}}{\\bar E},\\qquad \\mathrm{CV}=\\frac{s}{\\bar E}',
    symbols: [
      ['U_0', 'lowest grid point over the mean of the grid'],
      ['E_\\mathrm{min},E_\\mathrm{max}', 'lowest and highest grid point, mW/cm²'],
      ['s', 'sample standard deviation over the grid points (n − 1), mW/cm²'],
      ['\\bar E', 'mean irradiance of the grid, mW/cm²'],
    ],
    constants: [],
    file: 'src/measure/irradiance/uniformity.ts',
  },
  {
    id: 'peak-to-mean',
    name: 'Peak to mean',
    unit: '1',
    formula: 'R=\\frac{E_\\mathrm{peak}}{\\bar E}',
    symbols: [
      ['E_\\mathrm{peak}', 'peak irradiance with both channels on, mW/cm²'],
      ['\\bar E', 'mean irradiance of the grid, mW/cm²'],
    ],
    constants: [],
    file: 'src/measure/irradiance/optical-power.ts',
  },
  {
    id: 'led-area',
    name: 'LED area',
    unit: 'cm²',
    formula: 'A=w\\,h',
    symbols: [
      ['w', 'width from the outer edge of the first LED to the outer edge of the last, cm'],
      ['h', 'height, likewise, cm'],
    ],
    constants: [],
    file: 'src/measure/irradiance/optical-power.ts',
  },
  {
    id: 'optical-power',
    name: 'Optical power at the reference plane',
    unit: 'W',
    formula: 'P=\\frac{\\bar E\\,A}{1000}',
    symbols: [
      ['P', 'optical power through the LED-area rectangle at the measuring distance, W'],
      ['\\bar E', 'mean irradiance of the grid, mW/cm²'],
      ['A', 'LED area, cm²'],
    ],
    constants: [],
    file: 'src/measure/irradiance/optical-power.ts',
  },
  {
    id: 'real-price',
    name: 'Price really paid',
    unit: 'currency',
    formula: 'C=C_\\mathrm{paid}\\,r',
    symbols: [
      [
        'C_\\mathrm{paid}',
        'newest dated price that any buyer can pay, in the currency it was asked in; the list price where none is recorded',
      ],
      ['r', 'dated rate of the guide to its base currency; 1 where they are the same'],
    ],
    constants: [{ name: 'stale after', value: STALE_PRICE_DAYS, unit: 'days', why: 'our own choice' }],
    file: 'src/measure/money/price.ts',
  },
  {
    id: 'price-per-watt',
    name: 'Price per optical watt',
    unit: 'currency/W',
    formula: 'c=\\frac{C}{P}',
    symbols: [
      ['C', 'price really paid, base currency'],
      ['P', 'optical power at the reference plane, W'],
    ],
    constants: [],
    file: 'src/measure/money/price.ts',
  },
  {
    id: 'mains-draw',
    name: 'Mains draw',
    unit: 'W',
    symbols: [],
    constants: [],
    file: 'src/ledger/reading-figures.ts',
  },
  {
    id: 'efficiency',
    name: 'Efficiency',
    unit: '%',
    formula:
      '\\eta=\\frac{P_\\mathrm{mode}}{W_\\mathrm{mode}},\\qquad \\eta_\\mathrm{net}=\\frac{P_\\mathrm{mode}}{W_\\mathrm{mode}-W_\\mathrm{standby}},\\qquad P_\\mathrm{mode}=P\\,\\frac{E_\\mathrm{peak,mode}}{E_\\mathrm{peak,combined}}',
    symbols: [
      ['P', 'optical power at the reference plane, both channels on, W'],
      ['P_\\mathrm{mode}', 'the same for one mode, scaled by the peaks, W'],
      ['W_\\mathrm{mode}', 'mains draw in that mode, W'],
      ['W_\\mathrm{standby}', 'mains draw in standby, W'],
    ],
    constants: [
      { name: 'odd above', value: ODD_EFFICIENCY, unit: '1', why: 'our own choice, above what panels reach' },
      {
        name: 'impossible above',
        value: IMPOSSIBLE_EFFICIENCY,
        unit: '1',
        why: 'near-limit of red LEDs, Kusuma et al. 2020',
      },
    ],
    file: 'src/measure/irradiance/efficiency.ts',
  },
  ...OPTICS_METHODS,
  {
    id: 'running-cost',
    name: 'Cost of one hour',
    unit: 'currency/h',
    formula: 'c_h=\\frac{W}{1000}\\,T',
    symbols: [
      ['W', 'mains draw with both channels on, W'],
      ['T', 'tariff of the guide, base currency per kWh'],
    ],
    constants: [],
    file: 'src/measure/money/running-cost.ts',
  },
  {
    id: 'radiant-exposure',
    name: 'Radiant exposure and time',
    unit: 'J/cm²',
    formula: 'H=\\frac{E\\,t}{1000},\\qquad t=\\frac{1000\\,H}{E}',
    symbols: [
      ['H', 'radiant exposure at the surface, J/cm²'],
      ['E', 'irradiance at the surface, mW/cm²'],
      ['t', 'time, s'],
    ],
    constants: [],
    file: 'src/measure/irradiance/radiant-exposure-figures.ts',
  },
  {
    id: 'flicker',
    name: 'Flicker',
    unit: '%',
    formula: 'M=100\\,\\frac{E_\\mathrm{max}-E_\\mathrm{min}}{E_\\mathrm{max}+E_\\mathrm{min}}',
    symbols: [
      ['M', 'modulation depth (percent flicker), %'],
      ['E_\\mathrm{max},E_\\mathrm{min}', 'highest and lowest value over a period'],
    ],
    constants: [],
    file: 'src/ledger/reading-figures.ts',
  },
  {
    id: 'magnetic-field',
    name: 'Magnetic field',
    unit: 'µT',
    symbols: [],
    constants: [],
    file: 'src/ledger/reading-figures.ts',
  },
  {
    id: 'electric-field',
    name: 'Electric field',
    unit: 'V/m',
    symbols: [],
    constants: [],
    file: 'src/ledger/reading-figures.ts',
  },
  {
    id: 'radio-field',
    name: 'Radio field',
    unit: 'mW/m²',
    symbols: [],
    constants: [],
    file: 'src/ledger/reading-figures.ts',
  },
  {
    id: 'sound',
    name: 'Sound',
    unit: 'dB(A)',
    symbols: [],
    constants: [],
    file: 'src/ledger/reading-figures.ts',
  },
  ...EXPOSURE_METHODS,
  {
    id: 'hot-spots',
    name: 'Hot spots',
    unit: null,
    symbols: [],
    constants: [],
    file: 'src/content/schema/session.ts',
  },
  { id: 'warm-up', name: 'Warm-up', unit: null, symbols: [], constants: [], file: 'src/content/schema/session.ts' },
  {
    id: 'size-class',
    name: 'Size class',
    unit: null,
    symbols: [],
    constants: [],
    file: 'src/measure/money/size-class.ts',
  },
  {
    id: 'rank',
    name: 'Rank and its range',
    unit: null,
    formula: '\\mathrm{rank}_i=1+\\#\\{j:c_j<c_i\\}',
    symbols: [['c_i', 'price per optical watt of panel i in one draw of the simulation']],
    constants: [{ name: 'draws', value: RANK_TRIALS, unit: '1', why: 'about 100 draws in each 2.5 % tail' }],
    file: 'src/measure/money/ranking.ts',
  },
  {
    id: 'step-up',
    name: 'Step-up',
    unit: 'currency/W',
    formula: 'c_{A\\to B}=\\frac{C_B-C_A}{P_B-P_A}<\\frac{C_A}{P_A}',
    symbols: [
      ['C_A,C_B', 'prices of the panel and of the larger one, base currency'],
      ['P_A,P_B', 'their optical powers at the reference plane, W'],
    ],
    constants: [],
    file: 'src/measure/money/step-ups.ts',
  },
  {
    id: 'frontier',
    name: 'Price–power frontier',
    unit: null,
    formula: 'F=\\{A:\\nexists B\\;(C_B\\le C_A\\wedge P_B\\ge P_A,\\ \\text{one of them strictly})\\}',
    symbols: [
      ['C', 'price, base currency'],
      ['P', 'optical power at the reference plane, W'],
    ],
    constants: [],
    file: 'src/measure/money/frontier.ts',
  },
  {
    id: 'claims',
    name: 'Claims against measurements',
    unit: '%',
    formula: '\\Delta=\\frac{x-x_\\mathrm{claim}}{x_\\mathrm{claim}}',
    symbols: [
      ['x', 'measured figure'],
      ['x_\\mathrm{claim}', 'the maker’s figure, converted to the same unit'],
    ],
    constants: [],
    file: 'src/measure/irradiance/claims.ts',
  },
  {
    id: 'plausibility',
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
    constants: [
      { name: 'outlier beyond', value: OUTLIER_Z, unit: '1', why: 'Iglewicz and Hoaglin 1993' },
      {
        name: 'smallest distance called out',
        value: 100 * SMALLEST_OUTLIER,
        unit: '%',
        why: 'our own choice: the reader’s hand alone does not reach it',
      },
      { name: 'shortest warm-up', value: SHORTEST_WARM_UP, unit: 's', why: 'our own choice' },
      { name: 'nearest bench', value: NEAREST_BENCH, unit: 'cm', why: 'our own choice' },
      { name: 'LEDs closer than', value: SMALLEST_PITCH, unit: 'cm', why: 'our own choice' },
      { name: 'LEDs farther apart than', value: LARGEST_PITCH, unit: 'cm', why: 'our own choice' },
      { name: 'longest side of a field', value: LONGEST_SIDE, unit: 'cm', why: 'our own choice: higher than a door' },
      { name: 'smallest share of the housing', value: 100 * SMALLEST_SHARE, unit: '%', why: 'our own choice' },
      {
        name: 'magnetic field of a room above',
        value: MAGNETIC_OFF_ODD,
        unit: 'µT',
        why: 'one or two homes in a hundred average more, from memory',
      },
      {
        name: 'around the factor between two units',
        value: AROUND_FACTOR,
        unit: '1',
        why: 'our own choice: half to twice the factor',
      },
      { name: 'other sessions at least', value: FEWEST_ROOMS, unit: '1', why: 'our own choice' },
    ],
    file: 'src/measure/checks/index.ts',
  },
];

/** Every method. */
export const METHODS: readonly Method[] = ENTRIES.map((entry) => ({ ...entry, version: versionOf(entry.id) }));

const byId = new Map(METHODS.map((method) => [method.id, method]));

/** The registered method, or an error naming the id: an unknown method is a fault of the program. */
export function methodById(id: string): Method {
  const method = byId.get(id);
  if (!method) throw new Error(`no method is registered as "${id}"`);
  return method;
}
