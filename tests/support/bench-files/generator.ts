import type { GeneratedFile } from './generated-file.ts';
import { logFiles } from './logs.ts';
import { otherFiles } from './other.ts';
import { soundClips } from './sound-clips.ts';
import { spectra } from './spectra.ts';
import { wallPhotos } from './wall-photos.ts';

/** Makes the files of one kind for the panels of the demonstration, from a source that is known; the same bytes each time. */
export type FileGenerator = () => readonly GeneratedFile[];

/** One for each kind of file. */
export const GENERATORS: readonly FileGenerator[] = [spectra, logFiles, wallPhotos, soundClips, otherFiles];
