import { beforeAll, describe, expect, test } from 'vitest';
import { compareStates, isUnchanged } from '../../../src/site/changes/compare-states.ts';
import type {
  FigureState,
  GuideState,
  NumberState,
  PanelState,
  RankState,
} from '../../../src/site/changes/guide-state.ts';
import { moveOf } from '../../../src/site/changes/moved.ts';
import { stateOfLedger } from '../../../src/site/changes/state-of-ledger.ts';
import { demoLedger } from '../../support/demo-ledger.ts';

let state: GuideState;
beforeAll(() => {
  state = stateOfLedger(demoLedger().ledger);
});

const SLUG = 'kelpwright-cormorant';

/** The demonstration with one panel otherwise. */
function withPanel(edit: (panel: PanelState) => Partial<PanelState>, slug = SLUG): GuideState {
  const panel = state.panels.get(slug);
  if (!panel) throw new Error(`no ${slug}`);
  return { ...state, panels: new Map(state.panels).set(slug, { ...panel, ...edit(panel) }) };
}

const withFigure = (metric: string, figure: FigureState, at = 0) =>
  withPanel(({ sessions }) => ({
    sessions: sessions.map((it, i) => (i === at ? { ...it, figures: new Map(it.figures).set(metric, figure) } : it)),
  }));

const watts = (value: number, uncertainty: number, more: Partial<NumberState> = {}): NumberState => ({
  value,
  uncertainty,
  interval95: [value - 2 * uncertainty, value + 2 * uncertainty],
  unit: 'W',
  bound: null,
  basis: 'derived',
  method: 'optical-power',
  version: 1,
  ...more,
});

describe('a figure has moved', () => {
  test.each([
    // 84.0 ± 1.9 is shown to a tenth.
    ['by more than a step of its last digit', watts(84, 0.95), watts(84.15, 0.95), 'moved'],
    ['by less: a change of the last digit', watts(84, 0.95), watts(84.09, 0.95), 'last-digit'],
    ['not where the text stays', watts(84, 0.95), watts(84.001, 0.95), 'same'],
    ['where its interval grows', watts(84, 0.95), watts(84, 1.4), 'moved'],
    ['where it was a bound', watts(84, 0.95, { bound: 'below' }), watts(84, 0.95), 'moved'],
    ['where it came', { reason: 'not measured' }, watts(84, 1), 'moved'],
    ['where it went', watts(84, 1), { reason: 'not measured' }, 'moved'],
    ['not from one gap to another', { reason: 'not measured' }, { reason: 'no session' }, 'same'],
    [
      'where its uncertainty is not known any more',
      watts(84, 1),
      { ...watts(84, 1), uncertainty: null, interval95: null },
      'moved',
    ],
    [
      'by any digit that is shown, where there is no interval',
      watts(549, 0, { unit: 'EUR', uncertainty: 0, interval95: [549, 549] }),
      watts(549.5, 0, { unit: 'EUR', uncertainty: 0, interval95: [549.5, 549.5] }),
      'moved',
    ],
  ] as const)('%s', (_, was, now, kind) => {
    expect(moveOf(was, now, 'EUR').kind).toBe(kind);
  });

  test('by halves of its interval', () => {
    expect(moveOf(watts(80, 2), watts(90, 2), 'EUR')).toEqual({ kind: 'moved', weight: 2.5 });
    expect(moveOf(watts(80, 2), { reason: 'gone' }, 'EUR')).toMatchObject({ weight: Number.POSITIVE_INFINITY });
  });
});

