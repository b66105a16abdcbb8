import type { z } from 'zod';
import type { sourceStanding } from '../../content/schema/method.ts';

/** How far a source was checked, in words. */
export const STANDING_WORDS: Record<z.output<typeof sourceStanding>, string> = {
  read: 'the source itself, or a page quoting it, was read',
  secondary: 'seen only in a secondary source that cites it',
  memory: 'from memory; read the source before quoting it',
  practice: 'common practice, no source',
  computed: 'arithmetic repeated independently',
};
