import { beforeAll, expect, test } from 'vitest';
import type { PanelEntry } from '../../../src/ledger/ledger.ts';
import { eyeStrip } from '../../../src/site/panel/eye-strip.ts';
import type { PieceElement } from '../../../src/site/shared/browser/pieces.ts';
import { type Demo, demoLedger } from '../../support/demo-ledger.ts';
import { secondsIn, TIME } from '../../support/time-in.ts';

let demo: Demo;
beforeAll(() => {
  demo = demoLedger();
});

const marksOf = (it: PieceElement | undefined) =>
  (it?.pieces as PieceElement[] | undefined)
    ?.filter((one) => one.tag === 'text' && one.attributes.class === 'mark')
    .map((one) => String(one.pieces[0]));

test('a panel whose near-infrared was read at several distances has a mark for each', () => {
  const it = eyeStrip(demo.panel('fennimarsh-sedge'));
  expect(marksOf(it?.drawing)).toEqual(['15 cm', '30 cm', '60 cm']);
  expect(it?.isBorrowed).toBe(false);
  const label = String(it?.drawing?.attributes['aria-label']);
  const times = [...label.matchAll(new RegExp(`at ([\\d.]+) cm after (${TIME})`, 'g'))];
  const limits = demo.panel('fennimarsh-sedge').current?.limits ?? [];
  expect(times).toHaveLength(3);
  for (const [, distance, told] of times) {
    const own = limits.find((one) => one.hazard === 'infrared-time' && one.distance === Number(distance));
    if (own?.hazard !== 'infrared-time') throw new Error(`nothing at ${distance} cm`);
    // Rounded to the short side.
    expect(secondsIn(told ?? '')).toBeLessThanOrEqual(own.cautiousSeconds ?? 0);
    expect(secondsIn(told ?? '')).toBeGreaterThan(0.98 * (own.cautiousSeconds ?? 0));
  }
});

test('where nobody read farther away, the reading counts there, and one mark says so', () => {
  const it = eyeStrip(demo.panel('kelpwright-gannet'));
  expect(marksOf(it?.drawing)).toEqual(['15 to 60 cm']);
  expect(it?.isBorrowed).toBe(true);
});

test('where the standard limits no time there is no strip, and it is said', () => {
  const it = eyeStrip(demo.panel('ostrel-lill'));
  expect(it?.drawing).toBeUndefined();
  expect(it?.untimed).toBe('15.24 cm, 30 cm and 60 cm');
});

test('nothing is told where near-infrared was not read, or where there was no session', () => {
  expect(eyeStrip(demo.panel('quennick-dab'))).toBeUndefined();
  expect(eyeStrip({ ...demo.panel('quennick-dab'), current: undefined } as PanelEntry)).toBeUndefined();
});

test('a distance a few millimetres from the reading is not told twice', () => {
  for (const panel of demo.ledger.panels.values()) {
    const label = String(eyeStrip(panel)?.drawing?.attributes['aria-label'] ?? '');
    expect(label.includes('at 15.24 cm') && label.includes('at 15 cm'), panel.slug).toBe(false);
  }
});
