/** Ranks and step-ups that an earlier build has worked out are the same ones, and go by what went in. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { comparisonsOf } from '../../src/build/kept-comparisons.ts';
import { COMPARISONS } from '../../src/ledger/comparisons.ts';
import type { Contender } from '../../src/measure/money/ranking.ts';
import { figure, line } from '../measure/make.ts';

let cache: string;
beforeEach(() => {
  cache = mkdtempSync(join(tmpdir(), 'comparisons-'));
});
afterEach(() => rmSync(cache, { recursive: true, force: true }));

const contender = (panel: string, price: number, watts: number): Contender => ({
  panel,
  price,
  power: figure(watts, [line(`${panel}/own`, watts / 50), line('meter/calibration', watts / 30)]),
});
const GROUP = [contender('a', 600, 100), contender('b', 900, 200), contender('c', 1000, 210)];

/** One build: what it was told, and whether it worked ranks out. */
function build(group: readonly Contender[]) {
  const comparisons = comparisonsOf(cache);
  const known = comparisons.results().size;
  comparisons.start();
  const told = { ranks: comparisons.ranks(group), stepUps: group.map((it) => comparisons.stepUps(it, group)) };
  comparisons.keep();
  return { told, known, size: comparisons.results().size };
}

const afresh = (group: readonly Contender[]) => ({
  ranks: COMPARISONS.ranks(group),
  stepUps: group.map((it) => COMPARISONS.stepUps(it, group)),
});

test('they are those of a build that keeps none, the first time and the next', () => {
  for (const known of [0, 4]) expect(build(GROUP)).toEqual({ told: afresh(GROUP), known, size: 4 });
});

test('another price has its own, and what is no more asked for is let go', () => {
  build(GROUP);
  const cheaper = [contender('a', 300, 100), ...GROUP.slice(1)];
  expect(afresh(cheaper)).not.toEqual(afresh(GROUP));
  expect(build(cheaper)).toEqual({ told: afresh(cheaper), known: 4, size: 4 });
});

test('what was kept is what is told', () => {
  build(GROUP);
  const comparisons = comparisonsOf(cache);
  const [kept] = comparisons.results().values();
  comparisons.start();
  expect(comparisons.ranks(GROUP.map((it) => ({ ...it })))).toBe(kept);
});

test('a file that was cut off is as none', () => {
  build(GROUP);
  writeFileSync(join(cache, 'comparisons'), 'cut');
  expect(build(GROUP)).toEqual({ told: afresh(GROUP), known: 0, size: 4 });
});
