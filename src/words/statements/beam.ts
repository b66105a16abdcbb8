import type { BeamSource } from '../../measure/beam/optics-input.ts';
import type { Statement } from '../../measure/statement.ts';
import type { WordsOf } from '../speaker.ts';

/** What the light that misses the frame rests on. */
const PAST_FRAME: Readonly<Record<BeamSource, string>> = {
  beyond: 'the light that misses the frame was measured past the edges',
  sweep:
    'the light that misses the frame is taken from the shape of the beam, as the grid and the distance sweep allow it',
  grid: 'the light that misses the frame is taken from the shape of the beam, as the grid allows it',
};

const wholeDegrees = (angle: number) => `${angle.toFixed(0)}°`;

/** What the model of the light may say; `say` puts what stands within into words. */
export const beamWords = (
  say: (it: Statement) => string,
): WordsOf<
  | 'beam-too-few-readings'
  | 'beam-unexplained'
  | 'beam-left-open'
  | 'beam-lopsided'
  | 'beam-distance-out-of-reach'
  | 'beam-no-readings'
  | 'beam-leds-uncounted'
  | 'beam-single-leds-open'
  | 'beam-grid-left-out'
  | 'beam-leds-counted'
  | 'beam-taken-for-grid'
  | 'beam-taken-for-even-field'
  | 'beam-no-regular-grid'
  | 'beam-past-frame'
  | 'beam-unlike-leds'
  | 'beam-leds-alike'
  | 'beam-oblique-by-angles'
  | 'beam-distance-evaluated'
  | 'beam-light-edge'
  | 'beam-light-edge-evaluated'
  | 'beam-shape'
  | 'beam-shape-simulated'
  | 'beam-rest'
  | 'beam-rest-evaluated'
  | 'beam-withheld'
  | 'beam-claim-ruled-out'
> => ({
  // Why there is nothing.
  'beam-too-few-readings': ({ fewest }) =>
    `fewer than ${fewest} readings at different places: they tell nothing of the beam`,
  'beam-unexplained': () => 'no beam that we know of explains the readings',
  'beam-left-open': () => 'the readings leave the beam open, and with it the power',
  'beam-lopsided': () =>
    'the grid is lopsided, as before a dark corner or a bright spot off the middle, and beams are not',
  'beam-distance-out-of-reach': ({ nearest, farthest }) => `a distance is not between ${nearest} cm and ${farthest} cm`,
  'beam-no-readings': () => 'neither a grid nor a distance sweep was measured',
  'beam-leds-uncounted': () => 'LEDs may show singly this near, and nobody counted them',
  'beam-single-leds-open': () => 'the readings leave open how single LEDs show this near',

  // What was assumed.
  'beam-grid-left-out': () => 'the grid is left out: no reading was kept, or its points do not fit the field',
  'beam-leds-counted': ({ columns, rows, staggered, isSizeAssumed }) =>
    `${columns} × ${rows} LEDs${staggered ? ' in staggered rows' : ''}, as they were counted${isSizeAssumed ? ', each taken to be half as wide as its pitch' : ''}`,
  'beam-taken-for-grid': ({ columns, rows }) =>
    `taken for a grid of ${columns} × ${rows} LEDs, each half as wide as its pitch`,
  'beam-taken-for-even-field': () => 'taken for an even field of light: the LEDs are not counted',
  'beam-no-regular-grid': ({ count }) => `taken for an even field of light: ${count} LEDs make no regular grid here`,
  'beam-past-frame': ({ source }) => PAST_FRAME[source],
  'beam-unlike-leds': () => 'Unlike LEDs',
  'beam-leds-alike': () => 'every LED is taken to have one beam, perpendicular to the panel; both channels are on',

  // Errors, and how they were evaluated.
  'beam-oblique-by-angles': () => 'from the instrument file, at the angles of each reading’s light; normal',
  'beam-distance-evaluated': ({ halfWidth, distance }) =>
    `±${halfWidth} cm at ${distance} cm, rectangular; through the model of the panel`,
  'beam-light-edge': () => 'How far the light reaches past the edges of the field',
  'beam-light-edge-evaluated': ({ halfWidth }) =>
    `±${Number(halfWidth.toPrecision(2))} cm on each side, rectangular; our own choice`,
  'beam-shape': () => 'Shape of the beam and drive of the LEDs',
  'beam-shape-simulated': () => 'from the beams and patterns of drive that the readings allow, by simulation',
  'beam-rest': () => 'Rest of the simulation',
  'beam-rest-evaluated': () => 'what each reading is off by on its own, and what the lines above leave out',

  // Flags.
  'beam-withheld': ({ because }) => `Emitted power and all that rests on the beam is withheld: ${say(because)}.`,
  'beam-claim-ruled-out': ({ claimed, low, high }) =>
    `The claimed beam angle of ${wholeDegrees(2 * claimed)} is a half-angle of ${wholeDegrees(claimed)}; the readings allow ${wholeDegrees(low)} to ${wholeDegrees(high)}. No figure rests on the claim.`,
});
