/** The readings past the edges as the working page shows them: the table, and the places to scale. */
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { buildLedger } from '../../../src/ledger/build-ledger.ts';
import type { PanelEntry, SessionEntry } from '../../../src/ledger/ledger.ts';
import { rawReadings } from '../../../src/site/calculation/raw-readings.ts';
import { beyondHtml } from '../../../src/site/panel/beyond-html.ts';
import { type BeyondView, beyondView } from '../../../src/site/panel/beyond-view.ts';
import { panelView } from '../../../src/site/panel/panel-view.ts';
import { type ContentFolder, TODAY, tinyContent } from '../../support/content-folder.ts';
import { demoLedger } from '../../support/demo-ledger.ts';

const TEASEL = 'panels/teasel/index.md';
const BEYOND = `    beyond:
      - { edge: right, past: 8 cm, on: [12.1, 12.3], off: 0.1 }
      - { edge: right, past: 20 cm, on: [0.9, { value: 3.7, struck: The <door> was open. }] }
      - { edge: top, past: 8 cm, on: { value: 7, struck: Slipped. } }
      - { edge: left, past: 40 cm, on: <0.1, off: <0.1 }
      - { edge: bottom, past: 5 cm, on: 14.0 }
`;

let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
  content.edit(TEASEL, '    grid:\n', `${BEYOND}    grid:\n`);
});
afterEach(() => content.delete());

function teasel(): { panel: PanelEntry; session: SessionEntry; ledger: ReturnType<typeof buildLedger> } {
  const ledger = buildLedger(content.content(), { today: TODAY });
  const panel = ledger.panels.get('teasel') as PanelEntry;
  return { panel, session: panel.current as SessionEntry, ledger };
}
function view(): BeyondView {
  const { panel, session } = teasel();
  return beyondView(panel, session) as BeyondView;
}

describe('the table', () => {
  test('has every reading as it was written, struck ones with their reason, and the room’s light with its place', () => {
    expect(view().rows).toEqual([
      {
        place: '8 cm past the right edge',
        on: [{ written: '12.1 mW/cm²' }, { written: '12.3 mW/cm²' }],
        off: '0.1 mW/cm²',
      },
      {
        place: '20 cm past the right edge',
        on: [{ written: '0.9 mW/cm²' }, { written: '3.7 mW/cm²', rejected: 'The <door> was open.' }],
        off: '0.1 mW/cm², read at 8 cm',
      },
      { place: '8 cm past the top edge', on: [{ written: '7 mW/cm²', rejected: 'Slipped.' }], off: 'not read' },
      { place: '40 cm past the left edge', on: [{ written: '<0.1 mW/cm²' }], off: '<0.1 mW/cm²' },
      { place: '5 cm past the bottom edge', on: [{ written: '14 mW/cm²' }], off: 'not read' },
    ]);
  });

  test('counts places with a reading that counts', () => {
    expect(view().count).toBe(4);
  });

  test('is markup with its texts escaped, and without a style', () => {
    const { text } = beyondHtml(view(), '2 October 2026');
    expect(text).toContain('<s>3.7 mW/cm²</s><small> struck out: The &lt;door&gt; was open.</small>');
    expect(text).toContain('&lt;0.1 mW/cm²');
    expect(text).toContain('id="past-the-edges-2026-10-02"');
    expect(text).not.toMatch(/style=|NaN|undefined/);
    expect(text.match(/<circle/g)).toHaveLength(5);
  });
});

describe('the drawing', () => {
  // The field is 24 by 40 cm; x runs to the right and y down from its upper left corner.
  test('has each place straight out from the middle of its edge', () => {
    expect(view().drawing?.places.map((it) => [it.x, it.y])).toEqual([
      [32, 20],
      [44, 20],
      [12, -8],
      [-40, 20],
      [12, 45],
    ]);
  });

  test('has the mean of the kept readings, a bound as one, and a place without any', () => {
    expect(view().drawing?.places.map((it) => [it.text, it.isRejected])).toEqual([
      ['12.2', false],
      ['0.9', false],
      ['struck', true],
      ['< 0.1', false],
      ['14.0', false],
    ]);
  });

  test('shows all of it, in one scale both ways', () => {
    const it = view().drawing;
    if (!it) throw new Error('nothing is drawn');
    const [left, top, width, height] = it.viewBox.split(' ').map(Number) as [number, number, number, number];
    for (const { x, y, textX, textY } of it.places) {
      for (const at of [x, textX]) expect(at > left && at < left + width).toBe(true);
      for (const at of [y, textY]) expect(at > top && at < top + height).toBe(true);
    }
    expect(it.pixelWidth / it.pixelHeight).toBeCloseTo(width / height, 2);
  });

  test('is left out where the field was not measured; the table stays', () => {
    content.edit(TEASEL, 'field: { width: 24 cm, height: 40 cm }\n', '');
    expect(view().drawing).toBeUndefined();
    expect(view().rows).toHaveLength(5);
  });
});

test('the panel’s page says at how many places, and leads there', () => {
  const { panel, ledger } = teasel();
  expect(panelView(panel, ledger).beyond).toEqual({
    text: 'Measured past the edges at 4 places',
    address: '/panels/teasel/methodology/#past-the-edges-2026-10-02',
  });
  const plover = ledger.panels.get('plover') as PanelEntry;
  expect(panelView(plover, ledger).beyond).toBeUndefined();
  expect(beyondView(plover, plover.current as SessionEntry)).toBeUndefined();
});

test('the data files have each reading with edge and distance, struck ones and bounds too', () => {
  const list = rawReadings(teasel().session).filter((it) => it.path.startsWith('beyond'));
  expect(list.slice(0, 5)).toEqual([
    { path: 'beyond[0].edge', label: 'past the edges, place 1, edge', written: 'right' },
    { path: 'beyond[0].past', label: 'past the edges, place 1, how far', written: '8 cm', value: 8, unit: 'cm' },
    {
      path: 'beyond[0].on[0]',
      label: '8 cm past the right edge, panel on, reading 1',
      written: '12.1 mW/cm²',
      value: 12.1,
      unit: 'mW/cm²',
    },
    {
      path: 'beyond[0].on[1]',
      label: '8 cm past the right edge, panel on, reading 2',
      written: '12.3 mW/cm²',
      value: 12.3,
      unit: 'mW/cm²',
    },
    {
      path: 'beyond[0].off',
      label: '8 cm past the right edge, panel off',
      written: '0.1 mW/cm²',
      value: 0.1,
      unit: 'mW/cm²',
    },
  ]);
  expect(list.filter((it) => it.struck).map((it) => [it.path, it.struck])).toEqual([
    ['beyond[1].on[1]', 'The <door> was open.'],
    ['beyond[2].on', 'Slipped.'],
  ]);
  expect(list.filter((it) => it.bound).map((it) => [it.path, it.value])).toEqual([
    ['beyond[3].on', 0.1],
    ['beyond[3].off', 0.1],
  ]);
});

test('most of the demonstration’s panels show readings past the edges', () => {
  const { ledger } = demoLedger();
  const published = [...ledger.panels.values()].filter((it) => it.data.status === 'published');
  const shown = published.filter((it) => panelView(it, ledger).beyond);
  expect(shown.map((it) => panelView(it, ledger).beyond?.text)).toEqual(
    Array(8).fill('Measured past the edges at 6 places'),
  );
});
