import { readdirSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { extname, join } from 'node:path';
import { writeWhole } from '../../content/read/write-whole.ts';

/*
 * Where cards are kept. The output is made of links to them, and who writes into that writes here: so a file's name says
 * what it was drawn of, how many bytes it has and when it was made, and one of which these are not true is no card.
 */

/** What it was drawn of, its bytes, and when it was written, s since 1970. */
const NAME = /^([0-9a-f]+)-(\d+)-(\d+)\.(?:html|png|svg)$/;

/** Keeps the bytes of a card. @returns its file @throws where it can't be written */
export function keepCard(store: string, mark: string, address: string, bytes: Buffer): string {
  const now = Math.floor(Date.now() / 1000);
  const file = join(store, `${mark}-${bytes.length}-${now}${extname(address)}`);
  writeWhole(file, (draft) => {
    writeFileSync(draft, bytes);
    utimesSync(draft, now, now);
  });
  return file;
}

/** Files of cards that are as they were made, by what they were drawn of. */
export function keptCards(store: string): Map<string, string> {
  const files = new Map<string, string>();
  for (const name of namesIn(store)) {
    const [, mark = '', bytes, written] = NAME.exec(name) ?? [];
    if (!mark) continue;
    const file = join(store, name);
    const { size, mtimeMs } = statSync(file, { throwIfNoEntry: false }) ?? {};
    if (size === Number(bytes) && mtimeMs === 1000 * Number(written)) files.set(mark, file);
  }
  return files;
}

function namesIn(store: string): string[] {
  try {
    return readdirSync(store);
  } catch {
    // Nothing was kept yet.
    return [];
  }
}
