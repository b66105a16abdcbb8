import fc from 'fast-check';
import { expect, test } from 'vitest';
import { MOST_LANES, tieBrackets } from '../../../../src/site/guide/browser/tie-brackets.ts';

/** Brackets of panels a, b, c … whose ties are told by their letters: `ab bc`. */
function brackets(order: string, ties: string) {
  const pairs = ties.split(' ');
  const tiedWith = (it: string) => pairs.flatMap((pair) => (pair.includes(it) ? pair.replace(it, '') : []));
  const rows = tieBrackets([...order], tiedWith);
  return [...rows].map(([panel, { parts, others }]) => {
    const drawn = parts.map(({ lane, isFirst, isLast }) => `${lane}${isFirst ? 'a' : ''}${isLast ? 'z' : ''}`);
    return [panel, ...drawn, ...(others.length > 0 ? [`(${others.join('')})`] : [])].join(' ');
  });
}

test.each([
  ['nothing where nothing ties', 'abc', '', ['a', 'b', 'c']],
  ['one for all that tie with each other', 'abcd', 'ab ac bc', ['a 0a', 'b 0', 'c 0z', 'd']],
  ['two side by side where the first and the last are apart', 'abc', 'ab bc', ['a 0a', 'b 0z 1a', 'c 1z']],
  ['two one below the other in one lane', 'abcd', 'ab cd', ['a 0a', 'b 0z', 'c 0a', 'd 0z']],
  ['none over a row that ties with neither: that is said', 'abc', 'ac', ['a (c)', 'b', 'c (a)']],
  ['only runs in which each ties with each', 'abcd', 'ab bc cd ac', ['a 0a', 'b 0', 'c 0z 1a', 'd 1z']],
  [
    'no more lanes than there is room for: the rest is said',
    'abcdefgh',
    'ab ac ad ae bc bd be bf cd ce cf cg de df dg dh ef eg eh fg fh gh',
    ['a 0a', 'b 0 1a', 'c 0 1 2a', 'd 0 1 2 (h)', 'e 0z 1 2 (h)', 'f 1z 2 (h)', 'g 2z (h)', 'h (defg)'],
  ],
] as const)('%s', (_, order, ties, wanted) => {
  expect(brackets(order, ties)).toEqual(wanted);
});

test('whatever ties: a bracket joins none that are apart, and every tie is drawn or said', () => {
  const some = fc
    .integer({ min: 2, max: 9 })
    .chain((count) =>
      fc.tuple(
        fc.constant(count),
        fc.array(fc.boolean(), { minLength: (count * (count - 1)) / 2, maxLength: (count * (count - 1)) / 2 }),
      ),
    );
  fc.assert(
    fc.property(some, ([count, flags]) => {
      const order = Array.from({ length: count }, (_, i) => `p${i}`);
      const tied = new Set<string>();
      let at = 0;
      for (let i = 0; i < count; i++) {
        for (let k = i + 1; k < count; k++) if (flags[at++]) tied.add(`p${i} p${k}`).add(`p${k} p${i}`);
      }
      const rows = tieBrackets(order, (it) => order.filter((other) => tied.has(`${it} ${other}`)));
      // The rows that a bracket runs over, read again from its ends.
      const joined = new Set<string>();
      for (let lane = 0; lane < MOST_LANES; lane++) {
        let run: string[] = [];
        for (const panel of order) {
          const part = rows.get(panel)?.parts.find((it) => it.lane === lane);
          expect(part !== undefined || run.length === 0).toBe(true);
          if (!part) continue;
          expect(part.isFirst).toBe(run.length === 0);
          for (const other of run) joined.add(`${other} ${panel}`).add(`${panel} ${other}`);
          run = part.isLast ? [] : [...run, panel];
        }
      }
      const said = [...rows].flatMap(([panel, { others }]) => others.map((other) => `${panel} ${other}`));
      expect([...joined, ...said].toSorted()).toEqual([...tied].toSorted());
    }),
    { numRuns: 500 },
  );
});
