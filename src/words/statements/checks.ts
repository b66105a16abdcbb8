import type { DistanceOf, Size } from '../../measure/checks/index.ts';
import { showDate } from '../format.ts';
import { rounded } from '../rounded.ts';
import type { WordsOf } from '../speaker.ts';

/** What checks of plausibility find, in whole sentences. */
export const FINDING_WORDS: WordsOf<
  | 'reading-below-reach'
  | 'reading-at-display-end'
  | 'distance-of-inches'
  | 'bench-too-near'
  | 'calibration-run-out'
  | 'standard-beyond-limits'
  | 'standard-not-read'
  | 'combined-below-mode'
  | 'efficiency-impossible'
  | 'efficiency-odd'
  | 'leds-far-apart'
  | 'leds-close'
  | 'field-too-long'
  | 'field-small-in-housing'
  | 'field-larger-than-housing'
  | 'flicker-odd'
  | 'grid-point-outlier'
  | 'grid-few-points'
  | 'instruments-not-named'
  | 'modes-not-adding-up'
  | 'peak-below-mean'
  | 'price-stale'
  | 'room-unlike-others'
  | 'field-in-smaller-unit'
  | 'warm-up-short'
  | 'peak-below-grid-point'
  | 'draws-not-adding-up'
  | 'draw-below-channel'
  | 'standby-above-draw'
  | 'channel-not-alone'
  | 'channel-out-of-band'
  | 'on-below-off'
  | 'field-turned-in-housing'
