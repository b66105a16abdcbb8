/** Sketches of spectra: adding up, bands, the middle of a peak, infrared, what a meter makes of colours. */
import { INFRARED_BAND } from '../../../measure/spectrum/infrared-sum.ts';
import { box, curve, dot, line, measure, path, type Sketch, scale, text, through } from './sketch.ts';

/** Height over width at half of it, of a Gaussian. */
const bell = (x: number, at: number, width: number, height: number) =>
  height * Math.exp(-4 * Math.LN2 * ((x - at) / width) ** 2);

const peakX = scale(628, 692, 20, 320);
const peakY = scale(0, 2400, 130, 20);
/** Samples of the worked example’s peak, nm and µW/cm²/nm. */
const SAMPLES = Array.from({ length: 17 }, (_, i) => 628 + 4 * i).map((it) => [it, bell(it, 660, 18, 2400)] as const);
const OUTLINE = SAMPLES.map(([at, value]) => [peakX(at), peakY(value)] as const);

export const spectrumSum: Sketch = {
  width: 340,
  height: 152,
  words:
    'Irradiance from a spectrum: strips as high as the spectrum and as wide as from one wavelength to the next, added up. This peak, 2400 µW/cm²/nm high and 18 nm wide at half of that, comes to 46.0 mW/cm². Invented peak.',
  pieces: [
    through('light', OUTLINE),
    ...OUTLINE.map(([x, y]) => line('soft', x, 130, x, y)),
    through('accent', OUTLINE),
    line('soft', 20, 130, 320, 130),
    ...measure(peakX(651), 75, peakX(669), 75),
    text(peakX(669) + 10, 79, '18 nm'),
    text(22, 58, 'all strips:'),
    text(22, 77, '46.0 mW/cm²'),
    text(peakX(660), 148, '660 nm', 'middle'),
  ],
};

/** The worked example’s meter: 0.80 at 660 nm, 1 at 850 nm, where it was calibrated; half of the light at each. */
const RED = { at: 660, response: 0.8 };
const INFRARED = { at: 850, response: 1 };
const MEAN = (RED.response + INFRARED.response) / 2;
const meterX = scale(600, 910, 20, 320);
const meterY = scale(0, 1, 132, 28);
/** Both lines are as high, 0.6 on the scale of the response, so that what is seen of them is below the curve. */
const LIGHT = 0.6;

const seen = ({ at, response }: typeof RED) => [
  box('ink', meterX(at) - 9, meterY(LIGHT), 18, meterY(0) - meterY(LIGHT)),
  box('accent-fill', meterX(at) - 9, meterY(LIGHT * response), 18, meterY(0) - meterY(LIGHT * response)),
  text(meterX(at), 150, `${at} nm`, 'middle'),
];

export const mismatch: Sketch = {
  width: 340,
  height: 156,
  words:
    'A meter that was calibrated at 850 nm answers to 660 nm with 0.80. Of light that is half of each it sees what is filled, 0.90 of it, so its readings are multiplied by 1 / 0.90 = 1.111. Numbers invented.',
  pieces: [
    line('soft', 20, 132, 320, 132),
    line('accent', meterX(RED.at), meterY(RED.response), meterX(INFRARED.at), meterY(INFRARED.response)),
    ...seen(RED),
    ...seen(INFRARED),
    text(meterX(RED.at), meterY(RED.response) - 10, '0.80', 'middle'),
    text(meterX(INFRARED.at), meterY(INFRARED.response) - 8, '1', 'middle'),
    text((meterX(RED.at) + meterX(INFRARED.at)) / 2, 66, 'the meter’s answer', 'middle'),
    text((meterX(RED.at) + meterX(INFRARED.at)) / 2, 102, `it sees ${MEAN.toFixed(2)}:`, 'middle'),
    text((meterX(RED.at) + meterX(INFRARED.at)) / 2, 121, `× ${(1 / MEAN).toFixed(3)}`, 'middle'),
  ],
};

/** A panel’s light, with the shares of the worked example: 43.0 red, 40.5 near-infrared. */
const panelX = scale(600, 1000, 20, 320);
const SHARES = { red: 43, infrared: 40.5, rest: 0.2 };
const WIDTHS = { red: 24, infrared: 40 };
/** As high as makes the areas those of the shares. */
const HEIGHT = { red: 96, infrared: (96 * SHARES.infrared * WIDTHS.red) / (SHARES.red * WIDTHS.infrared) };
const panelLight = (at: number) =>
  bell(at, 660, WIDTHS.red, HEIGHT.red) + bell(at, 850, WIDTHS.infrared, HEIGHT.infrared);
