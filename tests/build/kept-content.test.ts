/** What panels' files were read to is kept, and is then the same as if they had been read again. */
import { cpSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { keptContent } from '../../src/build/kept-content.ts';
import { readContent } from '../../src/content/read/read-content.ts';
import { DEMO_FOLDER } from '../support/demo-folder.ts';

let root: string;
beforeAll(async () => {
  root = await mkdtemp(join(tmpdir(), 'panel-ledger-content-'));
  cpSync(DEMO_FOLDER, join(root, 'content'), { recursive: true });
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

const DAB = 'panels/quennick-dab/index.md';
const read = () => {
  const files = keptContent(join(root, 'kept'));
  const asked: string[] = [];
  const result = readContent({
    folder: join(root, 'content'),
    today: '2027-06-01',
    kept: {
      ...files,
      source: (path, shownAs, make) =>
        files.source(path, shownAs, () => {
          asked.push(path);
          return make();
        }),
    },
  });
  files.keep();
  return {
    ...result,
    asked: asked.map((it) => it.replace(/^.*[/\\]content[/\\]/, '')).filter((it) => it.startsWith('panels')),
  };
};
const plain = (panels: NonNullable<ReturnType<typeof read>['content']>['panels']) =>
  [...panels].map(([id, { data, source }]) => {
    const { lineOf, ...rest } = source;
    return { id, data, rest, line: lineOf(['sessions', 0, 'date']) };
  });

test('a file as it was is not parsed again, and gives the same source and entry; another one is', () => {
  const first = read();
  expect(first.problems).toEqual([]);
  expect(first.asked.length).toBeGreaterThan(10);
  const again = read();
  // Those with something to fill in are read every time.
  expect(again.asked.length).toBeLessThan(4);
  expect(first.content && again.content && plain(again.content.panels)).toStrictEqual(
    first.content && plain(first.content.panels),
  );
  const file = join(root, 'content', DAB);
  const text = readFileSync(file, 'utf8');
  writeFileSync(file, text.replace(/(paid: )(\d+)/, '$1$2.5'));
  expect(read().asked).toContain(DAB);
  const price = read().content?.panels.get('quennick-dab')?.data.prices[0]?.paid;
  expect(String(price)).toMatch(/\.5$/);
  writeFileSync(file, text.replace(/(paid: )(\d+)/, '$1a lot'));
  for (const _ of [1, 2]) expect(read().problems).toMatchObject([{ file: `content/${DAB}`, line: expect.any(Number) }]);
});
