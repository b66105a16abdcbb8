import { CHANNELS, type Channel } from '../modes.ts';
import type { Check, RaisedFlag } from './check.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** % of the light that lies in the other channel's band, though the spectrum was taken with one alone. */
    'channel-not-alone': { mode: Channel; other: Channel; percent: number };
  }
}

/**
 * Largest share, %, of the other channel's band in a spectrum of one alone. LEDs between the bands and the foot of a
 * line give some; an eighth is more than either does. Our own choice.
 */
export const MOST_OF_OTHER = 12.5;

/** A spectrum of one channel alone that has the other one in it: the wrong file, or both were on. */
export const channelAlone: Check = {
  id: 'channel-alone',
  run: (facts) =>
    CHANNELS.flatMap((mode): RaisedFlag[] => {
      const other = mode === 'red' ? 'near-infrared' : 'red';
      const share = facts.figure(`${other}-share-${mode}`);
      if (!share || share.value <= MOST_OF_OTHER) return [];
      return [
        {
          severity: 'doubt',
          finding: { code: 'channel-not-alone', mode, other, percent: share.value },
          concerns: [`${other}-share-${mode}`, `${mode}-share-${mode}`],
        },
      ];
    }),
};
