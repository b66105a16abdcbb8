import type { MethodId } from '../../measure/method-versions.ts';
import type { SketchId } from './sketches/index.ts';

/** Methods that answer one question of a reader. */
export interface MethodGroup {
  id: string;
  title: string;
  sketch?: SketchId;
  methods: ReadonlyArray<readonly [id: MethodId, line: string]>;
}

/** Every method once, by the question that it answers, with what it says in a few words. */
export const METHOD_GROUPS: readonly MethodGroup[] = [
  {
    id: 'cost',
    title: 'What does a watt of light cost?',
    sketch: 'frontier',
    methods: [
      ['price-per-watt', 'Price over the light in the frame; panels are ranked by it.'],
      ['real-price', 'What a buyer pays, on a day.'],
      ['rank', 'The place in a size class, and when it is a tie.'],
      ['size-class', 'Who is ranked with whom.'],
      ['step-up', 'What each further watt of a larger panel costs.'],
      ['frontier', 'Panels that no other beats on price and light.'],
      ['running-cost', 'An hour at the mains.'],
    ],
  },
  {
    id: 'light',
    title: 'How much light is in the frame?',
    sketch: 'nine-points',
    methods: [
      ['mean-irradiance', 'The mean of nine points, 6 in in front.'],
      ['peak-irradiance', 'The brightest spot that the meter finds.'],
      ['sweep', 'The same from a log, with slips told apart.'],
      ['optical-power', 'The mean times the area: watts of light.'],
      ['led-area', 'From the first LED’s edge to the last’s.'],
      ['uniformity', 'How even the nine points are.'],
      ['peak-to-mean', 'How far the brightest spot stands out.'],
      ['hot-spots', 'What a photo of the wall shows.'],
      ['wall-photo', 'How even a camera sees the wall.'],
      ['dot-pattern', 'Whether single LEDs show on it.'],
      ['efficiency', 'Light over what it draws.'],
      ['spectrum-irradiance', 'What a spectrum sums up to.'],
      ['spectral-mismatch', 'What a meter misreads by the light’s colours.'],
      ['mains-draw', 'Watts from the mains, by channel.'],
    ],
  },
  {
    id: 'beyond',
    title: 'And the light past the frame?',
    sketch: 'beam',
    methods: [
      ['emitted-power', 'All the light that leaves the LEDs, modelled.'],
      ['beam-half-angle', 'How wide the beam is.'],
      ['capture', 'The share that stays in the frame.'],
      ['sampling-bias', 'How far nine points miss the true mean.'],
      ['price-per-emitted-watt', 'Price over all the light.'],
      ['efficiency-emitted', 'All the light over the draw.'],
    ],
  },
  {
    id: 'time',
    title: 'Which colours, how far, how long?',
    sketch: 'dose',
    methods: [
      ['wavelength', 'Where red and near-infrared peak.'],
      ['centroid', 'Where the middle of a peak’s light lies.'],
      ['band-shares', 'How much is red, near-infrared, or neither.'],
      ['distance-table', 'Mean and peak nearer and farther.'],
      ['radiant-exposure', 'Joules a square centimetre, and the time to them.'],
      ['warm-up', 'How long the panel had been on.'],
      ['settling', 'How the light falls until it has settled.'],
    ],
  },
  {
    id: 'limits',
    title: 'How near to a published limit?',
    sketch: 'share',
    methods: [
      ['infrared-eye', 'Infrared at the eye, and the time to its limit.'],
      ['infrared-sum', 'What a spectrum has of it.'],
      ['retinal-hazard', 'Bounds of what the retina gets, where there is a spectrum.'],
      ['skin-heating', 'Heat on the skin within ten seconds.'],
      ['flicker-lines', 'Flicker against lines of low risk.'],
      ['field-levels', 'Fields against levels for the public.'],
      ['building-biology', 'Fields against lines for beds: a private guideline.'],
    ],
  },
  {
    id: 'besides',
    title: 'Flicker, fields, sound',
    sketch: 'flicker',
    methods: [
      ['flicker', 'How deep the light dips, and how often.'],
      ['flicker-waveform', 'The same from a record of the light.'],
      ['magnetic-field', 'Off, then on.'],
      ['electric-field', 'Off, then on.'],
      ['radio-field', 'Off, then on.'],
      ['sound', 'The loudest by the meter, off, then on.'],
      ['sound-of-panel', 'The room’s own sound taken away.'],
      ['sound-clip', 'Level of a recorded clip, by a calibrator.'],
      ['tones', 'Whines that one number hides.'],
    ],
  },
  {
    id: 'sure',
    title: 'How sure is it?',
    sketch: 'interval',
    methods: [
      ['uncertainty', 'What stands behind ±.'],
      ['bench-procedure', 'How a panel is read, step by step.'],
      ['claims', 'What makers print, against what was read.'],
      ['control-chart', 'A lamp that is read at each session, and whether it held.'],
      ['plausibility', 'What raises † and ‡.'],
    ],
  },
];
