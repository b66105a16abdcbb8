import type { AnyFileReader } from './file-kind.ts';
import { otherFileReader } from './other-file.ts';
import { soundClipReader } from './sound-clip.ts';
import { spectrumReader } from './spectrum.ts';
import { wallPhotoReader } from './wall-photo.ts';

/** All kinds of files that a session may name, in the order in which a page shows them. */
export const FILE_READERS: readonly AnyFileReader[] = [
  spectrumReader,
  wallPhotoReader,
  soundClipReader,
  otherFileReader,
];
