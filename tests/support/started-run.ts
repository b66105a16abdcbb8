import type { Run } from '../../src/site/bench/browser/run.ts';

/** A run at the bench in which nothing has been entered yet. */
export const START: Run = {
  id: 'a-run',
  panel: { slug: 'kelpwright-plover', isNew: true, maker: 'kelpwright', model: 'Plover' },
  date: '2026-11-21',
  methodVersion: 2,
  instruments: {},
  grid: { rows: 3, columns: 3, inset: '1 in' },
  settings: {},
  carried: {},
  entries: [],
  texts: {},
  photos: [],
  isFinished: false,
};
