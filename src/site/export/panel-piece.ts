import type { SharedPlaces } from './shared-places.ts';

/** A part of a file: its text, or what makes it when it comes to be written. */
export type Piece = { toString(): string };

/** A panel's own part of a long file. A build may take its text from the file that the build before has written. */
export interface PanelPiece extends Piece {
  /** The panel, by slug. One file has no two pieces of a panel. */
  panel: string;
  /** What it is made with besides the ledger, as a text. */
  given: string;
  /** Lists of the file in which what it refers to has its places. */
  places?: SharedPlaces;
}

export const isPanelPiece = (piece: Piece): piece is PanelPiece => typeof piece === 'object' && 'panel' in piece;
