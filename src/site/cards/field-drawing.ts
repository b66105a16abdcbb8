import { USUAL_HEIGHT } from '../../measure/person.ts';
import { personOutline } from '../shared/browser/person-outline.ts';
import { piece } from '../shared/browser/pieces.ts';
import type { CardLayout } from './card-formats.ts';
import { type Drawing, round } from './drawing.ts';
import { INK } from './drawing-ink.ts';
import type { PanelCardView } from './panel-card-view.ts';

/** Middle of a hung panel, cm from the floor; what is too tall for it hangs lower, or stands. As on the panel's page. */
const HUNG_AT = 105;
/** Half of a figure's width, cm, with its arms. */
const HALF_PERSON = 30;
const BETWEEN = 8;

/** The field beside a standing figure, both to one scale, with its size under them. */
export function fieldDrawing(
  drawing: Drawing,
  field: NonNullable<PanelCardView['field']>,
  box: { x: number; y: number; width: number; bottom: number },
  { small }: CardLayout,
): void {
  const caption = { size: small, most: 2, leading: 1.15 } as const;
  const lines = Math.min(caption.most, drawing.countLines(field.words, box.width, caption));
  const floor = box.bottom - (0.15 + caption.leading * lines) * small;
  const tallest = Math.max(USUAL_HEIGHT, field.height);
  const scale = Math.min((floor - box.y) / tallest, box.width / (2 * HALF_PERSON + BETWEEN + field.width));
  const middle = box.x + HALF_PERSON * scale;
  const person = personOutline({ middle, top: floor - USUAL_HEIGHT * scale, scale });
  drawing.add(piece('ellipse', { ...person.head, fill: INK.rule }), piece('path', { d: person.body, fill: INK.rule }));
  drawing.rule(box.x, floor, box.x + box.width, floor, INK.soft, 2);
  const lift = Math.max(0, Math.min(HUNG_AT - field.height / 2, tallest - field.height));
  drawing.add(
    piece('rect', {
      x: round(box.x + (2 * HALF_PERSON + BETWEEN) * scale),
      y: round(floor - (lift + field.height) * scale),
      width: round(field.width * scale),
      height: round(field.height * scale),
      fill: INK.tint,
      stroke: INK.accent,
      'stroke-width': 5,
    }),
  );
  drawing.lines(field.words, box.x, floor + 0.15 * small, box.width, caption);
}
