import { madeOf, type SessionMade } from '../../ledger/files/file-maker.ts';
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
  const ids = logIds(made, date);
  return [
    ...(warmUp ? [{ ...warmUpLog(warmUp, figures), id: ids.warmUp }] : []),
    ...sweeps.map((it, i) => ({ ...sweepLog(it), id: ids.sweep(i) })),
    ...waveforms.map((it) => ({ ...waveformLog(it, figures), id: ids.waveform(it.mode) })),
  ];
}

/** Where the logs of a session stand on its page: numbered in their order. */
export function logIds(made: SessionMade, date: string) {
  const warmUps = madeOf(made, 'warmUpLog') ? 1 : 0;
  const sweeps = madeOf(made, 'sweeps')?.view.length ?? 0;
  const modes: readonly string[] = (madeOf(made, 'waveforms')?.view ?? []).map((it) => it.mode);
  const id = (number: number) => `log-${number}-${date}`;
  return {
    warmUp: id(1),
    sweep: (i: number) => id(warmUps + 1 + i),
    waveform: (mode: string) => id(warmUps + sweeps + 1 + modes.indexOf(mode)),
  };
}
