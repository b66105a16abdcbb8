import { type MethodPage, rows } from './rows.ts';

/* What sound clips tell. */

/** Versions of these methods. */
export const SOUND_VERSIONS = { 'sound-clip': 1, tones: 1 } as const;

/** The pages of these methods. */
export const SOUND_METHODS = {
  'sound-clip': {
    name: 'Sound level from a clip',
    unit: 'dB(A)',
    formula: 'L=10\\,\\lg\\sum_k A(f_k)\\,P_k+L_\\mathrm{cal}-10\\,\\lg P_\\mathrm{cal}',
    symbols: [
      ['L', 'A-weighted level over the clip, dB(A)'],
      ['A(f_k)', 'A-weighting of a narrow band, as a factor'],
      ['P_k', 'mean square of that band of the clip, of full scale'],
      ['L_\\mathrm{cal}', 'level that the calibrator gives, dB'],
      ['P_\\mathrm{cal}', 'mean square of its tone, of full scale'],
    ],
    file: 'src/measure/sound/clip-level.ts',
  },
  tones: {
    name: 'Tones',
    unit: 'dB',
    formula:
      'T=L_t-L_n,\\qquad L_n=10\\,\\lg\\!\\left(10^{L_\\mathrm{tot}/10}-10^{L_t/10}\\right)+10\\,\\lg\\frac{\\Delta f_c}{\\Delta f_\\mathrm{tot}-\\Delta f_t},\\qquad T_0=\\begin{cases}8&f\\ge1\\,\\mathrm{kHz}\\\\8+8.33\\,\\lg\\frac{1\\,\\mathrm{kHz}}{f}&f<1\\,\\mathrm{kHz}\\end{cases}',
    symbols: [
      ['T', 'tone-to-noise ratio, dB; prominent from T₀ on'],
      ['L_t', 'level of the tone'],
      ['L_n', 'level of the noise in the critical band about it'],
      ['L_\\mathrm{tot}', 'level of all in that band'],
      ['\\Delta f_c', 'width of the critical band, 25 + 75 (1 + 1.4 (f/kHz)²)^0.69 Hz'],
      ['\\Delta f_\\mathrm{tot},\\Delta f_t', 'widths of the bands summed, and of the tone’s'],
    ],
    file: 'src/measure/sound/tones.ts',
  },
} as const satisfies Record<keyof typeof SOUND_VERSIONS, MethodPage>;

/** These metrics, in the order of the page of a panel's files. */
export const SOUND_METRICS = /* @__PURE__ */ rows(() => [
  { id: 'sound-clip-on', name: 'Sound from a clip, panel on', method: 'sound-clip', unit: 'dB(A)', isOfFiles: true },
  {
    id: 'sound-clip-highest',
    name: 'Sound from a clip, loudest eighth of a second',
    method: 'sound-clip',
    unit: 'dB(A)',
    isOfFiles: true,
  },
  { id: 'sound-clip-off', name: 'Sound from a clip, panel off', method: 'sound-clip', unit: 'dB(A)', isOfFiles: true },
  {
    id: 'sound-clip-panel',
    name: 'Sound from clips, the panel alone',
    method: 'sound-of-panel',
    unit: 'dB(A)',
    isOfFiles: true,
  },
  { id: 'tone-frequency', name: 'Clearest tone, frequency', method: 'tones', unit: 'Hz', isOfFiles: true },
  { id: 'tone-to-noise', name: 'Clearest tone over the noise about it', method: 'tones', unit: 'dB', isOfFiles: true },
]);
