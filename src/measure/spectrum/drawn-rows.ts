import { highestOf, reachOf, type Spectrum } from './spectrum.ts';

/** Most points of a drawn line: about one for each two pixels of a wide window. */
const MOST_POINTS = 360;

/** A spectrum as it is drawn: as shares of its highest value, in so many points that the eye misses none. */
export interface DrawnRows {
  rows: Array<readonly [nm: number, share: number]>;
  /** The highest value, in the spectrum's unit. */
  highest: number;
}

/** Thins a spectrum out for drawing: of each stretch the row that is farthest from nought, so that no narrow line is lost. */
export function drawnRows(spectrum: Spectrum): DrawnRows {
  const { wavelengths, values } = spectrum;
  const { from, to } = reachOf(spectrum);
  const [highest] = highestOf(spectrum);
  const scale = highest > 0 ? highest : 1;
  const stretch = (to - from) / MOST_POINTS;
  const rows: Array<readonly [number, number]> = [];
  let [best, end] = [0, from + stretch];
  const put = () =>
    rows.push([
      Number((wavelengths[best] as number).toFixed(1)),
      Number(((values[best] as number) / scale).toFixed(4)),
    ]);
  for (let i = 1; i < wavelengths.length; i++) {
    if ((wavelengths[i] as number) < end) {
      if (Math.abs(values[i] as number) > Math.abs(values[best] as number)) best = i;
      continue;
    }
    put();
    best = i;
    end = Math.max(end + stretch, wavelengths[i] as number);
  }
  put();
  return { rows, highest };
}
