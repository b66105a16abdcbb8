/** What only the tester can judge: each doubt with a case on both sides of its line. */
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { loadLedger } from '../../../src/ledger/load-ledger.ts';
import { isFigure } from '../../../src/measure/figure.ts';
import { FAR } from '../../../src/site/warnings/doubts/far-from-others.ts';
import { ODD_STEP } from '../../../src/site/warnings/doubts/prices.ts';
import { warningsOf } from '../../../src/site/warnings/warnings.ts';
import { type ContentFolder, TODAY, tinyContent } from '../../support/content-folder.ts';

const PLOVER = 'panels/plover/index.md';
const TEASEL = 'panels/teasel/index.md';

let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
  vi.stubEnv('LEDGER_TODAY', TODAY);
});
afterEach(() => {
  vi.unstubAllEnvs();
  content.delete();
});

const load = () => loadLedger({ folder: content.folder, watch: true });
const found = (check: string) => warningsOf(load()).filter((it) => it.check === check);

describe('prices', () => {
  test.each([
    ['at the list price', 'paid: 240', 'paid: 300', 0],
    ['just above it', 'paid: 240', 'paid: 301', 1],
    ['a fifth of it', 'paid: 240', 'paid: 60', 0],
    ['just under a fifth of it', 'paid: 240', 'paid: 59.9', 1],
  ])('%s', (_name, from, to, count) => {
    expect(ODD_STEP).toBe(5);
    content.edit(PLOVER, from, to);
    expect(found('price-odd')).toHaveLength(count);
  });

  test.each([
    [100, 0],
    [99, 1],
    [2500, 0],
    [2501, 1],
  ])('500 before, %s now: by more than a factor of five or not', (now, count) => {
    content.edit(
      TEASEL,
      '    list: 400\n',
      `    list: 500\n    currency: EUR\n  - date: 2026-11-05\n    list: ${now}\n`,
    );
    const warnings = found('price-odd');
    expect(warnings).toHaveLength(count);
    if (count > 0) expect(warnings[0]).toMatchObject({ field: 'prices[1].list', severity: 'doubt' });
  });

  test('in two currencies are not held against each other', () => {
    content.edit(PLOVER, 'list: 250\n    paid: 200', 'list: 2500\n    paid: 2000');
    expect(found('price-odd')).toEqual([]);
  });
});

describe('a panel that is not ranked with the others', () => {
  test('has a note where its light was read at another distance', () => {
    expect(found('ranked-apart')).toEqual([]);
    content.edit(PLOVER, 'distance: 6 in\n    peak', 'distance: 60 in\n    peak');
    expect(found('ranked-apart')).toMatchObject([
      {
        severity: 'note',
        field: 'sessions[0].distance',
        line: content.lineOf(PLOVER, 'distance: 60 in'),
        text: expect.stringContaining('was read at 152 cm under version 1'),
      },
    ]);
  });

  test('has one with the reason where no ranking has it', () => {
    content.edit(PLOVER, 'field:\n  width: 20 cm\n  height: 30 cm\n', '');
    expect(found('ranked-apart')).toMatchObject([
      { field: 'sessions[0]', text: expect.stringMatching(/^The panel stands in no ranking: .*field.*\.$/) },
    ]);
  });
});

describe('texts that end at a #', () => {
  test.each([
    ['a number sign', 'verdict: Best of #1 panels.', 1],
    ['a word with one', 'verdict: Number #1', 1],
    ['a number sign in quotes', 'verdict: "Best of #1 panels."', 0],
    ['a comment', 'verdict: A panel for the tests. # say more', 0],
    ['a sign within a word', 'verdict: A panel in C#minor.', 0],
    ['a block of text with one', 'verdict: >-\n  note: Best of #1 panels.', 0],
  ])('%s', (_name, to, count) => {
    content.edit(PLOVER, 'verdict: A panel for the tests.', to);
    const warnings = found('text-cut');
    expect(warnings).toHaveLength(count);
    if (count > 0) {
      expect(warnings[0]).toMatchObject({ severity: 'doubt', field: 'verdict', line: 5 });
      expect(warnings[0]?.text).toContain('#1');
    }
  });

  test('are found in lists and blocks, by their place; comments after numbers and names are none', () => {
    content.edit(PLOVER, 'hotSpots: None seen.', 'hotSpots: Spot #2 is bright.');
    content.edit(PLOVER, 'warmUp: 40 min', 'warmUp: 40 min #by the clock');
    content.edit(PLOVER, 'how: bought', 'how: bought #from a shop');
    expect(found('text-cut').map((it) => it.field)).toEqual(['sessions[0].hotSpots']);
  });
});

