import type { MetricId } from '../../../measure/metrics.ts';
/** What has to be alike in two bench sessions before a figure of theirs is compared. */
export type Alike =
  /** Measuring distance, and a version of the bench procedure that reads the grid alike. */
  | 'reading'
  /** A version of the bench procedure that reads the grid alike. */
  | 'procedure'
  /** The same, and the distance that the reading itself names. */
  | 'magnetic'
  | 'electric'
  | 'sound'
  /** Nothing: prices and sizes. */
  | 'nothing';

/** Words for more and less of something, and for a multiple of it. */
export interface DegreeWords {
  more: string;
  less: string;
  /** Behind "2.1 to 2.9 times". */
  times: string;
}

/** A row of figures of the comparison. */
export interface CompareRow {
  metric: MetricId;
  name: string;
  /** Id of its method. */
  method: string;
  alike: Alike;
  degree: DegreeWords;
  /** The field whose frequency a share depends on: it has to have been read for both panels, or for neither. */
  frequencyOf?: 'magnetic' | 'electric';
  /** Unit behind a difference, where figures are subtracted; left out where they are divided. */
  difference?: string;
  /** A price per watt: the power that it is per. It is compared as rankings do, price over power. */
  costOf?: 'optical-power' | 'emitted-power';
  isModelled?: boolean;
  /** Anchor on the page of cautions, and what stands there. */
  caution?: { anchor: string; label: string };
  /** For the sentence above the table: what is compared, and the verb that takes "12 to 31 % more light". */
  sentence?: { subject: string; verb?: [verb: string, object: string] };
}

/** Rows that stand under one head. */
export interface CompareGroup {
  id: string;
  title: string;
  rows: readonly CompareRow[];
}

const MUCH: DegreeWords = { more: 'more', less: 'less', times: 'as much' };
const HIGH: DegreeWords = { more: 'higher', less: 'lower', times: 'as high' };
const LARGE: DegreeWords = { more: 'larger', less: 'smaller', times: 'as large' };
const WIDE: DegreeWords = { more: 'wider', less: 'narrower', times: 'as wide' };
const LOUD: DegreeWords = { more: 'louder', less: 'quieter', times: 'as loud' };

const EYES = { anchor: 'eyes', label: 'eyes' };
const IMPLANTS = { anchor: 'implants-and-fields', label: 'implants and fields' };
const POINTS = 'points';

/** Every row of figures, in the order of the page. */
export const COMPARE_GROUPS: readonly CompareGroup[] = [
  {
    id: 'price',
    title: 'Price and size',
    rows: [
      {
        metric: 'real-price',
        name: 'Price really paid',
        method: 'real-price',
        alike: 'nothing',
        degree: MUCH,
        sentence: { subject: 'the price', verb: ['costs', ''] },
      },
      { metric: 'led-area', name: 'LED area', method: 'led-area', alike: 'nothing', degree: LARGE },
    ],
  },
  {
    id: 'common',
    title: 'Through the reference plane',
    rows: [
      {
        metric: 'optical-power',
        name: 'Optical power',
        method: 'optical-power',
        alike: 'reading',
        degree: MUCH,
        sentence: {
          subject: 'the light through the reference plane',
          verb: ['gives', 'light through the reference plane'],
        },
      },
      {
        metric: 'price-per-watt',
        name: 'Price per optical watt',
        method: 'price-per-watt',
        costOf: 'optical-power',
        alike: 'reading',
        degree: HIGH,
        sentence: { subject: 'the price per optical watt' },
      },
      {
        metric: 'efficiency-combined',
        name: 'Efficiency',
        method: 'efficiency',
        alike: 'reading',
        degree: HIGH,
        sentence: { subject: 'the efficiency' },
      },
      {
        metric: 'mean-irradiance',
        name: 'Mean irradiance',
        method: 'mean-irradiance',
        alike: 'reading',
        degree: HIGH,
        caution: EYES,
      },
      {
        metric: 'peak-irradiance-combined',
        name: 'Peak irradiance',
        method: 'peak-irradiance',
        alike: 'reading',
        degree: HIGH,
        caution: { anchor: 'skin-and-heat', label: 'skin and heat' },
      },
      {
        metric: 'uniformity-lowest',
        name: 'Uniformity: lowest point over mean',
        method: 'uniformity',
        alike: 'reading',
        degree: HIGH,
        difference: POINTS,
      },
    ],
  },
  {
    id: 'emitted',
    title: 'All that leaves the LEDs, modelled',
    rows: [
      {
        metric: 'emitted-power',
        name: 'Emitted power',
        method: 'emitted-power',
        alike: 'procedure',
        degree: MUCH,
        isModelled: true,
        sentence: { subject: 'the light that leaves the LEDs', verb: ['emits', 'light in all'] },
      },
      {
        metric: 'price-per-emitted-watt',
        name: 'Price per emitted watt',
        method: 'price-per-emitted-watt',
        costOf: 'emitted-power',
        alike: 'procedure',
        degree: HIGH,
        isModelled: true,
        sentence: { subject: 'the price per emitted watt' },
      },
      {
        metric: 'efficiency-emitted',
        name: 'Efficiency on the emitted power',
        method: 'efficiency-emitted',
        alike: 'procedure',
        degree: HIGH,
        isModelled: true,
      },
      {
        metric: 'beam-half-angle',
        name: 'Beam half-angle',
        method: 'beam-half-angle',
        alike: 'procedure',
        degree: WIDE,
        difference: '°',
        isModelled: true,
      },
    ],
  },
  {
    id: 'around',
    title: 'Eyes and surroundings',
    rows: [
      {
        metric: 'infrared-share-at-reading',
        name: 'Infrared at the eye at the reading’s distance: share of a published limit',
        method: 'infrared-eye',
        alike: 'reading',
        degree: HIGH,
        caution: EYES,
      },
      {
        metric: 'flicker-combined',
        name: 'Flicker, both channels',
        method: 'flicker',
        alike: 'procedure',
        degree: HIGH,
        difference: POINTS,
        caution: { anchor: 'flicker', label: 'flicker' },
      },
      {
        metric: 'magnetic-field-on',
        name: 'Magnetic field, panel on, with the room’s',
        method: 'magnetic-field',
        alike: 'magnetic',
        degree: HIGH,
        caution: IMPLANTS,
      },
      ...shareRows('magnetic', 'Magnetic'),
      ...shareRows('electric', 'Electric'),
      {
        metric: 'sound-on',
        name: 'Sound, panel on, with the room’s',
        method: 'sound',
        alike: 'sound',
        degree: LOUD,
        difference: 'dB',
        caution: { anchor: 'sound', label: 'sound' },
      },
    ],
  },
];

/** A field as a share of its reference level: the strict end, and the mild one beside it. */
function shareRows(kind: 'magnetic' | 'electric', name: string): CompareRow[] {
  const row = (metric: MetricId, words: string): CompareRow => ({
    metric,
    name: `${name} field: share of the reference level ${words}`,
    method: 'field-levels',
    alike: kind,
    frequencyOf: kind,
    degree: HIGH,
    caution: IMPLANTS,
  });
  return [
    row(`${kind}-field-share`, 'above 3 kHz, or at the frequency read'),
    row(`${kind}-field-share-at-mains`, 'at the mains’ frequency'),
  ];
}

/** Metrics of all rows. */
export const COMPARE_METRICS: readonly MetricId[] = COMPARE_GROUPS.flatMap((it) => it.rows.map((row) => row.metric));
