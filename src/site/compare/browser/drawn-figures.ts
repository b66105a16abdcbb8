/** The drawing of mean irradiance by distance as elements. */

import { html, svg } from '../../shared/browser/dom.ts';
import { curvesPlot, type DrawnPanel } from './curves-plot.ts';

/** Mean irradiance against distance, each panel's line with its name; nothing where there is none to draw. */
export function curvesFigure(panels: readonly DrawnPanel[]): HTMLElement[] {
  const plot = curvesPlot(panels, !matchMedia('(min-width: 48rem)').matches);
  if (!plot) return [];
  const { frame } = plot;
  const figure = html(
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
  );
  return [figure];
}