describe('links to what figures or days decide', () => {
  const tested = () => `/changes/#tested-${/- date: (\S+)\n\s+methodVersion/.exec(content.read(PLOVER))?.[1]}-plover`;

  test('are silent where the part is there', () => {
    const site = 'https://ledger.example';
    const links = ['/#small', '/#table-large', `${site}/frame/#ranking`, '/?spend=9#ask', tested(), '/changes/'];
    content.edit(PLOVER, 'Notes of the tester.', links.map((it) => `[a](${it})`).join(' '));
    expect(found('link-to-figures')).toEqual([]);
  });

  test.each([
    ['/#table-small-30-cm-v1', undefined],
    ['/emitted/#unknown-size', undefined],
    ['https://ledger.example/frame/#table-large-20-cm-v2', undefined],
    ['/changes/#tested-2019-01-01-plover', () => tested()],
  ] as const)('%s is a doubt at its line', (address, near) => {
    content.edit(PLOVER, 'Notes of the tester.', `One.\n\n[a](${address})`);
    const warnings = found('link-to-figures');
    expect(warnings).toMatchObject([{ severity: 'doubt', line: content.lineOf(PLOVER, '[a]') }]);
    expect(warnings[0]?.text).toContain(`"${address}"`);
    if (near) expect(warnings[0]?.hint).toBe(`did you mean "${near()}"?`);
  });

  test('in a field it has the field', () => {
    content.edit('makers/knotgrass.yaml', 'name:', 'note: See /changes/#corection.\nname:');
    expect(found('link-to-figures')).toMatchObject([
      { field: 'note', line: 1, hint: 'did you mean "/changes/#corrections"?' },
    ]);
  });
});

describe('calibrations', () => {
  test.each([
    ['thermopile', 'relative: 4', 0.2, 0],
    ['thermopile', 'relative: 4', 0.199, 1],
    ['wattmeter', 'relative: 1', 0.05, 0],
    ['wattmeter', 'relative: 1', 0.049, 1],
    ['coil', 'relative: 6', 0.2, 0],
    ['coil', 'relative: 6', 0.199, 1],
    ['rule', 'relative: 0.1', 0.001, 0],
  ])('%s, %s to %s', (id, from, to, count) => {
    content.edit(`instruments/${id}.yaml`, from, `relative: ${to}`);
    expect(found('calibration-fraction')).toHaveLength(count);
  });
});

test.each([
  ['electric', 'V/m'],
  ['radio', 'mW/m2'],
  ['flicker', "'%'"],
])('calibrations for %s: 0.2 %% is taken, less is doubted', (kind, unit) => {
  const coil = content.read('instruments/coil.yaml');
  const instrument = coil.replace('measures: magnetic', `measures: ${kind}`).replace('unit: mG', `unit: ${unit}`);
  for (const [relative, count] of [
    [0.2, 0],
    [0.199, 1],
  ] as const) {
    content.write('instruments/other.yaml', instrument.replace('relative: 6', `relative: ${relative}`));
    expect(found('calibration-fraction')).toHaveLength(count);
  }
});

