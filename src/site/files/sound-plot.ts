import { nice, ticks } from 'd3-array';
import type { SoundClipsView } from '../../ledger/files/sound-clips.ts';
import type { BandLevel } from '../../measure/sound/band-levels.ts';
import { fixed } from '../../words/format.ts';
import { pixels, type Tick } from '../shared/browser/plot.ts';
import { type FilePlot, frameOf, WIDTH } from './file-plot.ts';
import { toneText } from './sound-words.ts';
import { tracedPath } from './traced-path.ts';

const HEIGHT = 245;
const FRAME = frameOf(HEIGHT, 24, 34);
/** Ends of the axis of frequencies, Hz: the same for all panels. */
const [LOWEST, HIGHEST] = [50, 12500];
const MARKED = [100, 200, 500, 1000, 2000, 5000, 10000];
/** dB below the highest band that are drawn. */
const DEPTH = 55;
const Y_TICKS = 5;

/** Draws the spectra of the clips; undefined where there is none. */
export function soundPlot(view: SoundClipsView): FilePlot | undefined {
  if (view.on.length === 0) return undefined;
  const shift = view.scale ?? 0;
  const all = [...view.on, ...view.off].map((it) => it.level + shift);
  const most = Math.max(...all);
  const [bottom, top] = nice(Math.max(Math.min(...all), most - DEPTH), most, Y_TICKS);
  const x = (frequency: number) =>
    pixels(FRAME.left + ((FRAME.right - FRAME.left) * Math.log(frequency / LOWEST)) / Math.log(HIGHEST / LOWEST));
  const y = (level: number) =>
    pixels(FRAME.bottom - ((FRAME.bottom - FRAME.top) * (Math.max(bottom, level) - bottom)) / (top - bottom));
  const places = (bands: readonly BandLevel[]) => bands.map((it) => [x(it.frequency), y(it.level + shift)] as const);
  const clips = [
    { name: 'on', places: places(view.on), kind: 'main' as const },
    ...(view.off.length > 0 ? [{ name: 'off', places: places(view.off), kind: 'other' as const }] : []),
  ];
  const heard = (view.tones ?? []).filter((it) => !it.isOfRoom && !it.isBelowHearing);
  return {
    ...{ width: WIDTH, height: HEIGHT, frame: FRAME },
    x: MARKED.map((it): Tick => ({ at: x(it), text: it >= 1000 ? `${it / 1000}k` : `${it}` })),
    y: ticks(bottom, top, Y_TICKS).map((it) => ({ at: y(it), text: fixed(it, 0) })),
    xName: 'frequency, Hz',
    yName: levelUnit(view),
    curves: clips.map((it) => ({ path: tracedPath(it.places), kind: it.kind })),
    levels: [],
    uprights: heard
      .filter((it, i) => it.isProminent || i === 0)
      .map(({ frequency }) => {
        const at = x(frequency);
        return { at, from: FRAME.top, x: at, y: FRAME.top - 10, text: toneText(frequency), anchor: 'middle' as const };
      }),
    tops: [],
    spikes: [],
    texts: clips.map((it) => {
      const [endX, endY] = it.places.at(-1) ?? [0, 0];
      return { x: endX + 6, y: endY, text: it.name };
    }),
    description: describe(view),
  };
}

/** What levels of a session's clips count in. */
export const levelUnit = ({ scale }: SoundClipsView) => (scale === undefined ? 'dB of full scale' : 'dB');

function describe({ tones = [], off }: SoundClipsView): string {
  const own = tones.filter((it) => !it.isOfRoom && !it.isBelowHearing);
  const marked = own.map((it) => `${toneText(it.frequency)}, ${fixed(it.ratio, 1)} dB above the noise about it`);
  const room = off.length > 0 ? ', and below it that of the room' : '';
  return `Spectrum of the sound with the panel on${room}, in twelfths of an octave from 50 Hz on; ${marked.length > 0 ? `tones: ${marked.join('; ')}` : 'no tone stands out'}`;
}
