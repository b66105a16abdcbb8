/**
 * Names that nearly every panel's file has, by their places: files have the places. Whoever has had a page open for long
 * has an older list than the files of today, so that lists grow at their ends alone; anything else raises the format of
 * the files that have places of it.
 */

/** Keys of errors: `~` stands for panel and session, `^` for the panel alone. */
export const ERROR_KEYS = [
  '~distance',
  '~angular',
  '~grid/resolution',
  '~grid/repeatability',
  '^field-width/edges',
  '^field-height/edges',
  '^light-edge',
  '~peak-irradiance-combined/resolution',
  '~peak-irradiance-combined/repeatability',
  '~peak-irradiance-red/resolution',
  '~peak-irradiance-red/repeatability',
  '~peak-irradiance-near-infrared/resolution',
  '~peak-irradiance-near-infrared/repeatability',
  '~mains-draw-combined/resolution',
  '~uniformity-lowest/resolution',
  '~uniformity-lowest/repeatability',
  '~sound-on/resolution',
  '~magnetic-field-on/resolution',
  '~electric-field-on/resolution',
  '~wavelength-red/resolution',
  '~wavelength-near-infrared/resolution',
  '~flicker-combined/resolution',
  '~beam-shape-1',
  '~beam-shape-2',
  '~beam-shape-3',
  '~beam-shape-4',
  '~beam-rest-emitted',
  '~beam-rest-half-angle',
  '~beam-rest-mean-0',
  '~beam-rest-mean-1',
  '~beam-rest-mean-2',
  '~beam-rest-mean-3',
  '~beam-rest-mean-4',
  '~beam-rest-mean-5',
] as const;

/** Metrics that two panels are held against each other by. */
export const COMPARED_METRICS = [
  'real-price',
  'optical-power',
  'price-per-watt',
  'mean-irradiance',
  'peak-irradiance-combined',
  'efficiency-combined',
  'uniformity-lowest',
  'sound-on',
  'led-area',
  'emitted-power',
  'price-per-emitted-watt',
  'efficiency-emitted',
  'beam-half-angle',
  'infrared-share-at-reading',
  'flicker-combined',
  'magnetic-field-on',
  'magnetic-field-share',
  'magnetic-field-share-at-mains',
  'electric-field-share',
  'electric-field-share-at-mains',
  'wavelength-red',
  'wavelength-near-infrared',
  'peak-irradiance-red',
  'peak-irradiance-near-infrared',
  'mains-draw-combined',
  'field-width',
  'field-height',
  'mean-irradiance-at-5-cm',
  'mean-irradiance-at-10-cm',
  'mean-irradiance-at-15-cm',
  'mean-irradiance-at-30-cm',
  'mean-irradiance-at-45-cm',
  'mean-irradiance-at-60-cm',
] as const;

/** A name as its place, or as itself where the list has not got it. */
export function placeOrName(names: readonly string[], name: string): number | string {
  const place = names.indexOf(name);
  return place < 0 ? name : place;
}

/** The name again. Throws for a place that the list has not got, which is a newer one's. */
export function nameAt(names: readonly string[], it: number | string): string {
  const name = typeof it === 'string' ? it : names[it];
  if (name === undefined) throw new RangeError(`a file has the name ${it}, which this page does not know`);
  return name;
}
