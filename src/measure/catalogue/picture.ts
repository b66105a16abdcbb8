import { type MethodPage, rows } from './rows.ts';

/* What a photo of the lit wall tells. */

/** Versions of these methods. */
export const PICTURE_VERSIONS = { 'wall-photo': 1, 'dot-pattern': 1 } as const;

/** The pages of these methods. */
export const PICTURE_METHODS = {
  'wall-photo': {
    name: 'Evenness by camera',
    unit: '%',
    formula:
      'U=100\\,\\frac{\\min_i L_i}{\\bar L},\\qquad V=100\\,\\frac{s_L}{\\bar L},\\qquad D=100\\,\\max_{|i-j|\\le 10\\,\\mathrm{cm}}\\left(1-\\frac{L_j}{L_i}\\right)',
    symbols: [
      ['U', 'dimmest square over the mean, %'],
      ['V', 'coefficient of variation over the squares, %'],
      ['D', 'largest fall between two squares within a hand’s width, %'],
      ['L_i', 'mean relative luminance of square i of about 2 cm, after sRGB is taken off'],
      ['\\bar L,s_L', 'mean and standard deviation (n − 1) over all squares'],
    ],
    file: 'src/measure/wall/evenness.ts',
  },
  'dot-pattern': {
    name: 'Dot pattern on the wall',
    unit: '%',
    formula:
      'c=100\\,\\max_{\\mathbf f\\sim 1/p}\\frac{2\\,|\\mathcal F\\{w\\,(L/\\langle L\\rangle_{2p}-1)\\}(\\mathbf f)|}{\\sum w}',
    symbols: [
      ['c', 'amplitude of the strongest wave at the LEDs’ pitch, % of the light around it'],
      ['p', 'pitch of the LEDs, from the LED field and how they were counted, cm'],
      ['L', 'relative luminance of the straightened photo'],
      ['\\langle L\\rangle_{2p}', 'its mean within two pitches'],
      ['w', 'Hann’s window over the photo'],
      ['\\mathcal F', 'two-dimensional Fourier transform'],
    ],
    file: 'src/measure/wall/dot-pattern.ts',
  },
} as const satisfies Record<keyof typeof PICTURE_VERSIONS, MethodPage>;

/** These metrics, in the order of the page of a panel's files. */
export const PICTURE_METRICS = /* @__PURE__ */ rows(() => [
  {
    id: 'wall-lowest-to-mean',
    name: 'Wall by camera: dimmest over mean',
    method: 'wall-photo',
    unit: '%',
    isOfFiles: true,
  },
  {
    id: 'wall-variation',
    name: 'Wall by camera: coefficient of variation',
    method: 'wall-photo',
    unit: '%',
    isOfFiles: true,
  },
  {
    id: 'wall-hand-drop',
    name: 'Wall by camera: largest fall within a hand’s width',
    method: 'wall-photo',
    unit: '%',
    isOfFiles: true,
  },
  {
    id: 'wall-dot-pattern',
    name: 'Wall by camera: dot pattern of the LEDs',
    method: 'dot-pattern',
    unit: '%',
    isOfFiles: true,
  },
]);
