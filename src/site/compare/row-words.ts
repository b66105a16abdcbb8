import { type ListedMetricId, metricById } from '../../measure/metrics.ts';
import { plainName } from '../../words/plain-names.ts';
import { COMPARE_METRICS, type RowWords } from './browser/compare-rows.ts';

/** Names that the comparison has of its own: they say what else is in a figure, since its row has nobody else to say it. */
const OWN: Readonly<Partial<Record<ListedMetricId, string>>> = {
  'infrared-share-at-reading': 'infrared at the eye, of a published limit',
  'magnetic-field-on': 'magnetic field with the room’s',
  'magnetic-field-share': 'magnetic field, of its reference level above 3 kHz or at the frequency read',
  'magnetic-field-share-at-mains': 'magnetic field, of its reference level at the mains’ frequency',
  'electric-field-share': 'electric field, of its reference level above 3 kHz or at the frequency read',
  'electric-field-share-at-mains': 'electric field, of its reference level at the mains’ frequency',
  'sound-on': 'sound with the room’s',
  'wavelength-red': 'wavelength of the red',
  'wavelength-near-infrared': 'wavelength of the near-infrared',
  'peak-irradiance-red': 'peak of the red alone',
  'peak-irradiance-near-infrared': 'peak of the near-infrared alone',
};

/** Names and methods of the comparison's rows, by the catalogue, so that its script needs none of it. */
export function rowWords(): RowWords {
  return Object.fromEntries(
    COMPARE_METRICS.map((id) => [id, { name: OWN[id] ?? plainName(id), method: metricById(id).method }]),
  );
}
