import { madeOf } from '../../ledger/files/file-maker.ts';
import type { SessionEntry } from '../../ledger/ledger.ts';
import type { LogView } from './log-view.ts';
import { sweepLog } from './sweep-log.ts';
import { warmUpLog } from './warm-up-log.ts';
import { waveformLog } from './waveform-log.ts';

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
