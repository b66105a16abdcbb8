import type { Band } from '../../measure/instrument/spectral-response.ts';
import type { Mode } from '../../measure/modes.ts';
import type { Statement } from '../../measure/statement.ts';
import { rounded } from '../rounded.ts';
import type { WordsOf } from '../speaker.ts';

const MODES: Readonly<Record<Mode, string>> = {
  red: 'red alone on',
  'near-infrared': 'near-infrared alone on',
  combined: 'both channels on',
};

const BANDS: Readonly<Record<Band, string>> = { red: 'red', nearInfrared: 'near-infrared' };

/** What is told of spectra; `say` puts what stands within into words. */
export const spectrumWords = (
  say: (it: Statement) => string,
): WordsOf<
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
  | 'mode-without-spectrum'
  | 'corrected-for-spectrum'
  | 'not-corrected-for-spectrum'
  | 'responsivity-error'
  | 'responsivity-error-stated'
  | 'responsivity-error-of-band'
  | 'responsivity-error-absent'
  | 'responsivity-ends'
  | 'responsivity-ends-share'
  | 'spectrum-elsewhere'
  | 'spectrum-of-one-place'
  | 'mismatch-beyond-stated'
  | 'raise-spectral-response'
  | 'spectrum-in-micrometres'
  | 'spectrum-turned'
  | 'spectrum-unit-not-stated'
  | 'spectrum-column-taken'
  | 'spectrum-flat-top'
  | 'spectrum-cut'
  | 'spectrum-negative'
  | 'spectrum-dark-not-seen'
  | 'spectrum-no-peak'
  | 'spectrum-against-reading'
  | 'claimed-wavelength-missing'
  | 'peak-not-claimed'
  | 'claimed-share-apart'
  | 'take-less-light'
  | 'take-dark-reading'
  | 'take-wider-range'
  | 'same-place-for-both'
> => ({
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
  'mode-without-spectrum': () => 'no spectrum was taken of this mode',
  // Once for all readings of a session: the factors stand on the page of its files.
  'corrected-for-spectrum': () => 'corrected for how the meter answers to this light’s spectrum',
  'not-corrected-for-spectrum': ({ reason }) => `not corrected for the light’s spectrum: ${say(reason)}`,
  'responsivity-error': ({ instrument, band }) => `Responsivity of the ${instrument} (${BANDS[band]})`,
  'responsivity-error-stated': ({ error, share }) =>
    `${rounded(100 * error)} % in the instrument file, normal; ${rounded(100 * share, 2)} % of what it shows`,
  'responsivity-error-of-band': ({ error, share }) =>
    `none is stated, so that of the band counts: ${rounded(100 * error)} % in the instrument file, normal; ${rounded(100 * share, 2)} % of what it shows`,
  'responsivity-error-absent': ({ instrument }) => `no error of its responsivity is stated for the ${instrument}`,
  'responsivity-ends': ({ instrument }) => `Light beyond the stated responsivity of the ${instrument}`,
  'responsivity-ends-share': ({ share }) =>
    `${rounded(100 * share, 2)} % of the light, which the meter may see or not; rectangular`,
  'spectrum-elsewhere': () => 'The light’s colours at other places',
  'spectrum-of-one-place': () => 'the spectrum was taken at one',
  'mismatch-beyond-stated': ({ instrument, mode, moved, stated }) =>
    `With ${MODES[mode]} the correction for the light’s spectrum is ${rounded(100 * moved, 2)} %, more than the ${rounded(100 * stated, 2)} % that the ${instrument}’s file allows for its bands.`,
  'raise-spectral-response': () =>
    'raise spectralResponse in the instrument file, by which panels without a spectrum are judged, or look at its responsivity again',
  'spectrum-in-micrometres': () => 'its wavelengths stand in micrometres',
  'spectrum-turned': () => 'its rows go from long wavelengths to short ones, and were turned round',
  'spectrum-unit-not-stated': () => 'it states no unit: its values are taken as relative',
  'spectrum-column-taken': ({ name }) => `of its columns, ${name} was taken`,
  'spectrum-flat-top': ({ mode, from, to }) =>
    `The spectrum with ${MODES[mode]} is flat on top from ${rounded(from, 4)} nm to ${rounded(to, 4)} nm: the sensor was full. No figure is made of it.`,
  'spectrum-cut': ({ mode, at, percent }) =>
    `The spectrum with ${MODES[mode]} ends at ${rounded(at, 4)} nm with ${rounded(percent, 2)} % of its highest value still there: light beyond is not in it.`,
  'spectrum-negative': ({ mode, percent }) =>
    `The spectrum with ${MODES[mode]} falls to ${rounded(percent, 2)} % of its highest value below nought, which noise does not do: too much was subtracted, or the wrong dark reading.`,
  'spectrum-dark-not-seen': ({ mode }) =>
    `The spectrum with ${MODES[mode]} has no dark part, so that its dark level can’t be checked.`,
  'spectrum-no-peak': ({ mode }) => `No peak stands out of the spectrum with ${MODES[mode]}.`,
  'spectrum-against-reading': ({ spectrum, read, joint }) =>
    `The spectrum sums up to ${rounded(spectrum)} mW/cm², the irradiance meter read ${rounded(read)} mW/cm²: they differ by ${rounded(Math.abs(spectrum - read))} mW/cm², more than their joint uncertainty of ${rounded(joint, 2)} mW/cm².`,
  'claimed-wavelength-missing': ({ claimed, within }) =>
    `The maker claims ${claimed} nm; the spectrum has no peak of its own within ${rounded(within)} nm of it.`,
  'peak-not-claimed': ({ wavelength, share }) =>
    `The spectrum has a peak at ${rounded(wavelength, 4)} nm that the maker does not name${share === undefined ? '' : `, with ${rounded(share, 2)} % of the light`}.`,
  'claimed-share-apart': ({ claimed, claimedShare, share }) =>
    `The maker claims ${rounded(claimedShare)} % at ${claimed} nm; ${rounded(share, 2)} % of the light was found there.`,
  'take-less-light': () => 'take it again with a shorter exposure, or from farther away, and write that distance',
  'take-dark-reading': () => 'take the dark reading again, with the fibre capped and the same exposure',
  'take-wider-range': () => 'export the whole range; where the instrument ends there, say so in the notes',
  'same-place-for-both': () =>
    'were both taken where that mode reads highest, from one distance, and is the unit of the file as its head says?',
});
