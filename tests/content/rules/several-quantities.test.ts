/** One instrument that reads several quantities: a block each, and what holds for all of them once. */
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { buildLedger } from '../../../src/ledger/build-ledger.ts';
import { isFigure } from '../../../src/measure/figure.ts';
import { instrumentsData, usedData } from '../../../src/site/export/instruments-data.ts';
import { warningsOf } from '../../../src/site/warnings/warnings.ts';
import { type ContentFolder, TODAY, tinyContent } from '../../support/content-folder.ts';
import { expectProblems } from './expect-problems.ts';

let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
});
afterEach(() => content.delete());

const PLOVER = 'panels/plover/index.md';
const METER = 'instruments/room-meter.yaml';
/** What coil.yaml and sound-meter.yaml say, in one file. */
const TEXT = `name: Room meter
calibrations:
  - { date: 2026-01-18, validMonths: 24, relative: 6, absolute: 0.1, reference: Invented }
quantities:
  magnetic:
    unit: mG
    range: { from: 0.2, to: 2000 }
    response: 16 Hz to 30 kHz.
    resolution: 0.1
  sound:
    unit: dB(A)
    range: { from: 30, to: 130 }
    response: A-weighted, max hold.
    resolution: 0.1
    calibrations:
      - { date: 2026-01-18, validMonths: 12, relative: 0, absolute: 1.4, reference: Invented }
note: Reads two things.
`;

function lay(text = TEXT): void {
  content.write(METER, text);
  content.edit(PLOVER, 'magnetic: coil', 'magnetic: room-meter');
  content.edit(PLOVER, 'sound: sound-meter', 'sound: room-meter');
}

describe('an instrument of two quantities', () => {
  test('gives the figures that two instruments would', () => {
    const figures = () => {
      const session = buildLedger(content.content(), { today: TODAY }).panels.get('plover')?.sessions[0];
      const all = [...(session?.figures.values() ?? [])].filter(isFigure);
      return new Map(all.map((it) => [it.metric, [it.value, it.standardUncertainty, it.interval95]]));
    };
    const before = figures();
    lay();
    expect(figures()).toEqual(before);
    expect(before.get('magnetic-field-on')?.[1]).toBeGreaterThan(0);
  });

  test('has an error of its own for each, though both were calibrated on one day', () => {
    lay();
    const session = buildLedger(content.content(), { today: TODAY }).panels.get('plover')?.sessions[0];
    const keys = new Set(
      [...(session?.figures.values() ?? [])]
        .filter(isFigure)
        .flatMap((it) => it.budget.map(({ source }) => source.key)),
    );
    expect([...keys].filter((it) => it.startsWith('room-meter')).toSorted()).toEqual([
      'room-meter:magnetic@2026-01-18/calibration',
      'room-meter:magnetic@2026-01-18/offset',
      'room-meter:sound@2026-01-18/offset',
    ]);
    expect(session?.instruments.filter((it) => it.id === 'room-meter')).toMatchObject([
      { kind: 'magnetic', name: 'Room meter (magnetic)', unit: 'mG', calibration: { due: '2028-01-18' } },
      { kind: 'sound', name: 'Room meter (sound)', unit: 'dB(A)', calibration: { due: '2027-01-18' } },
    ]);
  });

  test('is told apart in the data files', () => {
    lay();
    const ledger = buildLedger(content.content(), { today: TODAY });
    const data = instrumentsData(ledger);
    expect(data['room-meter:magnetic']?.['2026-01-18']?.holds_until).toBe('2028-01-18');
    expect(data['room-meter:sound']?.['2026-01-18']?.holds_until).toBe('2027-01-18');
    const [session] = ledger.panels.get('plover')?.sessions ?? [];
    expect(session && usedData(session)).toMatchObject({ magnetic: ['room-meter:magnetic', '2026-01-18'] });
    expect(ledger.instruments.find((it) => it.id === 'room-meter')).toMatchObject({
      quantities: [{ due: '2028-01-18' }, { due: '2027-01-18' }],
      usedIn: [{ slug: 'plover' }],
    });
  });

  test('a calibration that has run out doubts the figures of its quantity alone', () => {
    lay(TEXT.replace('validMonths: 12', 'validMonths: 1'));
    const { content: all, ledger } = {
      content: content.content(),
      ledger: buildLedger(content.content(), { today: TODAY }),
    };
    const [warning] = warningsOf({ content: all, ledger }).filter((it) => it.check === 'calibration-valid');
    expect(warning?.figures.length).toBeGreaterThan(0);
    expect(warning?.figures.join()).toContain('sound');
    expect(warning?.figures.join()).not.toContain('magnetic');
  });
});

describe('what its file has wrong', () => {
  const at = (text: string) => ({ file: METER, line: content.lineOf(METER, text) });

  test('all that is missing is told at once', () => {
    lay(TEXT.replace('    range: { from: 30, to: 130 }\n', '').replace('    response: 16 Hz to 30 kHz.\n', ''));
    expect(content.problems().map((it) => [it.field, it.found])).toEqual([
      ['quantities.magnetic.response', 'nothing'],
      ['quantities.sound.range', 'nothing'],
    ]);
  });

  test('a unit of something else, a share of a level, a field that its kind has not', () => {
    lay(
      TEXT.replace('unit: mG', 'unit: V/m')
        .replace('relative: 0,', 'relative: 3,')
        .replace('note:', 'repeatability: 1\nnote:'),
    );
    expectProblems(
      content.problems(),
      {
        ...at('unit: V/m'),
        field: 'quantities.magnetic.unit',
        found: '"V/m"',
        wanted: /^a unit of what it measures: uT, /,
      },
      {
        ...at('relative: 3'),
        field: 'quantities.sound.calibrations[0].relative',
        found: '3',
        wanted: /no share of the reading/,
      },
      { ...at('repeatability: 1'), field: 'repeatability', found: '1', wanted: /^no such field beside quantities/ },
    );
  });

  test('both forms in one file', () => {
    lay(TEXT.replace('quantities:', 'measures: magnetic\nquantities:'));
    expectProblems(content.problems(), {
      ...at('measures: magnetic'),
      field: 'measures',
      found: '"magnetic"',
      wanted: 'no such field beside quantities: it belongs into the block of one of them (What it reads)',
    });
  });

  test('a reading over its range, a session before its calibration, a quantity that it does not read', () => {
    lay(
      TEXT.replace('to: 130', 'to: 40').replace(
        '{ date: 2026-01-18, validMonths: 12',
        '{ date: 2026-10-18, validMonths: 12',
      ),
    );
    content.edit(PLOVER, '      mains: wattmeter', '      mains: room-meter');
    const problems = content.problems();
    expect(problems.map((it) => it.field)).toEqual([
      'sessions[0].instruments.mains',
      'sessions[0].instruments.sound',
      'sessions[0].sound.on',
    ]);
    expect(problems.map((it) => it.wanted)).toEqual([
      'an instrument for mains that has a file in content/instruments: wattmeter',
      'a meter that was calibrated by the day of the session, 2026-10-01; this one first was on 2026-10-18',
      'a reading that the meter can show: the room meter ends at 40 dB(A)',
    ]);
    expect(problems[0]?.hint).toBe('"room-meter" measures magnetic, sound');
  });

  test('a day that lies ahead in a block', () => {
    lay(TEXT.replace('2026-01-18, validMonths: 12', '2027-01-18, validMonths: 12'));
    expect(content.problems().map((it) => it.field)).toContain('quantities.sound.calibrations[0].date');
  });
});
