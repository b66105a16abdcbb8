import { beforeAll, expect, test } from 'vitest';
import { guideEvents } from '../../../src/ledger/events.ts';
import { isFigure } from '../../../src/measure/figure.ts';
import { calculationHtml } from '../../../src/site/calculation/calculation-html.ts';
import { panelsJson } from '../../../src/site/export/panels-json.ts';
import { panelsFile } from '../../../src/site/export/panels-schema.ts';
import { changesView } from '../../../src/site/news/changes-view.ts';
import { panelView } from '../../../src/site/panel/panel-view.ts';
import { correctionsStand } from '../../../src/site/warnings/doubts/corrections.ts';
import { type Demo, demoLedger } from '../../support/demo-ledger.ts';

let demo: Demo;
beforeAll(() => {
  demo = demoLedger();
});

test('says first what is new this month', () => {
  const { lead, months, older, corrections } = changesView(demo.ledger);
  expect(lead).toBe(
    'November 2026: 3 new tests, 1 re-test, prices that moved a rank on 2 days and 25 methods new or changed.',
  );
  expect(months.map((it) => it.id)).toEqual(['2026-11', '2026-10', '2026-09', '2026-08']);
  expect(older.map((it) => [it.year, it.count])).toEqual([['2025', '1 change']]);
  expect(corrections.map((it) => [it.panelName, it.subject, it.moved, it.also.length])).toEqual([
    ['Ruddlestone R60', 'Mains draw, both channels', '82.1 ± 0.9 W → 92.1 ± 1.0 W', 3],
  ]);
  const quiet = changesView({ ...demo.ledger, today: '2026-12-02' });
  expect(quiet.lead).toBe('Nothing in December 2026 so far; the newest is of 27 Nov 2026.');
});

test('a panel that is yet to be read is named, and no event', () => {
  expect(changesView(demo.ledger).waiting).toEqual([]);
  const dab = demo.panel('quennick-dab');
  const panels = new Map([...demo.ledger.panels, [dab.slug, { ...dab, sessions: [], current: undefined }]]);
  const { waiting, months } = changesView({ ...demo.ledger, panels });
  expect(waiting).toEqual([{ name: 'Quennick Dab', address: '/panels/quennick-dab/' }]);
  expect(months.flatMap((it) => it.events.map(({ id }) => id)).filter((it) => it.includes('quennick-dab'))).toEqual([]);
});

test('a panel whose first session is a draft still is a new test by the next one', () => {
  const cormorant = demo.panel('kelpwright-cormorant');
  const [newest, first] = cormorant.sessions;
  if (!newest || !first) throw new Error('the demo has no panel that was tested twice');
  const sessions = [newest, { ...first, readings: { ...first.readings, draft: true as const } }];
  const panels = new Map([...demo.ledger.panels, [cormorant.slug, { ...cormorant, sessions }]]);
  const ids = guideEvents({ ...demo.ledger, panels }).map((it) => it.id);
  expect(ids.filter((it) => it.endsWith('-kelpwright-cormorant'))).toEqual([
    `tested-${newest.date}-kelpwright-cormorant`,
  ]);
});

test('a corrected figure says so on its panel’s page and on its calculation, others do not', () => {
  const panel = demo.panel('ruddlestone-r60');
  const view = panelView(panel, demo.ledger);
  const efficiency = view.head.figures.find((it) => it.figure.metric === 'efficiency-combined')?.figure;
  expect(efficiency?.corrected).toEqual({
    text: 'corrected 6 Oct 2026',
    address: '/changes/#correction-2026-10-06-ruddlestone-r60-2026-09-15-mains-draw-combined',
    moved: '23.7 ± 1.2 % → 21.2 ± 1.1 %',
    why: expect.stringContaining('digit'),
  });
  expect(view.head.figures.filter((it) => it.figure.corrected)).toHaveLength(1);
  const html = calculationHtml(panel, demo.ledger.guide);
  expect(html.match(/>Corrected 6 Oct 2026<\/a>: 82\.1 ± 0\.9 W → 92\.1 ± 1\.0 W\. A digit/g)).toHaveLength(1);
  expect(html.match(/Corrected 6 Oct 2026/g)).toHaveLength(4);
  expect(calculationHtml(demo.panel('kelpwright-gannet'), demo.ledger.guide)).not.toContain('orrected ');
});

test('the data say what was corrected, by the ids of figures', () => {
  const file = panelsFile.parse(JSON.parse([...panelsJson(demo.ledger)].join('')));
  const [correction] = file.corrections;
  expect(correction?.figures[0]).toEqual({
    id: 'ruddlestone-r60/2026-09-15/mains-draw-combined',
    metric: 'mains-draw-combined',
    from: { value: 82.1, interval95: [81.21, 82.99] },
    to: { value: 92.1, interval95: [91.107, 93.093] },
  });
  const draw = demo.panel('ruddlestone-r60').current?.figures.get('mains-draw-combined');
  expect(isFigure(draw) && draw.id).toBe(correction?.figures[0]?.id);
});

test('the tester hears of a correction that says another figure than there is', () => {
  expect(correctionsStand(demo)).toEqual([]);
  const [entry, ...rest] = demo.ledger.corrections;
  if (!entry) throw new Error('the demo has no correction');
  const [first, ...figures] = entry.figures;
  if (!first) throw new Error('it has no figure');
  const other = { ...entry, figures: [{ ...first, to: { value: 93.1, interval95: null } }, ...figures] };
  const told = correctionsStand({ ...demo, ledger: { ...demo.ledger, corrections: [other, ...rest] } });
  expect(told.map((it) => [it.check, it.severity, it.line, it.field])).toEqual([
    ['correction-stands', 'doubt', 11, 'corrections[0].to'],
  ]);
  expect(told[0]?.text).toContain('is 93.1, and it is 92.1 ± 1.0 W');
});
