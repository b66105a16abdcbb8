import type { AnyReadFile } from '../content/read/files/file-kind.ts';
import { type Figure, type FigureMap, type FigureOrGap, type Flag, isFigure } from '../measure/figure.ts';
import { type FileTwin, fileAgainstTyped } from '../measure/file-against-typed.ts';
import type { MetricId } from '../measure/metrics.ts';
import type { AnyFileMaker, FileContext, FileMaker, FileViews, SessionMade } from './files/file-maker.ts';
import { soundClipsMaker } from './files/sound-clips.ts';
import { spectraMaker } from './files/spectra-figures.ts';
import { sweepMaker } from './files/sweep-figures.ts';
import { wallPhotoMaker } from './files/wall-photo.ts';
import { warmUpMaker } from './files/warm-up-figures.ts';
import { waveformMaker } from './files/waveform-figures.ts';
import type { SessionBench } from './session-bench.ts';

/** Makers of all blocks, in the order in which pages show what they make. */
const MAKERS: readonly AnyFileMaker[] = [
  spectraMaker,
  sweepMaker,
  warmUpMaker,
  waveformMaker,
  wallPhotoMaker,
  soundClipsMaker,
];

/** Makes figures of a session's files, block by block. */
export function madeOfFiles(files: readonly AnyReadFile[], context: FileContext): SessionMade {
  const blocks = Map.groupBy(files, (it) => String(it.field[0]));
  return new Map(
    (MAKERS as ReadonlyArray<FileMaker<keyof FileViews>>).flatMap((maker) => {
      const own = blocks.get(maker.block);
      return own ? [[maker.block as string, maker.make(own, context)] as const] : [];
    }),
  );
}

/**
 * The readings of a session: those of its files, and the typed ones that no file gives too. A file without a known
 * uncertainty takes no reading's place that has one.
 */
export function readingsWithFiles({ readings: typed, made }: SessionBench): FigureOrGap[] {
  const result = new Map<MetricId, FigureOrGap>(typed.map((it) => [it.metric, it]));
  for (const it of figuresOf(made)) {
    const before = result.get(it.metric);
    if (before !== undefined && !isFigure(it)) continue;
    if (isFigure(before) && isFigure(it) && isLessKnown(it, before)) continue;
    result.set(it.metric, it);
  }
  return [...result.values()];
}

/** What is odd about a session's files: what each block finds, and where a typed reading says something else. */
export function fileFlags(bench: SessionBench, figures: FigureMap): Flag[] {
  const own = [...bench.made.values()].flatMap((it) => it.flags?.(figures) ?? []);
  return [...twins(bench).flatMap(fileAgainstTyped), ...own];
}

/** Readings of which one was typed and one comes from a file. */
export function twins({ readings, made }: Pick<SessionBench, 'readings' | 'made'>): FileTwin[] {
  const typed = new Map(readings.map((it) => [it.metric, it]));
  return figuresOf(made).flatMap((file) => {
    const other = typed.get(file.metric);
    return other && isFigure(file) ? [{ typed: other, file }] : [];
  });
}

const figuresOf = (made: SessionMade): FigureOrGap[] => [...made.values()].flatMap((it) => [...it.figures]);

const isLessKnown = (it: Figure, other: Figure) =>
  it.standardUncertainty === null && other.standardUncertainty !== null;
