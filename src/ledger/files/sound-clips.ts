import { type AnyReadFile, filesOf } from '../../content/read/files/file-kind.ts';
import type { SoundClips } from '../../content/schema/files/sound-clips.ts';
import { type FigureMap, type Flag, isFigure } from '../../measure/figure.ts';
import { fileAgainstTyped } from '../../measure/file-against-typed.ts';
import type { MetricId } from '../../measure/metrics.ts';
import { type BandLevel, bandLevels } from '../../measure/sound/band-levels.ts';
import { clipFigures } from '../../measure/sound/clip-figures.ts';
import {
  type CalibrationFault,
  type Clip,
  type ClipReading,
  clearestTone,
  clipReading,
  type HeardTone,
} from '../../measure/sound/clip-reading.ts';
import { CLOSE, type DrawnSeries, drawnSeries } from './drawn-series.ts';
import type { FileMaker } from './file-maker.ts';

declare module './file-maker.ts' {
  interface FileViews {
    soundClips: SoundClipsView;
  }
}

declare module '../../measure/statement.ts' {
  interface StatementData {
    /** Hz, dB */
    'tone-prominent': { frequency: number; ratio: number; criterion: number };
    'clip-is-overdriven': { clip: 'on' | 'off'; samples: number };
    'clips-unlike': { one: string; other: string };
    'calibration-clip-unusable': { fault: CalibrationFault };
    'one-number-hides-it': object;
    'turn-gain-down': object;
    'record-alike': object;
    'record-calibrator': object;
  }
}

/** What pages tell of sound clips. */
export interface SoundClipsView {
  tones: HeardTone[] | undefined;
  whyNoTones: ClipReading['whyNoTones'];
  /** The panel's own tone that stands out most. */
  clearest: HeardTone | undefined;
  /** Tones were looked for up to here, Hz. */
  upTo: number | undefined;
  /** For drawing, dB of full scale; with `scale` added, dB of sound pressure. */
  on: BandLevel[];
  off: BandLevel[];
  /** Narrow bands, dB of full scale over Hz, for who looks closer; and how wide each is, Hz. */
  close: { on: DrawnSeries | undefined; off: DrawnSeries | undefined; width: number };
  scale: number | undefined;
  seconds: number;
  rate: number;
  hasRoom: boolean;
  /** As the tester wrote it. */
  distance: string | undefined;
}

/** Lowest band that is drawn, Hz. */
const DRAWN_FROM = 50;
/** The highest, as share of the samples a second: nearer to the half a recorder lets less through. */
const DRAWN_TO = 0.45;
/** Least power of a band that is drawn: no number has so little, and nought has no level. */
const QUIETEST = 1e-16;

/** Levels and tones of a session's sound clips. */
export const soundClipsMaker: FileMaker<'soundClips'> = {
  block: 'soundClips',
  make(files, { id, session, typed, findIn }) {
    const block = session.soundClips;
    const stated = block?.calibration;
    const level = stated?.level.value;
    const { reading, on, off, calibration } = findIn(files, ['sound', level ?? null], () => heardIn(files, level));
    const calibrator = stated && { level: stated.level.value, expanded: stated.uncertainty?.value };
    const figures = clipFigures({ session: id, reading, calibrator, hasRoom: off !== undefined });
    const clearest = reading.tones && clearestTone(reading.tones);
    return {
      figures,
      view: {
        tones: reading.tones,
        whyNoTones: reading.whyNoTones,
        clearest,
        upTo: reading.findings?.upTo,
        on: drawn(reading.findings, on),
        off: drawn(reading.room, off),
        close: {
          on: closeBands(reading.findings, on),
          off: closeBands(reading.room, off),
          width: reading.findings?.spectrum.step ?? 0,
        },
        scale: reading.scale,
        seconds: on?.seconds ?? 0,
        rate: on?.rate ?? 0,
        hasRoom: off !== undefined,
        distance: block?.distance?.written ?? session.sound?.distance?.written,
      },
      flags: (all) => [
        ...toneFlags(clearest),
        ...meterFlags(
          all,
          typed.find((it) => it.metric === 'sound-on'),
        ),
        ...clipFlags(block, { on, off, calibration }, reading),
      ],
    };
  },
};

type Part = 'on' | 'off' | 'calibration';
type KnownClip = Clip & { format: string };

/** A clip without what it sounds like. */
interface ToldClip {
  rate: number;
  seconds: number;
  clipped: number;
  format: string;
}

