import { afterEach, beforeEach, expect, test } from 'vitest';
import { type ContentFolder, tinyContent } from '../../support/content-folder.ts';

let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
});
afterEach(() => content.delete());

const withdraw = (...entries: string[]) => {
  const list = entries.map((it) => `  - { ${it}, date: 2026-11-01, reason: A sample. }`).join('\n');
  content.write('guide.yaml', `${content.read('guide.yaml')}\nwithdrawn:\n${list}\n`);
  return content.problems();
};

test('what the guide no longer has may be withdrawn, page, file or session', () => {
  expect(
    withdraw(
      'address: /panels/gone/, instead: "/panels/plover/#limits"',
      'address: /data/old.csv',
      'address: "/panels/plover/methodology/#session-2020-01-01"',
    ),
  ).toEqual([]);
});

test.each([
  ['address: /panels/plover/', 'an address that the guide no longer has'],
  ['address: /data/panels.json', 'an address that the guide no longer has'],
  ['address: "/panels/gone/#limits"', 'a page, a file, or a session as /panels/<name>/methodology/#session-<day>'],
  ['address: "/panels/plovr/methodology/#session-2020-01-01"', 'a session of a panel that the guide has'],
  ['address: panels/gone/', 'an address of the guide, from the slash on: /panels/kelpwright-plover/'],
  ['address: /panels/gone/, instead: /panels/plovr/', 'a page of the guide'],
])('%s is refused', (entry, wanted) => {
  const [problem, ...more] = withdraw(entry);
  expect(more).toEqual([]);
  expect(problem?.wanted).toContain(wanted);
  expect(problem?.line).toBe(content.lineOf('guide.yaml', entry));
});

test('an address of before that leads on, a session that is there, and an address twice are refused', () => {
  content.edit('panels/plover/index.md', 'status:', 'formerly: [grey-plover]\nstatus:');
  const day = /- date: (\S+)\n\s+methodVersion/.exec(content.read('panels/plover/index.md'))?.[1];
  const found = withdraw(
    'address: /panels/grey-plover/',
    `address: "/panels/plover/methodology/#session-${day}"`,
    'address: /panels/gone/',
    'address: /panels/gone/',
  );
  expect(found.map((it) => it.wanted)).toEqual([
    'an address that leads nowhere; it leads on to /panels/plover/',
    'a session that the panel no longer has',
    'an address that stands here once',
  ]);
});
