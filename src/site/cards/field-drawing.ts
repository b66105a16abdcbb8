import { USUAL_HEIGHT } from '../../measure/person.ts';
import { personOutline } from '../shared/browser/person-outline.ts';
import { piece } from '../shared/browser/pieces.ts';
import type { CardLayout } from './card-formats.ts';
import type { Drawing } from './drawing.ts';
import { INK } from './drawing-ink.ts';
import type { PanelCardView } from './panel-card-view.ts';

/** Middle of a hung panel, cm from the floor; what is too tall for it hangs lower, or stands. As on the panel's page. */
const HUNG_AT = 105;
/** Half of a figure's width, cm, with its arms. */
const HALF_PERSON = 30;
const BETWEEN = 8;
/** Half of the width of the field's edge, units of the drawing. */
const EDGE = 2.5;

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
  drawing.add({
    kind: 'shapes',
    pieces: [piece('ellipse', { ...person.head, fill: INK.rule }), piece('path', { d: person.body, fill: INK.rule })],
    x: 0,
    y: 0,
    scale: 1,
  });
  drawing.across(box.x, box.x + box.width, floor, INK.soft, 2);
  const lift = Math.max(0, Math.min(HUNG_AT - field.height / 2, tallest - field.height));
  const [x, y] = [box.x + (2 * HALF_PERSON + BETWEEN) * scale, floor - (lift + field.height) * scale];
  const [width, height] = [field.width * scale, field.height * scale];
  const around = (by: number) => ({ x: x - by, y: y - by, width: width + 2 * by, height: height + 2 * by });
  drawing.bar(around(EDGE), INK.accent);
  drawing.bar(around(-EDGE), INK.tint);
  drawing.lines(field.words, box.x, floor + 0.15 * small, box.width, caption);
}
