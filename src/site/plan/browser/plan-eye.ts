/** The eye at the planned distance, as elements: first what is longer than its limit, then what to do, and the times drawn. */
import { CAUTION_WORDS, cautionAddress } from '../../../words/caution-words.ts';
import { elementOf, html } from '../../shared/browser/dom.ts';
import { timeStrip } from '../../shared/browser/time-strip.ts';
import type { Plan } from './plan-address.ts';
import { eyeShare, type Ranged } from './plan-calculation.ts';
import { eyeLine, eyeTimes, eyeWords } from './plan-eye-words.ts';
import type { PlanPanel } from './plan-panel.ts';

/** What stands of the eye right under the time; `marks` are those of its share. */
export function eyeNotice(
  panel: PlanPanel,
  { cm = 0, unit }: Pick<Plan, 'cm' | 'unit'>,
  seconds: Ranged | undefined,
  marks: readonly Element[],
): HTMLElement {
  const { longer, text } = eyeLine(panel, cm, unit, seconds);
  const { title, advice } = CAUTION_WORDS.eyes;
  const times = eyeTimes(panel, cm, unit, seconds);
  return html(
    'aside',
    { class: 'notice plan-eye', 'aria-label': title },
    html(
      'p',
      {},
      longer && html('strong', {}, `${longer} `),
      text,
      ...marks,
      ' ',
      advice,
      ' ',
      html('a', { href: cautionAddress('eyes') }, 'Why'),
    ),
    times && elementOf(timeStrip(times.marks, times.from, times.description)),
    shareFold(panel, cm),
  );
}

/** The share in full, folded; nothing where it is not known. */
function shareFold(panel: PlanPanel, cm: number): HTMLElement | undefined {
  const eye = eyeShare(panel, cm);
  if ('unknown' in eye) return undefined;
  return html(
    'details',
    { class: 'small' },
    html('summary', {}, 'Share of the limit, IEC 62471:2006'),
    html(
      'p',
      {},
      `${eyeWords(panel, cm, eye)} `,
      html('a', { href: '/methods/infrared-eye/' }, 'How it is worked out'),
    ),
  );
}
