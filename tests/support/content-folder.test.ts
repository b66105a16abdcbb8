import { expect, test } from 'vitest';
import { tinyContent } from './content-folder.ts';

const PLOVER = 'panels/plover/index.md';

test('what one folder has changed is told of that one alone, and no longer once it is put right', () => {
  const [one, other] = [tinyContent(), tinyContent()];
  try {
    for (const it of [one, other]) expect(it.problems()).toEqual([]);
    one.edit(PLOVER, 'model: Plover', 'model: 150');
    expect(one.problems()).toMatchObject([{ file: `content/${PLOVER}`, field: 'model' }]);
    expect(other.problems()).toEqual([]);
    one.edit(PLOVER, 'model: 150', 'model: Plover');
    expect(one.problems()).toEqual([]);
    one.remove(PLOVER);
    expect(one.problems()).toMatchObject([{ found: 'a folder without index.md' }]);
    expect(other.problems()).toEqual([]);
  } finally {
    for (const it of [one, other]) it.delete();
  }
});
