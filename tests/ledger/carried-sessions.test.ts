/** Sessions that carry readings of earlier ones over. */
import { afterEach, beforeEach, expect, test } from 'vitest';
import { buildLedger } from '../../src/ledger/build-ledger.ts';
import type { PanelEntry } from '../../src/ledger/ledger.ts';
import { type Figure, isFigure } from '../../src/measure/figure.ts';
import type { MetricId } from '../../src/measure/metrics.ts';
import { type ContentFolder, TODAY, tinyContent } from '../support/content-folder.ts';

const PLOVER = 'panels/plover/index.md';
const LIGHT =
  'distance: 6 in, peak: { red: 27.4, nearInfrared: 25.2, combined: 50.5 }, grid: { rows: [[30, 37, 30], [39, 49, 39], [30, 37, 30]] }';

let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
});
afterEach(() => content.delete());

function plover(session: string, drafts = false): PanelEntry {
  content.edit(PLOVER, 'sessions:\n', `sessions:\n  - { date: 2026-11-20, methodVersion: 1, ${session} }\n`);
  const panel = buildLedger(content.content(), { today: TODAY, drafts }).panels.get('plover');
  if (!panel) throw new Error('the Plover is there');
  return panel;
}

function figureOf(panel: PanelEntry, metric: MetricId, session = 0): Figure {
  const it = panel.sessions[session]?.figures.get(metric);
  if (!isFigure(it)) throw new Error(`${metric} is missing`);
  return it;
}

const READ_AGAIN = `instruments: { irradiance: thermopile }, carried: { mains: 2026-10-01, magnetic: 2026-10-01 }, ${LIGHT}`;

test('a carried figure is that of its day, errors and all, under the session’s own id', () => {
  const panel = plover(READ_AGAIN);
  const [now, then] = [0, 1].map((it) => figureOf(panel, 'mains-draw-combined', it));
  expect(now).toEqual({
    ...then,
    id: 'plover/2026-11-20/mains-draw-combined',
    carriedOver: { from: ['2026-10-01'], isWhole: true },
  });
  expect(then?.carriedOver).toBeUndefined();
  expect(now?.budget.map((it) => it.source.key)).toContain('plover/2026-10-01/mains-draw-combined/resolution');
});

test('what is made of old and new readings says so, and what is made of new ones alone does not', () => {
  const panel = plover(READ_AGAIN);
  const efficiency = figureOf(panel, 'efficiency-combined');
  expect(efficiency.carriedOver).toEqual({ from: ['2026-10-01'], isWhole: false });
  expect(efficiency.inputs).toEqual(['plover/2026-11-20/optical-power', 'plover/2026-11-20/mains-draw-combined']);
  expect(efficiency.value).toBeCloseTo(
    (100 * figureOf(panel, 'optical-power').value) / figureOf(panel, 'mains-draw-combined', 1).value,
    9,
  );
  expect(figureOf(panel, 'running-cost').carriedOver).toEqual({ from: ['2026-10-01'], isWhole: true });
  expect(figureOf(panel, 'optical-power').carriedOver).toBeUndefined();
  expect(figureOf(panel, 'price-per-watt').carriedOver).toBeUndefined();
});

test('results beside published limits have their day too', () => {
  const panel = plover(READ_AGAIN);
  const share = panel.current?.limits.find((it) => it.id === 'magnetic-field-share')?.figure;
  expect(isFigure(share) && share.carriedOver).toEqual({ from: ['2026-10-01'], isWhole: true });
});

test('carried light keeps its distance, version, warm-up and figures; its change is none', () => {
  const panel = plover(
    'distance: 15.24 cm, carried: { light: 2026-10-01 }, instruments: { mains: wattmeter }, mains: { combined: 90 }',
  );
  for (const metric of ['mean-irradiance', 'optical-power', 'peak-to-mean', 'uniformity-lowest'] as const) {
    const [now, then] = [0, 1].map((it) => figureOf(panel, metric, it));
    expect(now?.value).toBe(then?.value);
    expect(now?.interval95).toEqual(then?.interval95);
    expect(now?.carriedOver).toEqual({ from: ['2026-10-01'], isWhole: true });
    expect(now?.id).toBe(`plover/2026-11-20/${metric}`);
  }
  expect(panel.current?.used).toMatchObject({ distance: { written: '6 in' }, warmUp: { written: '40 min' } });
  expect(panel.current?.change).toMatchObject({ reason: { code: 'light-carried-over' } });
  expect(figureOf(panel, 'efficiency-combined').carriedOver?.isWhole).toBe(false);
  // The money is of today, and the light it is paid for is not.
  expect(figureOf(panel, 'price-per-watt').carriedOver).toEqual({ from: ['2026-10-01'], isWhole: true });
});

test('a meter’s calibration is that of the day on which it read', () => {
  content.edit(
    'instruments/wattmeter.yaml',
    'calibrations:\n',
    'calibrations:\n  - { date: 2026-11-01, validMonths: 24, relative: 9, reference: Another }\n',
  );
  const panel = plover(READ_AGAIN);
  const meter = panel.current?.instruments.find((it) => it.kind === 'mains');
  expect(meter).toMatchObject({ id: 'wattmeter', readOn: '2026-10-01' });
  expect(meter?.calibration?.date).not.toBe('2026-11-01');
  const keys = figureOf(panel, 'mains-draw-combined').budget.map((it) => it.source.key);
  expect(keys.some((it) => it.startsWith('wattmeter@2026-11-01'))).toBe(false);
});

test('a doubt about the readings goes with them', () => {
  content.edit(PLOVER, 'warmUp: 40 min', 'warmUp: 40');
  const panel = plover('carried: { light: 2026-10-01 }, instruments: { mains: wattmeter }, mains: { combined: 90 }');
  expect(panel.flags.map((it) => it.check)).toContain('warm-up-time');
  expect(figureOf(panel, 'optical-power').flags.map((it) => it.check)).toContain('warm-up-time');
  expect(figureOf(panel, 'efficiency-combined').flags).toMatchObject([
    { check: 'warm-up-time', from: expect.anything() },
  ]);
});

test('the meters’ list says for which later sessions a day’s readings stand', () => {
  content.edit(PLOVER, 'sessions:\n', `sessions:\n  - { date: 2026-11-20, methodVersion: 1, ${READ_AGAIN} }\n`);
  const { instruments } = buildLedger(content.content(), { today: TODAY });
  const used = (id: string) => instruments.find((it) => it.id === id)?.usedIn.filter((it) => it.slug === 'plover');
  expect(used('wattmeter')).toEqual([
    { slug: 'plover', name: 'Wrackline Plover', date: '2026-10-01', carriedInto: ['2026-11-20'] },
  ]);
  expect(used('thermopile')?.map((it) => it.carriedInto)).toEqual([[], []]);
});

test('a session that is a draft is nowhere in the guide, and is shown to the tester', () => {
  expect(plover('draft: true').sessions.map((it) => it.date)).toEqual(['2026-10-01']);
});

test('with drafts it is the current one', () => {
  expect(plover('draft: true', true).current?.date).toBe('2026-11-20');
});
