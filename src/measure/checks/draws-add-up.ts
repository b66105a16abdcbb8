import { CHANNELS, type Channel } from '../modes.ts';
import type { Check, RaisedFlag } from './check.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** Mains draws, W: of both channels together, and of each alone, added up. */
    'draws-not-adding-up': { sum: number; combined: number; percent: number };
    'draw-below-channel': { combined: number; mode: Channel; alone: number };
    'standby-above-draw': { standby: number; on: number };
  }
}

/**
 * How much more both channels may draw than each alone, added up, as a share of the sum. Controls and fans run in each
 * reading, so that the sum counts them twice and lies above; a fan that turns faster may take some of it back. Our own
 * choice.
 */
export const DRAWS_TOLERANCE = 0.2;

/**
 * Mains draws of which one was mistyped: both channels below one alone or far above the two added up, or standby not
 * below a lit panel.
 */
export const drawsAddUp: Check = {
  id: 'draws-add-up',
  run(facts) {
    const standby = facts.figure('mains-draw-standby');
    const combined = facts.figure('mains-draw-combined');
    const [red, infrared] = CHANNELS.map((it) => facts.figure(`mains-draw-${it}`));
    const flags: RaisedFlag[] = [];
    const [least] = [red, infrared, combined].flatMap((it) => it ?? []).toSorted((a, b) => a.value - b.value);
    if (standby && least && standby.value >= least.value) {
      flags.push({
        severity: 'doubt',
        finding: { code: 'standby-above-draw', standby: standby.value, on: least.value },
        concerns: ['mains-draw-standby', least.metric],
      });
    }
    for (const mode of CHANNELS) {
      const alone = facts.figure(`mains-draw-${mode}`);
      if (!combined || !alone || alone.value <= combined.value) continue;
      flags.push({
        severity: 'doubt',
        finding: { code: 'draw-below-channel', combined: combined.value, mode, alone: alone.value },
        concerns: ['mains-draw-combined', `mains-draw-${mode}`],
      });
    }
    const sum = red && infrared ? red.value + infrared.value : undefined;
    if (sum !== undefined && combined && combined.value > sum * (1 + DRAWS_TOLERANCE)) {
      flags.push({
        severity: 'doubt',
        finding: {
          code: 'draws-not-adding-up',
          sum,
          combined: combined.value,
          percent: 100 * (combined.value / sum - 1),
        },
        concerns: ['mains-draw-combined', 'mains-draw-red', 'mains-draw-near-infrared'],
      });
    }
    return flags;
  },
};
