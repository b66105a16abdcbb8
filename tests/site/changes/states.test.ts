import { beforeAll, describe, expect, test } from 'vitest';
import { READABLE_FORMATS, stateOfData } from '../../../src/site/changes/state-of-data.ts';
import { stateOfLedger } from '../../../src/site/changes/state-of-ledger.ts';
import { DATA_FORMAT, panelsJson } from '../../../src/site/export/panels-json.ts';
import { type Demo, demoLedger } from '../../support/demo-ledger.ts';
import { expandPanels } from '../../support/expand-panels.ts';

let demo: Demo;
let text: string;
beforeAll(() => {
  demo = demoLedger();
  text = [...panelsJson(demo.ledger)].join('');
});

test('the data file says of panels what the ledger does', () => {
  const [of, read] = [stateOfLedger(demo.ledger), stateOfData(text, 'panels.json')];
  expect(read.panels.size).toBeGreaterThan(10);
  expect(read.panels).toEqual(of.panels);
  expect([read.builtFor, read.currency]).toEqual([of.builtFor, of.currency]);
  for (const [id, version] of read.methods) expect(of.methods.get(id)).toBe(version);
  for (const page of read.pages) expect(of.pages).toContain(page);
});

test('and what a reading of it by the README alone finds', () => {
  const read = stateOfData(text, 'panels.json');
  for (const panel of expandPanels(JSON.parse(text)).panels) {
    const state = read.panels.get(panel.slug);
    expect(state?.sessions.map((it) => it.date)).toEqual(
      panel.sessions.length > 0 ? panel.sessions.map((it: { date: string }) => it.date) : [null],
    );
    for (const [i, session] of panel.sessions.entries()) {
      const own = state?.sessions[i];
      expect(own?.flags.map((it) => it.text)).toEqual(session.flags.map((it: { text: string }) => it.text));
      for (const [metric, figure] of Object.entries<Record<string, unknown>>(session.figures)) {
        const it = own?.figures.get(metric);
        expect(it).toMatchObject(
          figure.value === null
            ? { reason: figure.reason }
            : { value: figure.value, unit: figure.unit, interval95: figure.interval95, version: figure.method_version },
        );
      }
    }
  }
});

test('withdrawn panels keep their pages, drafts have none', () => {
  const { pages, panels } = stateOfLedger(demo.ledger);
  expect(panels.has('ostrel-bord')).toBe(false);
  expect(pages).toContain('/panels/ostrel-bord/methodology/');
  expect([...pages].filter((it) => it.includes('ruddlestone-r600'))).toEqual([]);
});

describe('what can’t be read is refused in a sentence', () => {
  const refusal = (given: string) => {
    try {
      stateOfData(given, 'old.json');
    } catch (error) {
      return (error as Error).message;
    }
    return 'read';
  };

  test('the form of today can be', () => {
    expect(READABLE_FORMATS).toContain(DATA_FORMAT);
    expect(refusal(text)).toBe('read');
  });

  /** The file as format 4 had it: figures by their metrics. */
  const withMetrics = () => {
    const { lists, ...file } = JSON.parse(text);
    const byMetric = ([place, ...rows]: [number, ...object[]]) =>
      Object.fromEntries(rows.map((row, i) => [lists.figures[place][i], row]));
    type Session = { figures: [number, ...object[]] };
    const panels = file.panels.map((it: { figures?: Session['figures']; sessions: Session[] }) => ({
      ...it,
      ...(it.figures && { figures: byMetric(it.figures) }),
      sessions: it.sessions.map((session) => ({ ...session, figures: byMetric(session.figures) })),
    }));
    return { ...file, format: 4, panels };
  };

  test('so can the form before, which had each figure by its metric', () => {
    const before = withMetrics();
    expect(Object.keys(before.panels[0].sessions[0].figures)).toContain('optical-power');
    expect(stateOfData(JSON.stringify(before), 'old.json').panels).toEqual(stateOfData(text, 'new.json').panels);
  });

  test('and the one before that, which named the panels that another is tied with', () => {
    const file = withMetrics();
    const before = {
      ...file,
      format: 3,
      panels: file.panels.map((it: { rank: { tiedWith: number[] } | null }) => ({
        ...it,
        rank: it.rank && { ...it.rank, tiedWith: it.rank.tiedWith.map((place) => file.panels[place].slug) },
      })),
    };
    const ranks = (given: object) =>
      [...stateOfData(JSON.stringify(given), 'old.json').panels.values()].map((it) => it.ranks);
    expect(ranks(before)).toEqual(ranks(file));
    expect(ranks(file).flatMap((it) => ('tiedWith' in it.optical ? it.optical.tiedWith : []))).toContain(
      'fennimarsh-reed',
    );
  });

  test.each([
    ['<!doctype html>', 'old.json is no JSON; wanted the data/panels.json of a built guide.'],
    ['{"format":"4"}', 'old.json is JSON, but not the data/panels.json of a built guide.'],
    ['[]', 'old.json is JSON, but not the data/panels.json of a built guide.'],
    ['{"format":2,"panels":[]}', 'old.json has the data format 2; this version reads format 3, 4 and 5.'],
    ['{"format":3,"panels":[]}', 'old.json says it has the data format 3, but built_for is not as it should be'],
  ])('%s', (given, message) => {
    expect(refusal(given)).toContain(message);
  });
});
