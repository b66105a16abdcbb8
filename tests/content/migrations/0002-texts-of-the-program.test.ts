/** Texts that every content folder once had: those that nobody has changed go, others stay and tell no history. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { textsOfTheProgram } from '../../../src/content/migrations/0002-texts-of-the-program.ts';
import { textsFolder } from '../../../src/content/read/product-texts.ts';

const run = (path: string, text: string) => textsOfTheProgram.run(new Map([[path, text]]));

/** The page of cautions as one of the first versions came with it. */
const former = readFileSync(join(import.meta.dirname, 'former-sound.mdx'), 'utf8');

test('a former text, word for word, goes; line ends and breaks are no words', () => {
  for (const text of [former, former.replaceAll('\n', '\r\n'), `${former}\n\n`]) {
    expect(run('methods/sound.mdx', text)).toEqual([
      { path: 'methods/sound.mdx', after: undefined, why: 'this text comes with the program now' },
    ]);
  }
});

test('one in which a word was changed stays, without its history', () => {
  const [change, ...more] = run('methods/sound.mdx', former.replace(/\n$/, ' Ours.\n'));
  expect(more).toEqual([]);
  expect(change?.after).toMatch(/ Ours\.\n$/);
  expect(change?.after).not.toContain('versions:');
  expect(change?.after?.length).toBeGreaterThan(former.length - 400);
});

test('a text of another name, or of the tester’s own without a history, is left as it is', () => {
  expect(run('methods/own.mdx', '---\nsummary: x\n---\n\nWords.\n')).toEqual([]);
  expect(run('panels/a/index.mdx', former)).toEqual([]);
});

test('the program’s texts as they are were part of content folders once', () => {
  const text = readFileSync(join(textsFolder(), 'methods/size-class.mdx'), 'utf8');
  expect(run('methods/size-class.mdx', text)[0]?.after).toBeUndefined();
});
