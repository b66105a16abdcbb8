import { beforeAll, describe, expect, test } from 'vitest';
import { buildLedger } from '../../../src/ledger/build-ledger.ts';
import type { PanelEntry } from '../../../src/ledger/ledger.ts';
import { isFigure } from '../../../src/measure/figure.ts';
import { METRICS } from '../../../src/measure/metrics.ts';
import { calledCautions } from '../../../src/site/panel/called-cautions.ts';
import { type LimitsView, limitsView } from '../../../src/site/panel/limits-view.ts';
import { limitWords } from '../../../src/words/limits/index.ts';
import { say } from '../../../src/words/say.ts';
import { metricNamed } from '../../measure/make.ts';
import { TODAY, tinyContent } from '../../support/content-folder.ts';
import { type Demo, demoLedger, textsIn } from '../../support/demo-ledger.ts';
import { sentenceOf } from '../../support/sentence-of.ts';

let demo: Demo;
beforeAll(() => {
  demo = demoLedger('ruddlestone-r150');
});
const view = (slug: string): LimitsView => limitsView(demo.panel(slug), 'EUR') as LimitsView;
const group = (slug: string, id: string) => view(slug).groups.find((it) => it.id === `limits-${id}`);

/** A panel of the tiny content, changed. */
function changed(...edits: Array<[from: string, to: string]>): PanelEntry {
  const content = tinyContent();
  try {
    for (const [from, to] of edits) content.edit('panels/plover/index.md', from, to);
    return buildLedger(content.content(), { today: TODAY }).panels.get('plover') as PanelEntry;
  } finally {
    content.delete();
  }
}

