import type { DrawnSpectrum } from '../../ledger/files/spectra-figures.ts';
import { INFRARED_FROM_NM } from '../../measure/irradiance/claims.ts';
import { fixed } from '../../words/format.ts';
import { nmText } from '../../words/spectrum-words.ts';
import { pathThrough } from '../shared/browser/path-data.ts';
import { axisFromNought, type Plot, pixels } from '../shared/browser/plot.ts';

/** One place of an axis of wavelengths with its words. */
interface Mark {
  x: number;
  text: string;
}

/** Spectra over wavelength, ready to draw; lengths in CSS pixels from the top left. */
export interface SpectrumPlot extends Plot {
  /** Each as the eye sees it, and what it does not see. */
  curves: Array<{ mode: DrawnSpectrum['mode']; seen: string; unseen: string }>;
  /** Claimed wavelengths, over the frame. */
  claimed: Mark[];
  /** Tops of the peaks, with their wavelengths. */
  peaks: Array<Mark & { y: number }>;
  yTitle: string;
}

const SIZE = { width: 430, height: 300 };
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
export function spectrumPlot(spectra: readonly DrawnSpectrum[], claimed: readonly number[]): SpectrumPlot {
  const peaks = spectra.flatMap((it) => it.peaks.map((peak) => ({ peak, of: it })));
  const outermost = [...peaks.flatMap(({ peak: { lit } }) => [lit.from - BESIDE, lit.to + BESIDE]), ...claimed];
  const reach = {
    from: Math.min(...spectra.map((it) => it.reach.from)),
    to: Math.max(...spectra.map((it) => it.reach.to)),
  };
  const from = Math.floor(Math.min(USUAL.from, Math.max(reach.from, Math.min(...outermost))) / 50) * 50;
  const to = Math.ceil(Math.max(USUAL.to, Math.min(reach.to, Math.max(...outermost))) / 50) * 50;
  const isAbsolute = spectra.every((it) => it.scale === 'irradiance');
  const highest = Math.max(...spectra.map((it) => it.highest));
  const top = isAbsolute ? highest : 100;
  const frame = { left: 52, top: 46, right: SIZE.width - 14, bottom: SIZE.height - 44 };
  const y = axisFromNought(top, [frame.bottom, frame.top], 4);
  const x = (nm: number) => pixels(frame.left + ((frame.right - frame.left) * (nm - from)) / (to - from));
  const heightOf = (it: DrawnSpectrum, share: number) => (isAbsolute ? share * it.highest : 100 * share);
  const path = (it: DrawnSpectrum, isSeen: boolean) =>
    pathThrough(
      it.rows
        .filter(([nm]) => nm >= from && nm <= to && (isSeen ? nm <= INFRARED_FROM_NM : nm >= INFRARED_FROM_NM))
        .map(([nm, share]) => [x(nm), y.place(Math.max(0, heightOf(it, share)))] as const),
    );
  const step = to - from > 500 ? 200 : 100;
  const ticks = Array.from({ length: Math.floor((to - Math.ceil(from / step) * step) / step) + 1 }, (_, i) => {
    const nm = Math.ceil(from / step) * step + i * step;
    return { at: x(nm), text: String(nm) };
  });
  return {
    ...SIZE,
    frame,
    x: ticks,
    y: y.ticks,
    yTitle: isAbsolute ? 'mW/cm²/nm' : '% of the highest',
    curves: spectra.map((it) => ({ mode: it.mode, seen: path(it, true), unseen: path(it, false) })),
    claimed: claimed
      .filter((nm) => nm >= from && nm <= to)
      .toSorted((a, b) => a - b)
      .map((nm) => ({ x: x(nm), text: fixed(nm, 0) })),
    peaks: peaks.map(({ peak, of }) => ({
      x: x(peak.wavelength),
      y: y.place(heightOf(of, peak.height / of.highest)),
      text: fixed(peak.wavelength, 0),
    })),
    description: describe(spectra, claimed),
  };
}

/** Rows of the labels of claims, so that none covers another: 0 is the lower one. */
export function labelRows(marks: readonly Mark[]): number[] {
  let last = Number.NEGATIVE_INFINITY;
  let row = 0;
  return marks.map(({ x }) => {
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
