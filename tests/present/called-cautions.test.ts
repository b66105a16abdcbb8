/** Cautions stand beside the figures that call for them; a missing reading calls for none and promises nothing. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { buildLedger } from '../../src/ledger/build-ledger.ts';
import type { PanelEntry } from '../../src/ledger/ledger.ts';
import { METRICS } from '../../src/measure/metrics.ts';
import { calledCautions } from '../../src/present/called-cautions.ts';
import { DEMO_FOLDER, TODAY, tinyContent } from '../support/content-folder.ts';
import { type Demo, demoLedger } from '../support/demo-ledger.ts';

let demo: Demo;
beforeAll(() => {
  demo = demoLedger();
});

const anchors = (slug: string) => calledCautions(demo.panel(slug), 'EUR').map((it) => it.anchor);
const textOf = (slug: string, anchor: string) =>
  calledCautions(demo.panel(slug), 'EUR').find((it) => it.anchor === anchor)?.text ?? '';

function changed(...edits: Array<[from: string, to: string]>) {
  const content = tinyContent();
  try {
    for (const [from, to] of edits) content.edit('panels/plover/index.md', from, to);
    const panel = buildLedger(content.content(), { today: TODAY }).panels.get('plover') as PanelEntry;
    return calledCautions(panel, 'EUR');
  } finally {
    content.delete();
  }
}

test('every caution leads to a place on the page of cautions, and concerns figures that exist', () => {
  const page = readFileSync(join(DEMO_FOLDER, 'cautions.mdx'), 'utf8');
  const headings = [...page.matchAll(/^#+ (.+)$/gm)].map((it) =>
    (it[1] ?? '')
      .toLowerCase()
      .replace(/[^a-z0-9 -]/g, '')
      .trim()
      .replace(/ /g, '-'),
  );
  const metrics = METRICS.map((it) => it.id);
  for (const panel of demo.ledger.panels.values()) {
    for (const it of calledCautions(panel, 'EUR')) {
      expect(headings).toContain(it.anchor);
      for (const metric of it.concerns) expect(metrics).toContain(metric);
    }
  }
});

test('no caution gives a verdict, a promise or a dose', () => {
  for (const panel of demo.ledger.panels.values()) {
    for (const { title, text } of calledCautions(panel, 'EUR')) {
      expect(`${title} ${text}`).not.toMatch(/\bsafe(ly|ty)?\b|harmless|no risk|\bdose\b|\bminutes\b|treat/i);
      expect(`${title} ${text}`).not.toMatch(/undefined|NaN/);
    }
  }
});

describe('eyes, skin and mains', () => {
  test('are called for by every panel whose light and draw were read, with the numbers', () => {
    expect(anchors('ruddlestone-r60')).toEqual(
      expect.arrayContaining(['eyes', 'skin-and-heat', 'mains-electricity', 'implants-and-fields']),
    );
    expect(textOf('ruddlestone-r60', 'eyes')).toMatch(/^Up to 44\.5 ± 2\.2 mW\/cm² at 15\.24 cm\./);
    expect(textOf('ruddlestone-r60', 'eyes')).toContain('22.0 ± 1.1 mW/cm²');
    expect(textOf('ruddlestone-r60', 'eyes')).toMatch(/near-infrared/i);
    expect(textOf('ruddlestone-r60', 'mains-electricity')).toMatch(/92\.1 ± 1\.0 W.*local codes/);
  });

  test('the invisible part is named where the maker claims it, although it was not read', () => {
    const eyes = changed(['      nearInfrared: 26.2\n', '']).find((it) => it.anchor === 'eyes');
    expect(eyes?.text).toContain('near-infrared, which the eye does not see');
    const redOnly = changed(['      nearInfrared: 26.2\n', ''], ['    - { peak: 850 nm, share: 50 % }\n', '']);
    expect(redOnly.find((it) => it.anchor === 'eyes')?.text).not.toMatch(/near-infrared/i);
  });

  test('a panel of which only one channel was read calls for them too', () => {
    const one = changed(['      red: 28.4\n      nearInfrared: 26.2\n      combined: 52.5\n', '      red: 28.4\n']);
    expect(one.find((it) => it.anchor === 'eyes')?.text).toContain('28.4 ± ');
  });

  test('a panel without readings calls for none: there is no number to give', () => {
    const none = changed(
      ['    peak:\n      red: 28.4\n      nearInfrared: 26.2\n      combined: 52.5\n', ''],
      ['    mains:\n      standby: 0.6\n      red: 50.2\n      nearInfrared: 52.0\n      combined: 100.0\n', ''],
      ['    magnetic: { distance: 6 in, off: <0.2 mG, on: 4.3 mG }\n', ''],
      ['    flicker:\n      combined: { frequency: 65 kHz, percent: 0.7 }\n', ''],
    );
    expect(none).toEqual([]);
  });
});

describe('flicker', () => {
  test('is called for by a light that flickers, with depth and frequency', () => {
    expect(textOf('ostrel-lill', 'flicker')).toMatch(/39\.2 ± .* % at 100 Hz.*seizures/);
  });

  test('is not called for below a hundredth, or by a bound', () => {
    expect(anchors('ruddlestone-r60')).not.toContain('flicker');
    expect(anchors('kelpwright-limpet')).not.toContain('flicker');
  });

  test('the deepest of the modes counts', () => {
    const it = changed([
      'combined: { frequency: 65 kHz, percent: 0.7 }',
      'combined: { percent: 2 }\n      red: { percent: 9 }\n      nearInfrared: { percent: 5 }',
    ]).find((one) => one.anchor === 'flicker');
    expect(it?.text).toMatch(/flickers by 9 %\./);
  });
});

describe('implants', () => {
  test('are called for by a magnetic field above the room’s, with its distance', () => {
    expect(textOf('ruddlestone-r60', 'implants-and-fields')).toMatch(/0\.430? ± .* µT at 6 in.*pacemaker/);
  });

  test('are not called for where the meter showed nothing, or no more than the room', () => {
    expect(anchors('kelpwright-limpet')).not.toContain('implants-and-fields');
    const same = changed(['off: <0.2 mG, on: 4.3 mG', 'off: 4.3 mG, on: 4.3 mG']);
    expect(same.map((it) => it.anchor)).not.toContain('implants-and-fields');
  });

  test('are called for by a field beyond the meter’s reach', () => {
    const beyond = changed(['on: 4.3 mG', 'on: ">2000 mG"']).find((it) => it.anchor === 'implants-and-fields');
    expect(beyond?.text).toContain('> 200 µT');
  });

  test('are called for where the room was known only as a bound below', () => {
    const it = changed(['off: <0.2 mG, on: 4.3 mG', 'off: <5 mG, on: 4.3 mG']);
    expect(it.map((one) => one.anchor)).toContain('implants-and-fields');
  });
});
