/** Warnings in one list: their order, their places, and how they are printed. */
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { loadLedger } from '../../../src/ledger/load-ledger.ts';
import { tellWarnings } from '../../../src/site/warnings/tell-warnings.ts';
import {
  hasImpossible,
  problemJson,
  warningCount,
  warningJson,
  warningList,
} from '../../../src/site/warnings/warning-list.ts';
import { warningsOf } from '../../../src/site/warnings/warnings.ts';
import { type ContentFolder, TODAY, tinyContent } from '../../support/content-folder.ts';

const PLOVER = 'panels/plover/index.md';

let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
  vi.stubEnv('LEDGER_TODAY', TODAY);
});
afterEach(() => {
  vi.unstubAllEnvs();
  content.delete();
});

const load = () => loadLedger({ folder: content.folder, watch: true });

/** Something impossible, something doubtful and something worth a note. */
function breakThree(): void {
  content.edit(PLOVER, 'red: 50.2\n      nearInfrared: 52.0\n      combined: 100.0', 'combined: 10.0');
  content.edit(PLOVER, 'warmUp: 40 min', 'warmUp: 20');
  content.edit('panels/teasel/index.md', 'date: 2026-10-05', 'date: 2026-01-05');
}

describe('all warnings', () => {
  test('stand worst first, then by file and line', () => {
    breakThree();
    const warnings = warningsOf(load());
    const order = ['impossible', 'doubt', 'note'];
    const keys = warnings.map((it) => order.indexOf(it.severity));
    expect(new Set(keys)).toEqual(new Set([0, 1, 2]));
    expect(keys).toEqual(keys.toSorted());
    for (const severity of order) {
      const places = warnings.filter((it) => it.severity === severity).map((it) => [it.file, it.line] as const);
      expect(places).toEqual(places.toSorted((a, b) => a[0].localeCompare(b[0], 'en') || a[1] - b[1]));
    }
  });

  test('lead to the readings that the figures were made from', () => {
    breakThree();
    const place = (check: string) => {
      const it = warningsOf(load()).find((warning) => warning.check === check);
      return it && [it.file.replace(`${content.folder}/`, ''), it.line, it.field];
    };
    // An efficiency is made from the optical power, and that from the grid.
    expect(place('efficiency-possible')).toEqual([PLOVER, content.lineOf(PLOVER, 'grid:'), 'sessions[0].grid']);
    expect(place('warm-up-time')).toEqual([PLOVER, content.lineOf(PLOVER, 'warmUp: 20'), 'sessions[0].warmUp']);
    const teasel = 'panels/teasel/index.md';
    expect(place('price-age')).toEqual([teasel, content.lineOf(teasel, '- date: 2026-01-05'), 'prices[0]']);
  });

  test('find the line of an older session in a file that is not in order of days', () => {
    const [head, session] = content.read(PLOVER).split('sessions:\n') as [string, string];
    const body = session.indexOf('\n---');
    const older = `  - date: 2026-02-01\n    methodVersion: 1\n    instruments: { irradiance: thermopile }\n    warmUp: 31\n    peak: { combined: 50 }`;
    content.write(PLOVER, `${head}sessions:\n${session.slice(0, body)}\n${older}${session.slice(body)}`);
    const [warning] = warningsOf(load()).filter((it) => it.check === 'warm-up-time');
    expect(warning).toMatchObject({ line: content.lineOf(PLOVER, 'warmUp: 31'), field: 'sessions[1].warmUp' });
  });

  test('name what belongs to the panel once, however many sessions flag it', () => {
    const [head, session] = content.read(PLOVER).split('sessions:\n') as [string, string];
    content.write(
      PLOVER,
      `${head.replace('width: 24 cm', 'width: 12 cm')}sessions:\n  - { date: 2026-02-01, methodVersion: 1 }\n${session}`,
    );
    expect(warningsOf(load()).filter((it) => it.check === 'field-within-housing')).toHaveLength(1);
  });

  test('of a panel that was never on the bench are there too', () => {
    const head = content.read(PLOVER).split('sessions:\n')[0] as string;
    content.write(PLOVER, `${head.replace('width: 24 cm', 'width: 12 cm')}---\n`);
    expect(warningsOf(load()).map((it) => [it.check, it.line])).toContainEqual([
      'field-within-housing',
      content.lineOf(PLOVER, 'field:'),
    ]);
  });

  test('can be asked for down to a weight', () => {
    breakThree();
    expect(warningsOf(load(), 'doubt').some((it) => it.severity === 'note')).toBe(false);
    expect(warningsOf(load(), 'impossible').every((it) => it.severity === 'impossible')).toBe(true);
    expect(hasImpossible(warningsOf(load()))).toBe(true);
    expect(hasImpossible(warningsOf(load()).filter((it) => it.severity !== 'impossible'))).toBe(false);
  });
});

