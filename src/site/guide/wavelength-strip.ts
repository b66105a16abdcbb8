import type { PanelEntry } from '../../ledger/ledger.ts';
import { isFigure } from '../../measure/figure.ts';
import { carriedWords } from '../../words/carried-words.ts';
import { showFigure } from '../../words/format.ts';

/** Measured peaks on the axis that all rows share: ticks, visible ones full and near-infrared ones broken. */
export interface WavelengthStrip {
  /** Places on the axis, 0 to 100. */
  visible: number[];
  infrared: number[];
  /** `661, 848` */
  text: string;
  /** From which day they are, where they were not read again. */
  carried?: string;
}

/** The axis: as far as the LEDs of such panels reach, and farther where a panel's do, nm. */
export interface WavelengthAxis {
  from: number;
  to: number;
  /** Where eyes see no more, 0 to 100. */
  edge: number;
}

const USUAL = { from: 600, to: 900 };
const STEP = 50;
/** The end of the visible range, as CIE 17.4 has it, nm. */
const VISIBLE_END = 780;
const CHANNELS = ['wavelength-red', 'wavelength-near-infrared'] as const;

function peaksOf(panel: PanelEntry) {
  return CHANNELS.flatMap((metric) => {
    const it = panel.figures.get(metric);
    return isFigure(it) ? [it] : [];
  });
}

export function wavelengthAxis(panels: readonly PanelEntry[]): WavelengthAxis {
  const peaks = panels.flatMap(peaksOf).map((it) => it.value);
  const from = Math.min(USUAL.from, STEP * Math.floor(Math.min(...peaks, USUAL.from) / STEP));
  const to = Math.max(USUAL.to, STEP * Math.ceil(Math.max(...peaks, USUAL.to) / STEP));
  return { from, to, edge: placeOf(VISIBLE_END, { from, to }) };
}

const placeOf = (nm: number, { from, to }: Pick<WavelengthAxis, 'from' | 'to'>) =>
  Math.round((100 * (nm - from)) / (to - from));

/** The peaks of a panel; undefined where none was read. */
export function wavelengthStrip(
  panel: PanelEntry,
  axis: WavelengthAxis,
  currency: string,
): WavelengthStrip | undefined {
  const peaks = peaksOf(panel);
  if (peaks.length === 0) return undefined;
  const carried = carriedWords(peaks[0]);
  const places = (isVisible: boolean) =>
    peaks.filter(({ value }) => value <= VISIBLE_END === isVisible).map(({ value }) => placeOf(value, axis));
  return {
    visible: places(true),
    infrared: places(false),
    text: peaks.map((it) => showFigure(it, currency).value).join(', '),
    ...(carried && { carried }),
  };
}
