/** One figure of a compared panel, and the way to the panel's page. */
import type { MetricId } from '../../../measure/metrics.ts';
import { type FigureWords, figureWords, pricedAs } from '../../../words/figure-words.ts';
import type { Shown } from '../../../words/format.ts';
import { sayDifference } from '../../../words/say-difference.ts';
import { elementOf } from '../../shared/browser/dom.ts';
import { figurePieces } from '../../shared/browser/figure-pieces.ts';
import { type Piece, piece } from '../../shared/browser/pieces.ts';
import type { ComparedContender } from './compare-words.ts';

/** Address of a panel's own page. */
export const pageOf = ({ panel }: ComparedContender): string => `/panels/${panel.slug}/`;

function wordsOf({ panel, figures }: ComparedContender, metric: MetricId): FigureWords {
  return figureWords(figures.get(metric), {
    currency: panel.currency,
    say: sayDifference,
    priced: metric === 'real-price' && panel.asPriced !== null ? pricedAs(panel.asPriced) : undefined,
    dagger: panel.marks[metric],
  });
}

/** A degree stands by its number; any other unit stands in the head of the row, or is in its name: a watt of light. */
const isBeside = (unit: string) => unit === '°';
const isInHead = (unit: string) => unit !== '' && !isBeside(unit) && !unit.startsWith('/');

/** A figure of a panel as on its own page, but for the unit that the head of its row has. */
export function figureElements(it: ComparedContender, metric: MetricId, remark?: Remark): Element[] {
  const words = wordsOf(it, metric);
  const bare = (shown: Shown): Shown => (isBeside(shown.unit) ? shown : { ...shown, unit: '' });
  const page = pageOf(it);
  return figurePieces(
    { ...words, ...(words.shown && { shown: bare(words.shown) }), ...(words.other && { other: bare(words.other) }) },
    {
      href: `${page}methodology/#${metric}`,
      className: 'figure',
      flagsAt: `${page}#flags`,
      of: it.panel.name,
      ...remark,
    },
  ).map(elementOf);
}

/** What stands behind a figure, smaller, and in its place where the reader has chosen the other unit. */
export interface Remark {
  remark: string;
  otherRemark: string;
}

/** The unit of a row, for its head: of the first panel that has the figure; in both units where readers may choose. */
export function unitPieces(contenders: readonly ComparedContender[], metric: MetricId): Piece[] {
  for (const it of contenders) {
    const { shown, other, unitKey, otherKey } = wordsOf(it, metric);
    if (!shown) continue;
    if (!isInHead(shown.unit)) return [];
    if (!other) return [`, ${shown.unit}`];
    return [
      piece('span', { 'data-u': unitKey }, `, ${shown.unit}`),
      piece('span', { 'data-u': otherKey, hidden: true }, `, ${other.unit}`),
    ];
  }
  return [];
}
