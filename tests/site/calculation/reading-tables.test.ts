import { beforeAll, expect, test } from 'vitest';
import { rawReadings } from '../../../src/site/calculation/raw-readings.ts';
import { readingTables } from '../../../src/site/calculation/reading-tables.ts';
import { type Demo, demoLedger } from '../../support/demo-ledger.ts';

let demo: Demo;
beforeAll(() => {
  demo = demoLedger();
});

test('every reading stands in one table, but for notes and those past the edges', () => {
  for (const panel of demo.ledger.panels.values()) {
    for (const session of panel.sessions) {
      const all = rawReadings(session);
      const { grid, tables, singles } = readingTables(all);
      const shown = [
        ...(grid?.rows.flat(2) ?? []),
        ...tables.flatMap((it) => it.rows.flatMap((row) => row.cells.flat())),
        ...singles,
      ];
      // The distance of a sweep's readings is the label of its row.
      const distances = tables.find((it) => it.caption.startsWith('Sweep'))?.rows.map((it) => it.label) ?? [];
      const wanted = all.filter((it) => !it.path.startsWith('beyond[') && it.path !== 'notes');
      const swept = wanted.filter((it) => /^distances\[\d+\]\.distance$/.test(it.path));
      expect(distances, session.id).toEqual(swept.map((it) => it.written));
      const paths = wanted.filter((it) => !swept.includes(it)).map((it) => it.path);
      expect(shown.map((it) => it.path).toSorted(), session.id).toEqual(paths.toSorted());
    }
  }
});

test('the grid stands by its places, the channels in columns', () => {
  const { current } = demo.panel('kelpwright-gannet');
  if (!current) throw new Error('no session');
  const { grid, tables } = readingTables(rawReadings(current));
  expect(grid?.rows.map((row) => row.map((cell) => cell[0]?.path))[1]?.[2]).toBe('grid.rows[1][2]');
  expect(grid?.unit).toBe('mW/cm²');
  const peak = tables[0]?.rows.find((it) => it.label === 'peak');
  expect(peak?.cells.map((cell) => cell[0]?.path)).toEqual(['peak.red', 'peak.nearInfrared', 'peak.combined']);
});
