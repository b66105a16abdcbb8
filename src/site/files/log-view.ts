import type { FilePlot } from './file-plot.ts';

/** A log of a session as its page shows it: the answer, what is drawn, and the numbers behind. */
export interface LogView {
  /** Within the page: `sweeps-0-2026-09-22`. */
  id: string;
  heading: string;
  /** In the list of the page's parts. */
  short: string;
  answer: string;
  method: { id: string; text: string };
  plot?: FilePlot;
  caption?: string;
  table?: { summary: string; head: readonly string[]; rows: ReadonlyArray<readonly string[]> };
}
