import { rounded } from '../rounded.ts';
import type { WordsOf } from '../speaker.ts';

/** What is told of spectra. */
export const SPECTRUM_WORDS: WordsOf<
  | 'spectrum-noise'
  | 'spectrum-noise-found'
  | 'spectrum-dark'
  | 'spectrum-dark-found'
  | 'spectrum-bandwidth'
  | 'spectrum-bandwidth-stated'
  | 'spectrum-power'
  | 'spectrum-power-stated'
  | 'spectrum-shape'
  | 'spectrum-full'
  | 'spectrum-without-light'
  | 'spectrum-peak-overlaps'
  | 'spectrum-relative'
  | 'spectrum-raw-counts'
  | 'spectrum-power-not-stated'
  | 'spectrum-cut-off'
  | 'infrared-beyond-instrument'
  | 'infrared-beyond-bounded'
  | 'infrared-not-seen'
  | 'responsivity-not-stated'
  | 'responsivity-too-short'
  | 'spectral-mismatch'
  | 'spectral-mismatch-moved'
  | 'mode-not-read'
> = {
  'spectrum-noise': () => 'Noise of the spectrum, and the shape of its top',
  'spectrum-noise-found': () => 'from the scatter of the spectrum itself where it is dark; normal',
  'spectrum-dark': () => 'Dark level of the spectrum',
  'spectrum-dark-found': () =>
    'from how sure its level is where there is no light, and how far dark parts differ; normal',
  'spectrum-bandwidth': ({ instrument }) => `Bandwidth of the ${instrument}`,
  'spectrum-bandwidth-stated': ({ bandwidth }) =>
    `${rounded(bandwidth)} nm in the instrument file: all that it may add to the width, either way, rectangular`,
  'spectrum-power': ({ instrument }) => `Spectral irradiance of the ${instrument}`,
  'spectrum-power-stated': ({ error }) => `${rounded(100 * error)} % in the instrument file, normal`,
  'spectrum-shape': ({ instrument }) => `One band against another, by the ${instrument}`,
  'spectrum-full': () => 'the top of the spectrum is flat: the sensor was full',
  'spectrum-without-light': () => 'no peak stands out of the spectrum’s noise',
  'spectrum-peak-overlaps': () => 'the peak runs into its neighbour before it has come down to the half',
  'spectrum-relative': () => 'the spectrum is relative, without a unit of irradiance',
  'spectrum-raw-counts': () =>
    'the file holds raw counts, in which the sensor’s own response to each wavelength still is',
  'spectrum-power-not-stated': ({ instrument }) => `no error of spectral irradiance is stated for the ${instrument}`,
  'spectrum-cut-off': ({ at }) => `the spectrum ends at ${rounded(at, 4)} nm within light`,
  'infrared-beyond-instrument': () => 'Infrared beyond the instrument’s range',
  'infrared-beyond-bounded': ({ to, most }) =>
    `beyond ${rounded(to, 4)} nm the instrument sees nothing; heat and the tails of LEDs there are at most ${rounded(most, 2)} mW/cm², and LEDs that shine there alone would go unseen`,
  'infrared-not-seen': ({ from, to }) =>
    `the spectrum goes from ${rounded(from, 4)} nm to ${rounded(to, 4)} nm, and has no infrared from 780 nm on`,
  'responsivity-not-stated': () => 'how the irradiance meter answers to each wavelength is not stated',
  'responsivity-too-short': ({ instrument }) =>
    `part of the light lies where the response of the ${instrument} is not stated`,
  'spectral-mismatch': ({ instrument }) => `Spectral mismatch of the ${instrument}`,
  'spectral-mismatch-moved': ({ factor, wavelength }) =>
    `what ${rounded(wavelength)} nm make of the factor ${rounded(factor, 4)}; normal`,
  'mode-not-read': () => 'the irradiance of this mode was not read',
};
