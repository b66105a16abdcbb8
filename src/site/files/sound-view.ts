import { madeOf } from '../../ledger/files/file-maker.ts';
import type { SoundClipsView } from '../../ledger/files/sound-clips.ts';
import type { PanelEntry, SessionEntry } from '../../ledger/ledger.ts';
import type { MetricId } from '../../measure/metrics.ts';
import type { BandLevel } from '../../measure/sound/band-levels.ts';
import { fixed } from '../../words/format.ts';
import { fileAddress } from '../shared/file-addresses.ts';
import { type ShownFigure, shownFigure } from '../shared/shown-figure.ts';
import type { FilePlot } from './file-plot.ts';
import { levelUnit, soundPlot } from './sound-plot.ts';
import { toneAnswer, toneText } from './sound-words.ts';

/** What a page shows of sound clips. */
export interface SoundView {
  /** The answer: `A tone at 8.2 kHz, prominent: 14.9 dB above the noise about it; …` */
  answer: string;
  figures: Record<'on' | 'highest' | 'off' | 'panel', ShownFigure>;
  hasLevels: boolean;
  /** What the meter's max hold read, where it was typed. */
  meter: ShownFigure | undefined;
  distance: string | undefined;
  plot: FilePlot | undefined;
  caption: string;
  /** What levels count in. */
  unit: string;
  /** Frequency, ratio to the noise, the criterion, and what it is by that. */
  tones: string[][];
  /** Middle of the band, level with the panel on and off. */
  bands: string[][];
  clips: Array<{ name: string; what: string; address: string }>;
  /** `1.4 s of 22,050 samples a second` */
  recorded: string;
}

/** Undefined where the session has no sound clips. */
export function soundView(panel: PanelEntry, session: SessionEntry, currency: string): SoundView | undefined {
  const view = madeOf(session.made, 'soundClips')?.view;
  if (!view) return undefined;
  const figure = (metric: MetricId) => shownFigure(panel, session.figures.get(metric), metric, currency, session);
  const meter = figure('sound-on');
  return {
    answer: toneAnswer(view),
    figures: {
      on: figure('sound-clip-on'),
      highest: figure('sound-clip-highest'),
      off: figure('sound-clip-off'),
      panel: figure('sound-clip-panel'),
    },
    hasLevels: view.scale !== undefined,
    meter: meter.shown ? meter : undefined,
    distance: view.distance,
    plot: soundPlot(view),
    caption: captionOf(view),
    unit: levelUnit(view),
    tones: (view.tones ?? []).map((it) => [
      toneText(it.frequency),
      `${fixed(it.ratio, 1)} dB`,
      `${fixed(it.criterion, 1)} dB`,
      it.isOfRoom ? 'the room’s' : it.isBelowHearing ? 'not heard' : it.isProminent ? 'prominent' : 'not prominent',
    ]),
    bands: bandRows(view),
    clips: session.files.flatMap((file) => {
      const part = file.field[1];
      if (file.kind !== 'sound' || (part !== 'on' && part !== 'off')) return [];
      const what = part === 'on' ? 'Panel on' : 'The room';
      return [{ name: file.name, what, address: fileAddress(panel.slug, file) }];
    }),
    recorded: `${fixed(view.seconds, 1)} s of ${fixed(view.rate, 0)} samples a second`,
  };
}

function captionOf({ off, clearest }: SoundClipsView): string {
  const room = off.length > 0 ? ', and the room with it off (dashed)' : '';
  const tone = clearest ? ` Upright: the clearest tone${clearest.isProminent ? ', prominent' : ''}.` : '';
  return `Sound in twelfths of an octave, not weighted: panel on${room}.${tone}`;
}

/** Every fourth of the bands that are drawn, summed to thirds of an octave. */
function bandRows({ on, off, scale = 0 }: SoundClipsView): SoundView['bands'] {
  const thirds = (bands: readonly BandLevel[]) => {
    const rows: Array<{ frequency: number; level: number }> = [];
    for (let i = 0; i + 4 <= bands.length; i += 4) {
      const own = bands.slice(i, i + 4);
      const sum = own.reduce((total, it) => total + 10 ** (it.level / 10), 0);
      const [first, last] = [own[0]?.frequency ?? 1, own.at(-1)?.frequency ?? 1];
      rows.push({ frequency: Math.sqrt(first * last), level: 10 * Math.log10(sum) });
    }
    return rows;
  };
  const room = thirds(off);
  return thirds(on).map(({ frequency, level }) => {
    const other = room.find((it) => Math.abs(it.frequency / frequency - 1) < 0.02);
    return [toneText(frequency), fixed(level + scale, 1), other ? fixed(other.level + scale, 1) : ''];
  });
}
