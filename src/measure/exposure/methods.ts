import type { MethodEntry } from '../methods.ts';
import { BOUND_BELOW, LARGEST_CORRECTION, NO_CORRECTION_ABOVE } from './background-sound.ts';
import { RANGE_EDGES } from './building-biology.ts';
import { PULSE_TOLERANCE, ROW_EDGE, SLOW_DEPTH } from './flicker-lines.ts';
import { LONG_EXPOSURE, LONGEST_TIMED } from './infrared.ts';
import {
  electricReferenceLevel,
  LOWEST_ELECTRIC_LEVEL,
  LOWEST_MAGNETIC_LEVEL,
  LOWEST_RADIO_LEVEL,
  magneticReferenceLevel,
} from './reference-levels.ts';
import { SKIN_TIME } from './skin-limit.ts';

const IEC = 'IEC 62471:2006, 4.3.7, from secondary sources';
const ICNIRP_2010 = 'ICNIRP 2010, seen in a copy of the paper';
const ISO = 'ISO 3744:2010, from secondary sources';
const SBM = 'SBM-2008 as seen on a page; that SBM-2015 has the same is from memory';

/** The methods that hold figures against published limits, for the registry. */
export const EXPOSURE_METHODS: readonly MethodEntry[] = [
  {
    id: 'infrared-eye',
    name: 'Infrared at the eye',
    unit: '%',
    formula:
      's(d)=100\\,\\frac{E(d)}{E_\\infty},\\qquad E(d_0)\\left(\\frac{d_0}{d}\\right)^{2}\\le E(d)\\le E(d_0)\\ \\text{for}\\ d>d_0,\\qquad t=\\min\\!\\left(1000\\,\\mathrm{s},\\left(\\frac{18000}{E(d)}\\right)^{4/3}\\right)',
    symbols: [
      ['s(d)', 'share of the limit for long exposures at distance d, %'],
      ['E(d)', 'highest near-infrared irradiance at distance d, W/m² (1 mW/cm² = 10 W/m²)'],
      ['E_\\infty', 'limit for exposures over 1000 s, W/m²'],
      ['d_0', 'distance of a reading with near-infrared alone on; every reading bounds what lies farther away'],
      ['t', 'time until the limit is used up, s; not limited up to 100 W/m²'],
    ],
    constants: [
      { name: 'limit for long exposures', value: LONG_EXPOSURE, unit: 'W/m²', why: IEC },
      { name: 'longest time of the formula', value: LONGEST_TIMED, unit: 's', why: IEC },
    ],
    file: 'src/measure/exposure/infrared.ts',
  },
  {
    id: 'skin-heating',
    name: 'Heating of the skin',
    unit: '%',
    formula: 's=100\\,\\frac{E_\\mathrm{peak}}{20000\\cdot 10^{-0.75}},\\qquad H(t)=E(t)\\,t=20000\\,t^{0.25}',
    symbols: [
      ['s', 'share of the limit for an exposure just under 10 s, %; from 10 s on there is no limit'],
      ['E_\\mathrm{peak}', 'peak irradiance with both channels on, W/m²'],
      ['H(t)', 'limit of the radiant exposure for a time t in s, J/m²; divided by t it is the limit of the irradiance'],
    ],
    constants: [
      {
        name: 'exposures shorter than',
        value: SKIN_TIME,
        unit: 's',
        why: 'IEC 62471:2006, 4.3.8; the formula is from secondary sources',
      },
    ],
    file: 'src/measure/exposure/skin-limit.ts',
  },
  {
    id: 'retinal-hazard',
    name: 'Retina',
    unit: null,
    symbols: [],
    constants: [],
    file: 'src/measure/exposure/retina.ts',
  },
  {
    id: 'flicker-lines',
    name: 'Flicker lines',
    unit: '1',
    formula:
      'k=\\frac{M}{a\\,f},\\qquad a_\\mathrm{low\\,risk}=\\begin{cases}0.025&f<90\\\\0.08&90\\le f\\le1250\\end{cases},\\qquad a_\\mathrm{no\\,effect}=\\begin{cases}0.01&f<90\\\\0.0333&90\\le f\\le3000\\end{cases}',
    symbols: [
      ['k', 'multiple of the line at the frequency'],
      ['M', 'modulation depth (percent flicker), %'],
      ['f', 'frequency of the modulation, Hz'],
      ['a', 'slope of the line, % for each Hz; visible light only'],
    ],
    constants: [
      {
        name: 'upper row from',
        value: ROW_EDGE,
        unit: 'Hz',
        why: 'IEEE Std 1789-2015, 8.1.1, from secondary sources; 90 Hz itself is in it',
      },
      {
        name: 'slow modulation from',
        value: SLOW_DEPTH,
        unit: '%',
        why: 'IEEE Std 1789-2015, Practice 3, from memory',
      },
      { name: 'pulsing within', value: PULSE_TOLERANCE, unit: 'Hz of 10 Hz or 40 Hz', why: 'our own choice' },
    ],
    file: 'src/measure/exposure/flicker-lines.ts',
  },
  {
    id: 'field-levels',
    name: 'Fields against reference levels',
    unit: '%',
    formula: 's=100\\,\\frac{x_\\mathrm{on}}{L(f)}',
    symbols: [
      ['s', 'share of the reference level, %'],
      ['x_\\mathrm{on}', 'reading with the panel on, the room included: µT, V/m or mW/m²'],
      [
        'L(f)',
        'level for the general public at the frequency that the meter showed; without one, above 3 kHz and, beside it, at the mains frequency (ICNIRP 2010); for radio the lowest one for power density (ICNIRP 2020)',
      ],
    ],
    constants: [
      { name: 'magnetic, above 3 kHz', value: LOWEST_MAGNETIC_LEVEL, unit: 'µT', why: ICNIRP_2010 },
      { name: 'magnetic, 50 Hz and 60 Hz', value: magneticReferenceLevel(50), unit: 'µT', why: ICNIRP_2010 },
      { name: 'electric, above 3 kHz', value: LOWEST_ELECTRIC_LEVEL, unit: 'V/m', why: ICNIRP_2010 },
      { name: 'electric, 50 Hz', value: electricReferenceLevel(50), unit: 'V/m', why: ICNIRP_2010 },
      {
        name: 'radio, whole body, above 30 MHz',
        value: LOWEST_RADIO_LEVEL,
        unit: 'W/m²',
        why: 'ICNIRP 2020, from a secondary source',
      },
    ],
    file: 'src/measure/exposure/reference-levels.ts',
  },
  {
    id: 'building-biology',
    name: 'Precautionary lines for beds',
    unit: '1',
    formula: 'k=\\frac{x_\\mathrm{on}}{x_1}',
    symbols: [
      ['k', 'multiple of the lowest line for sleeping places'],
      ['x_\\mathrm{on}', 'reading with the panel on'],
      ['x_1', 'lowest line of the guideline'],
    ],
    constants: [
      { name: 'magnetic', value: RANGE_EDGES.magnetic[0], unit: 'µT', why: SBM },
      { name: 'electric, ground potential', value: RANGE_EDGES.electric[0], unit: 'V/m', why: SBM },
      { name: 'radio', value: RANGE_EDGES.radio[0], unit: 'mW/m²', why: SBM },
    ],
    file: 'src/measure/exposure/building-biology.ts',
  },
  {
    id: 'sound-of-panel',
    name: 'Sound of the panel alone',
    unit: 'dB(A)',
    formula:
      'L=L_\\mathrm{on}-K_1,\\qquad K_1=-10\\lg\\!\\left(1-10^{-0.1\\,\\Delta L}\\right),\\qquad \\Delta L=L_\\mathrm{on}-L_\\mathrm{off}',
    symbols: [
      ['L', 'sound level of the panel alone at the point of the reading, dB(A)'],
      ['L_\\mathrm{on},L_\\mathrm{off}', 'levels read with the panel on and off, dB(A)'],
      ['K_1', 'correction for the room, dB'],
    ],
    constants: [
      { name: 'no correction above', value: NO_CORRECTION_ABOVE, unit: 'dB', why: ISO },
      { name: 'upper bound below', value: BOUND_BELOW, unit: 'dB', why: ISO },
      { name: 'largest correction', value: LARGEST_CORRECTION, unit: 'dB', why: ISO },
    ],
    file: 'src/measure/exposure/background-sound.ts',
  },
];