const WARNING = {
  severity: 'doubt',
  check: 'warm-up-time',
  file: 'content/panels/plover/index.md',
  line: 41,
  field: 'sessions[0].warmUp',
  text: 'The panel was on for 20 s.',
  hint: 'write `20 min`',
  figures: ['mean-irradiance', 'optical-power', 'price-per-watt', 'led-area'],
} as const;

describe('printed', () => {
  test('a block each, with the names of the first figures', () => {
    expect(warningList([WARNING, { ...WARNING, severity: 'note', field: '', line: 1 }])).toBe(
      `doubt  content/panels/plover/index.md:41  sessions[0].warmUp
  odd      The panel was on for 20 s.
  figures  Mean irradiance; Optical power at the reference plane; Price per optical watt; and 1 more
  hint     write \`20 min\`

note  content/panels/plover/index.md:1
  odd      The panel was on for 20 s.
  hint     write \`20 min\``,
    );
  });

  test('what one check says of several figures at one place is one block', () => {
    const other = { ...WARNING, text: 'Likewise.', figures: ['led-area', 'real-price'] };
    const elsewhere = { ...WARNING, field: 'sessions[1].warmUp', line: 80 };
    const blocks = warningList([WARNING, other, elsewhere]).split('\n\n');
    expect(blocks).toHaveLength(2);
    expect(blocks[0]).toContain('  odd      The panel was on for 20 s. And 1 more like it.\n');
    expect(blocks[0]).toContain('; and 2 more\n');
    expect(blocks[1]).toMatch(/:80 {2}sessions\[1\]\.warmUp\n {2}odd {6}The panel was on for 20 s\.\n/);
  });

  test('the sum names each weight that there is', () => {
    const impossible = { ...WARNING, severity: 'impossible' } as const;
    const note = { ...WARNING, severity: 'note' } as const;
    expect(warningCount([impossible, WARNING, WARNING])).toBe('0 problems, 3 warnings: 1 impossible, 2 doubtful');
    expect(warningCount([note])).toBe('0 problems, 1 warning: 1 note');
    expect(warningCount([])).toBe('0 problems, 0 warnings');
  });

  test('as JSON every key is always there', () => {
    const problem = problemJson({ file: 'content/guide.yaml', field: '', found: 'no such file', wanted: 'one' });
    expect(problem).toEqual({
      severity: 'problem',
      file: 'content/guide.yaml',
      line: null,
      field: '',
      check: null,
      found: 'no such file',
      wanted: 'one',
      hint: null,
      figures: [],
    });
    expect(Object.keys(warningJson(WARNING)).toSorted()).toEqual(Object.keys(problem).toSorted());
    expect(warningJson(WARNING)).toMatchObject({ severity: 'doubt', line: 41, found: WARNING.text, wanted: null });
  });
});

describe('telling of a ledger', () => {
  test('is done once, without notes, and not at all where nothing is odd', () => {
    breakThree();
    const said: string[] = [];
    const loaded = load();
    const warnings = tellWarnings(loaded, (text) => said.push(text));
    expect(tellWarnings(loaded, (text) => said.push(text))).toEqual(warnings);
    expect(said).toHaveLength(1);
    expect(said[0]).toContain('impossible  ');
    expect(said[0]).toMatch(/0 problems, \d+ warnings: \d+ impossible, \d+ doubtful; notes are listed by check\.$/);
    expect(said[0]).not.toMatch(/^note/m);
  });

  test('of a sound one prints nothing', () => {
    const said: string[] = [];
    expect(tellWarnings(load(), (text) => said.push(text))).toEqual([]);
    expect(said).toEqual([]);
  });
});
