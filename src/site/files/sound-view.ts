import { madeOf } from '../../ledger/files/file-maker.ts';
import type { SoundClipsView } from '../../ledger/files/sound-clips.ts';
import type { PanelEntry, SessionEntry } from '../../ledger/ledger.ts';
import type { MetricId } from '../../measure/metrics.ts';
import type { BandLevel } from '../../measure/sound/band-levels.ts';
import { fixed } from '../../words/format.ts';
import { fileAddress } from '../shared/file-addresses.ts';
import { type ShownFigure, shownFigure } from '../shared/shown-figure.ts';
import { type SoundPlot, soundPlot } from './sound-plot.ts';
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
  plot: SoundPlot | undefined;
  tones: Array<{ frequency: string; ratio: string; criterion: string; verdict: string }>;
  bands: Array<{ frequency: string; on: string; off: string }>;
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
    tones: (view.tones ?? []).map((it) => ({
      frequency: toneText(it.frequency),
      ratio: `${fixed(it.ratio, 1)} dB`,
      criterion: `${fixed(it.criterion, 1)} dB`,
      verdict: it.isOfRoom
        ? 'the room’s'
        : it.isBelowHearing
          ? 'not heard'
          : it.isProminent
            ? 'prominent'
            : 'not prominent',
    })),
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
    return {
      frequency: toneText(frequency),
      on: fixed(level + scale, 1),
      off: other ? fixed(other.level + scale, 1) : '',
    };
  });
}
