import type { Piece } from './panel-piece.ts';

/** A file that a build writes itself. */
export interface PublishedFile {
  /** Its address without the leading slash. */
  path: string;
  type:
    | 'application/atom+xml'
    | 'application/json'
    | 'application/xml'
    | 'image/svg+xml'
    | 'text/css'
    | 'text/csv'
    | 'text/html'
    | 'text/javascript'
    | 'text/plain';
  /** Its text, in pieces that are written one after another. */
  text(): Iterable<Piece>;
  /** Most of it are pieces of panels. */
  isOfPanels?: true;
}

/** A file of JSON. */
export const json = (path: string, text: () => Iterable<Piece>): PublishedFile => ({
  path,
  type: 'application/json',
  text,
});
