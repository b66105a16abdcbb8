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
import type { PlanPanel } from './plan-panel.ts';

const link = (href: string, text: string) => html('a', { href }, text);

/**
 * Cautions of a panel, a line each.
 *
 * @param eyes what is said of the eyes; left out where a notice of their own says it
 */
export function cautionNotice(panel: PlanPanel, eyes: { said?: string } | 'said'): HTMLElement {
  const items = PANEL_CAUTIONS.flatMap((anchor) => {
    const own = panel.cautions[anchor];
    const isEyes = anchor === 'eyes';
    if (own === undefined || (isEyes && eyes === 'said')) return [];
    const said = (isEyes && eyes !== 'said' ? eyes.said : undefined) ?? own ?? undefined;
    return [
      html(
        'div',
        {},
        html('dt', {}, link(cautionAddress(anchor), CAUTION_WORDS[anchor].title)),
        html('dd', {}, cautionText(anchor, said)),
      ),
    ];
  });
  return html(
    'aside',
    { class: 'plan-cautions', 'aria-labelledby': 'plan-cautions' },
    html('h2', { id: 'plan-cautions' }, 'Before you stand in front of it'),
    html('dl', {}, ...items),
    html(
      'p',
      { class: 'small' },
      'Also ',
      ...MORE_CAUTIONS.flatMap(([anchor, name]) => [link(cautionAddress(anchor), name), ', ']),
      link('/cautions/', 'all cautions'),
      `. ${CLOSING}`,
    ),
  );
}
