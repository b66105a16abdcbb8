import type { BudgetComponent } from '../figure.ts';
import type { Statement } from '../statement.ts';
import type { DrawnLight } from './drawn-light.ts';
import type { BeamSource } from './optics-input.ts';
import type { PanelModel } from './panel-model.ts';
import type { Spread } from './spread.ts';

/** A value with what is known of it. */
export interface Estimate extends Spread {
  value: number;
  /** The uncertainty by its causes, under the keys that other figures use. */
  budget: BudgetComponent[];
}

/** What is found for the brightest and the dimmest place of a plane; or why they can't be told. */
export type ExtremesOf<Of> =
  | {
      /** Irradiance at the brightest place, mW/cm2. */
      peak: Of;
      /** Irradiance at the dimmest place over the mean. */
      evenness: Of;
      peakAbsent?: undefined;
    }
  | { peak?: undefined; evenness?: undefined; peakAbsent: Statement };

/** What is found for a plane at some distance. */
export type TargetOf<Of> = ExtremesOf<Of> & {
  /** cm */
  distance: number;
  /** Mean irradiance over the LED-area rectangle, mW/cm2. */
  mean: Of;
};

/** What is found of a panel, each value as an estimate or in another form of one. */
export interface EstimatesOf<Of> {
  source: BeamSource;
  /** Degrees. */
  halfAngle: Of;
  /** Captured fraction: power through the LED-area rectangle on the reference plane over emitted power. */
  capture: Of;
  /** Grid mean over true mean; undefined without a grid. */
  samplingBias?: Of;
  /**
   * Share of the grid's mean that is not taken for light straight from the panel: what the room gives back, and what
   * readings are off by; undefined without a grid.
   */
  strayShare?: number;
  /** W */
  emitted: Of;
  /** Emitted power over mains draw: what the simulation says of it. */
  efficiency?: Spread;
  /** At each target distance of the layout, in its order. */
  targets: TargetOf<Of>[];
  /** For other distances and places. */
  model: PanelModel;
  drawn: DrawnLight;
}

export type OpticsEstimates = EstimatesOf<Estimate>;

/** Chi-square of the beam that explains the readings best, and the probability of a larger one. */
export interface BeamFit {
  readings: number;
  chiSquare: number;
  probability: number;
}

/** What came of a panel's readings: estimates, or why there are none. */
export type OpticsResult = WithheldOptics | EstimatedOptics;

export interface WithheldOptics {
  /** Left out where there were too few readings for any. */
  fit?: BeamFit;
  withheld: Statement;
  estimates?: undefined;
  claimRuledOut?: undefined;
}

export interface EstimatedOptics {
  fit: BeamFit;
  withheld?: undefined;
  estimates: OpticsEstimates;
  /** Claimed half angle, degrees, where the readings rule it out. */
  claimRuledOut?: number;
}
