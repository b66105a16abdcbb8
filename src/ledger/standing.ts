import type { PanelEntry } from './ledger.ts';

/** Of a panel, what follows from the others; of step-ups which panels, whose prices and powers are read with them. */
export const STANDING = ['rank', 'rankAbsent', 'byEmitted', 'stepUps', 'frontier'] as const satisfies ReadonlyArray<
  keyof PanelEntry
>;
