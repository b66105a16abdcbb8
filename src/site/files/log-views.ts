import { madeOf } from '../../ledger/files/file-maker.ts';
import type { SessionEntry } from '../../ledger/ledger.ts';
import type { LogPlot } from './log-plot.ts';
import { sweepLog } from './sweep-log.ts';
import { warmUpLog } from './warm-up-log.ts';
import { waveformLog } from './waveform-log.ts';

/** A log of a session as its page shows it: the answer, what is drawn, and the numbers behind. */
export interface LogView {
  /** Within the page: `sweeps-0-2026-09-22`. */
  id: string;
  heading: string;
  answer: string;
  method: { id: string; text: string };
  plot?: LogPlot;
  caption?: string;
  table?: { summary: string; head: readonly string[]; rows: ReadonlyArray<readonly string[]> };
}

/** All logs of a session, the warm-up first: the others rest on it. */
export function logViews({ made, date, figures }: SessionEntry): LogView[] {
  const warmUp = madeOf(made, 'warmUpLog')?.view;
  const sweeps = madeOf(made, 'sweeps')?.view ?? [];
  const waveforms = madeOf(made, 'waveforms')?.view ?? [];
  return [
    ...(warmUp ? [warmUpLog(warmUp, figures)] : []),
    ...sweeps.map((it) => sweepLog(it)),
    ...waveforms.map((it) => waveformLog(it, figures)),
  ].map((it, i) => ({ ...it, id: `log-${i + 1}-${date}` }));
}