describe('between two states', () => {
  test('that are alike there is nothing', () => {
    expect(isUnchanged(compareStates(state, state))).toBe(true);
  });

  test('figures are told with both values, the weightiest first, of earlier sessions last', () => {
    const was = withFigure('optical-power', watts(10, 0.1));
    const { figures } = compareStates(was, state);
    expect(figures.map((it) => [it.slug, it.metric, it.session])).toEqual([[SLUG, 'optical-power', null]]);
    expect(figures[0]?.was).toMatchObject({ value: 10 });
    const gone = withPanel(({ sessions }) => ({
      sessions: sessions.map((it, i) =>
        i === 0
          ? {
              ...it,
              figures: new Map(it.figures).set('optical-power', watts(10, 0.1)).set('mean-irradiance', { reason: 'x' }),
            }
          : { ...it, figures: new Map(it.figures).set('optical-power', { reason: 'not measured' }) },
      ),
    }));
    const all = compareStates(gone, state).figures;
    expect(all.map((it) => [it.metric, it.session === null])).toEqual([
      ['mean-irradiance', true],
      ['optical-power', true],
      ['optical-power', false],
    ]);
  });

  test('a last digit is counted and not told', () => {
    const power = state.panels.get(SLUG)?.sessions[0]?.figures.get('optical-power') as NumberState;
    const nudged = { ...power, value: power.value + 0.6 };
    const { figures, lastDigits } = compareStates(withFigure('optical-power', nudged), state);
    expect([figures.length, lastDigits]).toEqual([0, 1]);
  });

  test('ranks: place and range, and not the panels beside it', () => {
    const ranked = (rank: RankState) => withPanel(({ ranks }) => ({ ranks: { ...ranks, optical: rank } }));
    const { ranks } = compareStates(ranked({ place: 1, of: 4, range: [1, 3], tiedWith: [] }), state);
    expect(ranks.map((it) => [it.slug, it.basis])).toEqual([[SLUG, 'optical']]);
    const own = state.panels.get(SLUG)?.ranks.optical as Extract<RankState, { place: number }>;
    expect(compareStates(ranked({ ...own, of: own.of + 1 }), state).ranks).toEqual([]);
    expect(compareStates(ranked({ absent: 'no price' }), state).ranks).toHaveLength(1);
  });

  test('ties, each pair once', () => {
    const apart = new Map(
      [...state.panels].map(([slug, it]) => [
        slug,
        {
          ...it,
          ranks: {
            ...it.ranks,
            optical: 'place' in it.ranks.optical ? { ...it.ranks.optical, tiedWith: [] } : it.ranks.optical,
          },
        },
      ]),
    );
    const without = { ...state, panels: apart };
    const made = compareStates(without, state).ties;
    expect(made.length).toBeGreaterThan(0);
    expect(new Set(made.map((it) => it.change))).toEqual(new Set(['made']));
    expect(new Set(made.map((it) => it.panels.map(({ slug }) => slug).join(' '))).size).toBe(made.length);
    expect(compareStates(state, without).ties.map((it) => it.change)).toEqual(made.map(() => 'undone'));
  });

  test('flags without the numbers in their sentences, claims by what is claimed', () => {
    const old = withPanel(({ sessions }) => ({
      sessions: sessions.map((it) => ({
        ...it,
        flags: [{ check: 'price-age', severity: 'note' as const, text: 'The price is 91 days old', concerns: [] }],
        claims: it.claims.map((claim) => ({ ...claim, outcome: 'missed', text: 'missed' })),
      })),
    }));
    const later = withPanel(({ sessions }) => ({
      sessions: sessions.map((it) => ({
        ...it,
        flags: [{ check: 'price-age', severity: 'note' as const, text: 'The price is 92 days old', concerns: [] }],
      })),
    }));
    expect(compareStates(old, later).flags).toEqual([]);
    expect(compareStates(old, state).flags.map((it) => it.change)).toContain('gone');
    expect(compareStates(old, later).claims.length).toBeGreaterThan(0);
    for (const it of compareStates(old, later).claims)
      expect([it.was?.outcome, it.now?.outcome]).not.toEqual(['missed', 'missed']);
  });

  test('panels and pages that are gone, withdrawn, new or under a new name', () => {
    const panels = new Map(state.panels);
    panels.delete(SLUG);
    const pages = new Set([...state.pages].filter((it) => !it.includes(SLUG)));
    const without = { ...state, panels, pages };
    expect(compareStates(state, without)).toMatchObject({
      gonePanels: [{ slug: SLUG, keepsPage: false }],
      gonePages: [{ address: `/panels/${SLUG}/` }, { address: `/panels/${SLUG}/methodology/` }],
      ties: [],
    });
    expect(compareStates(state, { ...state, panels })).toMatchObject({
      gonePanels: [{ slug: SLUG, keepsPage: true }],
      gonePages: [],
    });
    expect(compareStates(without, state)).toMatchObject({
      newPanels: [{ slug: SLUG }],
      newPages: [`/panels/${SLUG}/`, `/panels/${SLUG}/methodology/`],
    });
    const named = withPanel(() => ({}));
    const own = named.panels.get(SLUG) as PanelState;
    const renamed = {
      ...without,
      panels: new Map(panels).set('kelpwright-shag', { ...own, slug: 'kelpwright-shag' }),
      renamed: new Map([[SLUG, 'kelpwright-shag']]),
    };
    const changes = compareStates(state, renamed);
    expect(changes).toMatchObject({
      newPanels: [],
      gonePanels: [],
      renamedPanels: [{ wasSlug: SLUG, slug: 'kelpwright-shag' }],
    });
    expect(changes.gonePages[0]).toEqual({ address: `/panels/${SLUG}/`, leadsTo: '/panels/kelpwright-shag/' });
    // Published under its new name once, with the old address leading on.
    const after = { ...renamed, pages: state.pages, renamed: new Map() };
    expect(compareStates(after, renamed)).toMatchObject({ gonePages: [], renamedPanels: [] });
  });

  test('of what knows its panels’ pages alone, others count neither as new nor as gone', () => {
    const partial = { ...state, pages: new Set(['/panels/kelpwright-cormorant/']), knowsAllPages: false };
    expect(compareStates(partial, state)).toMatchObject({ newPages: [], gonePages: [] });
  });

  test('methods by their versions', () => {
    const methods = new Map(state.methods).set('optical-power', 0).set('of-old', 2);
    const { methods: changed } = compareStates({ ...state, methods }, state);
    expect(changed).toEqual([
      { id: 'optical-power', was: 0, now: state.methods.get('optical-power') },
      { id: 'of-old', was: 2, now: null },
    ]);
  });

  test('money in another currency is not compared', () => {
    const price = watts(7, 0.2, { unit: 'GBP/W', method: 'price-per-watt' });
    const pounds = { ...withFigure('price-per-watt', price), currency: 'GBP' };
    expect(compareStates(pounds, state)).toMatchObject({ currency: { was: 'GBP', now: 'EUR' }, figures: [] });
  });
});
