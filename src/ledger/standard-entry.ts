import type { InstrumentKind } from '../content/schema/instrument.ts';
import type { StandardFile } from '../content/schema/standard.ts';
import type { ChartStage } from '../measure/control/control-chart.ts';

/** A reading of a check standard as it was written, in the canonical unit. */
export interface WrittenReading {
  value: number;
  struck: string | undefined;
}

/** A day on which a check standard was read. */
export interface StandardDay {
  date: string;
  readings: readonly WrittenReading[];
  note: string | undefined;
}

/** A check standard with its control chart. Values are in `unit`. */
export interface StandardEntry {
  id: string;
  data: StandardFile;
  instrument: { id: string; quantityId: string; name: string; kind: InstrumentKind };
  /** Canonical unit of what the instrument reads. */
  unit: string;
  /** Levels and temperatures have no share that means anything: their drift and scatter stand in their unit, not in %. */
  isRelative: boolean;
  /** Oldest first. */
  days: readonly StandardDay[];
  /** Oldest first; one at least. */
  stages: readonly ChartStage[];
  /** The newest stage that has a reading. */
  current: ChartStage;
  /** Days on which the instrument was calibrated while the standard was read. */
  calibrated: readonly string[];
  /**
   * Standard deviation that the instrument's stated repeatability alone would give a day of as many readings as are usual;
   * undefined where its file is silent.
   */
  expectedSigma: number | undefined;
  /** Where a drift that is told uses up what the newest calibration promises: so many days after which day. */
  usedUp: { calibrated: string; days: number } | undefined;
}
