/** The cautions of a planned session, as elements of the page; they stand whatever could be calculated. */
import {
  CAUTION_WORDS,
  cautionAddress,
  cautionText,
  MORE_CAUTIONS,
  PANEL_CAUTIONS,
} from '../../../words/caution-words.ts';
import { CLOSING } from '../../../words/limits/wording.ts';
import { html } from '../../shared/browser/dom.ts';
import { type LongerThanLimit, longerWords } from './plan-eye-words.ts';
import type { PlanPanel } from './plan-panel.ts';

const link = (href: string, text: string) => html('a', { href }, text);

/** All cautions of a panel, the eyes' with what reaches one at the planned distance and its mark; `longer` stands out. */
export function cautionNotice(
  panel: PlanPanel,
  eye?: string,
  longer?: LongerThanLimit,
  marks: readonly Element[] = [],
): HTMLElement {
  const items = PANEL_CAUTIONS.flatMap((anchor) => {
    const said = panel.cautions[anchor];
    if (said === undefined) return [];
    const text = cautionText(anchor, (anchor === 'eyes' ? eye : undefined) ?? said ?? undefined);
    const isEyes = anchor === 'eyes';
    return [
      html(
        'div',
        {},
        html('dt', {}, link(cautionAddress(anchor), CAUTION_WORDS[anchor].title)),
        html(
          'dd',
          {},
          isEyes && longer && html('strong', {}, `${longerWords(longer, 'The planned time')} `),
          text,
          ...(isEyes ? marks : []),
        ),
      ),
    ];
  });
  return html(
    'aside',
    { class: 'notice wide', 'aria-labelledby': 'plan-cautions' },
    html('h3', { id: 'plan-cautions' }, 'Cautions'),
    html('dl', {}, ...items),
    html(
      'p',
      { class: 'small' },
      'Also ',
      ...MORE_CAUTIONS.flatMap(([anchor, name]) => [link(cautionAddress(anchor), name), ', ']),
      link('/cautions/', 'all cautions'),
      '. ',
      link('/methods/infrared-eye/', 'How the share for the eye is worked out'),
      `. ${CLOSING}`,
    ),
  );
}
