import { beforeAll, expect, test } from 'vitest';
import type { OtherGuide } from '../../src/content/read/others/other-guide.ts';
import { type GuideAgreement, guideAgreement } from '../../src/ledger/agreement.ts';
import { type Demo, demoLedger } from '../support/demo-ledger.ts';

let demo: Demo;
let other: OtherGuide;
let held: GuideAgreement;
beforeAll(() => {
  demo = demoLedger();
  [other] = demo.content.others as [OtherGuide];
  held = guideAgreement(demo.ledger, other);
});

test('three models are shared, of which the one that was set too near is apart', () => {
  expect(held.shared.map((it) => it.panel.slug)).toEqual(['fennimarsh-reed', 'kelpwright-gannet', 'ruddlestone-r60']);
  const apart = held.shared.map((it) => it.figures.filter((one) => !one.agrees).length);
  expect(apart[0]).toBeGreaterThan(5);
  expect(apart.slice(1)).toEqual([0, 0]);
  expect(held.onlyOwn).toContain('Quennick Tope');
});

test('what is apart for itself is what was read, and its largest error is the meter’s', () => {
  const roots = held.shared[0]?.figures.filter((it) => !it.agrees && !it.follows) ?? [];
  expect(roots.map((it) => it.metric.method).toSorted()).toEqual(
    expect.arrayContaining(['mean-irradiance', 'peak-irradiance']),
  );
  expect(roots.map((it) => it.metric.id)).not.toContain('optical-power');
  for (const it of roots) expect(it.explanation?.component.source.what.code).toBe('calibration');
});

test('a guide held against its own figures agrees with itself throughout', () => {
  const [panel] = held.shared;
  const own = panel?.panel;
  if (!own) throw new Error('a panel is shared');
  const figures = new Map(
    panel.figures.map((it) => [
      it.metric.id as string,
      { ...it.other, value: it.own.value, interval95: it.own.interval95 ?? ([0, 0] as const) },
    ]),
  );
  const same = guideAgreement(demo.ledger, { ...other, panels: [{ ...panel.other, figures }] });
  expect(same.shared[0]?.figures.map((it) => it.en)).toEqual(panel.figures.map(() => 0));
});

test('what was read at another distance is not compared, and what no distance enters is', () => {
  const panels = other.panels.map((it) => ({ ...it, distance: 30, blockDistances: new Map([['sound', 50]]) }));
  const farther = guideAgreement(demo.ledger, { ...other, panels }).shared[0];
  const compared = farther?.figures.map((it) => it.metric.id) ?? [];
  expect(compared).toEqual(
    expect.arrayContaining(['led-area', 'mains-draw-combined', 'emitted-power', 'wavelength-red']),
  );
  for (const id of ['optical-power', 'mean-irradiance', 'sound-on']) expect(compared).not.toContain(id);
  expect(farther?.left.get('other-distance')?.map((it) => it.id)).toContain('optical-power');
});

test('case, blanks and signs in names do not matter; another model is another', () => {
  const named = (maker: string, model: string) =>
    guideAgreement(demo.ledger, {
      ...other,
      panels: other.panels.slice(0, 1).map((it) => ({ ...it, maker, model })),
    }).shared.length;
  expect(named('FENNIMARSH  electric', 'reed')).toBe(1);
  expect(named('Fennimarsh-Electric', 'Reed')).toBe(1);
  expect(named('Fennimarsh Electric', 'Reed 2')).toBe(0);
});
