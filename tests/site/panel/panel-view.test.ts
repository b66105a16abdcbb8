import { beforeAll, describe, expect, test } from 'vitest';
import { buildLedger } from '../../../src/ledger/build-ledger.ts';
import { isFigure } from '../../../src/measure/figure.ts';
import { METHODS } from '../../../src/measure/methods.ts';
import { METRICS } from '../../../src/measure/metrics.ts';
import { type PanelView, panelView } from '../../../src/site/panel/panel-view.ts';
import { calculationAnchor, shownFigure } from '../../../src/site/shared/shown-figure.ts';
import { metricNamed } from '../../measure/make.ts';
import { TODAY, tinyContent } from '../../support/content-folder.ts';
import { type Demo, demoLedger, textsIn } from '../../support/demo-ledger.ts';

let demo: Demo;
beforeAll(() => {
  demo = demoLedger();
});
const view = (slug: string): PanelView => panelView(demo.panel(slug), demo.ledger);

/** The view of one panel of the tiny content, changed. */
function changed(slug: string, ...edits: Array<[file: string, from: string, to: string]>): PanelView {
  const content = tinyContent();
  try {
    for (const edit of edits) content.edit(...edit);
    const ledger = buildLedger(content.content(), { today: TODAY });
    return panelView(ledger.panels.get(slug) as never, ledger);
  } finally {
    content.delete();
  }
}

