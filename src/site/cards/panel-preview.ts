import type { Ledger, PanelEntry } from '../../ledger/ledger.ts';
import { isFigure } from '../../measure/figure.ts';
import { headFigures } from '../panel/head-view.ts';
import { previewAddress } from './card-files.ts';
import { PREVIEW } from './card-formats.ts';

/** The picture that stands where a panel's page is linked to; undefined where the guide asks for none. */
export function panelPreview(panel: PanelEntry, { guide }: Pick<Ledger, 'guide'>) {
  if (!guide.cards.preview) return undefined;
  const figures = headFigures(panel, guide.currency).flatMap(({ name, figure }) =>
    isFigure(panel.figures.get(figure.metric)) && figure.shown ? [`${name}: ${figure.shown.text}`] : [],
  );
  return {
    address: previewAddress(panel.slug),
    ...PREVIEW,
    shows: [`Card of the ${panel.name}`, ...figures].join('. '),
  };
}
