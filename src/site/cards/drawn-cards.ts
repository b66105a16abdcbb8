import type { Ledger, PanelEntry } from '../../ledger/ledger.ts';
import { METHODS, type Method } from '../../measure/methods.ts';
import { methodCardAddress, methodPreviewAddress, panelCardAddress, previewAddress } from './card-files.ts';
import { CARD_FORMATS, type CardFormat, type CardLayout, PREVIEW, PREVIEW_LAYOUT } from './card-formats.ts';
import type { Drawing } from './drawing.ts';
import { methodCard, methodCardView } from './method-card.ts';
import { panelCard } from './panel-card.ts';
import { panelCardView } from './panel-card-view.ts';

/** A card as a file. */
export interface DrawnCard {
  /** Its address in the guide. */
  address: string;
  /** All that it is drawn of, besides the code and the typefaces. */
  drawnOf: string;
  /** Drawn when it is asked for. */
  drawing(): Drawing;
  /** The drawing as a file. */
  svg(): string;
  /** Width of its picture, px; left out where it is published as the drawing that it is. */
  pixels?: number;
  /** Dots an inch, where it is for paper of one size. */
  perInch?: number;
}

/** Every card that the guide asks for. */
export function drawnCards(ledger: Ledger): DrawnCard[] {
  const { cards } = ledger.guide;
  if (!cards.preview && !cards.show) return [];
  return [
    ...[...ledger.panels.values()].flatMap((it) => panelCards(it, ledger)),
    ...METHODS.flatMap((it) => methodCards(it, ledger.guide)),
  ];
}

function panelCards(panel: PanelEntry, ledger: Ledger): DrawnCard[] {
  const { cards } = ledger.guide;
  const view = panelCardView(panel, ledger);
  const drawing = (layout: CardLayout) => drawn(view, layout, () => panelCard(view, layout), view.description);
  return [
    ...(cards.preview
      ? [{ address: previewAddress(panel.slug), ...drawing(PREVIEW_LAYOUT), pixels: PREVIEW.width }]
      : []),
    ...(cards.show
      ? CARD_FORMATS.flatMap((format) =>
          bothWays(panelCardAddress(panel.slug, format.id), format, drawing(format.layout)),
        )
      : []),
  ];
}

/** A method's cards; for links to its page the wide one's picture alone. */
function methodCards(method: Method, guide: Ledger['guide']): DrawnCard[] {
  const view = methodCardView(method, guide);
  const all = CARD_FORMATS.flatMap((format) => {
    const { id, layout } = format;
    const drawing = drawn(view, layout, () => methodCard(view, layout), `${view.says} ${view.words}`);
    return bothWays(methodCardAddress(method.id, id), format, drawing);
  });
  return guide.cards.show ? all : all.filter((it) => it.address === methodPreviewAddress(method.id));
}

/** Drawn once at most, however many files it becomes. */
function drawn(
  view: { name: string },
  layout: CardLayout,
  draw: () => Drawing,
  words: string,
): Pick<DrawnCard, 'drawnOf' | 'drawing' | 'svg'> {
  let known: Drawing | undefined;
  const drawing = () => {
    known ??= draw();
    return known;
  };
  return { drawnOf: JSON.stringify([view, layout]), drawing, svg: () => drawing().svg(view.name, words) };
}

/** A card as a drawing and as a picture. */
const bothWays = (
  address: string,
  { pixels, perInch }: Pick<CardFormat, 'pixels' | 'perInch'>,
  drawing: Pick<DrawnCard, 'drawnOf' | 'drawing' | 'svg'>,
): DrawnCard[] => [
  { address: `${address}.svg`, ...drawing },
  { address: `${address}.png`, ...drawing, pixels, perInch },
];