const lightY = (at: number) => 124 - panelLight(at);
const panelCurve = (style: 'accent' | 'dash', from: number, to: number) => {
  const wavelengthAt = scale(20, 320, 600, 1000);
  return curve(style, panelX(from), panelX(to), (x) => lightY(wavelengthAt(x)));
};
const area = (from: number, to: number) => {
  const points = Array.from({ length: 41 }, (_, i) => from + ((to - from) * i) / 40).map(
    (at) => [panelX(at), lightY(at)] as const,
  );
  return through('light', [[panelX(from), 124], ...points, [panelX(to), 124]]);
};
const percent = (share: number) => ((100 * share) / (SHARES.red + SHARES.infrared + SHARES.rest)).toFixed(0);

export const bands: Sketch = {
  width: 340,
  height: 146,
  words:
    'Shares are areas: the light between the edges of a band, over all of it. Red ends and near-infrared begins at 700 nm here; the guide’s file says where. Of this invented light 51 % is red and 48 % near-infrared.',
  pieces: [
    line('soft', 20, 124, 320, 124),
    area(620, 700),
    area(780, 920),
    panelCurve('accent', 600, 700),
    panelCurve('dash', 700, 1000),
    line('ink', panelX(700), 14, panelX(700), 130),
    text(panelX(700), 143, '700 nm', 'middle'),
    text(panelX(660) - 18, 44, `${percent(SHARES.red)} %`, 'end'),
    text(panelX(850), 56, `${percent(SHARES.infrared)} %`, 'middle'),
    text(panelX(712), 28, 'near-infrared'),
    text(panelX(692), 18, 'red', 'end'),
  ],
};

export const infraredSum: Sketch = {
  width: 340,
  height: 146,
  words:
    'Infrared is what a spectrum has from 780 nm on, added up to the end of its range. What the instrument can’t see beyond is bounded and adds to the uncertainty. None of it is seen, and it heats the eye all the same.',
  pieces: [
    line('soft', 20, 124, 320, 124),
    area(INFRARED_BAND.from, 1000),
    panelCurve('accent', 600, 700),
    panelCurve('dash', 700, 1000),
    line('ink', panelX(INFRARED_BAND.from), 20, panelX(INFRARED_BAND.from), 130),
    text(panelX(INFRARED_BAND.from), 143, `${INFRARED_BAND.from} nm`, 'middle'),
    text(panelX(INFRARED_BAND.from) + 8, 36, 'counted from here'),
    text(panelX(680), 74, 'red'),
  ],
};

/** The worked example’s peak: readings at these wavelengths. */
const PEAK = [
  [640, 0],
  [650, 2],
  [660, 6],
  [670, 4],
  [680, 0],
] as const;
const CENTROID =
  PEAK.reduce((sum, [at, value]) => sum + at * value, 0) / PEAK.reduce((sum, [, value]) => sum + value, 0);
const coarseX = scale(636, 684, 40, 300);
const coarseY = scale(0, 6, 112, 30);

export const middle: Sketch = {
  width: 340,
  height: 150,
  words:
    'The centroid is where a peak, cut out of paper, would balance. This one has its highest reading at 660 nm and more light on the long side, so its centroid lies at 661.7 nm. Invented readings.',
  pieces: [
    through(
      'light',
      PEAK.map(([at, value]) => [coarseX(at), coarseY(value)]),
    ),
    through(
      'accent',
      PEAK.map(([at, value]) => [coarseX(at), coarseY(value)]),
    ),
    ...PEAK.map(([at, value]) => dot('accent-fill', coarseX(at), coarseY(value), 4)),
    line('soft', 30, 112, 310, 112),
    line('dash', coarseX(660), 30, coarseX(660), 112),
    path('ink', `M${coarseX(CENTROID)} 114l-9 16h18Z`),
    line('ink', coarseX(CENTROID), 112, coarseX(CENTROID), 60),
    text(coarseX(660), 20, 'highest: 660 nm', 'middle'),
    text(coarseX(CENTROID), 147, `centroid: ${CENTROID.toFixed(1)} nm`, 'middle'),
  ],
};
