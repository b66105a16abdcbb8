import type { NoFit } from '../../measure/log/exponential-fit.ts';
import type { NotSettled } from '../../measure/log/warm-up.ts';
import type { Statement } from '../../measure/statement.ts';
import type { NoWaveform, WaveformKind } from '../../measure/waveform/flicker-waveform.ts';
import { fixed, measuredText } from '../format.ts';
import { nameOf } from '../names.ts';
import { rounded } from '../rounded.ts';
import type { WordsOf } from '../speaker.ts';
import { timeWords } from '../time-words.ts';

type LogCode =
  | 'log-times-in-seconds'
  | 'log-times-spread'
  | 'log-unit'
  | 'log-relative'
  | 'sweep-read'
  | 'sweep-spikes-left'
  | 'sweep-highest-hover'
  | 'sweep-between-samples'
  | 'sweep-moves-on'
  | 'sweep-spike'
  | 'look-at-spike'
  | 'warm-up-read'
  | 'warm-up-not-settled'
  | 'warm-up-begins-late'
  | 'warm-up-no-fit'
  | 'warm-up-scatter'
  | 'warm-up-scatter-found'
  | 'sensor-drift'
  | 'sensor-warms-too'
  | 'grid-before-settled'
  | 'read-after-settling'
  | 'waveform-read'
  | 'waveform-refused'
  | 'no-modulation-seen'
  | 'frequency-may-be-mirrored'
  | 'waveform-few-places'
  | 'waveform-noise'
  | 'waveform-noise-found'
  | 'sampling-clock'
  | 'sampling-clock-not-stated'
  | 'dark-level'
  | 'dark-level-not-given'
  | 'file-says-nothing'
  | 'record-again';

const NOT_SETTLED: Readonly<Record<NotSettled, string>> = {
  'too-short': 'the log is shorter than half an hour',
  'still-moving': 'the log ends before the light had settled',
  'too-noisy': 'single readings scatter by more than the half percent that is looked for',
};

const NO_FIT: Readonly<Record<NoFit, string>> = {
  'too-few': 'too few readings for a curve',
  flat: 'the light moves no more than it scatters',
  'ends-early': 'the log ends before the curve does',
  'not-exponential': 'the light doesn’t follow one exponential: two time constants, a step, or a drift',
};

const NO_WAVEFORM: Readonly<Record<NoWaveform, string>> = {
  'below-darkness': 'the record goes below darkness: its steady part is cut off, so there is no depth',
  'no-light': 'no light in the record',
  'too-few': 'too few samples in the record',
  'too-short': 'the record holds fewer than three periods of what it does most',
  'uneven-steps': 'the samples are not evenly spaced in time',
};

const AGAIN: Readonly<Record<NoWaveform, string>> = {
  'below-darkness': 'set the input to DC, or write what it shows in darkness (dark)',
  'no-light': 'is it this mode’s file, and this column?',
  'too-few': 'record a tenth of a second or more',
  'too-short': 'record a longer stretch',
  'uneven-steps': 'log at a fixed rate',
};

const KINDS: Readonly<Record<WaveformKind, string>> = {
  periodic: 'all periods laid over one another',
  irregular: 'no one period; depth by the extremes of the whole record',
  steady: 'nothing stands out of the noise; faster than half the samples a second isn’t seen',
  constant: 'every sample is the same',
};

const thousands = (value: number) => fixed(value, 0);

/** `1 MHz`, `20 kHz`, `500 Hz` */
function hertz(value: number): string {
  if (value >= 1e6) return `${rounded(value / 1e6)} MHz`;
  return value >= 1e3 ? `${rounded(value / 1e3)} kHz` : `${rounded(value)} Hz`;
}

