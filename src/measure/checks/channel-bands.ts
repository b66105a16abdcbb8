import { CHANNELS, type Channel } from '../modes.ts';
import type { Check, RaisedFlag } from './check.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** nm; `edge` is where red ends and near-infrared begins. */
    'channel-out-of-band': { channel: Channel; peak: number; edge: number };
    'channels-swapped': object;
  }
}

/** Where red light ends and near-infrared begins, nm: the edge of the bands that a guide has unless it says otherwise. */
export const BAND_EDGE = 700;

/** A peak of red in the near-infrared, or the other way round: the two were swapped, or a digit was. */
export const channelBands: Check = {
  id: 'channel-bands',
  run: (facts) => {
    const odd = CHANNELS.flatMap((channel) => {
      const peak = facts.figure(`wavelength-${channel}`);
      const isOdd = peak && (channel === 'red' ? peak.value > BAND_EDGE : peak.value < BAND_EDGE);
      return isOdd ? [{ channel, peak: peak.value }] : [];
    });
    return odd.map(
      ({ channel, peak }): RaisedFlag => ({
        severity: 'doubt',
        finding: { code: 'channel-out-of-band', channel, peak, edge: BAND_EDGE },
        ...(odd.length === 2 && { hint: { code: 'channels-swapped' } }),
        concerns: [`wavelength-${channel}`],
      }),
    );
  },
};
