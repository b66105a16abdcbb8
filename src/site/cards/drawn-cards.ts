import type { Ledger } from '../../ledger/ledger.ts';
import { METHODS } from '../../measure/methods.ts';
import { hasMethodCard, methodCardAddress, panelCardAddress, previewAddress } from './card-files.ts';
import { CARD_FORMATS, PREVIEW, PREVIEW_LAYOUT } from './card-formats.ts';
import { methodCard, methodCardView } from './method-card.ts';
import { panelCard } from './panel-card.ts';
import { panelCardView } from './panel-card-view.ts';

/** A card as a file. */
export interface DrawnCard {
  /** Its address in the guide. */
  address: string;
  /** Drawn when it is asked for. */
  svg(): string;
  /** Width of its picture, px; left out where it is published as the drawing that it is. */
  pixels?: number;
}

/** Every card that the guide asks for. */
export function drawnCards(ledger: Ledger): DrawnCard[] {
  const { cards } = ledger.guide;
  const panels = [...ledger.panels.values()];
  return [
    ...(cards.preview
      ? panels.map(
          (panel): DrawnCard => ({
            address: previewAddress(panel.slug),
            svg: () => panelSvg(panelCardView(panel, ledger), PREVIEW_LAYOUT),
            pixels: PREVIEW.width,
          }),
        )
      : []),
    ...(cards.show
      ? [
          ...panels.flatMap((panel) =>
            CARD_FORMATS.flatMap(({ id, layout, pixels }) =>
              bothWays(panelCardAddress(panel.slug, id), pixels, () => panelSvg(panelCardView(panel, ledger), layout)),
            ),
          ),
          ...METHODS.filter((it) => hasMethodCard(it.id)).flatMap((method) =>
            CARD_FORMATS.flatMap(({ id, layout, pixels }) =>
              bothWays(methodCardAddress(method.id, id), pixels, () => {
                const view = methodCardView(method, ledger.guide);
                return view ? methodCard(view, layout).svg(view.name, view.words) : '';
              }),
            ),
          ),
        ]
      : []),
  ];
}

const panelSvg = (view: ReturnType<typeof panelCardView>, layout: typeof PREVIEW_LAYOUT) =>
  panelCard(view, layout).svg(view.name, view.description);

/** A card as a drawing and as a picture. */
function bothWays(address: string, pixels: number, draw: () => string): DrawnCard[] {
  let drawn: string | undefined;
  const svg = () => {
    drawn ??= draw();
    return drawn;
  };
  return [
    { address: `${address}.svg`, svg },
    { address: `${address}.png`, svg, pixels },
  ];
}
