/**
 * Slips that testers make and that once passed in silence. Each is made in a copy of a good panel; what is printed has
 * to lead to the line, and to say by its weight whether the guide may be built with it.
 */

import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { ContentError, problemList } from '../../../src/content/read/problem-list.ts';
import { type Loaded, loadLedger } from '../../../src/ledger/load-ledger.ts';
import type { Warning } from '../../../src/site/warnings/warning.ts';
import { warningList } from '../../../src/site/warnings/warning-list.ts';
import { warningsOf } from '../../../src/site/warnings/warnings.ts';
import { told } from '../../measure/make.ts';
import { type ContentFolder, TODAY, tinyContent } from '../../support/content-folder.ts';

const PLOVER = 'panels/plover/index.md';
const INSTRUMENT = 'instruments/thermopile.yaml';

let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
  // Other panels on the same bench, so that there is a room to compare with.
  for (const name of ['dunlin', 'knot', 'ruff']) {
    content.write(
      `panels/${name}/index.md`,
      content.read(PLOVER).replace('model: Plover', `model: ${name}`).replace('off: <0.2 mG', 'off: 0.5 mG'),
    );
  }
  vi.stubEnv('LEDGER_TODAY', TODAY);
});
afterEach(() => {
  vi.unstubAllEnvs();
  content.delete();
});

const load = (): Loaded => loadLedger({ folder: content.folder, drafts: true, watch: true });

/** What `check` prints: problems, or else warnings. */
function printed(): string {
  try {
    return warningList(warningsOf(load()));
  } catch (error) {
    if (!(error instanceof ContentError)) throw error;
    return problemList(error.problems);
  }
}

/** The block of a list that starts with a place. */
const blockAt = (list: string, start: string) => list.split('\n\n').filter((it) => it.startsWith(start));

interface Slip {
  name: string;
  file?: string;
  from: string;
  to: string;
  /** A text on the line that the message has to lead to; `to` where left out. */
  at?: string;
  field: string;
  weight: 'problem' | Warning['severity'];
  says: string[];
}

const SLIPS: Slip[] = [
  {
    name: 'a price with a sign between thousands',
    from: 'paid: 200',
    to: 'paid: 4.790',
    field: 'prices[1].paid',
    weight: 'problem',
    says: ['found   4.790', 'write 4790, or 4.79'],
  },
  {
    name: 'more paid than the list price',
    from: 'paid: 200',
    to: 'paid: 300',
    field: 'prices[1].paid',
    weight: 'doubt',
    says: ['300 GBP was paid, more than the list price of 250 GBP'],
  },
  {
    name: 'two prices on one day',
    from: 'date: 2026-11-01',
    to: 'date: 2026-08-01 # again',
    field: 'prices[1].date',
    weight: 'problem',
    says: ['one price a day'],
  },
  {
    name: 'a field in millimetres typed as centimetres',
    from: 'width: 20 cm\n  height: 30 cm',
    to: 'width: 200 # mm\n  height: 300',
    at: 'field:',
    field: 'field',
    weight: 'impossible',
    says: ['The LED field, 200 × 300 cm, does not fit into the housing'],
  },
  {
    name: 'a reading above the range of the meter',
    from: 'combined: 52.5',
    to: 'combined: 352.5',
    field: 'sessions[0].peak.combined',
    weight: 'problem',
    says: ['the thermopile ends at 300 mW/cm2'],
  },
  {
    name: 'a calibration of 0',
    file: INSTRUMENT,
    from: 'relative: 4',
    to: 'relative: 0',
    field: 'relative',
    weight: 'problem',
    says: ['no calibration is exact'],
  },
  {
    name: 'a calibration as a fraction',
    file: INSTRUMENT,
    from: 'relative: 4',
    to: 'relative: 0.04',
    field: 'relative',
    weight: 'doubt',
    says: ['A calibration of 0.04 % is better than meters for irradiance reach', 'write 4'],
  },
  {
    name: 'a warm-up of 20 without its unit',
    from: 'warmUp: 40 min',
    to: 'warmUp: 20',
    field: 'sessions[0].warmUp',
    weight: 'doubt',
    says: ['The panel was on for 20 s', 'write `20 min`'],
  },
  {
    name: 'a distance of 6 without its unit',
    from: '    distance: 6 in\n    peak:',
    to: '    distance: 6 #\n    peak:',
    at: 'distance: 6 #',
    field: 'sessions[0].distance',
    weight: 'doubt',
    says: ['The bench distance is 6 cm', 'write `6 in`'],
  },
  {
    name: 'flicker as a fraction',
    from: 'percent: 0.7',
    to: 'percent: 0.14',
    field: 'sessions[0].flicker.combined.percent',
    weight: 'doubt',
    says: ['Flicker of 0.14 % is odd', 'write `14 %`'],
  },
  {
    name: 'shares as fractions',
    from: '- { peak: 660 nm, share: 50 % }\n    - { peak: 850 nm, share: 50 % }',
    to: '- { peak: 660 nm, share: 0.5 }\n    - { peak: 850 nm, share: 0.5 }',
    at: 'peak: 660 nm',
    field: 'claims.wavelengths[0].share',
    weight: 'problem',
    says: ['these add up to 1 %', 'write 50 for 0.5'],
  },
  {
    name: 'milligauss typed as microtesla',
    from: 'off: <0.2 mG, on: 4.3 mG',
    to: 'off: 0.5, on: 4.3',
    field: 'sessions[0].magnetic.off',
    weight: 'doubt',
    says: ['more than 0.4 µT is rarely met', '10 times that of the other 3 sessions'],
  },
  {
    name: 'a session before the calibration of its meter',
    from: '- date: 2026-10-01',
    to: '- date: 2026-01-14',
    at: 'irradiance: thermopile',
    field: 'sessions[0].instruments.irradiance',
    weight: 'problem',
    says: ['calibrated by the day of the session, 2026-01-14; this one first was on 2026-01-15'],
  },
  {
    name: 'a session that names no meter of light',
    from: '      irradiance: thermopile\n',
    to: '',
    at: 'instruments:',
    field: 'sessions[0].instruments',
    weight: 'doubt',
    says: ['names no meter for irradiance', 'the panel is not ranked'],
  },
  {
    name: 'one maker and model in two folders',
    file: 'panels/ruff/index.md',
    from: 'model: ruff',
    to: 'model: " plover"',
    field: 'model',
    weight: 'problem',
    says: ['has it too', 'panels/plover/index.md'],
  },
];

