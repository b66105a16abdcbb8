import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { DEMO_SITE } from '../support/demo-folder.ts';
import { FILES } from './site.ts';

/** What a program prints where a value has no words, or is not there at all. */
const SLIP = /\[object \w*\]|\b(?:undefined|NaN|Infinity)\b/g;

/** Infinitely many degrees of freedom, and an end that an interval does not have, are written so in data files. */
const MEANT = /"-?Infinity"/g;

const slipsIn = (text: string) => [...new Set(text.replace(MEANT, '').match(SLIP))];

const READ = FILES.filter((it) => /\.(html|json|csv|xml|txt)$/.test(it) && !it.startsWith('/pagefind/'));

test('there are pages and data files to look at', () => {
  expect(READ.filter((it) => it.endsWith('.html')).length).toBeGreaterThan(50);
  expect(READ.filter((it) => it.startsWith('/data/')).length).toBeGreaterThan(5);
});

test('no page and no data file prints an object, or a value that is not there', () => {
  const slips = READ.flatMap((file) =>
    slipsIn(readFileSync(join(DEMO_SITE, file), 'utf8')).map((slip) => `${file}: ${slip}`),
  );
  expect(slips).toEqual([]);
});

test.each(['<td>[object Object]</td>', '{"note":"undefined"}', 'a,NaN,b', '<p>Infinity W</p>'])(
  'a slip in %s is found',
  (text) => {
    expect(slipsIn(text)).toHaveLength(1);
  },
);
