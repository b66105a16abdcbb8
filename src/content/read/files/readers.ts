import type { AnyFileReader } from './file-kind.ts';
import { otherFileReader } from './other-file.ts';
import { soundClipReader } from './sound-clip.ts';
import { spectrumReader } from './spectrum.ts';
import { sweepReader } from './sweep-file.ts';
import { wallPhotoReader } from './wall-photo.ts';
import { warmUpReader } from './warm-up-file.ts';
import { waveformReader } from './waveform-file.ts';

/** All kinds of files that a session may name, in the order in which a page shows them. */
export const FILE_READERS: readonly AnyFileReader[] = [
  spectrumReader,
  sweepReader,
  warmUpReader,
  waveformReader,
  wallPhotoReader,
  soundClipReader,
  otherFileReader,
];
