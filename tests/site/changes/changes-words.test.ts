import { beforeAll, expect, test } from 'vitest';
import { sectionText } from '../../../src/cli/text/lay-out.ts';
import { sectionMarkdown } from '../../../src/cli/text/markdown.ts';
import { changesLead, changesSections } from '../../../src/site/changes/changes-words.ts';
import { compareStates } from '../../../src/site/changes/compare-states.ts';
import type { GuideState, NumberState, PanelState } from '../../../src/site/changes/guide-state.ts';
import { stateOfLedger } from '../../../src/site/changes/state-of-ledger.ts';
import { type Demo, demoLedger } from '../../support/demo-ledger.ts';

let demo: Demo;
let state: GuideState;
beforeAll(() => {
  demo = demoLedger();
  state = stateOfLedger(demo.ledger);
});

/** The demonstration as it might have been: other prices and powers, one panel more, one less. */
function earlier(): GuideState {
  const panels = new Map(state.panels);
  panels.delete('ostrel-vagg');
  const own = panels.get('kelpwright-cormorant') as PanelState;
  panels.set('kelpwright-shag', { ...own, slug: 'kelpwright-shag', name: 'Kelpwright Shag' });
  const [top, ...older] = own.sessions;
  const power = top?.figures.get('optical-power') as NumberState;
  const figures = new Map(top?.figures).set('optical-power', { ...power, value: 50 });
  panels.set('kelpwright-cormorant', {
    ...own,
    price: { date: '2026-10-01', list: 649, paid: 599, currency: 'EUR' },
    ranks: { ...own.ranks, optical: { place: 4, of: 4, range: [3, 4], tiedWith: [] } },
    sessions: [{ ...(top as PanelState['sessions'][number]), figures, flags: [], claims: [] }, ...older],
  });
  const pages = new Set([...state.pages, '/panels/kelpwright-shag/', '/panels/kelpwright-shag/methodology/']);
  return { ...state, builtFor: '2026-10-02', panels, pages, methods: new Map(state.methods).set('rank', 0) };
}

const words = () => ({ against: 'dist/data/panels.json', guide: demo.ledger.guide });

test('in words for the terminal, within 80 columns', () => {
  const changes = compareStates(earlier(), state);
  expect(changesLead(changes, words())).toMatchInlineSnapshot(
    `"Against dist/data/panels.json, for 2 Oct 2026, now for 25 Nov 2026: 2 addresses gone, 1 panel new, 1 panel gone, 1 rank moved, 1 tie made, 1 price changed, 1 figure moved, 4 claims turned and 1 method changed."`,
  );
  const text = sectionText(changesSections(changes, words()));
  expect(text.split('\n').filter((it) => it.length > 80)).toEqual([]);
  expect(text).toMatchSnapshot();
});

test('as Markdown, with what it would take for marks escaped', () => {
  const text = sectionMarkdown('What changes', 'Lead.', [
    {
      title: 'Ranks',
      lead: 'One.',
      rows: [
        { name: 'A_b', text: '2nd *now*' },
        { name: '', text: 'and 3 more' },
      ],
    },
  ]);
  expect(text).toBe('# What changes\n\nLead.\n\n## Ranks\n\nOne.\n\n- **A\\_b**: 2nd \\*now\\*\n- and 3 more');
});

test('all figures where they are asked for; otherwise the rest is counted', () => {
  const panels = new Map(
    [...state.panels].map(([slug, it]) => [
      slug,
      {
        ...it,
        sessions: it.sessions.map((session) => ({
          ...session,
          figures: new Map(
            [...session.figures].map(([metric, figure]) => [
              metric,
              metric === 'optical-power' && 'value' in figure ? { ...figure, value: figure.value * 2 } : figure,
            ]),
          ),
        })),
      },
    ]),
  );
  const changes = compareStates({ ...state, panels }, state);
  const short = changesSections(changes, words());
  expect(short).toHaveLength(1);
  expect(short[0]?.rows.at(-1)?.text).toBe(`and ${changes.figures.length - 8} more; --all lists them`);
  expect(changesSections(changes, { ...words(), isAll: true })[0]?.rows).toHaveLength(changes.figures.length);
});

test('nothing has changed', () => {
  const changes = compareStates(state, state);
  expect(changesSections(changes, words())).toEqual([]);
  expect(changesLead(changes, words())).toMatch(/: nothing changes for readers\.$/);
});
