/** Cautions stand beside the figures that they concern, and whether or not there is a reading. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { textsFolder } from '../../../src/content/read/product-texts.ts';
import { buildLedger } from '../../../src/ledger/build-ledger.ts';
import type { PanelEntry } from '../../../src/ledger/ledger.ts';
import { isFigure } from '../../../src/measure/figure.ts';
import { METRICS } from '../../../src/measure/metrics.ts';
import { calledCautions, eyesInShort } from '../../../src/site/panel/called-cautions.ts';
import { CAUTION_WORDS, MORE_CAUTIONS, PANEL_CAUTIONS } from '../../../src/words/caution-words.ts';
import { TODAY, tinyContent } from '../../support/content-folder.ts';
import { type Demo, demoLedger } from '../../support/demo-ledger.ts';

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
  const page = readFileSync(join(textsFolder(), 'cautions.mdx'), 'utf8');
  const headings = [...page.matchAll(/^#+ (.+)$/gm)].map((it) =>
    (it[1] ?? '')
      .toLowerCase()
      .replace(/[^a-z0-9 -]/g, '')
      .trim()
      .replace(/ /g, '-'),
  );
  const metrics = METRICS.map((it) => it.id);
  for (const anchor of [...PANEL_CAUTIONS, ...MORE_CAUTIONS.map(([it]) => it)]) expect(headings).toContain(anchor);
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
    expect(textOf('ruddlestone-r60', 'eyes')).toMatch(/^Near-infrared alone is 22\.0 ± 1\.1 mW\/cm² at 15\.24 cm, /);
    expect(textOf('ruddlestone-r60', 'skin-and-heat')).toMatch(/^Up to 44\.5 ± 2\.2 mW\/cm² at 15\.24 cm /);
    expect(textOf('ruddlestone-r60', 'mains-electricity')).toMatch(/92\.1 ± 1\.0 W.*local codes/);
  });

  test('the invisible part is named where the maker claims it, although it was not read', () => {
    const eyes = changed(['      nearInfrared: 26.2\n', '']).find((it) => it.anchor === 'eyes');
    expect(eyes?.text).toContain('near-infrared, which the eye does not see');
    const redOnly = changed(['      nearInfrared: 26.2\n', ''], ['    - { peak: 850 nm, share: 50 % }\n', '']);
    expect(redOnly.find((it) => it.anchor === 'eyes')?.text).not.toMatch(/near-infrared/i);
  });

  test('the invisible part is named where nobody read it and no wavelength is claimed', () => {
    expect(textOf('quennick-dab', 'eyes')).toMatch(
      /^Up to 38 ± 5 mW\/cm² \(† in doubt\) at 15\.24 cm\. How much of it is near-infrared, which the eye does not see, was not read\. Don’t/,
    );
    expect(textOf('ruddlestone-r150', 'eyes')).not.toContain('was not read');
  });

  test('a panel of which only one channel was read calls for them too', () => {
    const one = changed(['      red: 28.4\n      nearInfrared: 26.2\n      combined: 52.5\n', '      red: 28.4\n']);
    expect(one.find((it) => it.anchor === 'eyes')?.text).toContain('28.4 ± ');
  });

  test('stand without any reading, and say that it is missing', () => {
    const none = changed(
      ['    peak:\n      red: 28.4\n      nearInfrared: 26.2\n      combined: 52.5\n', ''],
      ['    mains:\n      standby: 0.6\n      red: 50.2\n      nearInfrared: 52.0\n      combined: 100.0\n', ''],
      ['    magnetic: { distance: 6 in, off: <0.2 mG, on: 4.3 mG }\n', ''],
      ['    flicker:\n      combined: { frequency: 65 kHz, percent: 0.7 }\n', ''],
    );
    expect(none.map((it) => it.anchor)).toEqual([...PANEL_CAUTIONS]);
    for (const { anchor, text } of none) {
      expect(text).toContain('not read');
      expect(text).toContain(CAUTION_WORDS[anchor].advice);
      expect(text).not.toMatch(/^ |\d/);
    }
    // What the maker claims is named still.
    expect(none[0]?.text).toContain('near-infrared, which the eye does not see');
  });

  test('every panel of the demonstration has those of eyes, skin, mains and implants', () => {
    for (const { slug } of demo.ledger.panels.values()) {
      expect(anchors(slug)).toEqual(
        expect.arrayContaining(['eyes', 'skin-and-heat', 'mains-electricity', 'implants-and-fields']),
      );
    }
    expect(textOf('quennick-dab', 'mains-electricity')).toMatch(/^The mains draw was not read\. /);
  });

  test('eye protection is of stated attenuation, and closed lids are no shield', () => {
    expect(textOf('ruddlestone-r60', 'eyes')).toMatch(/closed lids are no shield.*stated attenuation.*prove nothing/);
  });

  test('what the meter may hide of near-infrared is said where it is not known', () => {
    const spectral = demo.panel('ruddlestone-r60').figures.get('peak-irradiance-near-infrared');
    const isKnown =
      isFigure(spectral) && spectral.budget.some((it) => it.source.key.endsWith('/spectral-near-infrared'));
    expect(textOf('ruddlestone-r60', 'eyes').includes('the true share may be higher')).toBe(!isKnown);
  });
});

describe('the share of the infrared limit', () => {
  const shareOf = (slug: string) => {
    const it = demo.panel(slug).figures.get('infrared-share-at-reading');
    if (!isFigure(it) || !it.interval95) throw new Error(`${slug} has no share`);
    return it;
  };

  test('is told by its cautious end, as a multiple where it is over the limit', () => {
    const [, high] = shareOf('kelpwright-gannet').interval95 as readonly [number, number];
    const told = /up to ([\d.]+) times the infrared limit/.exec(textOf('kelpwright-gannet', 'eyes'))?.[1];
    expect(Number(told)).toBeGreaterThanOrEqual(high / 100);
    expect(Number(told)).toBeLessThan(1.01 * (high / 100));
    expect(eyesInShort(demo.panel('kelpwright-gannet'))).toBe(
      `up to ${told} times the infrared limit for long exposures`,
    );
  });

  test('is told in per cent where it is under it, and not where it was not read', () => {
    expect(textOf('ostrel-lill', 'eyes')).toMatch(/, up to \d\d(\.\d)? % of the infrared limit for long exposures;/);
    expect(eyesInShort(demo.panel('quennick-dab'))).toBeUndefined();
  });
});

describe('flicker', () => {
  test('is called for by a light that flickers, with depth and frequency', () => {
    expect(textOf('ostrel-lill', 'flicker')).toMatch(/39\.2 ± .* % at 100 Hz.*seizures/);
  });

  test('is not called for where readings show less than a hundredth, bound or not', () => {
    expect(anchors('ruddlestone-r60')).not.toContain('flicker');
    expect(anchors('kelpwright-limpet')).not.toContain('flicker');
    const at = (percent: string) =>
      changed(['percent: 0.7 }', `percent: ${percent} }`]).find((it) => it.anchor === 'flicker')?.text;
    expect(at('0.99')).toBeUndefined();
    expect(at('1')).toMatch(/^The light flickers by 1/);
    expect(at('"<1 %"')).toMatch(/^The light flickers by < 1/);
    expect(at('"<0.9 %"')).toBeUndefined();
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

  test('stand too where the meter showed nothing, or no more than the room, and say so', () => {
    expect(textOf('kelpwright-limpet', 'implants-and-fields')).toMatch(
      /^Magnetic field of below 0\.1 µT at 6 in; what the meter can’t see is not in it\. .*pacemaker/,
    );
    const same = changed(['off: <0.2 mG, on: 4.3 mG', 'off: 4.3 mG, on: 4.3 mG']);
    const text = same.find((it) => it.anchor === 'implants-and-fields')?.text;
    expect(text).toMatch(/no more than the room’s own there; what the meter can’t see is not in it\. With a pacemaker/);
    const more = changed(['off: <0.2 mG, on: 4.3 mG', 'off: 4.2 mG, on: 4.3 mG']);
    expect(more.find((it) => it.anchor === 'implants-and-fields')?.text).not.toContain('no more than');
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

test('the caution on implants tells a field’s share by its strict end, from a tenth of the level on', () => {
  // The Gannet's electric field: 40 V/m of 83 V/m, above 3 kHz; its magnetic field is 3.5 % of 27 µT.
  const words = textOf('kelpwright-gannet', 'implants-and-fields');
  expect(words).toMatch(
    /Electric field up to 5\d % of the reference level for the public, which is not made for implants\./,
  );
  expect(words).not.toContain('Magnetic field up to');
  for (const [share, isTold] of [
    [8, false],
    [12, true],
  ] as const) {
    // Of 83 V/m; the rod's own uncertainty is that of the demonstration's.
    const panel = demo.panel('kelpwright-gannet');
    const figure = panel.figures.get('electric-field-share');
    if (!isFigure(figure)) throw new Error('the Gannet has no share');
    const own = { ...figure, value: share, interval95: [share - 1, share + 1] as const };
    const changedPanel = { ...panel, figures: new Map(panel.figures).set('electric-field-share', own) };
    const text = calledCautions(changedPanel, 'EUR').find((it) => it.anchor === 'implants-and-fields')?.text ?? '';
    expect(text.includes('of the reference level')).toBe(isTold);
  }
});
