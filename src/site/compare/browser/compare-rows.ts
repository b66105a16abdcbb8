import type { ListedMetricId } from '../../../measure/metrics.ts';
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

/** A row of figures of the comparison; what it is called and its method are told by the page (`RowWords`). */
export interface CompareRow {
  metric: ListedMetricId;
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

/** What each row is called, and the method that its name leads to; by metric. The build packs them into the page. */
export type RowWords = Readonly<Record<string, { name: string; method: string }>>;

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
        alike: 'nothing',
        degree: MUCH,
        sentence: { subject: 'the price', verb: ['costs', ''] },
      },
      { metric: 'led-area', alike: 'nothing', degree: LARGE },
    ],
  },
  {
    id: 'common',
    title: 'Through the reference plane',
    rows: [
      {
        metric: 'optical-power',
        alike: 'reading',
        degree: MUCH,
        sentence: {
          subject: 'the light through the reference plane',
          verb: ['gives', 'light through the reference plane'],
        },
      },
      {
        metric: 'price-per-watt',
        costOf: 'optical-power',
        alike: 'reading',
        degree: HIGH,
        sentence: { subject: 'the price per optical watt' },
      },
      {
        metric: 'efficiency-combined',
        alike: 'reading',
        degree: HIGH,
        sentence: { subject: 'the efficiency' },
      },
      {
        metric: 'mean-irradiance',
        alike: 'reading',
        degree: HIGH,
        caution: EYES,
      },
      {
        metric: 'peak-irradiance-combined',
        alike: 'reading',
        degree: HIGH,
        caution: { anchor: 'skin-and-heat', label: 'skin and heat' },
      },
      {
        metric: 'uniformity-lowest',
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
        alike: 'procedure',
        degree: MUCH,
        isModelled: true,
        sentence: { subject: 'the light that leaves the LEDs', verb: ['emits', 'light in all'] },
      },
      {
        metric: 'price-per-emitted-watt',
        costOf: 'emitted-power',
        alike: 'procedure',
        degree: HIGH,
        isModelled: true,
        sentence: { subject: 'the price per emitted watt' },
      },
      {
        metric: 'efficiency-emitted',
        alike: 'procedure',
        degree: HIGH,
        isModelled: true,
      },
      {
        metric: 'beam-half-angle',
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
        alike: 'reading',
        degree: HIGH,
        caution: EYES,
      },
      {
        metric: 'flicker-combined',
        alike: 'procedure',
        degree: HIGH,
        difference: POINTS,
        caution: { anchor: 'flicker', label: 'flicker' },
      },
      {
        metric: 'magnetic-field-on',
        alike: 'magnetic',
        degree: HIGH,
        caution: IMPLANTS,
      },
      ...shareRows('magnetic'),
      ...shareRows('electric'),
      {
        metric: 'sound-on',
        alike: 'sound',
        degree: LOUD,
        difference: 'dB',
        caution: { anchor: 'sound', label: 'sound' },
      },
    ],
  },
];

/** A field as a share of its reference level: the strict end, and the mild one beside it. */
function shareRows(kind: 'magnetic' | 'electric'): CompareRow[] {
  const alike = { alike: kind, frequencyOf: kind, degree: HIGH, caution: IMPLANTS };
  return [
    { metric: `${kind}-field-share`, ...alike },
    { metric: `${kind}-field-share-at-mains`, ...alike },
  ];
}

/** Metrics of all rows. */
export const COMPARE_METRICS: readonly ListedMetricId[] = COMPARE_GROUPS.flatMap((it) =>
  it.rows.map((row) => row.metric),
);
