/** What the ledger says of a panel's beam when the readings or the claim are odd: in words, with the common figure kept. */
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { buildLedger } from '../../src/ledger/build-ledger.ts';
import type { PanelEntry } from '../../src/ledger/ledger.ts';
import { isFigure } from '../../src/measure/figure.ts';
import { type ContentFolder, TODAY, tinyContent } from '../support/content-folder.ts';

let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
});
afterEach(() => content.delete());

const PLOVER = 'panels/plover/index.md';
const ANGLE = '  beamAngle: 60 deg\n';
const GRID = `    grid:
      inset: 1 in
      rows:
        - [31.0, 38.2, 30.8]
        - [40.1, 50.0, 39.9]
        - - 30.6
          - 37.8
          - [31.2, { value: 61.0, struck: The rod had slipped. }]
`;

function plover(): PanelEntry {
  return buildLedger(content.content(), { today: TODAY }).panels.get('plover') as PanelEntry;
}

const gapOf = (panel: PanelEntry, metric: string) => {
  const it = panel.figures.get(metric);
  return it && !isFigure(it) ? it.reason : undefined;
};
const flagsOf = (panel: PanelEntry) => panel.flags.filter((it) => it.check.startsWith('beam-'));
const hasCommon = (panel: PanelEntry) =>
  ['optical-power', 'price-per-watt', 'efficiency-combined'].every((metric) => isFigure(panel.figures.get(metric)));

const CORRECTED = [
  'emitted-power',
  'efficiency-emitted',
  'price-per-emitted-watt',
  'beam-half-angle',
  'capture',
  'sampling-bias',
  'mean-irradiance-at-30-cm',
];

describe('a sound panel', () => {
  test('has every corrected figure beside the common ones, and no flag', () => {
    const panel = plover();
    expect(hasCommon(panel)).toBe(true);
    for (const metric of CORRECTED) expect(isFigure(panel.figures.get(metric)), metric).toBe(true);
    expect(flagsOf(panel)).toEqual([]);
    expect(panel.current?.light.order?.source).toBe('grid');
    expect(panel.byEmitted.rank).toMatchObject({ place: expect.any(Number) });
  });

  test('emitted power is the common one over bias and capture', () => {
    const panel = plover();
    const value = (metric: string) => {
      const it = panel.figures.get(metric);
      return isFigure(it) ? it.value : Number.NaN;
    };
    const bias = 1 + value('sampling-bias') / 100;
    const capture = value('capture') / 100;
    expect(value('emitted-power')).toBeCloseTo(value('optical-power') / (bias * capture), 9);
    expect(value('price-per-emitted-watt')).toBeCloseTo(value('real-price') / value('emitted-power'), 9);
    expect(value('efficiency-emitted')).toBeCloseTo((100 * value('emitted-power')) / value('mains-draw-combined'), 9);
  });

  test('with LEDs counted on the tested piece, they are taken as they were found', () => {
    content.edit(PLOVER, 'field:\n', 'leds: { columns: 6, rows: 10, size: 1 cm }\nfield:\n');
    const it = plover().figures.get('emitted-power');
    expect(isFigure(it) && it.notes[0]).toBe('6 × 10 LEDs, as they were counted');
  });
});

describe('a claimed beam angle that cannot be', () => {
  test.each(['0 deg', '180 deg', '240 deg'])('%s is a flag, and the grid gives the beam', (angle) => {
    content.edit(PLOVER, ANGLE, `  beamAngle: ${angle}\n`);
    const panel = plover();
    expect(flagsOf(panel)).toMatchObject([
      { check: 'beam-not-used', severity: 'doubt', text: expect.stringContaining('is not between 0° and 180°') },
    ]);
    expect(isFigure(panel.figures.get('emitted-power'))).toBe(true);
  });

  test('where nothing else tells the beam, what rests on it is withheld and the common figure kept', () => {
    content.edit(PLOVER, ANGLE, '  beamAngle: 180 deg\n');
    // One distance is no sweep; its one reading gives no shape.
    content.edit(PLOVER, GRID, '    distances: [{ distance: 6 in, centre: 50 }]\n');
    const panel = plover();
    expect(flagsOf(panel)).toMatchObject([{ check: 'beam-withheld', severity: 'doubt' }]);
    expect(flagsOf(panel)[0]?.text).toContain('the sweep has one distance only');
    expect(flagsOf(panel)[0]?.text).toContain('is not between 0° and 180°');
    for (const metric of CORRECTED) expect(gapOf(panel, metric), metric).toBe('the sweep has one distance only');
    expect(panel.byEmitted).toEqual({ rank: undefined, rankAbsent: 'the sweep has one distance only' });
  });
});

describe('a sweep', () => {
  test('of one distance is a flag, and the grid gives the beam', () => {
    content.edit(PLOVER, GRID, `${GRID}    distances: [{ distance: 30 cm, centre: 30 }]\n`);
    const panel = plover();
    expect(flagsOf(panel)).toMatchObject([
      {
        check: 'beam-not-used',
        severity: 'note',
        text: 'The distance sweep did not give the beam: the sweep has one distance only.',
      },
    ]);
    expect(panel.current?.light.order?.source).toBe('grid');
  });

  test('of struck-out readings alone is as good as none', () => {
    const struck = '{ value: 30, struck: A lamp was on. }';
    content.edit(PLOVER, GRID, `${GRID}    distances: [{ distance: 30 cm, centre: ${struck} }]\n`);
    expect(flagsOf(plover())).toEqual([]);
  });

  test('that grows with the distance fits no beam: a flag, and the grid is used', () => {
    const rising = [10, 20, 40, 60].map((cm) => `{ distance: ${cm} cm, centre: ${cm} }`).join(', ');
    content.edit(PLOVER, GRID, `${GRID}    distances: [${rising}]\n`);
    const panel = plover();
    expect(flagsOf(panel).map((it) => it.check)).toContain('beam-not-used');
    expect(panel.current?.light.order?.source).toBe('grid');
  });
});

describe('a grid that no beam explains', () => {
  test('withholds what is corrected, whatever is claimed; the common figure stays', () => {
    content.edit(PLOVER, '[31.0, 38.2, 30.8]', '[61.0, 38.2, 30.8]');
    const panel = plover();
    expect(hasCommon(panel)).toBe(true);
    expect(flagsOf(panel).map((it) => it.check)).toEqual(['beam-withheld']);
    expect(flagsOf(panel)[0]?.text).toContain('no beam of an even panel explains the grid');
    for (const metric of CORRECTED) {
      expect(gapOf(panel, metric), metric).toBe('no beam of an even panel explains the grid');
    }
    expect(panel.rank).toBeDefined();
    expect(panel.byEmitted.rankAbsent).toBe('no beam of an even panel explains the grid');
  });
});

test('a session that names no meter has no corrected figure, and says so', () => {
  content.edit(PLOVER, '      irradiance: thermopile\n', '');
  const panel = plover();
  expect(gapOf(panel, 'emitted-power')).toBe('the session does not name the meter');
  expect(flagsOf(panel)).toEqual([]);
});