/** What logs against time have to tell. */
export const logWords = (within: (it: Statement) => string): WordsOf<LogCode> => ({
  'log-times-in-seconds': () => 'times without a unit, taken for seconds',
  'log-times-spread': () => 'rows of one second spread evenly over it',
  'log-unit': ({ unit }) => `converted from ${unit}`,
  'log-relative': ({ unit }) =>
    unit === '' ? 'no unit: ratios alone are used' : `in ${unit}, which is no unit of light: ratios alone are used`,
  'sweep-read': ({ samples, seconds }) => `${thousands(samples)} readings in ${timeWords(seconds)}`,
  'sweep-spikes-left': ({ count, highest }) =>
    count === 1
      ? `left out: a spike of one sample, ${rounded(highest)} mW/cm²`
      : `left out: ${count} spikes of one sample each, up to ${rounded(highest)} mW/cm²`,
  'sweep-highest-hover': ({ value, seconds }) =>
    `held still where it was highest for ${timeWords(Math.max(1, Math.round(seconds)))}: ${rounded(value)} mW/cm² on average`,
  'sweep-between-samples': () => 'A higher place between samples',
  'sweep-moves-on': () => 'the sensor moves on from sample to sample',
  'sweep-spike': ({ metric, count, highest, without }) =>
    `${capital(nameOf(metric))}: the highest value of the log, ${rounded(highest)} mW/cm², lasted one sample${count > 1 ? ` (${count} such spikes)` : ''}. Without it the highest is ${rounded(without)} mW/cm², on which the figure rests.`,
  'look-at-spike': () =>
    'a slip, a disturbance, or a hot spot that was passed too fast: sweep that place again, slowly',
  'warm-up-read': ({ samples, seconds }) => `${thousands(samples)} readings in ${timeWords(seconds)}`,
  'warm-up-not-settled': ({ why, spread, seconds }) =>
    why === 'too-short'
      ? `${NOT_SETTLED[why]} (${timeWords(seconds)})`
      : `${NOT_SETTLED[why]}${why === 'still-moving' ? `: it still moved by ${rounded(spread, 2)} % in the last 15 min` : ''}`,
  'warm-up-begins-late': ({ seconds }) => `the log begins ${timeWords(seconds)} after switching on`,
  'warm-up-no-fit': ({ why }) => NO_FIT[why],
  'warm-up-scatter': () => 'Scatter and what is left of the drift',
  'warm-up-scatter-found': ({ stretch }) => `found in the log, by means over ${timeWords(stretch)}`,
  'sensor-drift': () => 'Drift of the sensor',
  'sensor-warms-too': () => 'the log can’t tell the sensor’s warming from the panel’s',
  'grid-before-settled': ({ warmUp, excess, uncertainty, settled }) =>
    `Readings began ${timeWords(warmUp)} after switching on. By the warm-up log the light was then ${measuredText(Math.abs(excess), uncertainty)} % ${excess > 0 ? 'higher' : 'lower'} than once it had settled, which took ${timeWords(Math.round(settled / 60) * 60)}.`,
  'read-after-settling': ({ settled }) =>
    `take the readings again once the panel has been on for ${timeWords(Math.ceil(settled / 300) * 300)}`,
  'waveform-read': ({ samples, rate, kind }) => `${thousands(samples)} samples at ${hertz(rate)}; ${KINDS[kind]}`,
  'waveform-refused': ({ why }) => NO_WAVEFORM[why],
  'no-modulation-seen': () => 'no modulation seen',
  'frequency-may-be-mirrored': ({ rate, bandwidth }) =>
    `may be the mirror image of a faster one: ${hertz(rate)} of samples, and a sensor that lets ${hertz(bandwidth)} through`,
  'waveform-few-places': () => 'samples hit the same places of each period: the depth is at least so much',
  'waveform-noise': () => 'Noise of the record',
  'waveform-noise-found': () => 'found in the record; what it adds to the depth is taken off',
  'sampling-clock': () => 'The sampler’s clock',
  'sampling-clock-not-stated': () => 'not stated',
  'dark-level': () => 'Where darkness lies',
  'dark-level-not-given': () => 'the session doesn’t say what the sensor shows in darkness',
  'file-says-nothing': ({ metric, because }) =>
    `${capital(nameOf(metric))}: the file gives no reading. ${capital(within(because))}.`,
  'record-again': ({ why }) => AGAIN[why],
});

const capital = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
