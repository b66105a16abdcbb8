import type { Ledger, PanelEntry } from '../../ledger/ledger.ts';
import { isFigure } from '../../measure/figure.ts';
import type { Method } from '../../measure/methods.ts';
import { headFigures } from '../panel/head-view.ts';
import { methodPreviewAddress, previewAddress } from './card-files.ts';
import { METHOD_PREVIEW, PREVIEW } from './card-formats.ts';
import { METHOD_SENTENCES } from './method-sentences.ts';

/** The picture that stands where a page is linked to. */
export interface Preview {
  address: string;
  /** What is to be seen on it, in words. */
  shows: string;
  /** Of the picture, px; left out where a page has no bytes to spare. */
  size?: { width: number; height: number };
}

/** The picture for a panel's page; undefined where the guide asks for none. */
export function panelPreview(panel: PanelEntry, { guide }: Pick<Ledger, 'guide'>): Preview | undefined {
  if (!guide.cards.preview) return undefined;
  const figures = headFigures(panel, guide.currency).flatMap(({ name, figure }) =>
    isFigure(panel.figures.get(figure.metric)) && figure.shown ? [`${name}: ${figure.shown.text}`] : [],
  );
  return {
    address: previewAddress(panel.slug),
    size: PREVIEW,
    shows: [`Card of the ${panel.name}`, ...figures].join('. '),
  };
}

/** The same picture for a panel's calculation page, which has hardly a byte to spare. */
export function calculationPreview(panel: PanelEntry, { guide }: Pick<Ledger, 'guide'>): Preview | undefined {
  if (!guide.cards.preview) return undefined;
  return { address: previewAddress(panel.slug), shows: `Card of the ${panel.name}` };
}

/** The picture for a method's page, its wide card; undefined where the guide asks for none. */
export function methodPreview(
  { id, name }: Pick<Method, 'id' | 'name'>,
  { cards }: Pick<Ledger['guide'], 'cards'>,
): Preview | undefined {
  if (!cards.preview) return undefined;
  return {
    address: methodPreviewAddress(id),
    size: METHOD_PREVIEW,
    shows: `Card of a method. ${name}: ${METHOD_SENTENCES[id]}`,
  };
}

/** What a page says of itself to who draws links to it (Open Graph, ogp.me; read). */
export function previewTags(
  page: { title: string; description: string; address: string; guide: string },
  { size, shows }: Preview,
  picture: string,
): ReadonlyArray<readonly [property: string, content: string]> {
  return [
    ['og:title', page.title],
    ['og:url', page.address],
    ['og:image', picture],
    ['og:image:alt', shows],
    ...(size
      ? ([
          // What pages are anyway, where they don't say.
          ['og:type', 'website'],
          ['og:site_name', page.guide],
          ['og:description', page.description],
          ['og:image:type', 'image/png'],
          ['og:image:width', String(size.width)],
          ['og:image:height', String(size.height)],
        ] as const)
      : []),
  ];
}
