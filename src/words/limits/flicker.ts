import { flickerLines } from '../../measure/exposure/flicker-lines.ts';
import type { FlickerLine, FlickerResult } from '../../measure/exposure/flicker-results.ts';
import { isFigure } from '../../measure/figure.ts';
import type { Mode } from '../../measure/modes.ts';
import { isCode } from '../../measure/statement.ts';
import { say } from '../say.ts';
import { amount, asRead } from './amounts.ts';
import { cited } from './citation.ts';
import { CITATIONS } from './citations.ts';
import { outcome } from './outcome.ts';
import { type LimitWords, worded } from './wording.ts';

/** Modes of the light, within a sentence. */
export const MODE_WORDS: Readonly<Record<Mode, string>> = {
  combined: 'with both channels on',
  red: 'with red alone on',
  'near-infrared': 'with near-infrared alone on',
};

const LABELS: Readonly<Record<FlickerLine, string>> = {
  lowRisk: 'multiple of the low-risk line',
  noEffect: 'multiple of the no-effect line',
};

/** A mode's flicker as a multiple of a line. */
export function flickerWords(result: FlickerResult): LimitWords {
  const { figure, mode, line, depth, frequency } = result;
  const limit = CITATIONS[LIMITS[line]];
  const words = MODE_WORDS[mode];
  const head = { subject: `Flicker ${words}`, aspect: `multiple of the ${limit.name}`, label: LABELS[line] };
  if (mode === 'near-infrared') {
    return worded(head, {
      withheld: `No multiple of the line can be given ${words}: the line, the ${cited(limit)}, speaks of visible light.`,
      background: [
        'Near-infrared is invisible, so that the line can’t be held against it; that does not say that its flicker does nothing.',
      ],
    });
  }
  const background = [`The line is the ${cited(limit)}; it speaks of visible light only.`];
  if (!isFigure(figure)) {
    return worded(head, {
      withheld: `No multiple of the line can be given ${words}: ${say(figure.reason)}.`,
      background,
    });
  }
  if (!isFigure(depth) || !isFigure(frequency)) throw new Error(`${result.id} was made without its readings`);
  const height = flickerLines(frequency.value)[line];
  const of = height === 'no-limit' ? 'the line' : `the line at that frequency, ${amount(height, '%')}`;
  const step = figure.notes.find((it) => isCode(it, 'flicker-near-step'));
  return worded(head, {
    outcome: [
      `The light flickers ${words} by ${asRead(depth)} at ${amount(frequency.value, 'Hz')}: ${outcome(figure, 'high', of)}.`,
      frequency.standardUncertainty === null ? 'How sure the frequency is, is not known.' : '',
      step ? `Note: ${say(step)}.` : '',
    ],
    background,
  });
}

const LIMITS = { lowRisk: 'flicker-low-risk', noEffect: 'flicker-no-effect' } as const satisfies Record<
  FlickerLine,
  string
>;
