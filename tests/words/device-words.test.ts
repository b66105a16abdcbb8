import { expect, test } from 'vitest';
import type { OfflineState } from '../../src/site/bench/browser/bench-offline.ts';
import type { StoreFault } from '../../src/site/bench/browser/bench-store.ts';
import type { RefusedPhoto } from '../../src/site/bench/browser/camera-photo.ts';
import type { FeedFault } from '../../src/site/bench/browser/meter-feed.ts';
import type { LineRefusal } from '../../src/site/bench/browser/meter-line.ts';
import type { PatternFault } from '../../src/site/bench/browser/meter-pattern.ts';
import type { FolderFault } from '../../src/site/bench/browser/save-folder.ts';
import {
  FEED_WORDS,
  FOLDER_WORDS,
  LINE_WORDS,
  OFFLINE_WORDS,
  PATTERN_WORDS,
  PHOTO_WORDS,
  STORE_WORDS,
} from '../../src/words/device-words.ts';

/** The types refuse a code that has no words, and words that no code has. */
type Words<Code extends string> = Readonly<Record<Code, string>>;
const ALL = [
  STORE_WORDS satisfies Words<StoreFault>,
  FEED_WORDS satisfies Words<FeedFault>,
  FOLDER_WORDS satisfies Words<FolderFault>,
  LINE_WORDS satisfies Words<LineRefusal['refused']>,
  PATTERN_WORDS satisfies Words<PatternFault['fault']>,
  OFFLINE_WORDS satisfies Words<OfflineState>,
];
const PHRASES = PHOTO_WORDS satisfies Words<RefusedPhoto['refused']>;

test('each is said by whole sentences, and a picture’s reason by a phrase', () => {
  for (const it of ALL.flatMap((words) => Object.values(words))) expect(it).toMatch(/^[A-Z].*\.$/);
  for (const it of Object.values(PHRASES)) expect(it).toMatch(/^[a-z].*[^.]$/);
});
