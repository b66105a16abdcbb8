import type { Unit } from '../figure.ts';
import { EYE_DISTANCES } from './eye-distances.ts';
import { FLICKER_MODES } from './flicker-results.ts';

const MODE_NAMES = { combined: 'both channels', red: 'red alone', 'near-infrared': 'near-infrared alone' } as const;

const eye = (place: string, words: string) =>
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

const FIELDS = [
  ['magnetic', 'Magnetic field'],
  ['electric', 'Electric field'],
  ['radio', 'Radio field'],
] as const;

/** Every figure of this folder, in the order of its results. */
export const EXPOSURE_METRICS: ReadonlyArray<{ id: string; name: string; method: string; unit: Unit }> = [
  ...eye('reading', 'at the reading’s distance'),
  ...EYE_DISTANCES.flatMap((distance) => eye(`${distance}-cm`, `at ${distance} cm`)),
  {
    id: 'skin-heating-share',
    name: 'Heating of the skin: share of the limit under 10 s',
    method: 'skin-heating',
    unit: '%',
  },
  // Never a number: the figure is always a gap.
  { id: 'retinal-hazard', name: 'Retina', method: 'retinal-hazard', unit: '1' },
  ...FLICKER_MODES.flatMap((mode) => [
    {
      id: `flicker-low-risk-multiple-${mode}`,
      name: `Flicker: multiple of the low-risk line, ${MODE_NAMES[mode]}`,
      method: 'flicker-lines',
      unit: '1' as const,
    },
    {
      id: `flicker-no-effect-multiple-${mode}`,
      name: `Flicker: multiple of the no-effect line, ${MODE_NAMES[mode]}`,
      method: 'flicker-lines',
      unit: '1' as const,
    },
  ]),
  ...FIELDS.flatMap(([kind, name]) => [
    {
      id: `${kind}-field-share`,
      name:
        kind === 'radio'
          ? `${name}: share of the reference level`
          : `${name}: share of the level above 3 kHz, or at the frequency read`,
      method: 'field-levels',
      unit: '%' as const,
    },
    // The level depends on the frequency for these two, and few meters show it.
    ...(kind === 'radio'
      ? []
      : [
          {
            id: `${kind}-field-share-at-mains`,
            name: `${name}: share of the level at the mains’ frequency`,
            method: 'field-levels',
            unit: '%' as const,
          },
        ]),
    {
      id: `${kind}-field-precaution`,
      name: `${name}: multiple of a precautionary line for beds`,
      method: 'building-biology',
      unit: '1' as const,
    },
  ]),
  { id: 'sound-of-panel', name: 'Sound of the panel alone', method: 'sound-of-panel', unit: 'dB(A)' },
];
