/** The pad makes of a panel's readings what the build makes of them, number for number. */
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { unpackResult } from '../../../../src/ledger/optics-pack.ts';
import { workedOut } from '../../../../src/ledger/optics-store.ts';
import { estimatePanel } from '../../../../src/measure/beam/estimate.ts';
import type { OpticsInput } from '../../../../src/measure/beam/optics-input.ts';
import { benchPanelFile, benchSetup } from '../../../../src/site/bench/bench-setup.ts';
import type { BenchPanelFile, BenchSetup } from '../../../../src/site/bench/browser/bench-data.ts';
import type { Run } from '../../../../src/site/bench/browser/run.ts';
import { runFromFile } from '../../../../src/site/bench/browser/run-from-file.ts';
import { workRun } from '../../../../src/site/bench/browser/worked-run.ts';
import { type Demo, demoLedger } from '../../../support/demo-ledger.ts';

let demo: Demo;
let setup: BenchSetup;
beforeAll(() => {
  demo = demoLedger();
  setup = JSON.parse(JSON.stringify(benchSetup(demo, READER)));
});

const READER = { code: 'test', isTester: false };

/** From the store of earlier builds where it is known, under a name of all that goes in. */
const known = (input: OpticsInput) => {
  const result = workedOut(new Map([['', input]])).get('');
  if (!result) throw new Error('no light');
  return unpackResult(result);
};

/** A panel's newest session as a run, and the panel's data without it. */
function taken(slug: string): { run: Run; rest: BenchPanelFile } {
  const source = demo.content.panels.get(slug)?.source;
  const date = demo.panel(slug).current?.date ?? '';
  const { maker, model } = demo.panel(slug).data;
  const panel = { slug, isNew: false, maker, model };
  const run = source && runFromFile(readFileSync(source.path, 'utf8'), source.path, { id: 'a', date, panel });
  if (!run) throw new Error(`${slug} has no session`);
  const file = benchPanelFile(demo, slug, READER);
  const data = file.data as { sessions: Array<{ date: string }> };
  return { run, rest: { ...file, data: { ...data, sessions: data.sessions.filter((it) => it.date !== date) } } };
}

describe('every panel of the demonstration', () => {
  test('has the same figures, flags and limits on the pad as in the ledger', () => {
    for (const slug of demo.ledger.panels.keys()) {
      const { run, rest } = taken(slug);
      const { problems, panel, session } = workRun(run, setup, rest, known);
      const { current, figures, prices, sizeClass } = demo.panel(slug);
      expect(problems, slug).toEqual([]);
      // Where a file of the bench has a figure, the pad, which has none of them, knows the typed reading alone.
      if (current && current.files.length > 0) continue;
      expect(session?.date, slug).toBe(current?.date);
      expect(session?.figures, slug).toEqual(current?.figures);
      expect(session?.flags, slug).toEqual(current?.flags);
      expect(session?.limits, slug).toEqual(current?.limits);
      expect(session?.claims, slug).toEqual(current?.claims);
      expect([panel?.figures, panel?.prices, panel?.sizeClass], slug).toEqual([figures, prices, sizeClass]);
    }
  });

  test('also where the light is worked out here, as in a browser', () => {
    const { run, rest } = taken('kelpwright-limpet');
    const { session } = workRun(run, setup, rest, estimatePanel);
    expect(session?.figures).toEqual(demo.panel('kelpwright-limpet').current?.figures);
  });
});
