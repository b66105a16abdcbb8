/** Every sentence that a figure beside a published limit can have, from sessions of all kinds. */

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { exposureResults } from '../../../src/measure/exposure/index.ts';
import { type FigureOrGap, isFigure } from '../../../src/measure/figure.ts';
import { cited } from '../../../src/words/limits/citation.ts';
import { CITATIONS } from '../../../src/words/limits/citations.ts';
import { HAZARD_CAUTIONS } from '../../../src/words/limits/hazard-cautions.ts';
import { limitWords } from '../../../src/words/limits/index.ts';
import { CLOSING, titleOf } from '../../../src/words/limits/wording.ts';
import { say } from '../../../src/words/say.ts';
import { RUNS, told } from '../../measure/make.ts';
import { anySession, EMPTY, FULL } from '../../support/exposure-sessions.ts';
import { sentenceOf } from '../../support/sentence-of.ts';

const VERDICTS =
  /\b(un)?safe(ly|ty)?\b|\bpass(es|ed|ing)?\b|\bfail(s|ed|ing|ure)?\b|\bok(ay)?\b|\bharmless\b|\bcomplian/i;
const BROKEN = /undefined|null|NaN|Infinity|\[object|\s{2}|\.\.|: \./;

/** What is said beside a figure, or in the place of one. */
function besideFigure(it: FigureOrGap): string[] {
  if (!isFigure(it)) return [say(it.reason)];
  const { notes, uncertaintyAbsent, calculation, unassessed } = it;
  const said = [...notes, ...unassessed.flatMap(({ what, reason }) => [what, reason])];
  return [...said, uncertaintyAbsent, calculation].map(told);
}

test('the words give no verdict, have no hole in them and end with what they are not', () => {
  fc.assert(
    fc.property(anySession, (given) => {
      for (const it of exposureResults(given)) {
        const words = limitWords(it);
        const sentence = sentenceOf(it);
        const all = [titleOf(words), words.label, sentence, ...besideFigure(it.figure)];
        for (const text of all) {
          expect(text).not.toMatch(VERDICTS);
          expect(text).not.toMatch(BROKEN);
        }
        expect(sentence.endsWith(CLOSING)).toBe(true);
      }
    }),
    RUNS,
  );
});

test('name the limit with its source and year, and where its text was not read', () => {
  for (const it of [...exposureResults(FULL), ...exposureResults(EMPTY)]) {
    if (!it.limit) continue;
    const limit = CITATIONS[it.limit];
    const sentence = sentenceOf(it);
    expect(sentence).toContain(cited(limit));
    expect(cited(limit)).toContain(String(limit.year));
    expect(cited(limit)).toContain(limit.source);
    if (limit.standing === 'secondary') expect(sentence).toContain('(seen in secondary sources only)');
    if (limit.standing === 'memory') expect(sentence).toContain('(from memory)');
  }
});

test('every hazard stands beside a caution of its own kind', () => {
  const anchors = exposureResults(FULL).map(({ id, hazard }) => [id.split('-')[0], HAZARD_CAUTIONS[hazard]] as const);
  expect(Object.fromEntries(anchors)).toEqual({
    infrared: 'eyes',
    retinal: 'eyes',
    skin: 'skin-and-heat',
    flicker: 'flicker',
    pulsing: 'flicker',
    magnetic: 'implants-and-fields',
    electric: 'implants-and-fields',
    radio: 'implants-and-fields',
    sound: 'sound',
  });
});

test('where nothing was read, the text begins with that', () => {
  for (const it of exposureResults(EMPTY)) expect(sentenceOf(it)).toMatch(/^(No |The guide says nothing)/);
});

test('the first sentence is withheld, not told as an outcome, where there is no figure', () => {
  for (const it of [...exposureResults(FULL), ...exposureResults(EMPTY)]) {
    const { withheld, outcome } = limitWords(it);
    for (const one of outcome) expect(one).not.toMatch(/^No (share|time|multiple|level) /);
    if (withheld !== undefined) expect(isFigure(it.figure)).toBe(false);
  }
});

test('the verdict words would be found', () => {
  for (const word of ['It is safe.', 'passed', 'Fails', 'OK', 'safely', 'unsafe']) expect(word).toMatch(VERDICTS);
  expect('at the cautious end').not.toMatch(VERDICTS);
});