describe('every panel', () => {
  test('has each result once, under its hazard', () => {
    for (const panel of demo.ledger.panels.values()) {
      const shown = limitsView(panel, 'EUR')?.groups.flatMap((it) => it.rows.flatMap((row) => row.figures)) ?? [];
      expect(shown.map((it) => it.metric).toSorted(), panel.slug).toEqual(
        (panel.current?.limits ?? [])
          .map((it) => it.figure.metric)
          .filter((metric) => !isBesideReading(panel, metric))
          .toSorted(),
      );
    }
  });

  /** Panels are read at 15.24 cm: what is not known at 15 cm stands beside that reading, and has no row. */
  const isBesideReading = ({ current }: PanelEntry, metric: string) =>
    metric.endsWith('-at-15-cm') && current?.conditions.distance === 15.24;

  test('of a panel that was read farther out says that it is not known nearer', () => {
    const rows = (slug: string) => group(slug, 'eyes')?.rows.map((it) => it.title) ?? [];
    expect(rows('fennimarsh-reed')).toEqual([
      'Infrared at the eye, 15.24 cm',
      'Infrared at the eye, 30 cm',
      'Infrared at the eye, 60 cm',
      'Retina',
    ]);
    const far = [...demo.ledger.panels.values()].find((it) => (it.current?.conditions.distance ?? 0) > 16);
    expect(rows(far?.slug ?? '')).toContain('Infrared at the eye, 15 cm');
  });

  test('has words without a verdict, a promise or a slip of the program', () => {
    for (const { slug, sessions } of demo.ledger.panels.values()) {
      const all = [...textsIn(view(slug)), ...textsIn(sessions.map((it) => it.limits.map((one) => sentenceOf(one))))];
      for (const [path, text] of all) {
        expect(text, `${slug} ${path}`).not.toMatch(
          /\b(safe|safely|unsafe|pass(ed|es)?|fail(ed|s)?|harmless|healthy)\b/i,
        );
        expect(text, `${slug} ${path}`).not.toMatch(/undefined|NaN|Infinity|\[object/);
      }
      expect(view(slug).closing).toMatch(/^Not a product certification and not medical advice/);
    }
  });

  test('says of every result what it is not, in its whole text', () => {
    for (const { sessions } of demo.ledger.panels.values()) {
      for (const it of sessions.flatMap((session) => session.limits)) {
        expect(sentenceOf(it)).toMatch(/a licensed professional and local codes decide\.$/);
      }
    }
  });

  test('has each result as a figure of its session, or as a gap with a reason', () => {
    const metrics = METRICS.map((it) => it.id);
    for (const { sessions } of demo.ledger.panels.values()) {
      for (const session of sessions) {
        for (const { id, figure } of session.limits) {
          if (id.startsWith('pulsing-')) continue;
          expect(metrics).toContain(id);
          const it = session.figures.get(metricNamed(id));
          expect(it && isFigure(it)).toBe(isFigure(figure));
          if (isFigure(figure)) expect(figure.id).toBe(`${session.id}/${id}`);
        }
      }
    }
  });
});

test('each group leads to its caution', () => {
  expect(view('ruddlestone-r150').groups.map(({ id, caution }) => [id, caution])).toEqual([
    ['limits-eyes', '/cautions/#eyes'],
    ['limits-skin', '/cautions/#skin-and-heat'],
    ['limits-flicker', '/cautions/#flicker'],
    ['limits-fields', '/cautions/#implants-and-fields'],
    ['limits-beds', '/cautions/#implants-and-fields'],
    ['limits-sound', '/cautions/#sound'],
  ]);
});

describe('one hazard after the other', () => {
  test('eyes: share and time at the reading’s distance and at 30 and 60 cm; no word on the retina but why', () => {
    const eyes = group('kelpwright-gannet', 'eyes');
    expect(eyes?.rows.map((it) => it.title)).toEqual([
      'Infrared at the eye, 15.24 cm',
      'Infrared at the eye, 30 cm',
      'Infrared at the eye, 60 cm',
      'Retina',
    ]);
    expect(eyes?.rows[0]?.figures.map((it) => it.label)).toEqual(['share of the limit', 'time to the limit']);
    expect(eyes?.rows[3]?.figures[0]?.gap).toContain('needs radiance');
    expect(eyes?.background.join(' ')).toContain(
      'IEC 62471, 2006, first edition, clause 4.3.7 (seen in secondary sources only)',
    );
  });

  test('eyes: needs no beam; farther away a range stands at its cautious end, nearer it is not known', () => {
    const eyes = group('ruddlestone-r150', 'eyes');
    expect(eyes?.rows[0]?.figures.every((it) => it.shown)).toBe(true);
    const nearer = demo.panel('ruddlestone-r150').figures.get('infrared-share-at-15-cm');
    expect(nearer && 'reason' in nearer && say(nearer.reason)).toMatch(/^not known nearer than the reading/);
    expect(eyes?.rows).toHaveLength(4);
    for (const row of eyes?.rows.slice(1, 3) ?? []) {
      // At the cautious end of the reading's own share; the time is turned round.
      expect(row.figures.map((it) => it.shown?.text)).toEqual(['< 456 %', expect.stringMatching(/^> 134\.\d+ s$/)]);
      expect(row.words.join(' ')).toMatch(/somewhere from [\d.]+ % to 456 % of the limit/);
    }
  });

  test('a time that is none says so beside it', () => {
    // 99 % of the limit: the standard limits no time, and the interval reaches to where it does.
    const [reading] = group('kelpwright-limpet', 'eyes')?.rows ?? [];
    expect(reading?.figures.map((it) => it.notes)).toEqual([
      [],
      ['1000 s stands for “not limited by time in this standard”'],
    ]);
    expect(group('ruddlestone-r150', 'eyes')?.rows[0]?.figures[1]?.notes).toEqual([]);
  });

  test('a gap tells its reason once, in its cell', () => {
    const rows = view('quennick-dab').groups.flatMap((it) => it.rows);
    const gaps = rows.filter((it) => it.figures.every((one) => one.gap));
    expect(gaps.length).toBeGreaterThan(8);
    for (const { title, figures, words } of gaps) {
      for (const { gap } of figures) expect(words.join(' '), title).not.toContain(gap);
    }
    // Elsewhere the words stay, and no row's head is its label.
    expect(rows.find((it) => it.title.startsWith('Heating'))?.words.join(' ')).toContain('10.7 %');
    for (const { title, figures } of rows) expect(figures.map((it) => it.label)).not.toContain(title);
  });

  test('flicker: both lines of each mode, and none for near-infrared alone', () => {
    const flicker = group('ostrel-lill', 'flicker');
    expect(flicker?.rows.map((it) => it.figures.map((one) => one.label))).toEqual(
      Array(3).fill(['multiple of the low-risk line', 'multiple of the no-effect line']),
    );
    // 38.8 % at 100 Hz beside 0.08 x 100 = 8 %.
    expect(flicker?.rows[0]?.figures[0]?.shown?.value).toBe('4.85');
    expect(flicker?.rows[2]?.figures.map((it) => it.gap)).toEqual(Array(2).fill('the lines speak of visible light'));
  });

  test('fields: shares of the reference levels, and apart from them the private guideline', () => {
    expect(group('ostrel-lill', 'fields')?.rows.map((it) => it.title)).toEqual([
      'Magnetic field',
      'Electric field',
      'Radio field',
    ]);
    // 63 V/m of 83 V/m, and of 5000 V/m: the strict end first, then the mild one, and one sentence for both.
    const electric = group('ostrel-lill', 'fields')?.rows[1];
    expect(electric?.figures.map((it) => [it.metric, it.shown?.value])).toEqual([
      ['electric-field-share', '76'],
      ['electric-field-share-at-mains', '1.26'],
    ]);
    expect(electric?.words.filter((it) => it.startsWith('If all of it lies above 3 kHz'))).toHaveLength(1);
    const beds = group('ostrel-lill', 'beds');
    expect(beds?.background.join(' ')).toContain('private precautionary guideline without official status');
    expect(beds?.rows[0]?.words.join(' ')).toContain('“Severe anomaly”');
  });
});

describe('from the readings of a panel', () => {
  test('60 Hz mains has another electric level', () => {
    const content = tinyContent();
    try {
      content.edit('guide.yaml', 'methodVersion: 1\n', 'methodVersion: 1\nmainsFrequency: 60\n');
      const panel = buildLedger(content.content(), { today: TODAY }).panels.get('plover');
      const texts = panel?.current?.limits.map((it) => sentenceOf(it)).join(' ') ?? '';
      // 4.3 mG is 0.43 µT.
      expect(texts).toContain('if all of it is at the mains’ 60 Hz, it is 0.215 % of the level, 200 µT');
    } finally {
      content.delete();
    }
  });

  test('a frequency that the meter showed gives one share, at its level', () => {
    const panel = changed(['on: 4.3 mG }', 'on: 4.3 mG, frequency: 1 kHz }']);
    const row = limitsView(panel, 'EUR')?.groups.find((it) => it.id === 'limits-fields')?.rows[0];
    // 0.43 µT of 80 µT.
    expect(row?.figures[0]?.shown?.value).toBe('0.538');
    expect(row?.figures[1]?.gap).toBe('the meter showed 1 kHz, and the share is for that one');
    const figures = panel.current?.figures;
    expect(figures?.get('magnetic-field-frequency')).toMatchObject({
      value: 1000,
      unit: 'Hz',
      uncertaintyAbsent: { code: 'frequency-error-not-stated' },
    });
    expect(figures?.get('magnetic-field-share')).toMatchObject({
      inputs: ['plover/2026-10-01/magnetic-field-on', 'plover/2026-10-01/magnetic-field-frequency'],
    });
  });

  test('the words of the meter’s file stand beside the shares', () => {
    const limpet = demo.panel('kelpwright-limpet').current?.limits.find((it) => it.id === 'magnetic-field-share');
    expect(limpet && limitWords(limpet).outcome.join(' ')).toContain(
      '30 Hz to 400 Hz, so it is deaf to what LED drivers mostly give off”',
    );
  });

  test('pulsing is named, with the caution about seizures beside the key figures', () => {
    const panel = changed(['flicker:\n', 'flicker:\n      red: { frequency: 40 Hz, percent: 100 }\n']);
    const rows = limitsView(panel, 'EUR')?.groups.find((it) => it.id === 'limits-flicker')?.rows ?? [];
    expect(rows.map((it) => it.title)).toContain('Pulsing with red alone on');
    const caution = calledCautions(panel, 'EUR').find((it) => it.anchor === 'flicker')?.text;
    expect(caution).toMatch(/deliberate/);
    expect(caution).toMatch(/seizures/);
  });

  test('a magnetic reading in the wrong unit is called out', () => {
    const panel = changed(['off: <0.2 mG, on: 4.3 mG', 'off: 4, on: 31']);
    expect(panel.flags.some((it) => it.check === 'unit-slips')).toBe(true);
  });
});