test('the good panel gives no problem, nothing impossible and no doubt', () => {
  expect(warningsOf(load(), 'doubt')).toEqual([]);
  expect(printed()).not.toMatch(/^(doubt|impossible|ContentError)/m);
});

describe('a slip', () => {
  test.each(SLIPS.map((it) => [it.name, it] as const))('%s', (_name, slip) => {
    const { file = PLOVER, from, to, at = to, weight, says } = slip;
    // The paths in an instrument's file depend on whether it has one calibration or a list of them.
    content.edit(file, from, to);
    const line = content.lineOf(file, at);
    const place = `${content.folder}/${file}:${line}`;
    const blocks = blockAt(printed(), weight === 'problem' ? place : `${weight}  ${place}`);
    const text = blocks.join('\n');
    expect(text.split('\n')[0]).toMatch(new RegExp(`${slip.field.replace(/[[\]]/g, '\\$&')}$`));
    for (const part of says) expect(text).toContain(part);
  });

  test('that stops is told of once, at its own line', () => {
    for (const { file = PLOVER, from, to, weight } of SLIPS) {
      if (weight !== 'problem') continue;
      const before = content.read(file);
      content.edit(file, from, to);
      const problems = content.problems();
      // A session before all of its calibrations has a problem for each meter.
      const fields = problems.map((it) => it.field.replace(/instruments\..*/, 'instruments'));
      expect(new Set(fields).size, `${from} to ${to}`).toBe(1);
      content.write(file, before);
    }
  });

  test('of a meter that is not named takes the panel out of the ranking, with the reason', () => {
    content.edit(PLOVER, '      irradiance: thermopile\n', '');
    const plover = load().ledger.panels.get('plover');
    expect(plover?.rank).toBeUndefined();
    expect(plover?.byEmitted.rank).toBeUndefined();
    expect(told(plover?.rankAbsent)).toBe('its range is not known: the session does not name the meter');
  });
});

describe('what is not a slip', () => {
  test.each([
    ['a price with two decimals', PLOVER, 'paid: 200', 'paid: 199.95'],
    ['a reading at the end of the range', PLOVER, 'combined: 52.5', 'combined: 300'],
    ['a reading over the range that was struck out', PLOVER, 'value: 61.0', 'value: 999'],
    ['a display at its end', PLOVER, 'on: 4.3 mG', 'on: ">2000 mG"'],
    ['three decimals elsewhere', PLOVER, 'weight: 9 lb', 'weight: 4.082'],
    ['a session on the day of the calibration', PLOVER, '- date: 2026-10-01', '- date: 2026-01-20'],
    [
      'thirds',
      PLOVER,
      'share: 50 % }\n    - { peak: 850 nm, share: 50 %',
      'share: 66.7 }\n    - { peak: 850 nm, share: 33.3',
    ],
    ['a calibration of 0.2 %', INSTRUMENT, 'relative: 4', 'relative: 0.2'],
    ['another model of the maker', 'panels/ruff/index.md', 'model: ruff', 'model: Plover II'],
  ])('%s stops nothing', (_name, file, from, to) => {
    content.edit(file, from, to);
    expect(content.problems()).toEqual([]);
  });

  test('a currency of thousandths has three decimals', () => {
    content.edit('guide.yaml', 'currency: GBP', 'currency: KWD');
    for (const name of ['plover', 'dunlin', 'knot', 'ruff']) content.edit(`panels/${name}/index.md`, 'GBP', 'KWD');
    content.edit(PLOVER, 'paid: 200', 'paid: 4.790');
    expect(content.problems()).toEqual([]);
  });
});

test('a meter’s wrong range is told of once a session, at the highest reading', () => {
  content.edit(INSTRUMENT, 'to: 300', 'to: 35');
  const problems = content.problems().filter((it) => it.file.includes('plover'));
  expect(problems).toMatchObject([
    { field: 'sessions[0].peak.combined', found: '52.5, the highest of 6 readings above its range' },
  ]);
});
