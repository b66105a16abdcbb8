/** What is said of a warm-up. No DOM. */
import type { Settling } from '../../../../measure/irradiance/settling.ts';
import { fixed } from '../../../../words/format.ts';

/** `5:07` */
export const clock = (seconds: number) =>
  `${Math.floor(seconds / 60)}:${String(Math.floor(seconds % 60)).padStart(2, '0')}`;

const minutes = (seconds: number) => Math.round(seconds / 60);

/** How far a series of readings has settled. */
export function settlingWords(name: string, it: Settling): string {
  const spread = it.spreadPercent === undefined ? '' : `, spread ${fixed(it.spreadPercent, 2)}\u00a0% of the last`;
  const next = `The next reading is due at ${minutes(it.nextAt)} min.`;
  switch (it.state) {
    case 'settled':
      return `${name} has settled${spread}.`;
    case 'moving':
      return `${name} still moves${spread}. ${next}`;
    case 'too-early':
      return `${name}: too early to tell${spread}. ${next}`;
  }
}

/** One line for the session's notes. */
export function settledNote(series: ReadonlyArray<{ name: string; settling: Settling }>): string {
  const parts = series.map(({ name, settling: { state, spreadPercent } }) => {
    const spread = spreadPercent === undefined ? '' : ` (spread ${fixed(spreadPercent, 2)} %)`;
    return `${name} ${state === 'settled' ? 'settled' : 'not settled by the rule'}${spread}`;
  });
  return parts.length === 0 ? '' : `Warm-up: ${parts.join(', ')}.`;
}
