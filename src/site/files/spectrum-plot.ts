import type { DrawnSpectrum } from '../../ledger/files/spectra-figures.ts';
import { INFRARED_FROM_NM } from '../../measure/irradiance/claims.ts';
import type { Span } from '../../measure/spectrum/spectrum.ts';
import { fixed } from '../../words/format.ts';
import { nmText } from '../../words/spectrum-words.ts';
import { axisFromNought, pixels } from '../shared/browser/plot.ts';
import { type FilePlot, frameOf, WIDTH } from './file-plot.ts';
import { tracedPath } from './traced-path.ts';

const HEIGHT = 270;
/** The part that all panels are drawn over, nm; more where a peak or a claim lies outside. */
const USUAL = { from: 600, to: 1000 };
/** Room beside the outermost peak, nm. */
const BESIDE = 30;
/** Labels nearer than this stand in two rows, px. */
const LABEL_WIDTH = 40;

/**
 * Draws spectra, with the wavelengths that are claimed. Near-infrared is a broken line, since nobody sees it.
 *
 * @param claimed nm
 */
export function spectrumPlot(spectra: readonly DrawnSpectrum[], claimed: readonly number[]): FilePlot {
  const peaks = spectra.flatMap((it) => it.peaks.map((peak) => ({ peak, of: it })));
  const { from, to } = spectrumSpan(spectra, claimed);
  const isAbsolute = spectra.every((it) => it.scale === 'irradiance');
  const highest = Math.max(...spectra.map((it) => it.highest));
  const top = isAbsolute ? highest : 100;
  const frame = frameOf(HEIGHT, 46, 12);
  const y = axisFromNought(top, [frame.bottom, frame.top], 4);
  const x = (nm: number) => pixels(frame.left + ((frame.right - frame.left) * (nm - from)) / (to - from));
  const heightOf = (it: DrawnSpectrum, share: number) => (isAbsolute ? share * it.highest : 100 * share);
  const path = (it: DrawnSpectrum, isSeen: boolean) =>
    tracedPath(
      it.rows
        .filter(([nm]) => nm >= from && nm <= to && (isSeen ? nm <= INFRARED_FROM_NM : nm >= INFRARED_FROM_NM))
        .map(([nm, share]) => [x(nm), y.place(Math.max(0, heightOf(it, share)))] as const),
    );
  const step = to - from > 500 ? 200 : 100;
  const ticks = Array.from({ length: Math.floor((to - Math.ceil(from / step) * step) / step) + 1 }, (_, i) => {
    const nm = Math.ceil(from / step) * step + i * step;
    return { at: x(nm), text: String(nm) };
  });
  const marked = claimed.filter((nm) => nm >= from && nm <= to).toSorted((a, b) => a - b);
  const rows = labelRows(marked.map(x));
  const tops = peaks.map(({ peak, of }) => ({
    x: x(peak.wavelength),
    y: y.place(heightOf(of, peak.height / of.highest)),
    text: fixed(peak.wavelength, 0),
  }));
  return {
    ...{ width: WIDTH, height: HEIGHT, frame },
    x: ticks,
    y: y.ticks,
    xName: 'wavelength, nm',
    yName: isAbsolute ? 'mW/cm²/nm' : '% of the highest',
    curves: spectra.flatMap((it) => [
      { path: path(it, true), kind: 'main' as const },
      { path: path(it, false), kind: 'unseen' as const },
    ]),
    levels: [],
    uprights: marked.map((nm, i) => ({
      at: x(nm),
      from: frame.top - 22,
      text: fixed(nm, 0),
      x: x(nm) + 4,
      y: frame.top - 20 - 14 * (rows[i] ?? 0),
      isClaim: true,
    })),
    tops: tops.map((it) => ({ x: it.x, y: it.y })),
    spikes: [],
    texts: tops.map((it) => ({ x: it.x - 7, y: it.y - 3, text: it.text, anchor: 'end', isStrong: true })),
    description: describe(spectra, claimed),
  };
}

/** The wavelengths that are drawn, nm: those of all panels, and so far that no peak and no claim is left out. */
export function spectrumSpan(spectra: readonly DrawnSpectrum[], claimed: readonly number[]): Span {
  const lit = spectra.flatMap((it) => it.peaks.map((peak) => peak.lit));
  const outermost = [...lit.flatMap((it) => [it.from - BESIDE, it.to + BESIDE]), ...claimed];
  const reach = {
    from: Math.min(...spectra.map((it) => it.reach.from)),
    to: Math.max(...spectra.map((it) => it.reach.to)),
  };
  return {
    from: Math.floor(Math.min(USUAL.from, Math.max(reach.from, Math.min(...outermost))) / 50) * 50,
    to: Math.ceil(Math.max(USUAL.to, Math.min(reach.to, Math.max(...outermost))) / 50) * 50,
  };
}

/** Rows of the labels of claims, so that none covers another: 0 is the lower one. */
function labelRows(places: readonly number[]): number[] {
  let last = Number.NEGATIVE_INFINITY;
  let row = 0;
  return places.map((x) => {
    row = x - last < LABEL_WIDTH ? 1 - row : 0;
    last = x;
    return row;
  });
}

function describe(spectra: readonly DrawnSpectrum[], claimed: readonly number[]): string {
  const peaks = spectra.flatMap((it) => it.peaks.map((peak) => nmText(peak.wavelength)));
  const claims = claimed.map((it) => nmText(it));
  return `Light against wavelength: peaks at ${peaks.join(', ') || 'none'}${claims.length > 0 ? `; claimed: ${claims.join(', ')}` : ''}; near-infrared, which nobody sees, is a broken line`;
}
