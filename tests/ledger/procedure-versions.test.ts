/** Which versions of the bench procedure are ranked together; a third one that reads the grid otherwise is supposed. */
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Entry } from '../../src/content/read/content.ts';
import type { Panel } from '../../src/content/schema/panel.ts';
import type { Session } from '../../src/content/schema/session.ts';
import { buildLedger } from '../../src/ledger/build-ledger.ts';
import type { PanelEntry } from '../../src/ledger/ledger.ts';
import { isFigure } from '../../src/measure/figure.ts';
import { guideView } from '../../src/site/guide/guide-view.ts';
import { type ContentFolder, TODAY, tinyContent } from '../support/content-folder.ts';

vi.mock('../../src/measure/irradiance/bench-procedure.ts', async (original) =>
  (await import('../support/third-procedure.ts')).withThird(await original()),
);

let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
});
afterEach(() => content.delete());

/** The ledger with the guide under one version and the teasel's sessions, newest first, under others. */
function withVersions(guideVersion: number, ...versions: number[]) {
  const whole = content.content();
  const entry = whole.panels.get('teasel') as Entry<Panel>;
  const [session] = entry.data.sessions;
  const sessions = versions.map((methodVersion, i) => ({
    ...(session as Session),
    date: `2026-10-0${9 - i}`,
    methodVersion,
  }));
  // Another of its class, under the first version.
  const fescue = { ...entry, id: 'fescue', data: { ...entry.data, model: 'Fescue' } };
  const panels = new Map([
    ...whole.panels,
    ['teasel', { ...entry, data: { ...entry.data, sessions } }] as const,
    ['fescue', fescue] as const,
  ]);
  const guide = { ...whole.guide, data: { ...whole.guide.data, methodVersion: guideVersion } };
  return buildLedger({ ...whole, panels, guide }, { today: TODAY });
}

const panel = (slug: string, of: ReturnType<typeof withVersions>) => of.panels.get(slug) as PanelEntry;
const groupsOf = (of: ReturnType<typeof withVersions>) =>
  (of.classes.find((it) => it.sizeClass?.id === 'large')?.groups ?? []).map((it) =>
    it.panels.map((one) => one.slug).toSorted(),
  );

const tablesOf = (of: ReturnType<typeof withVersions>) => guideView(of).classes.flatMap((it) => it.tables);

describe('versions that read the grid alike', () => {
  test.each([1, 2])('are ranked together under the guide’s version %i', (guideVersion) => {
    const of = withVersions(guideVersion, 2);
    expect(groupsOf(of)).toEqual([['fescue', 'teasel']]);
    for (const [slug, version] of [
      ['teasel', 2],
      ['fescue', 1],
    ] as const) {
      expect(panel(slug, of).current?.conditions).toEqual({
        distance: 15.24,
        methodVersion: version,
        isReference: true,
      });
      expect(panel(slug, of).rank).toMatchObject({ place: 1, of: 2 });
    }
    // Read alike and priced alike, they give the same nine-point figures.
    const power = ['teasel', 'fescue'].map((slug) => panel(slug, of).figures.get('optical-power'));
    expect(isFigure(power[0]) && isFigure(power[1]) && power[0].value === power[1].value).toBe(true);
  });

  test('tell of a change between their sessions', () => {
    const change = panel('teasel', withVersions(2, 2, 1)).sessions[0]?.change;
    expect(isFigure(change) && change.value).toBeCloseTo(0, 10);
  });

  test('are named together in the ranking', () => {
    const rows = tablesOf(withVersions(2, 2)).map((it) => it.rows.map((one) => one.slug).toSorted());
    expect(rows).toContainEqual(['fescue', 'teasel']);
  });
});

describe('a version that reads the grid otherwise', () => {
  test('is ranked apart, at whatever distance', () => {
    const of = withVersions(1, 3);
    expect(panel('teasel', of).current?.conditions).toEqual({ distance: 15.24, methodVersion: 3, isReference: false });
    expect(groupsOf(of)).toEqual([['fescue'], ['teasel']]);
    expect(panel('teasel', of).rank).toMatchObject({ place: 1, of: 1 });
    expect(of.frontier).not.toContain('teasel');
    const own = withVersions(3, 3);
    expect(panel('teasel', own).current?.conditions.isReference).toBe(true);
    expect(panel('fescue', own).current?.conditions.isReference).toBe(false);
    expect(own.frontier).toEqual(['teasel']);
  });

  test('gives no change against a session before it', () => {
    const change = panel('teasel', withVersions(1, 3, 2)).sessions[0]?.change;
    expect(change && !isFigure(change) && change.reason).toEqual({ code: 'other-conditions' });
  });

  test('says on the guide what differs: the version, or the distance alone', () => {
    const apart = (of: ReturnType<typeof withVersions>) => tablesOf(of).flatMap((it) => (it.apart ? [it.apart] : []));
    expect(apart(withVersions(2, 3))).toEqual([
      'at 15.24 cm by version 3 of the bench procedure, not at the guide’s 15.24 cm by version 1 or 2',
    ]);
    content.edit('panels/teasel/index.md', '    methodVersion: 1\n', '    methodVersion: 1\n    distance: 30 cm\n');
    expect(apart(withVersions(2, 2))[0]).toBe('at 30 cm, not at the guide’s 15.24 cm');
  });
});

test('a mixed ranking is named by its oldest version, though a panel of the newer comes first', () => {
  const of = withVersions(2, 2);
  expect([...of.panels.keys()].indexOf('teasel')).toBeLessThan([...of.panels.keys()].indexOf('fescue'));
  const large = of.classes.find((it) => it.sizeClass?.id === 'large');
  expect(large?.groups.map((it) => [it.conditions.methodVersion, it.panels.length])).toEqual([[1, 2]]);
});
