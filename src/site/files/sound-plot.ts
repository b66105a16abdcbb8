import { nice, ticks } from 'd3-array';
import type { SoundClipsView } from '../../ledger/files/sound-clips.ts';
import type { BandLevel } from '../../measure/sound/band-levels.ts';
import { fixed } from '../../words/format.ts';
import { pathThrough } from '../shared/browser/path-data.ts';
import { type Plot, pixels, type Tick } from '../shared/browser/plot.ts';
import { toneText } from './sound-words.ts';

/** Levels of narrow bands against frequency, ready to draw. */
export interface SoundPlot extends Plot {
  curves: Array<{ name: 'on' | 'off'; path: string; label: { x: number; y: number } }>;
  /** Tones of the panel that stand out. */
  tones: Array<{ x: number; y: number; text: string; isProminent: boolean }>;
  /** What the upright axis counts. */
  unit: string;
}

const SIZE = { width: 430, height: 280 };
const FRAME = { left: 46, top: 24, right: SIZE.width - 40, bottom: SIZE.height - 44 };
/** Ends of the axis of frequencies, Hz: the same for all panels. */
const [LOWEST, HIGHEST] = [50, 12500];
const MARKED = [100, 200, 500, 1000, 2000, 5000, 10000];
/** dB below the highest band that are drawn. */
const DEPTH = 55;
const Y_TICKS = 5;

/** Draws the spectra of the clips; undefined where there is none. */
export function soundPlot(view: SoundClipsView): SoundPlot | undefined {
  if (view.on.length === 0) return undefined;
  const shift = view.scale ?? 0;
  const all = [...view.on, ...view.off].map((it) => it.level + shift);
  const most = Math.max(...all);
  const [bottom, top] = nice(Math.max(Math.min(...all), most - DEPTH), most, Y_TICKS);
  const x = (frequency: number) =>
    pixels(FRAME.left + ((FRAME.right - FRAME.left) * Math.log(frequency / LOWEST)) / Math.log(HIGHEST / LOWEST));
  const y = (level: number) =>
    pixels(FRAME.bottom - ((FRAME.bottom - FRAME.top) * (Math.max(bottom, level) - bottom)) / (top - bottom));
  const curve = (name: 'on' | 'off', bands: readonly BandLevel[]) => {
    const places = bands.map((it) => [x(it.frequency), y(it.level + shift)] as const);
    const [endX, endY] = places.at(-1) ?? [0, 0];
    return { name, path: pathThrough(places), label: { x: endX + 6, y: endY } };
  };
  const heard = (view.tones ?? []).filter((it) => !it.isOfRoom && !it.isBelowHearing);
  return {
    ...SIZE,
    frame: FRAME,
    x: MARKED.map((it): Tick => ({ at: x(it), text: it >= 1000 ? `${it / 1000}k` : `${it}` })),
    y: ticks(bottom, top, Y_TICKS).map((it) => ({ at: y(it), text: fixed(it, 0) })),
    curves: [curve('on', view.on), ...(view.off.length > 0 ? [curve('off', view.off)] : [])],
    tones: heard
      .filter((it, i) => it.isProminent || i === 0)
      .map(({ frequency, isProminent }) => ({
        x: x(frequency),
        y: y(levelAt(view.on, frequency) + shift),
        text: toneText(frequency),
        isProminent,
      })),
    unit: view.scale === undefined ? 'dB of full scale' : 'dB',
    description: describe(view),
  };
}

function levelAt(bands: readonly BandLevel[], frequency: number): number {
  const nearest = bands.reduce<BandLevel | undefined>(
    (best, it) =>
      best && Math.abs(Math.log(best.frequency / frequency)) <= Math.abs(Math.log(it.frequency / frequency))
        ? best
        : it,
    undefined,
  );
  return nearest?.level ?? 0;
}

function describe({ tones = [], off }: SoundClipsView): string {
  const own = tones.filter((it) => !it.isOfRoom && !it.isBelowHearing);
  const marked = own.map((it) => `${toneText(it.frequency)}, ${fixed(it.ratio, 1)} dB above the noise about it`);
  const room = off.length > 0 ? ', and below it that of the room' : '';
  return `Spectrum of the sound with the panel on${room}, in twelfths of an octave from 50 Hz on; ${marked.length > 0 ? `tones: ${marked.join('; ')}` : 'no tone stands out'}`;
}
