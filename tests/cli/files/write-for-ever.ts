/** Writes two files of a folder together, old and new in turn, until it is killed. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { whileLocked } from '../../../src/cli/files/edit-lock.ts';
import { finishJournal, writeJournal } from '../../../src/cli/files/journal.ts';

const folder = process.argv[2] ?? '';
const read = (path: string) => readFileSync(join(folder, path), 'utf8');
for (let turn = 0; ; turn++) {
  await whileLocked(folder, () => {
    const after = `${turn % 2 === 0 ? 'new' : 'old'} ${'x'.repeat(20_000)} end\n`;
    const files = ['a.yaml', 'deep/b.md'].map((path) => ({ path, before: read(path), after }));
    writeJournal(folder, { files });
    finishJournal(folder);
  });
  if (turn === 0) console.log('begun');
}