describe('every panel', () => {
  test('has a view in which no text is empty or a slip of the program', () => {
    for (const panel of demo.ledger.panels.values()) {
      for (const [path, text] of textsIn(panelView(panel, demo.ledger))) {
        if (path.endsWith('.unit')) continue;
        expect(text.trim(), `${panel.slug}: ${path}`).not.toBe('');
        expect(text, `${panel.slug}: ${path}`).not.toMatch(/undefined|NaN|Infinity|\[object/);
      }
    }
  });

  test('shows each figure with its method, its working and its uncertainty or a reason', () => {
    const anchors = new Set(METRICS.map((it) => it.id));
    const pages = new Set(METHODS.map((it) => `/methods/${it.id}/`));
    for (const { slug } of demo.ledger.panels.values()) {
      const { head, further, spread, times, light, surroundings } = view(slug);
      const figures = [
        ...head.figures.map((one) => one.figure),
        ...further,
        ...spread,
        ...times,
        ...light.rows.flatMap((it) => it.cells),
        ...surroundings.flatMap((it) => [it.on, it.off]),
      ];
      expect(figures.length).toBeGreaterThan(30);
      for (const it of figures) {
        expect(pages, it.metric).toContain(it.method);
        const [page, anchor = ''] = it.calculation.split('#');
        expect(page).toBe('methodology/');
        expect(anchors).toContain(anchor);
        expect([it.shown === undefined, it.gap === undefined]).toEqual([!it.shown, !!it.shown]);
        const figure = demo.panel(slug).figures.get(it.metric);
        if (it.shown && figure && 'standardUncertainty' in figure && figure.standardUncertainty !== 0)
          expect(it.shown.plusMinus ?? it.shown.interval ?? it.shown.absent, `${slug}: ${it.metric}`).toBeDefined();
      }
    }
  });

  test('shows every metric somewhere, or its working does', () => {
    const texts = new Set(
      [...textsIn(view('ruddlestone-r60'))].filter(([path]) => path.endsWith('metric')).map(([, it]) => it),
    );
    const missing = METRICS.filter((it) => !it.isOfFiles)
      .map((it) => it.id)
      .filter((id) => !texts.has(id));
    // Sides of the field stand among the facts. At 15 cm nothing is known that the reading at 15.24 cm does not say.
    // What has no share of a limit is told in a sentence, by its reason.
    const gaps = missing.filter((id) => !isFigure(demo.panel('ruddlestone-r60').figures.get(id)));
    expect(
      gaps.filter(
        (id) => !/^(retinal|flicker-\w+-\w+-multiple|infrared-\w+-at-15|electric-field-share-at-mains)/.test(id),
      ),
    ).toEqual([]);
    expect(missing.filter((id) => !gaps.includes(id))).toEqual(['field-width', 'field-height']);
  });
});

describe('workingAnchor', () => {
  test('is the metric for the current session, dated for earlier ones', () => {
    const [current, earlier] = demo.panel('kelpwright-cormorant').sessions;
    expect(calculationAnchor('optical-power', current, current)).toBe('optical-power');
    expect(calculationAnchor('optical-power', earlier, current)).toBe('optical-power-2025-10-21');
    expect(calculationAnchor('real-price', undefined, current)).toBe('real-price');
  });
});

describe('shownFigure', () => {
  test('of a metric that is not registered is a fault of the program', () => {
    expect(() => shownFigure(demo.panel('ruddlestone-r60'), undefined, metricNamed('brightness'), 'EUR')).toThrow(
      'brightness',
    );
  });

  test('marks a doubt and hands on notes', () => {
    const dab = demo.panel('quennick-dab');
    const it = shownFigure(dab, dab.figures.get('mean-irradiance'), 'mean-irradiance', 'EUR');
    expect(it.dagger?.mark).toBe('†');
    const cells = view('kelpwright-cormorant').light.rows.find((row) => row.name === 'Efficiency')?.cells;
    expect(cells?.[1]?.notes).toContain('scaled from both channels by the peaks');
  });
});

describe('a panel’s page', () => {
  test('says how the piece was obtained, first of all where the maker gave or lent it', () => {
    const obtained = (slug: string) => view(slug).head.obtained;
    expect(obtained('ruddlestone-r60')).toBe('Bought, paid for by the library, from membership fees.');
    expect(obtained('quennick-tope')).toMatch(/^Lent by the maker, paid for by Quennick, the maker\. On loan from/);
    expect(obtained('ostrel-lill')).toMatch(/^Given by the maker/);
    expect(changed('teasel').head.obtained).toBe('How it came to us is not recorded.');
  });

  test('lists sizes and weight', () => {
    expect(changed('plover').facts).toEqual([
      { name: 'LED field', text: '20.0 × 30.0 cm', inches: '7.9 × 11.8 in' },
      { name: 'Housing', text: '24.0 × 34.0 cm', inches: '9.4 × 13.4 in' },
      // 9 lb
      { name: 'Weight', text: '4.1 kg' },
    ]);
  });

  test('lists every session, the current one first, with the change since the one before', () => {
    const { sessions } = view('kelpwright-cormorant');
    expect(sessions.map((it) => it.shownDate)).toEqual(['20 Oct 2026', '21 Oct 2025']);
    expect(sessions[0]?.change).toMatch(/^−\d(\.\d)? ± \d(\.\d)? %$/);
    expect(sessions[1]?.change).toBe('the first session');
    expect(sessions[1]?.power.calculation).toContain('#optical-power-2025-10-21');
  });

  test('lists every price with the code that it needs and the link that earns money', () => {
    expect(view('kelpwright-limpet').prices).toMatchObject([
      {
        date: '30 Oct 2026',
        list: '€39',
        paid: '€32',
        code: 'with a code that earns us money',
        isPaidLink: true,
        link: 'https://kelpwright.example/limpet',
      },
    ]);
    expect(view('quennick-tope').prices[0]?.code).toBe('with a code that earns us nothing');
    expect(view('fennimarsh-reed').prices[0]).toMatchObject({ list: '£179', paid: '£159', base: '€182.85' });
    expect(view('kelpwright-limpet').prices[0]).not.toHaveProperty('base');
    expect(changed('teasel').prices[0]).toMatchObject({ list: '€400', paid: '–' });
    expect(changed('teasel').prices[0]).not.toHaveProperty('code');
  });

  test('holds every claim against its figure, and lists those that nothing checks', () => {
    const { claims, unchecked } = view('ruddlestone-r60');
    expect(claims.map((it) => it.subject)).toEqual(['wavelength', 'wavelength', 'irradiance', 'mains draw']);
    expect(claims.find((it) => it.subject === 'irradiance')).toMatchObject({
      claimed: '45 mW/cm²',
      measured: expect.stringMatching(/^44\.5 ± /),
      address: 'methodology/#peak-irradiance-combined',
    });
    expect(unchecked).toEqual([
      '50 % at 660 nm, 50 % at 850 nm',
      // The model holds it against the beams that the readings allow.
      'a beam angle of 60°, which the readings leave possible',
      '60 LEDs',
    ]);
    const ruledOut = view('fennimarsh-reed');
    expect(ruledOut.noted.some((it) => it.check === 'beam-claim')).toBe(true);
    expect(ruledOut.unchecked).toContain('a beam angle of 30°, which the readings rule out');
  });

  test('offers steps up with what they cost more or less', () => {
    const { stepUps } = view('ostrel-lill');
    expect(stepUps.length).toBeGreaterThan(0);
    for (const it of stepUps) {
      expect(it.extraPrice).toMatch(/^[€£][\d,.]+ (more|less)$|^the same price$/);
      expect(it.address).toMatch(/^\/panels\/[a-z0-9-]+\/$/);
      expect(it.extraPower).toMatch(/ W$/);
    }
  });

  test.each([
    ['a session', 'teasel', [], undefined],
    [
      'the grid',
      'teasel',
      [
        [
          'panels/teasel/index.md',
          '    grid:\n      rows:\n        - [30, 40, 30]\n        - [40, 50, 40]\n        - [30, 40, 30]\n',
          '',
        ],
      ],
      'The grid was not measured.',
    ],
    [
      'the field',
      'teasel',
      [['panels/teasel/index.md', 'field: { width: 24 cm, height: 40 cm }\n', '']],
      'The LED field was not measured, so the points have no place.',
    ],
    [
      'room for the points',
      'teasel',
      [['panels/teasel/index.md', 'width: 24 cm', 'width: 5 cm']],
      'The LED field is too small for the grid’s inset, so the points have no place.',
    ],
  ] as Array<[string, string, Array<[string, string, string]>, string | undefined]>)(
    'draws the grid, or says why it can’t: %s',
    (_name, slug, edits, reason) => {
      const it = changed(slug, ...edits);
      expect(it.gridAbsent).toBe(reason);
      expect(it.grid === undefined).toBe(reason !== undefined);
    },
  );

  test('says at which distance each field was read', () => {
    const { surroundings } = view('ruddlestone-r60');
    expect(surroundings.map((it) => [it.name, it.distance])).toEqual([
      ['Magnetic field', '6 in'],
      ['Electric field', '6 in'],
      ['Radio field', '6 in'],
      ['Sound', '1 m'],
    ]);
    expect(view('quennick-dab').surroundings.map((it) => it.distance)).toEqual(Array(4).fill('not measured'));
    const silent = changed('plover', ['panels/plover/index.md', 'sound: { distance: 1 m, off', 'sound: { off']);
    expect(silent.surroundings[3]?.distance).toBe('distance not recorded');
  });

  test('says at which frequency a field was read, where the meter showed one', () => {
    expect(changed('plover').surroundings[0]?.frequency?.gap).toBe('not measured');
    const at = changed('plover', ['panels/plover/index.md', 'on: 4.3 mG }', 'on: 4.3 mG, frequency: 22 kHz }']);
    expect(at.surroundings[0]?.frequency?.shown).toMatchObject({ value: '22,000', unit: 'Hz' });
    // Radio and sound have none to read.
    expect(at.surroundings.slice(2).map((it) => it.frequency)).toEqual([undefined, undefined]);
  });

  test('says why a withdrawn panel was withdrawn', () => {
    expect(view('ostrel-bord')).toMatchObject({
      status: 'withdrawn',
      statusReason: expect.stringContaining('other LEDs'),
      head: { standing: 'Not ranked: withdrawn from the guide.' },
    });
  });
});
