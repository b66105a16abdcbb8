import type { AnyReadFile } from '../../content/read/files/file-kind.ts';
import type { Guide } from '../../content/schema/guide.ts';
import type { Panel } from '../../content/schema/panel.ts';
import type { Session } from '../../content/schema/session.ts';
import type { Figure, FigureMap, FigureOrGap, Flag } from '../../measure/figure.ts';
import type { DistanceSetting } from '../../measure/irradiance/distance-setting.ts';
import type { FieldFigures } from '../field-figures.ts';
import type { InstrumentFinder } from '../reading-figures.ts';
import type { SessionModes } from './mode-light.ts';

/**
 * What pages draw of the files of each block of a session: reduced for drawing, with what was found beside the figures.
 * Each kind adds its row, under the block's name:
 *
 * ```ts
 * declare module './file-maker.ts' {
 *   interface FileViews {
 *     spectra: SpectraView;
 *   }
 * }
 * ```
 */
// biome-ignore lint/suspicious/noEmptyInterface: kinds add their rows
export interface FileViews {}

/** Blocks of a session that name files from which something is made. */
export type FileBlock = keyof FileViews;

/** A session as far as its readings go, on the day of its files. */
export interface FileContext {
  /** `<panel>/<date>`: figures and their inputs begin with it (`identityOf(metric, id)`, `<id>/spectra.red`). */
  id: string;
  panel: Panel;
  /** As it stands in the file, without what it carries over. */
  session: Session;
  guide: Guide;
  instrumentFor: InstrumentFinder;
  field: FieldFigures;
  distance: DistanceSetting;
  /** What the light of its modes is, by its spectra where it has some. */
  modes: SessionModes;
  /** Its typed readings as figures. */
  typed: readonly Figure[];
  findIn: FindIn;
}

/**
 * Finds something in files; or tells what was found before, where that is kept.
 *
 * @param what names it, with all that it is found by besides the files and their entries: plain data
 * @param find gives plain data that is never changed
 */
export type FindIn = <T>(
  files: readonly AnyReadFile[],
  what: readonly [name: string, ...by: unknown[]],
  find: () => T,
) => T;

/** Where nothing is kept. */
export const findAnew: FindIn = (_files, _what, find) => find();

/** What is made of the files of one block. */
export interface MadeOfFiles<View> {
  /**
   * A figure of a metric that was typed too takes the typed one's place, unless the typed one alone has an uncertainty;
   * a gap never does. Inputs are paths of the block: `<panel>/<date>/spectra.red`.
   */
  figures: readonly FigureOrGap[];
  view: View;
  /** What is odd about the files, once all figures of the session are there. */
  flags?(figures: FigureMap): Flag[];
}

/** Makes figures of the files of one block of a session. */
export interface FileMaker<Block extends FileBlock> {
  block: Block;
  /** @param files those of the block, at least one */
  make(files: readonly AnyReadFile[], context: FileContext): MadeOfFiles<FileViews[Block]>;
}

/** A maker of whichever block. */
export type AnyFileMaker = { [Block in FileBlock]: FileMaker<Block> }[FileBlock];

/** What was made of a session's files, by block. */
export type SessionMade = ReadonlyMap<string, MadeOfFiles<FileViews[FileBlock]>>;

/** What was made of the files of one block; undefined where the session has none. */
export function madeOf<Block extends FileBlock>(
  made: SessionMade,
  block: Block,
): MadeOfFiles<FileViews[Block]> | undefined {
  return made.get(block) as MadeOfFiles<FileViews[Block]> | undefined;
}