/** @param level of the calibrator, dB */
function heardIn(files: readonly AnyReadFile[], level: number | undefined) {
  const clipOf = (part: Part): KnownClip | undefined =>
    filesOf(files, 'sound')
      .find(({ field }) => field[1] === part)
      ?.data();
  const [on, off, calibration] = [clipOf('on'), clipOf('off'), clipOf('calibration')];
  const known = calibration && level !== undefined ? { ...calibration, level } : undefined;
  return {
    reading: clipReading({ on, off, calibration: known }),
    ...{ on: told(on), off: told(off), calibration: told(calibration) },
  };
}

const told = (clip: KnownClip | undefined): ToldClip | undefined =>
  clip && { rate: clip.rate, seconds: clip.samples.length / clip.rate, clipped: clip.clipped, format: clip.format };

function drawn(findings: ClipReading['findings'], clip: ToldClip | undefined): BandLevel[] {
  return findings && clip ? bandLevels(findings.spectrum, DRAWN_FROM, DRAWN_TO * clip.rate) : [];
}

function closeBands(findings: ClipReading['findings'], clip: ToldClip | undefined): DrawnSeries | undefined {
  if (!findings || !clip) return undefined;
  const { step, powers } = findings.spectrum;
  const first = Math.ceil(DRAWN_FROM / step);
  const loud = powers.subarray(first, Math.floor((DRAWN_TO * clip.rate) / step));
  const values = loud.map((it) => 10 * Math.log10(Math.max(it, QUIETEST)));
  return drawnSeries({ times: values.map((_, i) => (first + i) * step), values }, CLOSE);
}

const LEVELS: readonly MetricId[] = ['sound-clip-on', 'sound-clip-highest', 'sound-clip-off', 'sound-clip-panel'];
const TONES: readonly MetricId[] = ['tone-to-noise', 'tone-frequency'];

function toneFlags(tone: HeardTone | undefined): Flag[] {
  if (!tone?.isProminent) return [];
  const { frequency, ratio, criterion } = tone;
  return [
    {
      check: 'tone-prominent',
      severity: 'note',
      finding: { code: 'tone-prominent', frequency, ratio, criterion },
      hint: { code: 'one-number-hides-it' },
      concerns: [...TONES, 'sound-on'],
      at: ['session', 'soundClips', 'on'],
      isNotHandedOn: true,
    },
  ];
}

/** The meter keeps the highest level of a spell, and so is held against the loudest stretch of the clip. */
function meterFlags(figures: FigureMap, typed: Parameters<typeof fileAgainstTyped>[0]['typed'] | undefined): Flag[] {
  const file = figures.get('sound-clip-highest');
  return typed && isFigure(file) ? fileAgainstTyped({ typed, file }) : [];
}

function clipFlags(
  block: SoundClips | undefined,
  clips: Record<Part, ToldClip | undefined>,
  { calibrationFault }: ClipReading,
): Flag[] {
  const flags: Flag[] = [];
  for (const clip of ['on', 'off'] as const) {
    const samples = clips[clip]?.clipped ?? 0;
    if (samples === 0) continue;
    flags.push({
      check: 'clip-overdriven',
      severity: 'doubt',
      finding: { code: 'clip-is-overdriven', clip, samples },
      hint: { code: 'turn-gain-down' },
      concerns: clip === 'on' ? [...LEVELS, ...TONES] : ['sound-clip-off', 'sound-clip-panel'],
      at: ['session', 'soundClips', clip],
    });
  }
  if (calibrationFault) {
    flags.push({
      check: 'clip-calibration',
      severity: 'doubt',
      finding: { code: 'calibration-clip-unusable', fault: calibrationFault },
      hint: { code: 'record-calibrator' },
      concerns: LEVELS,
      at: ['session', 'soundClips', 'calibration', 'file'],
    });
  }
  const formats = [...new Set(Object.values(clips).flatMap((it) => (it ? [`${it.format}, ${it.rate} a second`] : [])))];
  const [one, other] = formats;
  if (block && one !== undefined && other !== undefined) {
    flags.push({
      check: 'clips-alike',
      severity: 'doubt',
      finding: { code: 'clips-unlike', one, other },
      hint: { code: 'record-alike' },
      concerns: LEVELS,
      at: ['session', 'soundClips'],
    });
  }
  return flags;
}
