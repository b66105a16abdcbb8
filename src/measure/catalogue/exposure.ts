import { EYE_DISTANCES } from '../exposure/eye-distances.ts';
import { type MethodPage, rows } from './rows.ts';

/* What is held against published limits. */

/** Versions of these methods. */
export const EXPOSURE_VERSIONS = {
  'infrared-eye': 3,
  'skin-heating': 2,
  'retinal-hazard': 2,
  'flicker-lines': 1,
  'field-levels': 2,
  'building-biology': 1,
  'sound-of-panel': 1,
} as const;

/** The pages of these methods. */
export const EXPOSURE_METHODS = {
  'infrared-eye': {
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
    file: 'src/measure/exposure/infrared.ts',
  },
  'skin-heating': {
    name: 'Heating of the skin',
    unit: '%',
    formula: 's=100\\,\\frac{E_\\mathrm{peak}}{20000\\cdot 10^{-0.75}},\\qquad H(t)=E(t)\\,t=20000\\,t^{0.25}',
    symbols: [
      ['s', 'share of the limit for an exposure just under 10 s, %; from 10 s on there is no limit'],
      ['E_\\mathrm{peak}', 'peak irradiance with both channels on, W/m²'],
      ['H(t)', 'limit of the radiant exposure for a time t in s, J/m²; divided by t it is the limit of the irradiance'],
    ],
    file: 'src/measure/exposure/skin-limit.ts',
  },
  'retinal-hazard': {
    name: 'Retina',
    unit: '%',
    formula:
      's=100\\,\\frac{L\\,\\alpha}{C},\\qquad \\frac{\\bar R\\,E}{\\Omega_\\mathrm{lit}}\\le L\\le\\frac{\\bar R\\,E}{\\omega}',
    symbols: [
      ['s', 'share of the limit, %'],
      ['L', 'weighted radiance where it is highest, averaged over 11 mrad, W/(m² sr)'],
      ['\\alpha', 'angle under which the LED field appears, at least 0.011 rad, at most 0.1 rad'],
      ['C', 'limit over α: 6000 with near-infrared alone, 28 117 at 10 s with both channels on, W/(m² sr) rad'],
      ['\\bar R', 'mean weight of the light for the retina, by its spectrum'],
      ['E', 'highest irradiance at the measuring distance, W/m² (1 mW/cm² = 10 W/m²)'],
      ['\\Omega_\\mathrm{lit}', 'projected solid angle of the LED field, or of all its emitters, sr'],
      ['\\omega', 'solid angle of one emitter straight ahead, at least that of 11 mrad, sr'],
    ],
    file: 'src/measure/exposure/retina.ts',
  },
  'flicker-lines': {
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
    file: 'src/measure/exposure/flicker-lines.ts',
  },
  'field-levels': {
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
    file: 'src/measure/exposure/reference-levels.ts',
  },
  'building-biology': {
    name: 'Precautionary lines for beds',
    unit: '1',
    formula: 'k=\\frac{x_\\mathrm{on}}{x_1}',
    symbols: [
      ['k', 'multiple of the lowest line for sleeping places'],
      ['x_\\mathrm{on}', 'reading with the panel on'],
      ['x_1', 'lowest line of the guideline'],
    ],
    file: 'src/measure/exposure/building-biology.ts',
  },
  'sound-of-panel': {
    name: 'Sound of the panel alone',
    unit: 'dB(A)',
    formula:
      'L=L_\\mathrm{on}-K_1,\\qquad K_1=-10\\lg\\!\\left(1-10^{-0.1\\,\\Delta L}\\right),\\qquad \\Delta L=L_\\mathrm{on}-L_\\mathrm{off}',
    symbols: [
      ['L', 'sound level of the panel alone at the point of the reading, dB(A)'],
      ['L_\\mathrm{on},L_\\mathrm{off}', 'levels read with the panel on and off, dB(A)'],
      ['K_1', 'correction for the room, dB'],
    ],
    file: 'src/measure/exposure/background-sound.ts',
  },
} as const satisfies Record<keyof typeof EXPOSURE_VERSIONS, MethodPage>;

const atEye = <const Place extends string>(place: Place, words: string) =>
  [
    {
      id: `infrared-share-at-${place}`,
      name: `Infrared at the eye, ${words}: share of the limit`,
      method: 'infrared-eye',
      unit: '%',
    },
    {
      id: `infrared-stay-at-${place}`,
      name: `Infrared at the eye, ${words}: time to the limit`,
      method: 'infrared-eye',
      unit: 's',
    },
  ] as const;

const flickerMultiples = <const Mode extends string>(mode: Mode, words: string) =>
  [
    {
      id: `flicker-low-risk-multiple-${mode}`,
      name: `Flicker: multiple of the low-risk line, ${words}`,
      method: 'flicker-lines',
      unit: '1',
    },
    {
      id: `flicker-no-effect-multiple-${mode}`,
      name: `Flicker: multiple of the no-effect line, ${words}`,
      method: 'flicker-lines',
      unit: '1',
    },
  ] as const;

/** The level depends on the frequency for magnetic and electric fields, and few instruments show it. */
const levelShares = <const Kind extends string>(kind: Kind, name: string) =>
  [
    {
      id: `${kind}-field-share`,
      name: `${name}: share of the level above 3 kHz, or at the frequency read`,
      method: 'field-levels',
      unit: '%',
    },
    {
      id: `${kind}-field-share-at-mains`,
      name: `${name}: share of the level at the mains’ frequency`,
      method: 'field-levels',
      unit: '%',
    },
  ] as const;

const precaution = <const Kind extends string>(kind: Kind, name: string) =>
  ({
    id: `${kind}-field-precaution`,
    name: `${name}: multiple of a precautionary line for beds`,
    method: 'building-biology',
    unit: '1',
  }) as const;

/** These metrics, in the order of the results. */
export const EXPOSURE_METRICS = /* @__PURE__ */ rows(() => [
  ...atEye('reading', 'at the reading’s distance'),
  ...EYE_DISTANCES.flatMap((distance) => atEye(`${distance}-cm`, `at ${distance} cm`)),
  {
    id: 'skin-heating-share',
    name: 'Heating of the skin: share of the limit under 10 s',
    method: 'skin-heating',
    unit: '%',
  },
  { id: 'retinal-hazard', name: 'Retina', method: 'retinal-hazard', unit: '%' },
  {
    id: 'retina-most',
    name: 'Retina, near-infrared alone, if one emitter gave all',
    method: 'retinal-hazard',
    unit: '%',
    isOfFiles: true,
  },
  {
    id: 'retina-seen',
    name: 'Retina, both channels, 10 s',
    method: 'retinal-hazard',
    unit: '%',
    isOfFiles: true,
  },
  {
    id: 'retina-seen-most',
    name: 'Retina, both channels, 10 s, if one emitter gave all',
    method: 'retinal-hazard',
    unit: '%',
    isOfFiles: true,
  },
  ...flickerMultiples('combined', 'both channels'),
  ...flickerMultiples('red', 'red alone'),
  ...flickerMultiples('near-infrared', 'near-infrared alone'),
  ...levelShares('magnetic', 'Magnetic field'),
  precaution('magnetic', 'Magnetic field'),
  ...levelShares('electric', 'Electric field'),
  precaution('electric', 'Electric field'),
  {
    id: 'radio-field-share',
    name: 'Radio field: share of the reference level',
    method: 'field-levels',
    unit: '%',
  },
  precaution('radio', 'Radio field'),
  { id: 'sound-of-panel', name: 'Sound of the panel alone', method: 'sound-of-panel', unit: 'dB(A)' },
]);
