import type { AngularResponse } from '../../measure/instrument/angular-response.ts';
import type { Band, BandShares } from '../../measure/instrument/spectral-response.ts';
import { showDate } from '../format.ts';
import type { WordsOf } from '../speaker.ts';
import { statedUncertainty } from '../stated-uncertainty.ts';

/** What instruments' errors are called, how they were come by, and what of them is not known. */
export const INSTRUMENT_WORDS: WordsOf<
  | 'instrument-not-named'
  | 'calibration'
  | 'calibration-as-stated'
  | 'offset'
  | 'offset-as-stated'
  | 'resolution'
  | 'half-step'
  | 'half-step-averaged'
  | 'half-step-each'
  | 'angular-response'
  | 'angular-as-stated'
  | 'repeatability'
  | 'repeatability-as-stated'
  | 'scatter-not-known'
  | 'cosine-response'
  | 'not-stated-for'
  | 'spectral-response'
  | 'spectral-as-stated'
  | 'spectral-not-stated'
  | 'reading-is-bound'
> = {
  'instrument-not-named': () => 'the session does not name the meter',
  calibration: ({ instrument }) => `Calibration of the ${instrument}`,
  'calibration-as-stated': ({ date, stated }) =>
    `calibration of ${showDate(date)}: ${statedUncertainty(stated)}, normal; common to all that it read until the next one`,
  offset: ({ instrument }) => `Offset of the ${instrument}`,
  'offset-as-stated': ({ date }) =>
    `stated with the calibration of ${showDate(date)}, normal; common to all that it read until the next one`,
  resolution: ({ instrument }) => `Resolution of the ${instrument}`,
  'half-step': () => 'half a step either way, rectangular',
  'half-step-averaged': () => 'half a step either way a reading, rectangular, averaged over the points',
  'half-step-each': () => 'half a step either way a reading, rectangular',
  'angular-response': () => 'Angular (cosine) response of the meter',
  'angular-as-stated': ({ response }) =>
    `${angularWords(response)} in the instrument file, at the angles from which an even, wide field lights the meter; normal`,
  repeatability: () => 'Repeatability',
  'repeatability-as-stated': (it) =>
    `${'decibels' in it ? `${it.decibels} dB` : `${percent(it.relative)} of the reading`}, from the instrument file: no repeats in the session`,
  'scatter-not-known': ({ instrument }) =>
    `no repeats were taken, and how readings scatter is not known for the ${instrument}`,
  'cosine-response': () => 'Angular (cosine) response',
  'not-stated-for': ({ instrument }) => `not stated for the ${instrument}`,
  'spectral-response': ({ band }) => `Spectral response${band ? ` (${BAND_NAMES[band]})` : ''}`,
  'spectral-as-stated': ({ band, error, shares }) =>
    `${percent(error)} of the ${BAND_NAMES[band]}, from the instrument file, normal; ${partWords(band, shares)}`,
  'spectral-not-stated': ({ bands, instrument }) =>
    `no error in ${bands.map((it) => BAND_NAMES[it]).join(' and ')} is stated for the ${instrument}`,
  'reading-is-bound': ({ bound }) => `the reading is a bound: ${bound} the meter’s reach`,
};

const BAND_NAMES: Readonly<Record<Band, string>> = { red: 'red', nearInfrared: 'near-infrared' };

function angularWords(response: AngularResponse): string {
  return response.kind === 'f2'
    ? `f2 of ${percent(response.f2)}`
    : `errors at ${response.points.map((it) => `${it.angle}°`).join(', ')}`;
}

/** How much of the light lies in a band. */
function partWords(band: Band, shares: BandShares): string {
  if (shares[band] !== 1) return `${percent(shares[band])} of the light by the peaks of each channel alone`;
  return shares.red === shares.nearInfrared
    ? 'taken for all of the light, whose shares are not known'
    : 'all of the light';
}

/** A fraction in percent, to three digits. */
function percent(fraction: number): string {
  return `${Number((100 * fraction).toPrecision(3))} %`;
}