describe('shares', () => {
  const shares = (first: number, second: number) =>
    content.edit(
      PLOVER,
      'share: 50 % }\n    - { peak: 850 nm, share: 50 %',
      `share: ${first} }\n    - { peak: 850 nm, share: ${second}`,
    );

  test.each([
    [50, 55, 0],
    [50, 55.1, 1],
    [50, 45, 0],
    [50, 44.9, 1],
  ])('%s and %s', (first, second, count) => {
    shares(first, second);
    expect(found('shares-add-up')).toHaveLength(count);
  });

  test('that are not all given add up to nothing', () => {
    content.edit(PLOVER, '- { peak: 850 nm, share: 50 % }', '- { peak: 850 nm }');
    expect(found('shares-add-up')).toEqual([]);
  });

  test.each([
    [0.5, 0.61, 0],
    [0.5, 0.59, 1],
    [0.5, 0.39, 0],
    [0.5, 0.41, 1],
  ])('as fractions, %s and %s: problems %s', (first, second, count) => {
    shares(first, second);
    expect(content.problems()).toHaveLength(count);
  });
});

describe('a price per watt', () => {
  /** Four panels alike, of which the Plover's price is changed until it costs `times` what the others do. */
  function priced(times: number) {
    for (const name of ['dunlin', 'knot', 'ruff'])
      content.write(`panels/${name}/index.md`, content.read(TEASEL).replace('model: Teasel', `model: ${name}`));
    const perWatt = (slug: string) => {
      const it = load().ledger.panels.get(slug)?.figures.get('price-per-watt');
      if (!isFigure(it)) throw new Error('no price per watt');
      return it.value;
    };
    const price = (200 * times * perWatt('teasel')) / perWatt('plover');
    content.edit(PLOVER, 'list: 250\n    paid: 200', `paid: ${price.toFixed(6)}`);
    expect(perWatt('plover') / perWatt('teasel')).toBeCloseTo(times, 4);
    return found('far-from-others');
  }

  test.each([
    [0.99 * FAR, 0],
    [1.01 * FAR, 1],
    [1.01 / FAR, 0],
    [0.99 / FAR, 1],
  ])('%s times that of all others', (times, count) => {
    const warnings = priced(times);
    expect(warnings).toHaveLength(count);
    if (count > 0) expect(warnings[0]?.file).toContain('plover');
  });

  test('is held against three others at least', () => {
    const another = (name: string) =>
      content.write(`panels/${name}/index.md`, content.read(TEASEL).replace('model: Teasel', `model: ${name}`));
    content.edit(PLOVER, 'paid: 200', 'paid: 199999');
    another('dunlin');
    expect(found('far-from-others')).toEqual([]);
    another('knot');
    expect(found('far-from-others')).toHaveLength(1);
  });
});

describe('pictures', () => {
  const png = Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);

  test('that nothing names are told of, once each; those in the notes are not', () => {
    content.write('panels/plover/wall.png', png);
    content.write('panels/plover/the back.png', png);
    content.edit(PLOVER, 'Notes of the tester.', '![a](the%20back.png)');
    expect(found('photo-unnamed')).toEqual([
      expect.objectContaining({ severity: 'note', text: expect.stringContaining('“wall.png”') }),
    ]);
  });
});

describe('a check standard', () => {
  const file = (more: string) =>
    `name: Lamp\nwhat: LEDs.\ninstrument: thermopile\nreadings:\n  - { date: 2026-01-10, value: 41 }\n  - { date: 2026-01-20, value: 42 }\n${more}`;

  test('whose meter was calibrated between two readings may want new limits', () => {
    content.write('standards/lamp.yaml', file(''));
    expect(found('standard-recalibrated')).toMatchObject([
      {
        severity: 'note',
        file: expect.stringMatching(/standards\/lamp\.yaml$/),
        line: 6,
        text: 'The Thermopile was calibrated on 2026-01-15, and the limits of its check standard go on as before. If it was adjusted, a step there is no fault.',
        hint: 'if it was adjusted, restart the limits: restarts: [{ date: 2026-01-20, reason: … }]',
      },
    ]);
  });

  test('with new limits between the two has them', () => {
    content.write('standards/lamp.yaml', file('restarts:\n  - { date: 2026-01-20, reason: Adjusted. }\n'));
    expect(found('standard-recalibrated')).toEqual([]);
  });

  test('that was read after the calibration alone is none of its business', () => {
    content.write('standards/lamp.yaml', file('').replace('2026-01-10', '2026-01-15'));
    expect(found('standard-recalibrated')).toEqual([]);
  });
});
