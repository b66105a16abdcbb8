/** A piece of a page before it is markup or an element: text, or an element with pieces in it. */
export type Piece = string | PieceElement;

/** Elements of a drawing: they have another namespace than those of text. */
export const SVG_TAGS = ['svg', 'g', 'path', 'line', 'rect', 'circle', 'ellipse', 'text', 'tspan', 'use'] as const;

export type SvgTag = (typeof SVG_TAGS)[number];

export interface PieceElement {
  tag: 'span' | 'small' | 'i' | 'a' | SvgTag;
  /** In this order; what is false or undefined is left out, what is true has no value. */
  attributes: Readonly<Record<string, string | number | boolean | undefined>>;
  pieces: readonly Piece[];
}

/** An element of a page with what is in it; what is absent is left out. */
export function piece(
  tag: PieceElement['tag'],
  attributes: PieceElement['attributes'],
  ...pieces: ReadonlyArray<Piece | undefined | false>
): PieceElement {
  return { tag, attributes, pieces: pieces.filter((it): it is Piece => it !== undefined && it !== false) };
}