> = {
  'reading-below-reach': ({ value, unit, instrument, lowest }) =>
    `A reading of ${rounded(value)} ${unit} is below what the ${instrument} can show, ${rounded(lowest)} ${unit}. It is known to be small, not how small.`,
  'reading-at-display-end': ({ value, unit, instrument, highest }) =>
    `A reading of ${rounded(value)} ${unit} is at the end of what the ${instrument} can show, ${rounded(highest)} ${unit}. There may be more than it shows.`,
  'distance-of-inches': ({ of, value, reference }) =>
    `${DISTANCES[of]} is ${rounded(value)} cm; the guide’s own is ${rounded(reference)} cm, which is ${rounded(value)} in. Light and fields at ${rounded(value)} cm are far stronger.`,
  'bench-too-near': ({ value, nearest }) =>
    `${DISTANCES.bench} is ${rounded(value)} cm: nearer than ${rounded(nearest)} cm single LEDs show, and few meters read such oblique light rightly.`,
  'calibration-run-out': ({ instrument, due, session }) =>
    `The calibration of the ${instrument} ran out on ${showDate(due)}, before the session of ${showDate(session)}. Its stated uncertainty may no longer hold.`,
  'standard-beyond-limits': ({ standard, instrument, date, session, side, value, limit, centre, share, unit }) =>
    `The ${inSentence(instrument)} read ${fourDigits(value)} ${unit} from the ${inSentence(standard)}${date === session ? ' on the day of the session' : ` on ${showDate(date)}, the nearest day to the session of ${showDate(session)}`}: ${side} its control limit of ${fourDigits(limit)} ${unit}, ${share === undefined ? `${rounded(Math.abs(value - centre), 2)} ${unit}` : `${rounded(Math.abs(share), 2)} %`} ${side} the usual ${fourDigits(centre)} ${unit}. What it read of the panel may be off by as much.`,
  'standard-not-read': ({ standard, instrument, session, days }) =>
    `The ${inSentence(standard)} was not read with the ${inSentence(instrument)} ${days === 0 ? 'on the day' : `within ${days} ${days === 1 ? 'day' : 'days'}`} of the session of ${showDate(session)}: whether the meter read as usual is not known.`,
  'combined-below-mode': ({ combined, mode, alone }) =>
    `With both channels on the peak is ${rounded(combined)} mW/cm², below ${rounded(alone)} mW/cm² with ${mode} alone. The panel may limit its power with both on; otherwise a reading was mistyped.`,
  'efficiency-impossible': ({ percent, limit }) =>
    `An efficiency of ${rounded(percent)} % is not possible: the best red LEDs alone reach about ${rounded(limit)} %. A reading, the LED area or the draw is wrong.`,
  'efficiency-odd': ({ percent, limit }) =>
    `An efficiency of ${rounded(percent)} % is odd: few LED panels come near ${rounded(limit)} %. Look at the readings, the LED area and the draw again.`,
  'leds-far-apart': ({ most, ...leds }) => `${pitchText(leds)}; in panels it is seldom more than ${most} cm.`,
  'leds-close': ({ least, ...leds }) => `${pitchText(leds)}; in panels it is seldom less than ${least} cm.`,
  'field-too-long': ({ field, most }) =>
    `An LED field of ${sizeText(field)} is longer than ${most} cm: higher than a door.`,
  'field-small-in-housing': ({ field, percent, least }) =>
    `The LED field, ${sizeText(field)}, takes up ${rounded(percent)} % of the housing’s area; it is seldom less than ${rounded(least)} %.`,
  'field-larger-than-housing': ({ field, housing }) =>
    `The LED field, ${sizeText(field)}, does not fit into the housing, ${sizeText(housing)}. One of the two was measured or typed wrongly.`,
  'field-turned-in-housing': ({ field, housing }) =>
    `The LED field, ${sizeText(field)}, fits into the housing, ${sizeText(housing)}, only when turned: width and height of one of the two stand the other way round.`,
  'flicker-odd': ({ percent, instrument = 'usual meter', limit, limitPercent }) => {
    const shows = limit === 'lowest' ? 'shows nothing under' : 'goes in steps of';
    return `Flicker of ${rounded(percent)} % is odd: the ${instrument} ${shows} ${rounded(limitPercent)} %. As a fraction it would be ${rounded(100 * percent)} %.`;
  },
  'grid-point-outlier': ({ column, row, value, likely, z, limit }) =>
    `Grid point ${column} of row ${row} reads ${rounded(value)} mW/cm² where its row and column make ${rounded(likely)} mW/cm² likely (modified z-score ${rounded(z)}, limit ${limit}). A hot or dead spot, or a slip of the hand: read it again.`,
  'grid-few-points': ({ count, fewest }) =>
    `The mean is of ${count === 1 ? '1 point' : `${count} points`} of the field: fewer than ${fewest} say more of where they lie than of the field.`,
  'instruments-not-named': ({ kinds, figures, isRanked }) =>
    `The session names no meter for ${kinds.join(', ')}, so that ${figures === 1 ? '1 figure has' : `${figures} figures have`} no uncertainty${isRanked ? '' : ', and the panel is not ranked'}.`,
  'modes-not-adding-up': ({ sum, combined, percent }) =>
    `Red and near-infrared add up to ${rounded(sum)} mW/cm², ${rounded(Math.abs(percent))} % ${percent > 0 ? 'above' : 'below'} the ${rounded(combined)} mW/cm² read with both on. Their peaks may lie at different places, or the panel shares its power between channels.`,
  'peak-below-mean': ({ peak, mean }) =>
    `The peak, ${rounded(peak)} mW/cm², is below the mean of the grid, ${rounded(mean)} mW/cm²: a highest value can’t be. The two were not read at one distance, or one was mistyped.`,
  'peak-below-grid-point': ({ peak, highest, percent }) =>
    `The peak, ${rounded(peak)} mW/cm², is no peak: a point of the grid reads ${rounded(highest)} mW/cm², ${rounded(percent, 2)} % more. The sweep missed the brightest place, or a reading was mistyped.`,
  'draws-not-adding-up': ({ sum, combined, percent }) =>
    `Both channels together draw ${rounded(combined)} W, ${rounded(percent)} % more than the ${rounded(sum)} W of red and near-infrared alone, added up. A reading was mistyped, or the panel holds back when one channel is on alone.`,
  'draw-below-channel': ({ combined, mode, alone }) =>
    `With both channels on the draw is ${rounded(combined)} W, below ${rounded(alone)} W with ${mode} alone. The panel may limit its power with both on; otherwise a reading was mistyped.`,
  'standby-above-draw': ({ standby, on }) =>
    `In standby the panel draws ${rounded(standby)} W, no less than the ${rounded(on)} W that it draws with its LEDs on. The two were mixed up, or one was mistyped.`,
  'channel-not-alone': ({ mode, other, percent }) =>
    `In the spectrum of ${mode} alone ${rounded(percent)} % of the light is ${other}. It is the file of another mode, or both channels were on.`,
  'channel-out-of-band': ({ channel, peak, edge }) =>
    `The ${channel} channel peaks at ${rounded(peak, 4)} nm; red ends, and near-infrared begins, about ${edge} nm.`,
  'on-below-off': ({ of, on, off, unit }) =>
    `${of === 'sound' ? 'The sound' : `The ${of} field`} with the panel on, ${rounded(on)} ${unit}, is less than with it off, ${rounded(off)} ${unit}.`,
  'price-stale': ({ days, date, limit }) =>
    `The price is ${days} days old (${showDate(date)}); after ${limit} days it should be looked up again.`,
  'room-unlike-others': ({ field, value, unit, times, count, usual, typed, factor }) =>
    `The ${field} field of the room, ${rounded(value)} ${unit}, is ${rounded(times)} times that of the other ${count} sessions, ${rounded(usual)} ${unit} in the middle; ${typed} are smaller by ${factor}.`,
  'field-in-smaller-unit': ({ field, panel, value, unit, most, smaller, typed, factor }) => {
    const read = rounded(value);
    const article = field === 'electric' ? 'An' : 'A';
    return `${article} ${field} field with the panel ${panel} of ${read} ${unit} is odd: more than ${rounded(most)} ${unit} is rarely met. ${read} ${unit} is ${rounded(value * factor)} ${smaller}; if the meter said ${read} ${smaller}, write \`${read} ${typed}\`.`;
  },
  'warm-up-short': ({ warmUp, shortest }) =>
    `The panel was on for ${rounded(warmUp)} s before the first reading; under ${rounded(shortest / 60)} min it has not settled, and gives more light than later.`,
};

