import type { Ledger, PanelEntry } from '../../ledger/ledger.ts';
import { METHODS, type Method } from '../../measure/methods.ts';
import { methodCardAddress, methodPreviewAddress, panelCardAddress, previewAddress } from './card-files.ts';
import { CARD_FORMATS, type CardFormat, type CardLayout, PREVIEW, PREVIEW_LAYOUT } from './card-formats.ts';
import { type ScaleEnds, scaleEnds } from './card-scales.ts';
import { type MethodCardView, methodCardView } from './method-card-view.ts';
import { type PanelCardView, panelCardView } from './panel-card-view.ts';

/** What stands on the cards of a panel, or of a method. */
export type CardView = { of: 'panel'; panel: PanelCardView } | { of: 'method'; method: MethodCardView };

/** A card as a file, to be drawn: plain data, which another thread can be given. */
export interface DrawnCard {
  /** Its address in the guide. */
  address: string;
  /** One object for all cards of a panel or of a method. */
  view: CardView;
  layout: CardLayout;
  /** Width of its picture, px; left out where it is published as the drawing that it is. */
  pixels?: number;
  /** Dots an inch, where it is for paper of one size. */
  perInch?: number;
}

/** All that a card is drawn of, besides the code and the typefaces. */
export const drawnOf = ({ view, layout, pixels, perInch }: DrawnCard): string =>
  JSON.stringify([view, layout, pixels, perInch]);

/** Every card that the guide asks for. */
export function drawnCards(ledger: Ledger): DrawnCard[] {
  const { cards } = ledger.guide;
  if (!cards.preview && !cards.show) return [];
  const ends = scaleEnds(ledger);
  return [
    ...[...ledger.panels.values()].flatMap((it) => panelCards(it, ledger, ends)),
    ...METHODS.flatMap((it) => methodCards(it, ledger.guide)),
  ];
}

function panelCards(panel: PanelEntry, ledger: Ledger, ends: ScaleEnds): DrawnCard[] {
  const { cards } = ledger.guide;
  const view: CardView = { of: 'panel', panel: panelCardView(panel, ledger, ends) };
  const preview = { address: previewAddress(panel.slug), view, layout: PREVIEW_LAYOUT, pixels: PREVIEW.width };
  return [
    ...(cards.preview ? [preview] : []),
    ...(cards.show
      ? CARD_FORMATS.flatMap((format) => bothWays(panelCardAddress(panel.slug, format.id), view, format))
      : []),
  ];
}

/** A method's cards; for links to its page the wide one's picture alone. */
function methodCards(method: Method, guide: Ledger['guide']): DrawnCard[] {
  const view: CardView = { of: 'method', method: methodCardView(method, guide) };
  const all = CARD_FORMATS.flatMap((format) => bothWays(methodCardAddress(method.id, format.id), view, format));
  return guide.cards.show ? all : all.filter((it) => it.address === methodPreviewAddress(method.id));
}

/** A card as a drawing and as a picture. */
const bothWays = (address: string, view: CardView, { layout, pixels, perInch }: CardFormat): DrawnCard[] => [
  { address: `${address}.svg`, view, layout },
  { address: `${address}.png`, view, layout, pixels, ...(perInch !== undefined && { perInch }) },
];
