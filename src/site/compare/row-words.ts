import { type ListedMetricId, metricById } from '../../measure/metrics.ts';
import { COMPARE_METRICS, type RowWords } from './browser/compare-rows.ts';

/** Names that the comparison has of its own: shorter where its heads say the rest, longer where nothing else does. */
const OWN: Readonly<Partial<Record<ListedMetricId, string>>> = {
  'optical-power': 'Optical power',
  'efficiency-combined': 'Efficiency',
  'peak-irradiance-combined': 'Peak irradiance',
  'uniformity-lowest': 'Uniformity: lowest point over mean',
  'infrared-share-at-reading': 'Infrared at the eye at the reading’s distance: share of a published limit',
  'magnetic-field-on': 'Magnetic field, panel on, with the room’s',
  'magnetic-field-share': 'Magnetic field: share of the reference level above 3 kHz, or at the frequency read',
  'magnetic-field-share-at-mains': 'Magnetic field: share of the reference level at the mains’ frequency',
  'electric-field-share': 'Electric field: share of the reference level above 3 kHz, or at the frequency read',
  'electric-field-share-at-mains': 'Electric field: share of the reference level at the mains’ frequency',
  'sound-on': 'Sound, panel on, with the room’s',
};

/** Names and methods of the comparison's rows, by the catalogue, so that its script needs none of it. */
export function rowWords(): RowWords {
  return Object.fromEntries(
    COMPARE_METRICS.map((id) => {
      const { name, method } = metricById(id);
      return [id, { name: OWN[id] ?? name, method }];
    }),
  );
}
