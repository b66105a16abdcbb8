/** The drawings of the comparison as elements: LED fields to one scale, mean irradiance by distance. */

import { USUAL_HEIGHT } from '../../../measure/person.ts';
import { html, svg } from '../../shared/browser/dom.ts';
import type { CurvesPlot } from './curves-plot.ts';
import type { FieldsDrawing } from './fields-drawing.ts';

/** LED fields beside a standing figure, with what the lines mean. */
export function fieldsFigure(drawing: FieldsDrawing): HTMLElement {
  return html(
    'figure',
    { class: 'one-scale' },
    html(
      'div',
      { class: 'own-scroll', role: 'group', 'aria-label': 'LED fields to one scale', tabindex: 0 },
      svg(
        'svg',
        {
          viewBox: `0 0 ${drawing.width} ${drawing.height}`,
          width: drawing.width,
          height: drawing.height,
          role: 'img',
          'aria-label': drawing.description,
        },
        svg('line', {
          class: 'floor',
          x1: drawing.rule.x,
          x2: drawing.width,
          y1: drawing.floor,
          y2: drawing.floor,
        }),
        svg('line', {
          class: 'rule',
          x1: drawing.rule.x,
          x2: drawing.rule.x,
          y1: drawing.rule.top,
          y2: drawing.floor,
        }),
        ...drawing.rule.ticks.flatMap(({ y, length, text }) => [
          svg('line', { class: 'rule', x1: drawing.rule.x - length, x2: drawing.rule.x, y1: y, y2: y }),
          ...(text ? [svg('text', { class: 'y', x: drawing.rule.x - 13, y }, text)] : []),
        ]),
        svg('text', { class: 'y', x: drawing.rule.x - 13, y: drawing.floor + 17 }, 'cm'),
        svg('path', { class: 'person', d: drawing.person.body }),
        svg('ellipse', { class: 'person', ...drawing.person.head }),
        svg('text', { class: 'x', ...drawing.person.label }, `${USUAL_HEIGHT} cm tall`),
        ...drawing.fields.flatMap(({ leds, housing, middle, lines }) => [
          ...(housing ? [svg('rect', { class: 'housing', ...housing })] : []),
          svg('rect', { class: 'leds', ...leds }),
          ...lines.map((text, i) => svg('text', { class: 'x', x: middle, y: drawing.floor + 17 * (i + 1) }, text)),
        ]),
      ),
    ),
    html(
      'figcaption',
      { class: 'small soft' },
      'Full line: the LED field as measured. Broken line: the housing, where its size is recorded; the field is drawn in its middle. Each hangs with its middle 85 cm above the floor, for the drawing only, or stands on the floor where it is taller than the figure. The figure is a plain outline of our own, for scale.',
    ),
  );
}

/** Mean irradiance against distance, each panel's line with its name. */
export function curvesFigure(plot: CurvesPlot): HTMLElement {
  const { frame } = plot;
  return html(
    'figure',
    { class: 'plot overlaid' },
    html(
      'div',
      { class: 'own-scroll', role: 'group', 'aria-label': 'Mean irradiance by distance, drawn', tabindex: 0 },
      svg(
        'svg',
        {
          viewBox: `0 0 ${plot.width} ${plot.height}`,
          width: plot.width,
          height: plot.height,
          role: 'img',
          'aria-label': plot.description,
        },
        ...plot.y.flatMap(({ at, text }) => [
          svg('line', { class: 'grid', x1: frame.left, x2: frame.right, y1: at, y2: at }),
          svg('text', { class: 'y', x: frame.left - 8, y: at }, text),
        ]),
        ...plot.x.flatMap(({ at, text }) => [
          svg('line', { class: 'tick', x1: at, x2: at, y1: frame.bottom, y2: frame.bottom + 5 }),
          svg('text', { class: 'x', x: at, y: frame.bottom + 18 }, text),
        ]),
        svg(
          'text',
          { class: 'x', x: (frame.left + frame.right) / 2, y: frame.bottom + 36 },
          'distance from the LEDs, cm',
        ),
        svg(
          'text',
          { class: 'x', transform: `translate(12 ${(frame.top + frame.bottom) / 2}) rotate(-90)` },
          'mean irradiance, mW/cm²',
        ),
        ...plot.curves.flatMap((curve) => [
          svg('path', { class: `curve place-${curve.place}`, d: curve.path, 'stroke-dasharray': curve.dash }),
          svg('path', {
            class: 'leader',
            d: `M${curve.end.x + 3} ${curve.end.y}L${curve.label.x - 4} ${curve.label.y}`,
          }),
          svg('text', { class: 'name', x: curve.label.x + 34, y: curve.label.y }, curve.label.text),
          // A piece of the line itself before its name.
          svg('path', {
            class: `curve place-${curve.place}`,
            d: `M${curve.label.x} ${curve.label.y}h28`,
            'stroke-dasharray': curve.dash,
          }),
        ]),
      ),
    ),
    html('figcaption', { class: 'small soft' }, 'The values with their 95 % intervals stand in the table below.'),
  );
}
