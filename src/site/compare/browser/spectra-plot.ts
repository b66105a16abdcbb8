/** Light by wavelength of several panels in one plot. No DOM. */
import { pathThrough } from '../../shared/browser/path-data.ts';
import { axisFromNought, keepApart, type Plot, pixels } from '../../shared/browser/plot.ts';
import type { PackedSpectrum } from './compared-panel.ts';
import { DASHES } from './curves-plot.ts';

/** A panel whose spectrum can be drawn. */
export interface DrawnSpectrum {
  name: string;
  spectrum: PackedSpectrum;
  /** Its place among the panels of the page, from 0: decides how its line is drawn. */
  place: number;
}

/** Spectra, ready to draw; lengths in CSS pixels from the top left. */
export interface SpectraPlot extends Plot {
  curves: Array<{ place: number; path: string; dash: string; label: { x: number; y: number; text: string } }>;
}

const SIZES = { wide: { width: 820, height: 360 }, narrow: { width: 350, height: 320 } } as const;
const LABEL_HEIGHT = 18;
/** Room over the frame for each name, which stands there with a piece of its line. */
const TOP = 10;
const TICKS = [600, 700, 800, 900, 1000];

/** Each panel's light as share of its own highest value, so that a bright panel hides no dim one. */
export function spectraPlot(panels: readonly DrawnSpectrum[], isNarrow = false): SpectraPlot | undefined {
  const [first] = panels;
  if (!first) return undefined;
  const size = SIZES[isNarrow ? 'narrow' : 'wide'];
  const frame = {
    left: 52,
    top: TOP + LABEL_HEIGHT * panels.length,
    right: size.width - 20,
    bottom: size.height - 44,
  };
  const { from, step, values } = first.spectrum;
  const to = from + step * (values.length - 1);
  const x = (nm: number) => pixels(frame.left + ((frame.right - frame.left) * (nm - from)) / (to - from));
  const y = axisFromNought(100, [frame.bottom, frame.top], 4);
  const labels = panels.map((it, i) => ({ x: frame.left, y: TOP + LABEL_HEIGHT * i, text: it.name }));
  keepApart(labels, frame.top, LABEL_HEIGHT);
  return {
    ...size,
    frame,
    x: TICKS.filter((nm) => nm >= from && nm <= to).map((nm) => ({ at: x(nm), text: String(nm) })),
    y: y.ticks,
    curves: panels.map(({ spectrum, place }, i) => ({
      place,
      path: pathThrough(
        spectrum.values.map((it, k) => [x(spectrum.from + spectrum.step * k), y.place(it / 10)] as const),
      ),
      dash: DASHES[place % DASHES.length] ?? 'none',
      label: labels[i] ?? { x: 0, y: 0, text: '' },
    })),
    description: `Light against wavelength, each as share of its own highest value: ${panels
      .map(({ name, spectrum }) => `${name} highest at ${Math.round(highestAt(spectrum))} nm`)
      .join('; ')}`,
  };
}

const highestAt = ({ from, step, values }: PackedSpectrum) => from + step * values.indexOf(Math.max(...values));
