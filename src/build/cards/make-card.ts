import { cardSvg, drawCard } from '../../site/cards/draw-card.ts';
import type { DrawnCard } from '../../site/cards/drawn-cards.ts';
import { keepCard } from './kept-cards.ts';
import { pictureOf } from './picture-of.ts';

/** A card with what it is kept under. */
export interface MarkedCard {
  card: DrawnCard;
  mark: string;
}

/**
 * Draws a card and keeps it.
 *
 * @returns its file
 * @throws where it can't be drawn or written
 */
export async function makeCard({ card, mark }: MarkedCard, store: string): Promise<string> {
  const { address, pixels, perInch } = card;
  const bytes = pixels === undefined ? Buffer.from(cardSvg(card)) : await pictureOf(drawCard(card), pixels, perInch);
  return keepCard(store, mark, address, bytes);
}
