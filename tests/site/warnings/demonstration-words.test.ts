/** The demonstration's words are never another guide's by mistake. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { parse } from 'yaml';
import { answersFrom } from '../../../src/cli/start/answers.ts';
import type { Content } from '../../../src/content/read/content.ts';
import { readContent } from '../../../src/content/read/read-content.ts';
import type { Loaded } from '../../../src/ledger/load-ledger.ts';
import { DEMONSTRATION_MAKERS, DEMONSTRATION_SENTENCES } from '../../../src/site/warnings/demonstration-sentences.ts';
import { demonstrationWords, sentencesOf, textsBelow } from '../../../src/site/warnings/doubts/demonstration-words.ts';
import { TODAY, tinyContent } from '../../support/content-folder.ts';
import { DEMO_SOURCE } from '../../support/demo-folder.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'demonstration-words-'));
  cpSync(DEMO_SOURCE, folder, { recursive: true });
});
afterEach(() => rmSync(folder, { recursive: true }));

const guide = () => join(folder, 'guide.yaml');
const edit = (from: string, to: string) => {
  const text = readFileSync(guide(), 'utf8');
  if (!text.includes(from)) throw new Error(`no "${from}"`);
  writeFileSync(guide(), text.replace(from, to));
};
const found = (content: Content | undefined) => demonstrationWords({ content } as Loaded).map((it) => it.field);
const foundHere = () => found(readContent({ folder, today: TODAY }).content);

/** A licence is everybody's to name, and names of folders and addresses are none of the guide's sentences. */
const ownOf = ({ licence: _licence, agreement: _agreement, withdrawn, ...own }: Record<string, unknown>) => ({
  ...own,
  withdrawn: (withdrawn as Array<{ reason: string }>).map((it) => it.reason),
});

test('the list has every sentence of the demonstration, and its makers', () => {
  const said = textsBelow(ownOf(parse(readFileSync(guide(), 'utf8')))).flatMap(({ value }) =>
    sentencesOf(String(value)),
  );
  expect(said.length).toBeGreaterThan(12);
  expect(said.filter((it) => !DEMONSTRATION_SENTENCES.has(it))).toEqual([]);
  const { content } = readContent({ folder, today: TODAY });
  expect([...DEMONSTRATION_MAKERS]).toEqual([...(content?.makers.keys() ?? [])].toSorted());
});

test('the demonstration itself is clean', () => expect(foundHere()).toEqual([]));

test('at another address each of its fields is impossible', () => {
  edit('https://panels.curlewstrand.example', 'https://bench.example');
  const fields = foundHere();
  for (const it of ['title', 'tagline', 'publisher', 'about', 'disclosure', 'disclosureShort', 'tariff.source']) {
    expect(fields).toContain(it);
  }
});

test('with a panel of another maker, one sentence that was left standing is enough', () => {
  const panel = join(folder, 'panels/ostrel-lill/index.md');
  writeFileSync(panel, readFileSync(panel, 'utf8').replace('maker: ostrel', 'maker: own'));
  writeFileSync(join(folder, 'makers/own.yaml'), 'name: Own\n');
  const text = readFileSync(guide(), 'utf8').replace(
    /disclosure: >-\n( .*\n)+/,
    'disclosure: We pay. Nothing else on these pages\n  earns us anything.\n',
  );
  writeFileSync(guide(), text);
  const { content } = readContent({ folder, today: TODAY });
  const warning = demonstrationWords({ content } as Loaded).find((it) => it.field === 'disclosure');
  expect(warning).toMatchObject({
    ...{ severity: 'impossible', check: 'demonstration-words', file: 'content/guide.yaml' },
    text: 'This is the demonstration’s, word for word: “Nothing else on these pages earns us anything.”',
  });
});

test('another guide is clean, and so is what start says by itself', () => {
  const tiny = tinyContent();
  expect(found(tiny.content())).toEqual([]);
  tiny.delete();
  const given = {
    title: 'T',
    publisher: 'P',
    disclosure: 'D',
    site: 'https://a.example',
    currency: 'EUR',
    tariff: '0.3',
  };
  const result = answersFrom(given);
  if (!('answers' in result)) throw new Error(result.faults.join());
  const said = textsBelow(result.answers).flatMap(({ value }) => sentencesOf(String(value)));
  expect(said.filter((it) => DEMONSTRATION_SENTENCES.has(it))).toEqual([]);
});
