import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { buildLedger } from '../../src/ledger/build-ledger.ts';
import { standardEntries } from '../../src/ledger/standards.ts';
import { isFigure } from '../../src/measure/figure.ts';
import { type ContentFolder, TODAY, tinyContent } from '../support/content-folder.ts';

let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
});
afterEach(() => content.delete());

/** Six days in spring and summer, and those given; the session of the Plover is on 2026-10-01. */
function lamp(days: string, more = '') {
  const first = [41.0, 41.4, 40.9, 41.2, 41.5].map((it, i) => `  - { date: 2026-0${i + 2}-02, value: ${it} }`);
  content.write(
    'standards/lamp.yaml',
    `name: Lamp\nwhat: LEDs.\ninstrument: thermopile\nlimitsFrom: 5\nreadings:\n${first.join('\n')}\n${days}\n${more}`,
  );
}

const plover = () => {
  const panel = buildLedger(content.content(), { today: TODAY }).panels.get('plover');
  if (!panel) throw new Error('the Plover is not there');
  return panel;
};
const flags = () => plover().flags.filter((it) => it.check === 'check-standard');

describe('a session', () => {
  test('is in doubt where the standard was beyond its limits on its day', () => {
    lamp('  - { date: 2026-10-01, value: 42.6 }');
    expect(flags()).toMatchObject([
      {
        severity: 'doubt',
        finding: { code: 'standard-beyond-limits', id: 'lamp', value: 42.6, date: '2026-10-01', unit: 'mW/cm²' },
      },
    ]);
  });

  test('passes it on to all that rests on the meter, and to nothing in which its error cancels', () => {
    lamp('  - { date: 2026-10-01, value: 42.6 }');
    const doubted = [...plover().figures.values()]
      .filter(isFigure)
      .filter((it) => it.flags.some((flag) => flag.check === 'check-standard'))
      .map((it) => it.metric);
    expect(doubted).toEqual(
      expect.arrayContaining(['mean-irradiance', 'peak-irradiance-combined', 'optical-power', 'price-per-watt']),
    );
    for (const free of ['led-area', 'uniformity-min-mean', 'mains-draw-combined', 'real-price'] as const) {
      expect(doubted).not.toContain(free);
    }
  });

  test('moves no figure by it', () => {
    const values = () =>
      [...plover().figures.values()].map((it) => isFigure(it) && [it.metric, it.value, it.interval95]);
    const before = values();
    lamp('  - { date: 2026-10-01, value: 42.6 }');
    expect(values()).toEqual(before);
  });

  test('takes the nearest day within a week, and no other', () => {
    lamp('  - { date: 2026-09-24, value: 42.6 }');
    expect(flags()).toMatchObject([{ severity: 'doubt', finding: { date: '2026-09-24', session: '2026-10-01' } }]);
    lamp('  - { date: 2026-09-23, value: 42.6 }');
    expect(flags()).toMatchObject([{ severity: 'note', finding: { code: 'standard-not-read', days: 7 } }]);
    lamp('  - { date: 2026-09-23, value: 42.6 }', 'nearDays: 8\n');
    expect(flags()).toMatchObject([{ severity: 'doubt' }]);
  });

  test('is as it was where the standard held, or was not kept yet', () => {
    lamp('  - { date: 2026-10-01, value: 41.3 }');
    expect(flags()).toEqual([]);
    content.write(
      'standards/lamp.yaml',
      'name: Lamp\nwhat: LEDs.\ninstrument: thermopile\nreadings:\n  - { date: 2026-11-02, value: 41 }\n',
    );
    expect(flags()).toEqual([]);
  });

  test('is as it was where the meter is another', () => {
    lamp('  - { date: 2026-10-01, value: 42.6 }');
    content.edit('standards/lamp.yaml', 'instrument: thermopile', 'instrument: wattmeter');
    const concerned = plover().flags.find((it) => it.check === 'check-standard')?.concerns ?? [];
    expect(concerned).not.toContain('mean-irradiance');
    expect(concerned).toContain('mains-draw-combined');
  });

  test('is judged by a reading in another unit alike, and by none that was struck out', () => {
    lamp('  - { date: 2026-10-01, value: 426 W/m2 }');
    expect(flags()).toMatchObject([{ severity: 'doubt', finding: { value: 42.6 } }]);
    lamp('  - { date: 2026-10-01, value: [41.3, { value: 52, struck: a slip }] }');
    expect(flags()).toEqual([]);
    lamp('  - { date: 2026-10-01, value: { value: 42.6, struck: a slip } }');
    expect(flags()).toMatchObject([{ severity: 'note' }]);
  });
});

describe('a chart', () => {
  test('tells when the meter was calibrated meanwhile, and what its repeatability would make', () => {
    lamp('  - { date: 2026-10-01, value: [41.3, 41.2, 41.1, 41.4] }');
    content.edit(
      'instruments/thermopile.yaml',
      'calibrations:\n',
      'calibrations:\n  - { date: 2026-05-05, validMonths: 24, relative: 4, reference: Invented }\n',
    );
    const [entry] = standardEntries(content.content());
    expect(entry?.calibrated).toEqual(['2026-05-05']);
    // 0.8 % of 41.2 for single readings, as most days have them.
    expect(entry?.expectedSigma).toBeCloseTo(0.3296, 4);
    expect(entry?.isRelative).toBe(true);
    expect(entry?.usedUp).toBeUndefined();
  });

  test('of a steep drift tells by when it has gone as far as the calibration’s uncertainty', () => {
    const days = Array.from(
      { length: 8 },
      (_, i) => `  - { date: 2026-0${i + 1}-20, value: ${(41.2 - 0.3 * i).toFixed(1)} }`,
    );
    content.write(
      'standards/lamp.yaml',
      `name: Lamp\nwhat: LEDs.\ninstrument: thermopile\nlimitsFrom: 5\nreadings:\n${days.join('\n')}\n`,
    );
    const [entry] = standardEntries(content.content());
    expect(entry?.current.drift?.isTold).toBe(true);
    // 4 % of 40.6 at 3.6 a year.
    expect(entry?.usedUp?.calibrated).toBe('2026-01-15');
    expect(Math.abs((entry?.usedUp?.days ?? 0) - (0.04 * 40.6 * 365.25) / 3.6)).toBeLessThan(6);
  });
});
