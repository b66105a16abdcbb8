/** Readings of one channel in the distance sweep: listed, used for the eye, and kept out of what is of both channels. */
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { buildLedger } from '../../src/ledger/build-ledger.ts';
import type { PanelEntry } from '../../src/ledger/ledger.ts';
import { rawReadings } from '../../src/site/calculation/raw-readings.ts';
import { expectProblems } from '../content/rules/expect-problems.ts';
import { figureOf } from '../measure/make.ts';
import { type ContentFolder, TODAY, tinyContent } from '../support/content-folder.ts';

let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
});
afterEach(() => content.delete());

const PLOVER = 'panels/plover/index.md';
const PEAK = '      combined: 52.5\n';
const NEAR = '      - { distance: 6 in, nearInfrared: 25.0 }\n';
const FAR =
  '      - { distance: 30 cm, red: 13.0, nearInfrared: [12.4, 12.6, { value: 31, struck: The lamp was on. }] }\n';

function plover(...entries: string[]): PanelEntry {
  content.edit(PLOVER, PEAK, `${PEAK}    distances:\n${entries.join('')}`);
  return buildLedger(content.content(), { today: TODAY }).panels.get('plover') as PanelEntry;
}
const shareOf = (panel: PanelEntry, at: 'reading' | '30-cm' | '15-cm' | '60-cm') =>
  figureOf(panel.figures.get(`infrared-share-at-${at}`));

describe('near-infrared alone, read before the middle', () => {
  test('gives the share there, raised to the highest reading, with the calibration once', () => {
    const share = shareOf(plover(NEAR, FAR), '30-cm');
    // Mean of the two that count, 12.5, times 26.2 over 25.0, times 10.
    expect(share.value).toBeCloseTo(131, 9);
    expect(share.bound).toBeUndefined();
    const relative = (ending: string) =>
      share.budget.filter((it) => it.source.key.endsWith(ending)).map((it) => Math.abs(it.contribution) / share.value);
    // 4 % at k = 2, of one meter: met three times, with the signs of a product it stays one.
    expect(relative('/calibration')).toEqual([expect.closeTo(0.02, 9)]);
    // Each distance was set anew, and each reading was rounded and repeated by itself.
    expect(relative('/distance')).toHaveLength(3);
    expect(relative('/resolution')).toHaveLength(3);
    expect(relative('/repeatability')).toEqual(Array(3).fill(expect.closeTo(0.008, 9)));
    expect(share.inputs).toContain('plover/2026-10-01/distances[1].nearInfrared');
  });

  test('bounds what lies farther away by itself, and leaves the reading’s own distance alone', () => {
    const panel = plover(NEAR, FAR);
    const there = shareOf(panel, '30-cm');
    expect(shareOf(panel, 'reading').value).toBeCloseTo(262, 9);
    const beyond = shareOf(panel, '60-cm');
    expect(beyond.bound).toBe('below');
    // Rounded up to three digits.
    expect(beyond.value).toBe(Math.ceil(there.interval95?.[1] ?? 0));
  });

  test('without one at the session’s own distance is not used', () => {
    const share = shareOf(plover(FAR), '30-cm');
    expect(share).toMatchObject({ bound: 'below', unit: '%' });
    expect(share.value).toBeGreaterThan(262);
  });
});

test('readings of one channel do not enter the beam of both', () => {
  const without = figureOf(
    buildLedger(content.content(), { today: TODAY }).panels.get('plover')?.figures.get('emitted-power'),
  );
  const panel = plover(NEAR, FAR);
  expect(figureOf(panel.figures.get('emitted-power'))).toEqual(without);
});

test('every one is listed among the raw readings, struck ones with their reason', () => {
  const [session] = plover(NEAR, FAR).sessions;
  if (!session) throw new Error('no session');
  const listed = rawReadings(session).filter((it) => it.path.startsWith('distances'));
  expect(listed.map((it) => [it.path, it.value, it.struck])).toEqual([
    ['distances[0].distance', 15.24, undefined],
    ['distances[0].nearInfrared', 25, undefined],
    ['distances[1].distance', 30, undefined],
    ['distances[1].red', 13, undefined],
    ['distances[1].nearInfrared[0]', 12.4, undefined],
    ['distances[1].nearInfrared[1]', 12.6, undefined],
    ['distances[1].nearInfrared[2]', 31, 'The lamp was on.'],
  ]);
  expect(listed.at(-1)?.label).toBe('sweep, before the middle at distance 2, near-infrared alone, reading 3');
});

test('a distance without any reading is a fault', () => {
  content.edit(PLOVER, PEAK, `${PEAK}    distances:\n      - { distance: 30 cm }\n`);
  expectProblems(content.problems(), {
    file: PLOVER,
    line: content.lineOf(PLOVER, '- { distance: 30 cm }'),
    field: 'sessions[0].distances[0]',
    found: 'a block of fields',
    wanted: 'a reading: centre (both channels on), red or nearInfrared (that channel alone on)',
  });
});