/** What the tester is told to write instead, within a sentence. */
export const HINT_WORDS: WordsOf<
  | 'write-a-bound'
  | 'look-at-unit-and-range'
  | 'inches-for-centimetres'
  | 'other-unit-for-centimetres'
  | 'percent-for-fraction'
  | 'name-instruments'
  | 'smaller-unit-meant'
  | 'minutes-for-seconds'
  | 'width-before-height'
  | 'channels-swapped'
  | 'on-and-off-swapped'
> = {
  'write-a-bound': ({ lowest }) =>
    `write \`<${rounded(lowest)}\` with its unit, or look at the unit and at the meter’s range again`,
  'look-at-unit-and-range': () => 'look at the unit and at the meter’s range again',
  'inches-for-centimetres': ({ value }) =>
    `a bare number is in centimetres: if inches were meant, write \`${rounded(value)} in\``,
  'other-unit-for-centimetres': ({ width, unit }) =>
    `a bare number is in centimetres: if it was read in ${unit === 'in' ? 'inches' : 'millimetres'}, write \`${rounded(width, 6)} ${unit}\``,
  'percent-for-fraction': ({ percent, lowest }) =>
    `the field is in percent: if a fraction was typed, write \`${rounded(percent)} %\`; if the display showed nothing, write \`<${rounded(lowest)} %\``,
  'name-instruments': ({ kinds }) => `name each under \`instruments\`: ${kinds.map((it) => `${it}: …`).join(', ')}`,
  'smaller-unit-meant': ({ value, unit, typed }) => {
    const read = `${rounded(value)} ${typed}`;
    return `a bare number is in ${unit}: if the meter said ${read}, write \`${read}\`, and look at the reading with the panel on`;
  },
  'width-before-height': () => 'give both as the panel stands on the bench, the width across',
  'channels-swapped': () => 'red and near-infrared stand the wrong way round',
  'on-and-off-swapped': () => 'are the two the wrong way round, or was something else on in the room?',
  'minutes-for-seconds': ({ value }) =>
    `a bare number is in seconds: if minutes were meant, write \`${rounded(value)} min\``,
};

const DISTANCES: Readonly<Record<DistanceOf, string>> = {
  bench: 'The bench distance',
  magnetic: 'The distance of the magnetic readings',
  electric: 'The distance of the electric readings',
  radio: 'The distance of the radio readings',
  claim: 'The distance of the claimed irradiance',
};

const fourDigits = (value: number) => rounded(value, 4);

/** A name in mid-sentence: the first letter is a small one, unless it begins an abbreviation. */
const inSentence = (name: string) => (/^.[A-Z]/.test(name) ? name : name.charAt(0).toLowerCase() + name.slice(1));

const sizeText = ({ width, height }: Size) => `${rounded(width)} × ${rounded(height)} cm`;

const pitchText = ({ count, field, pitch }: { count: number; field: Size; pitch: number }) =>
  `The ${count} LEDs in a field of ${sizeText(field)} lie ${rounded(pitch)} cm apart on average`;
