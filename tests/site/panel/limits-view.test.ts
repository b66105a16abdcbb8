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
const rowsOf = (it: LimitsView, name: string) => it.rows.filter((row) => row.name.startsWith(name));
const rows = (slug: string, name: string) => rowsOf(view(slug), name);
const group = (slug: string, title: string) => view(slug).groups.find((it) => it.title.startsWith(title));
const allRows = (it: LimitsView) => [...it.rows, ...it.beds];

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
  test('has each result once: in a line, or with the reason why it has no share', () => {
    for (const panel of demo.ledger.panels.values()) {
      const told = limitsView(panel, 'EUR');
      const shown = told ? allRows(told).flatMap((row) => row.figures.map((it) => it.metric)) : [];
      const results = (panel.current?.limits ?? []).filter((it) => isFigure(it.figure) && it.hazard !== 'sound');
      expect(shown.toSorted(), panel.slug).toEqual(
        results
          .map((it) => it.figure.metric)
          .filter((metric) => !isSecond(panel, metric))
          .toSorted(),
      );
      expect(told?.sound.metric ?? 'sound-of-panel').toBe('sound-of-panel');
      for (const it of panel.current?.limits ?? []) {
        if (isFigure(it.figure) || isSecond(panel, it.figure.metric) || it.hazard === 'sound') continue;
        const reasons = told?.unheld.map((one) => one.reason) ?? [];
        // Above the line that goes farthest there is none nearer either, and one frequency that was shown has one share.
        if ((it.hazard === 'flicker' && it.line === 'lowRisk') || (it.hazard === 'field' && it.end === 'mild'))
          continue;
        expect(reasons, `${panel.slug} ${it.id}`).toContain(say(it.figure.reason));
      }
    }
  });

  /** What is told of 15 cm beside a reading at 15.24 cm, and of the reading's own distance, is told once. */
  const isSecond = ({ current }: PanelEntry, metric: string) =>
    metric.endsWith(current?.conditions.distance === 15.24 ? '-at-15-cm' : '-at-30-cm') &&
    metric.startsWith('infrared');

  test('has an anchor for every old section, once', () => {
    const wanted = ['eyes', 'skin', 'flicker', 'fields', 'beds'].map((it) => `limits-${it}`);
    for (const { slug } of demo.ledger.panels.values()) {
      const told = view(slug);
      const ids = [...allRows(told).flatMap((it) => it.id ?? []), ...told.unheld.flatMap((it) => it.ids)];
      expect(ids.toSorted(), slug).toEqual(wanted.toSorted());
    }
  });

  test('of a panel that was read farther out says that it is not known nearer', () => {
    const far = [...demo.ledger.panels.values()].find((it) => (it.current?.conditions.distance ?? 0) > 16);
    const told = view(far?.slug ?? '');
    expect(rowsOf(told, 'Infrared').map((it) => it.place)).toEqual([{ cm: 30 }, { cm: 60 }]);
    expect(told.unheld.find((it) => it.what === 'Infrared at the eye, 15 cm')?.reason).toMatch(/^not known nearer/);
    expect(rows('fennimarsh-reed', 'Infrared').map((it) => it.place)).toEqual([{ cm: 15.24 }, { cm: 30 }, { cm: 60 }]);
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
  expect(view('ruddlestone-r150').groups.map(({ title, caution }) => [title.split(',')[0], caution])).toEqual([
    ['Eyes', '/cautions/#eyes'],
    ['Skin', '/cautions/#skin-and-heat'],
    ['Flicker', '/cautions/#flicker'],
    ['Fields', '/cautions/#implants-and-fields'],
    ['Fields', '/cautions/#implants-and-fields'],
    ['Sound', '/cautions/#sound'],
  ]);
});

