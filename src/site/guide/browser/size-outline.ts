/** The LED field of a panel before a standing figure, all to one scale, small enough for a line of a list. No DOM. */
import { USUAL_HEIGHT } from '../../../measure/person.ts';
import { personOutline } from '../../shared/browser/person-outline.ts';
import { type PieceElement, piece } from '../../shared/browser/pieces.ts';

/** Height of a drawing, px, and what a centimetre is in it. */
const HEIGHT = 40;
const SCALE = HEIGHT / USUAL_HEIGHT;
const WIDTH = 18;
/** The middle of a field stands before the middle of the body, cm below the top of the head. */
const MIDDLE = 75;

/** The id that the figure has in the page, where all lines refer to it. */
export const FIGURE = 'stands';

/** The figure, once in a page. */
export function standingFigure(): PieceElement[] {
  const { head, body } = personOutline({ middle: WIDTH / 2, top: 0, scale: SCALE });
  return [piece('ellipse', { ...head }), piece('path', { d: body })];
}

/** A field before the figure; the figure alone where the field was not measured. */
export function sizeOutline(field: readonly [width: number, height: number] | undefined): PieceElement {
  const [width, height] = (field ?? [0, 0]).map((it) => round(SCALE * it)) as [number, number];
  return piece(
    'svg',
    { class: 'size', viewBox: `0 0 ${WIDTH} ${HEIGHT}`, width: WIDTH, height: HEIGHT, 'aria-hidden': 'true' },
    piece('use', { href: `#${FIGURE}` }),
    field &&
      piece('rect', {
        x: round((WIDTH - width) / 2),
        y: round(SCALE * MIDDLE - height / 2),
        width,
        height,
      }),
  );
}

const round = (value: number) => Number(value.toFixed(1));
