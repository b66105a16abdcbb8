import { roundedTo } from '../../measure/exposure/cautious-end.ts';
import type { SoundReading, SoundResult } from '../../measure/exposure/sound-result.ts';
import { type Figure, isFigure } from '../../measure/figure.ts';
import { say } from '../say.ts';
import { AT_CAUTIOUS_END, amount, asRead, capital, VALUE_USED } from './amounts.ts';
import { cited } from './citation.ts';
import { CITATIONS } from './citations.ts';
import { placeWords } from './field-words.ts';
import { cautiousPart, outcome } from './outcome.ts';
import { type LimitWords, worded } from './wording.ts';

/** The panel's sound. It is held against no limit. */
export function soundWords({ figure, reading, atMost }: SoundResult): LimitWords {
  const head = { subject: 'Sound of the panel alone', label: 'no limit is held against it' };
  const background = [
    'It is a level at a point, not a sound power.',
    `The room is taken off by the ${cited(CITATIONS['background-sound'])}; no limit is held against it.`,
  ];
  if (!isFigure(figure)) {
    return worded(head, { withheld: `No level can be given for the panel alone: ${say(figure.reason)}.`, background });
  }
  const panel = figure.bound ? boundWords(figure, atMost) : `The panel alone gives ${outcome(figure, 'high')}.`;
  const end = figure.bound ? undefined : cautiousPart(figure, 'high');
  return worded(head, {
    outcome: [readWords(reading), panel],
    // The page has what was read in its table of fields and sound.
    beside: [end === undefined ? panel : `${capital(AT_CAUTIOUS_END)} ${end}.`],
    background,
  });
}

function readWords({ on, off, distance }: SoundReading): string {
  if (!isFigure(on) || !isFigure(off)) return '';
  return `With the panel on, the level was ${asRead(on)}; with it off, ${asRead(off)}; ${placeWords(distance)}.`;
}

function boundWords({ value, uncertaintyAbsent }: Figure, atMost: number | undefined): string {
  const moved =
    atMost === undefined
      ? ` (${VALUE_USED})`
      : `, ${AT_CAUTIOUS_END} of the reading at most ${amount(roundedTo(atMost, 'high'), 'dB(A)')}`;
  return `The panel alone gives at most ${amount(value, 'dB(A)')}${moved}; ${say(uncertaintyAbsent ?? { code: 'uncertainty-not-known' })}.`;
}