describe('one hazard after the other', () => {
  test('eyes: the reading, its limit, the share and the time beneath; no word on the retina but why', () => {
    const [reading, at30] = rows('kelpwright-gannet', 'Infrared');
    expect(reading?.read.figure?.metric).toBe('peak-irradiance-near-infrared');
    expect(reading?.limit).toEqual({ text: '10 mW/cm²', note: 'for long exposures', by: 'IEC 62471:2006' });
    expect(reading?.figures.map((it) => [it.metric, it.behind])).toEqual([
      ['infrared-share-at-reading', undefined],
      ['infrared-stay-at-reading', 'until it is used up'],
    ]);
    // The limit's remark is said where it comes first.
    expect(at30?.limit).toEqual({ text: '10 mW/cm²' });
    expect(view('kelpwright-gannet').unheld.find((it) => it.what === 'Retina')?.reason).toContain('needs radiance');
    const eyes = group('kelpwright-gannet', 'Eyes');
    expect(eyes?.background).toEqual([expect.stringMatching(/^The figure is (taken from the reading|summed up from)/)]);
    expect(eyes?.methods.map((it) => it.address)).toEqual(['/methods/infrared-eye/', '/methods/retinal-hazard/']);
  });

  test('eyes: needs no beam; farther away a range stands at its cautious end, nearer it is not known', () => {
    const [reading, ...farther] = rows('ruddlestone-r150', 'Infrared');
    expect(reading?.figures.every((it) => it.shown)).toBe(true);
    const nearer = demo.panel('ruddlestone-r150').figures.get('infrared-share-at-15-cm');
    expect(nearer && 'reason' in nearer && say(nearer.reason)).toMatch(/^not known nearer than the reading/);
    expect(farther).toHaveLength(2);
    for (const row of farther) {
      // At the cautious end of the reading's own share; the time is turned round.
      expect(row.figures.map((it) => it.shown?.text)).toEqual(['< 459 %', '> 133 s']);
      // That it was not read there is said once, in its line.
      expect(row.read.text).toMatch(/^not read there, [\d.]+ % at least$/);
      expect(row.figures.map((it) => it.absent)).toEqual([undefined, undefined]);
      expect(row.share?.least).toBeLessThan(row.share?.most ?? 0);
    }
    // Their lines say all of it.
    const infrared = group('ruddlestone-r150', 'Eyes')?.outcomes.filter((it) => it.title.startsWith('Infrared'));
    expect(infrared?.map((it) => it.title)).toEqual(['Infrared at the eye, 15.24 cm']);
  });

  test('eyes: where near-infrared was read farther away, that is what counts', () => {
    const [, at30] = rows('fennimarsh-sedge', 'Infrared');
    expect(at30?.read).toEqual({ text: 'read before the middle' });
    expect(at30?.figures[0]?.shown?.text).toBe('339 ± 18 %');
  });

  test('a time that is none says so beside it', () => {
    // 99 % of the limit: the standard limits no time, and the interval reaches to where it does.
    const [reading] = rows('kelpwright-limpet', 'Infrared');
    expect(reading?.figures[1]?.behind).toBe('not limited by this standard');
    expect(rows('ruddlestone-r150', 'Infrared')[0]?.figures[1]?.behind).toBe('until it is used up');
  });

  test('what was not read is told once, with its reason, and has no line', () => {
    const dab = view('quennick-dab');
    expect(allRows(dab).map((it) => it.name)).toEqual(['Skin, under 10 s']);
    expect(dab.unheld.map(({ what, reason }) => `${what}: ${reason}`)).toEqual([
      'Infrared at the eye, 15.24 cm, 30 cm and 60 cm: near-infrared alone was not measured',
      'Retina: needs radiance; only irradiance on a plane was measured',
      'Flicker, both channels and red alone: flicker was not measured',
      'Flicker, near-infrared alone: the lines speak of visible light',
      'Magnetic field, electric field and radio field: not measured with the panel on',
    ]);
    expect(
      group('quennick-dab', 'Skin')
        ?.outcomes.map((it) => it.words)
        .join(' '),
    ).toMatch(/^At the cautious end of the interval [\d.]+ %\.$/);
    expect(allRows(dab)[0]?.figures[0]?.shown?.text).toMatch(/^10\.7 ± /);
  });

  test('flicker: both lines of each mode, and none for near-infrared alone', () => {
    const flicker = rows('ostrel-lill', 'Flicker');
    expect(flicker.map((it) => [it.name, it.limit?.note])).toEqual([
      ['Flicker, both channels', 'low-risk line'],
      ['Flicker, both channels', 'no-effect line'],
      ['Flicker, red alone', 'low-risk line'],
      ['Flicker, red alone', 'no-effect line'],
    ]);
    // 38.8 % at 100 Hz beside 0.08 x 100 = 8 %.
    expect(flicker[0]?.figures[0]).toMatchObject({ shown: { value: '4.85', unit: 'times' } });
    expect(flicker[0]?.limit?.text).toBe('8 %');
    expect(flicker[0]?.read.text).toBe('at 100 Hz');
  });

  test('flicker above all lines is told in one sentence for both', () => {
    const told = view('kelpwright-gannet');
    expect(rowsOf(told, 'Flicker')).toEqual([]);
    expect(told.unheld.find((it) => it.what === 'Flicker, both channels and red alone')?.reason).toMatch(/3000 Hz$/);
  });

  test('fields: shares of the reference levels, and apart from them the private guideline in its own words', () => {
    expect(
      rows('ostrel-lill', '')
        .slice(-3)
        .map((it) => it.name),
    ).toEqual(['Magnetic field', 'Electric field', 'Radio field']);
    // 63 V/m of 83 V/m, and of 5000 V/m: the strict end first, then the mild one.
    const [electric] = rows('ostrel-lill', 'Electric');
    expect(electric?.figures.map((it) => [it.metric, it.shown?.value, it.behind])).toEqual([
      ['electric-field-share', '76', undefined],
      ['electric-field-share-at-mains', '1.26', 'at 50 Hz'],
    ]);
    expect(electric?.limit?.text).toBe('83 V/m above 3 kHz, 5,000 V/m at 50 Hz');
    expect(electric?.share?.least).toBeCloseTo(1.08, 1);
    expect(electric?.share?.most).toBeCloseTo(87, 0);
    expect(rows('ostrel-lill', 'Magnetic')[0]?.limit?.other).toBe('270 mG above 3 kHz, 2,000 mG at 50 Hz');
    const { beds } = view('ostrel-lill');
    expect(beds.map((it) => [it.words, it.share])).toEqual([
      ['“Severe anomaly”', undefined],
      ['“Extreme anomaly”', undefined],
      ['“Slight anomaly”', undefined],
    ]);
    // Its status stands over its lines; what was read, and the share of it, stand in them.
    const [levels, lines] = [group('ostrel-lill', 'Fields, reference'), group('ostrel-lill', 'Fields, guideline')];
    expect(levels?.outcomes[0]?.words).toMatch(
      /^What the meter can’t see .* At the cautious end of the interval, with the room’s own field, [\d.]+ % if .* 3 kHz.*, [\d.]+ % if .* 50 Hz\.$/,
    );
    expect(lines?.outcomes[0]?.words).toMatch(
      /^At the cautious end of the interval, with the room’s own field, [\d.]+ times\.$/,
    );
    expect(lines?.methods.map((it) => it.address)).toEqual(['/methods/building-biology/']);
  });

  test('what is over its limit at the cautious end stands over the table, and nothing else', () => {
    expect(view('kelpwright-cormorant').over).toBe(
      'Over a limit, the uncertainty counted against you: infrared at the eye, up to 3.29 times.',
    );
    // 99 ± 5 %: only the cautious end is over it.
    expect(view('kelpwright-limpet').over).toMatch(/infrared at the eye, up to 1\.05 times\.$/);
    expect(view('ostrel-lill').over).toMatch(/: flicker, both channels, up to 12\.3 times; flicker, red alone, up to/);
    expect(view('quennick-dab').over).toBeUndefined();
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
    const row = limitsView(panel, 'EUR')?.rows.find((it) => it.name === 'Magnetic field');
    // 0.43 µT of 80 µT.
    expect(row?.figures[0]?.shown?.value).toBe('0.538');
    expect(row?.figures).toHaveLength(1);
    expect(row?.limit?.text).toBe('80 µT at 1 kHz');
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
    const told = limitsView(panel, 'EUR') as LimitsView;
    const [pulsing] = rowsOf(told, 'Pulsing');
    expect(pulsing).toMatchObject({ name: 'Pulsing, red alone', words: 'looks like deliberate pulsing' });
    // Who is at risk is not folded away.
    expect(told.notes.join(' ')).toMatch(/seizures/);
    const caution = calledCautions(panel, 'EUR').find((it) => it.anchor === 'flicker')?.text;
    expect(caution).toMatch(/deliberate/);
    expect(caution).toMatch(/seizures/);
  });

  test('a magnetic reading in the wrong unit is called out', () => {
    const panel = changed(['off: <0.2 mG, on: 4.3 mG', 'off: 4, on: 31']);
    expect(panel.flags.some((it) => it.check === 'unit-slips')).toBe(true);
  });
});
