import { BODY_WIDTH, EVEN_FROM } from '../../../measure/beam/body-map.ts';
import type { Field } from '../../../measure/beam/emitter.ts';
import { html, svg } from '../../shared/browser/dom.ts';
import { personOutline } from '../../shared/browser/person-outline.ts';
import { evenRegion } from './even-region.ts';
import type { Calculated } from './plan-calculation.ts';

/** Units of the drawing for a centimetre. */
const SCALE = 2;
const MARGIN = 6;
/** Room for the outline, which is wider than the flat figure that is calculated with, cm. */
const PERSON_WIDTH = 60;
const CLIP = 'plan-person';
const FLAT_CLIP = 'plan-flat';
/** Below the shoulders, at this part of the height, the arms hang beside the flat figure, whose trunk is so wide there, cm. */
const SHOULDERS = 0.2;
const TRUNK_WIDTH = 37;

/**
 * The standing figure with the LED field before it, to scale. What gets at least EVEN_FROM of the mean over the figure is
 * filled and has a line for its edge, so that colour alone does not tell.
 */
export function bodyDrawing({ body }: Calculated, height: number, field: Field): HTMLElement {
  const width = 2 * MARGIN + SCALE * Math.max(PERSON_WIDTH, field.width);
  const whole = 2 * MARGIN + SCALE * Math.max(height, field.height);
  const middle = width / 2;
  const top = MARGIN + Math.max(0, (SCALE * (field.height - height)) / 2);
  const { head, body: trunk } = personOutline({ middle, top, scale: SCALE, height });
  const person = (className: string) => [
    svg('path', { class: className, d: trunk }),
    svg('ellipse', { class: className, ...head }),
  ];
  const flat = { left: middle - (SCALE * BODY_WIDTH) / 2, top, width: SCALE * BODY_WIDTH, height: SCALE * height };
  const even = evenRegion(body, EVEN_FROM * body.mean, flat);
  const share = `${Math.round(100 * body.evenShare)} %`;
  const drawing = svg(
    'svg',
    {
      class: 'person',
      role: 'img',
      'aria-label': `Standing figure of ${height} cm behind the LED field of ${field.width} by ${field.height} cm; ${share} of it gets at least ${EVEN} % of the mean`,
      viewBox: `0 0 ${width} ${whole}`,
      width,
      height: whole,
    },
    svg('clipPath', { id: CLIP, 'clip-path': `url(#${FLAT_CLIP})` }, ...person('')),
    svg(
      'clipPath',
      { id: FLAT_CLIP },
      svg('rect', { x: flat.left, y: top, width: flat.width, height: SHOULDERS * flat.height }),
      svg('rect', { x: middle - (SCALE * TRUNK_WIDTH) / 2, y: top, width: SCALE * TRUNK_WIDTH, height: flat.height }),
    ),
    // Lines first, so that the head's passes under the neck.
    ...person('outline'),
    ...person('ground'),
    svg(
      'g',
      { 'clip-path': `url(#${CLIP})` },
      svg('path', { class: 'even', d: even.area }),
      svg('path', { class: 'edge', d: even.edge }),
    ),
    svg('rect', {
      class: 'leds',
      x: middle - (SCALE * field.width) / 2,
      y: top + (SCALE * (height - field.height)) / 2,
      width: SCALE * field.width,
      height: SCALE * field.height,
    }),
  );
  return html(
    'figure',
    { class: 'plan-person' },
    drawing,
    html(
      'figcaption',
      { class: 'small soft' },
      `Filled: at least ${EVEN} % of the mean over the figure. Dashed: the LEDs, to scale. A real body is round, and its sides get less.`,
    ),
  );
}

const EVEN = Math.round(100 * EVEN_FROM);
