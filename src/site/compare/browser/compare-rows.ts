import { distanceMetric, TABLE_DISTANCES } from '../../../measure/beam/table-distances.ts';
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
  /** The distance that it is worked out for, cm: it stands in the place of the name. */
  distance?: number;
}

/** What each row is called within a sentence, and the method that its name leads to; by metric. The build packs them into the page. */
export type RowWords = Readonly<Record<string, { name: string; method: string }>>;

/** Rows that stand in one table: the first is what the page is for, the others are folded under their titles. */
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
const LONG: DegreeWords = { more: 'longer', less: 'shorter', times: 'as long' };

const POINTS = 'points';

/** Every row of figures but those by distance, in the order of the page. */
export const COMPARE_GROUPS: readonly CompareGroup[] = [
  {
    id: 'figures',
    title: 'Figures',
    rows: [
      { metric: 'real-price', alike: 'nothing', degree: MUCH },
      { metric: 'optical-power', alike: 'reading', degree: MUCH },
      { metric: 'price-per-watt', costOf: 'optical-power', alike: 'reading', degree: MUCH },
      { metric: 'mean-irradiance', alike: 'reading', degree: HIGH },
      { metric: 'peak-irradiance-combined', alike: 'reading', degree: HIGH },
      { metric: 'efficiency-combined', alike: 'reading', degree: HIGH },
      { metric: 'uniformity-lowest', alike: 'reading', degree: HIGH },
      { metric: 'sound-on', alike: 'sound', degree: LOUD, difference: 'dB' },
      { metric: 'led-area', alike: 'nothing', degree: LARGE },
    ],
  },
  {
    id: 'emitted',
    title: 'All the light that leaves the LEDs, modelled',
    rows: [
      { metric: 'emitted-power', alike: 'procedure', degree: MUCH, isModelled: true },
      {
        metric: 'price-per-emitted-watt',
        costOf: 'emitted-power',
        alike: 'procedure',
        degree: MUCH,
        isModelled: true,
      },
      { metric: 'efficiency-emitted', alike: 'procedure', degree: HIGH, isModelled: true },
      { metric: 'beam-half-angle', alike: 'procedure', degree: WIDE, difference: '°', isModelled: true },
    ],
  },
  {
    id: 'limits',
    title: 'Eyes, flicker and fields',
    rows: [
      { metric: 'infrared-share-at-reading', alike: 'reading', degree: HIGH },
      { metric: 'flicker-combined', alike: 'procedure', degree: HIGH, difference: POINTS },
      { metric: 'magnetic-field-on', alike: 'magnetic', degree: HIGH },
      ...shareRows('magnetic'),
      ...shareRows('electric'),
    ],
  },
  {
    id: 'channels',
    title: 'Channels and mains',
    rows: [
      { metric: 'wavelength-red', alike: 'procedure', degree: LONG, difference: 'nm' },
      { metric: 'wavelength-near-infrared', alike: 'procedure', degree: LONG, difference: 'nm' },
      { metric: 'peak-irradiance-red', alike: 'reading', degree: HIGH },
      { metric: 'peak-irradiance-near-infrared', alike: 'reading', degree: HIGH },
      { metric: 'mains-draw-combined', alike: 'procedure', degree: MUCH },
    ],
  },
];

/** A field as a share of its reference level: the strict end, and the mild one beside it. */
function shareRows(kind: 'magnetic' | 'electric'): CompareRow[] {
  const alike = { alike: kind, frequencyOf: kind, degree: HIGH };
  return [
    { metric: `${kind}-field-share`, ...alike },
    { metric: `${kind}-field-share-at-mains`, ...alike },
  ];
}

/** Means over each panel's own LED field by distance: worked out from its beam, whatever the distance it was read at. */
export const DISTANCE_ROWS: readonly CompareRow[] = TABLE_DISTANCES.map((distance) => ({
  metric: distanceMetric('mean-irradiance', distance),
  alike: 'procedure',
  degree: HIGH,
  isModelled: true,
  distance,
}));

/** Metrics of all rows that have a name. */
export const COMPARE_METRICS: readonly ListedMetricId[] = COMPARE_GROUPS.flatMap((it) =>
  it.rows.map((row) => row.metric),
);
