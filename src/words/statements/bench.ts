import type { BenchRemedy } from '../../measure/irradiance/next-reading.ts';
import type { Statement } from '../../measure/statement.ts';
import { unitSigns } from '../format.ts';
import { nameOf } from '../names.ts';
import { rounded } from '../rounded.ts';
import type { WordsOf } from '../speaker.ts';

/** What the bench pad says while readings are taken; `say` puts what stands within into words. */
export const benchWords = (
  say: (it: Statement) => string,
): WordsOf<
  | 'repeats-gain-little'
  | 'repeats-would-gain'
  | 'repeats-tell-scatter'
  | 'worth-most'
  | 'bench-can-do-no-more'
  | 'entry-above-range'
  | 'entry-below-range'
  | 'entry-unit-slip'
  | 'entry-repeats-apart'
  | 'entry-beyond-above-field'
  | 'entry-rises-outwards'
  | 'entry-read-twice'
  | 'entry-no-place'
  | 'entry-warm-up-missing'
  | 'grid-not-all-read'
> => ({
  'repeats-gain-little': ({ now, after }) =>
    percent(now) === percent(after)
      ? `Enough: one more reading at each point would leave it at ±${percent(now)} %.`
      : `Enough: one more reading at each point would change ±${percent(now)} % to ±${percent(after)} %.`,
  'repeats-would-gain': ({ now, after }) =>
    `One more reading at each point would change ±${percent(now)} % to ±${percent(after)} %.`,
  'repeats-tell-scatter': () =>
    'How the readings scatter is not known: read some points a second time, and the range has it in it.',
  'worth-most': ({ metric, remedy, share, now, atBest }) =>
    `${capital(nameOf(metric))} is known to ±${percent(now)} %. ${REMEDIES[remedy]} would gain most: that is ${rounded(share, 2)} % of the doubt, and at best ±${percent(atBest)} % would be left.`,
  'bench-can-do-no-more': ({ metric, what, share, now }) =>
    `${capital(nameOf(metric))} is known to ±${percent(now)} %, and no reading narrows it much: ${rounded(share, 2)} % of the doubt is ${lowerFirst(say(what))}.`,
  'entry-above-range': ({ value, unit, instrument, highest }) =>
    `${rounded(value, 4)} ${unitSigns(unit)} is more than the ${instrument} can show, ${rounded(highest, 4)} ${unitSigns(unit)}.`,
  'entry-below-range': ({ value, unit, instrument, lowest }) =>
    `${rounded(value, 4)} ${unitSigns(unit)} is less than the ${instrument} can show: known to be under ${rounded(lowest, 4)} ${unitSigns(unit)}, not how far.`,
  'entry-unit-slip': ({ value, usual, unit, factor }) =>
    `${rounded(value, 4)} ${unitSigns(unit)} is about ${factor > 1 ? `${rounded(factor)} times` : `a ${ordinal(1 / factor)} of`} what its like read, ${rounded(usual, 4)} ${unitSigns(unit)}. A decimal point, or another unit on the meter?`,
  'entry-repeats-apart': ({ value, others, unit, percent: apart }) =>
    `${rounded(value, 4)} ${unitSigns(unit)} is ${rounded(Math.abs(apart), 2)} % ${apart > 0 ? 'above' : 'below'} what the same place read before, ${rounded(others, 4)} ${unitSigns(unit)}. Did the sensor or the panel move, or is it still warming up?`,
  'entry-beyond-above-field': ({ value, edge }) =>
    `${rounded(value, 4)} mW/cm² past the edge is more than the grid has along it, ${rounded(edge, 4)} mW/cm². Is the place right, and the room dark?`,
  'entry-rises-outwards': ({ value, distance, nearer, nearerDistance }) =>
    `${rounded(value, 4)} mW/cm² at ${rounded(distance)} cm is more than ${rounded(nearer, 4)} mW/cm² at ${rounded(nearerDistance)} cm: light falls outwards. Are the two the wrong way round?`,
  'entry-read-twice': ({ counts }) =>
    `This takes one reading: the last one counts, ${counts}. Strike the other, or this one.`,
  'entry-no-place': ({ path }) => `There is no field ${path}; the reading goes into the notes.`,
  'entry-warm-up-missing': () =>
    'How long the panel was on before the first reading is not noted: write warmUp, or readers can’t tell whether it had settled.',
  'grid-not-all-read': ({ read, of }) => `only ${read} of ${of} points of the grid are read yet`,
});

const REMEDIES: Readonly<Record<BenchRemedy, string>> = {
  repeat: 'A second reading at each point',
  'finer-range': 'A finer range of the meter',
  distance: 'Setting the distance with more care',
  edges: 'Measuring the sides of the LED field again',
  beyond: 'Reading the light past the edges',
};

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
const percent = (value: number) => value.toFixed(1);
const ordinal = (it: number) => (it < 50 ? 'tenth' : it < 500 ? 'hundredth' : 'thousandth');
const lowerFirst = (text: string) => (/^.[A-Z]/.test(text) ? text : text.charAt(0).toLowerCase() + text.slice(1));
