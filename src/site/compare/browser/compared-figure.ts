/** One figure of a compared panel, and the way to the panel's page. */
import type { MetricId } from '../../../measure/metrics.ts';
import { figureWords, pricedAs } from '../../../words/figure-words.ts';
import { sayDifference } from '../../../words/say-difference.ts';
import { elementOf } from '../../shared/browser/dom.ts';
import { figurePieces } from '../../shared/browser/figure-pieces.ts';
import type { ComparedContender } from './compare-words.ts';

/** Address of a panel's own page. */
export const pageOf = ({ panel }: ComparedContender): string => `/panels/${panel.slug}/`;

/** A figure of a panel as on its own page. */
export function figureElements(it: ComparedContender, metric: MetricId): Element[] {
  const { panel, figures } = it;
  const words = figureWords(figures.get(metric), {
    currency: panel.currency,
    say: sayDifference,
    priced: metric === 'real-price' && panel.asPriced !== null ? pricedAs(panel.asPriced) : undefined,
    dagger: panel.marks[metric],
  });
  const page = pageOf(it);
  return figurePieces(words, {
    href: `${page}methodology/#${metric}`,
    className: 'figure',
    flagsAt: `${page}#flags`,
  }).map(elementOf);
}
