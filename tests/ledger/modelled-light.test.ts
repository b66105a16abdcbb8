/** What the ledger says of a panel's beam when the readings or the claim are odd: in words, with the common figure kept. */
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { buildLedger } from '../../src/ledger/build-ledger.ts';
import type { PanelEntry } from '../../src/ledger/ledger.ts';
import { isFigure } from '../../src/measure/figure.ts';
import type { MetricId } from '../../src/measure/metrics.ts';
import { say } from '../../src/words/say.ts';
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

const gapOf = (panel: PanelEntry, metric: MetricId) => {
  const it = panel.figures.get(metric);
  return it && !isFigure(it) ? say(it.reason) : undefined;
};
const flagsOf = (panel: PanelEntry) => panel.flags.filter((it) => it.check.startsWith('beam-'));
const hasCommon = (panel: PanelEntry) =>
  (['optical-power', 'price-per-watt', 'efficiency-combined'] as const).every((metric) =>
    isFigure(panel.figures.get(metric)),
  );

const CORRECTED: readonly MetricId[] = [
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
    expect(panel.current?.light.source).toBe('grid');
    expect(panel.byEmitted.rank).toMatchObject({ place: expect.any(Number) });
  });

  test('emitted power is about the common one over bias and capture', () => {
    const panel = plover();
    const value = (metric: MetricId) => {
      const it = panel.figures.get(metric);
      return isFigure(it) ? it.value : Number.NaN;
    };
    const bias = 1 + value('sampling-bias') / 100;
    const capture = value('capture') / 100;
    // Less what is not light straight from the panel, which is a part in a hundred or so.
    const emitted = value('optical-power') / (bias * capture);
    expect(Math.abs(value('emitted-power') / emitted - 1)).toBeLessThan(0.03);
    expect(value('price-per-emitted-watt')).toBeCloseTo(value('real-price') / value('emitted-power'), 9);
    expect(value('efficiency-emitted')).toBeCloseTo((100 * value('emitted-power')) / value('mains-draw-combined'), 9);
  });

  test('with LEDs counted on the tested piece, they are taken as they were found', () => {
    content.edit(PLOVER, 'field:\n', 'leds: { columns: 6, rows: 10, size: 1 cm }\nfield:\n');
    const it = plover().figures.get('emitted-power');
    expect(isFigure(it) && it.notes[0] && say(it.notes[0])).toBe('6 × 10 LEDs, as they were counted');
  });
});

describe('a claimed beam angle', () => {
  test.each(['0 deg', '240 deg'])('of %s is named as ruled out, and moves no figure', (angle) => {
    const before = plover().figures.get('emitted-power');
    content.edit(PLOVER, ANGLE, `  beamAngle: ${angle}\n`);
    const panel = plover();
    expect(flagsOf(panel)).toMatchObject([{ check: 'beam-claim', severity: 'note', concerns: ['beam-half-angle'] }]);
    expect(panel.figures.get('emitted-power')).toMatchObject({ value: isFigure(before) ? before.value : Number.NaN });
  });
});

describe('a sweep', () => {
  test('of one distance alone tells nothing: what rests on the beam is withheld, and the common figure kept', () => {
    content.edit(PLOVER, GRID, '    distances: [{ distance: 6 in, centre: 50 }]\n');
    const panel = plover();
    expect(flagsOf(panel)).toMatchObject([{ check: 'beam-withheld', severity: 'doubt' }]);
    const reason = 'fewer than 4 readings at different places: they tell nothing of the beam';
    for (const metric of CORRECTED) expect(gapOf(panel, metric), metric).toBe(reason);
    expect(panel.byEmitted.rank).toBeUndefined();
    expect(panel.byEmitted.rankAbsent && say(panel.byEmitted.rankAbsent)).toBe(reason);
  });

  test('of struck-out readings alone is as good as none', () => {
    const struck = '{ value: 30, struck: A lamp was on. }';
    content.edit(PLOVER, GRID, `${GRID}    distances: [{ distance: 30 cm, centre: ${struck} }]\n`);
    expect(flagsOf(plover())).toEqual([]);
    expect(plover().current?.light.source).toBe('grid');
  });

  test('that grows with the distance fits no beam: the figures are withheld, whatever the grid says', () => {
    const rising = [10, 20, 40, 60].map((cm) => `{ distance: ${cm} cm, centre: ${cm} }`).join(', ');
    content.edit(PLOVER, GRID, `${GRID}    distances: [${rising}]\n`);
    const panel = plover();
    expect(flagsOf(panel).map((it) => it.check)).toEqual(['beam-withheld']);
    expect(gapOf(panel, 'emitted-power')).toBe('no beam that we know of explains the readings');
    expect(hasCommon(panel)).toBe(true);
  });
});

describe('a grid that no beam explains', () => {
  test('withholds what is corrected, whatever is claimed; the common figure stays', () => {
    content.edit(PLOVER, '[31.0, 38.2, 30.8]', '[61.0, 38.2, 30.8]');
    const panel = plover();
    expect(hasCommon(panel)).toBe(true);
    expect(flagsOf(panel).map((it) => it.check)).toEqual(['beam-withheld']);
    expect(flagsOf(panel).map((it) => it.finding)).toEqual([
      { code: 'beam-withheld', because: { code: 'beam-unexplained' } },
    ]);
    for (const metric of CORRECTED) {
      expect(gapOf(panel, metric), metric).toBe('no beam that we know of explains the readings');
    }
    expect(panel.rank).toBeDefined();
    expect(panel.byEmitted.rankAbsent).toEqual({ code: 'beam-unexplained' });
  });
});

test('a session that names no meter has no corrected figure, and says so', () => {
  content.edit(PLOVER, '      irradiance: thermopile\n', '');
  const panel = plover();
  expect(gapOf(panel, 'emitted-power')).toBe('the session does not name the meter');
  expect(flagsOf(panel)).toEqual([]);
});
