import { ROW_EDGE, SLOW_DEPTH } from '../../measure/exposure/flicker-lines.ts';
import type { Pulsing, PulsingResult } from '../../measure/exposure/pulsing.ts';
import { amount } from './amounts.ts';
import { cited } from './citation.ts';
import { CITATIONS } from './citations.ts';
import { MODE_WORDS } from './flicker.ts';
import { outcome } from './outcome.ts';
import { type LimitWords, worded } from './wording.ts';

const PULSING_WORDS: Readonly<Record<Pulsing, string>> = {
  deliberate: 'which looks like deliberate pulsing',
  slow: `which is slow modulation, below ${ROW_EDGE} Hz`,
};

/** Who is at risk. */
export const PULSING_CAUTION =
  'Light that pulses can trigger seizures in photosensitive epilepsy and headaches in people with migraine: who is at risk, or lives with somebody who is, should ask a doctor first and keep pulsed modes off.';

/** A mode that pulses: what it looks like, who is at risk, and the rule. */
export function pulsingWords({ figure, mode, pulsing, frequency }: PulsingResult): LimitWords {
  const words = MODE_WORDS[mode];
  return worded(
    { subject: `Pulsing ${words}`, label: 'Flicker' },
    {
      outcome: [
        `The output changes ${words} at ${amount(frequency.value, 'Hz')} by ${outcome(figure, 'high')}, ${PULSING_WORDS[pulsing]}.`,
      ],
      // Few panels pulse: their pages say all of it.
      own: [
        PULSING_CAUTION,
        mode === 'near-infrared'
          ? 'Near-infrared is invisible, so that nobody notices its pulsing; the rule speaks of visible light and is not held against it.'
          : `For comparison, below ${ROW_EDGE} Hz the modulation should stay under ${SLOW_DEPTH} %, by the ${cited(CITATIONS['flicker-seizures'])}.`,
      ],
      background: [],
    },
  );
}
