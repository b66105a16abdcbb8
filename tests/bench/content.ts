import { generateContent } from '../support/generate-content.ts';
import { scratchFolder } from './scratch.ts';

/** The day that every build here takes for today, the day after the newest that is generated. */
export const today = '2026-11-25';
const NEWEST_DAY = '2026-11-24';
const SEED = 1;

const made = new Map<number, string>();

/** The folder with a generated guide of so many panels; written once. */
export function contentOf(panels: number): string {
  let folder = made.get(panels);
  if (folder === undefined) {
    folder = scratchFolder(`content-${panels}`);
    generateContent(folder, panels, SEED, { newestDay: NEWEST_DAY });
    made.set(panels, folder);
  }
  return folder;
}
