import type { Drawing } from './drawing.ts';
import type { DrawnCard } from './drawn-cards.ts';
import { methodCard } from './method-card.ts';
import { panelCard } from './panel-card.ts';

let last: { of: Pick<DrawnCard, 'view' | 'layout'>; drawing: Drawing } | undefined;

/** A card's drawing. That of the card before serves again: drawing and picture come one after the other. */
export function drawCard({ view, layout }: DrawnCard): Drawing {
  if (last?.of.view === view && last.of.layout === layout) return last.drawing;
  const drawing = view.of === 'panel' ? panelCard(view.panel, layout) : methodCard(view.method, layout);
  last = { of: { view, layout }, drawing };
  return drawing;
}

/** A card as the file of its drawing, with what it says to who can't see it. */
export function cardSvg(card: DrawnCard): string {
  const { view } = card;
  const [name, words] =
    view.of === 'panel'
      ? [view.panel.name, view.panel.description]
      : [view.method.name, `${view.method.says} ${view.method.words}`];
  return drawCard(card).svg(name, words);
}
