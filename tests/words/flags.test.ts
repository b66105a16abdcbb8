import { describe, expect, test } from 'vitest';
import type { Flag } from '../../src/measure/figure.ts';
import { verbatim } from '../../src/measure/statement.ts';
import { daggerOf, SEVERITY_WORDS } from '../../src/words/flags.ts';

const flag = (severity: Flag['severity']): Flag => ({
  check: 'a-check',
  severity,
  finding: verbatim('Odd.'),
  concerns: [],
});

describe('daggerOf', () => {
  test.each([
    [[], undefined],
    [['note'], undefined],
    [['doubt'], '†'],
    [['note', 'doubt', 'note'], '†'],
    [['impossible'], '‡'],
    [['doubt', 'impossible'], '‡'],
  ] as Array<[Array<Flag['severity']>, string | undefined]>)('of %j is %s', (severities, mark) => {
    expect(daggerOf(severities.map(flag))?.mark).toBe(mark);
  });

  test('says in words what the mark stands for: a mark alone says nothing to a screen reader', () => {
    expect(daggerOf([flag('doubt')])?.label).toContain('in doubt');
    expect(daggerOf([flag('impossible')])?.label).toContain('impossible');
    expect(SEVERITY_WORDS).toEqual({ note: 'Note', doubt: '† Doubt', impossible: '‡ Impossible' });
  });
});
