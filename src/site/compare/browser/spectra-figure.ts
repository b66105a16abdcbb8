/** The drawing of light by wavelength as elements. */
import { html, svg } from '../../shared/browser/dom.ts';
import { type DrawnSpectrum, spectraPlot } from './spectra-plot.ts';

/** Each panel's spectrum with its name; nothing where there is none to draw. */
export function spectraFigure(panels: readonly DrawnSpectrum[]): HTMLElement[] {
  const plot = spectraPlot(panels, !matchMedia('(min-width: 48rem)').matches);
  if (!plot) return [];
  const { frame } = plot;
  const line = (curve: (typeof plot.curves)[number], d: string) =>
    svg('path', { class: `curve place-${curve.place}`, d, 'stroke-dasharray': curve.dash });
  const size = { viewBox: `0 0 ${plot.width} ${plot.height}`, width: plot.width, height: plot.height };
  return [
    html(
      'figure',
      { class: 'plot overlaid' },
      svg(
        'svg',
        { ...size, role: 'img', 'aria-label': plot.description },
        ...plot.y.flatMap(({ at, text }) => [
          svg('line', { class: 'grid', x1: frame.left, x2: frame.right, y1: at, y2: at }),
          svg('text', { class: 'y', x: frame.left - 8, y: at }, text),
        ]),
        ...plot.x.flatMap(({ at, text }) => [
          svg('line', { class: 'tick', x1: at, x2: at, y1: frame.bottom, y2: frame.bottom + 5 }),
          svg('text', { class: 'x', x: at, y: frame.bottom + 18 }, text),
        ]),
        svg('text', { class: 'x', x: (frame.left + frame.right) / 2, y: frame.bottom + 36 }, 'nm'),
        svg(
          'text',
          { class: 'x', transform: `translate(12 ${(frame.top + frame.bottom) / 2}) rotate(-90)` },
          '% of its highest',
        ),
        ...plot.curves.flatMap((curve) => [
          line(curve, curve.path),
          line(curve, `M${curve.label.x} ${curve.label.y}h28`),
          svg('text', { class: 'name', x: curve.label.x + 34, y: curve.label.y }, curve.label.text),
        ]),
      ),
      html('figcaption', { class: 'small soft' }, 'Both channels on; from 700 nm on nobody sees it.'),
    ),
  ];
}
