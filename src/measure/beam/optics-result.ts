import type { BudgetComponent } from '../figure.ts';
import type { BeamSource } from './optics-input.ts';
import type { PanelModel } from './panel-model.ts';
import type { Spread } from './spread.ts';

/** A value with what is known of it. */
export interface Estimate extends Spread {
  value: number;
  /** The uncertainty by its causes, under the keys that other figures use. */
  budget: BudgetComponent[];
}

/** What is found for a plane at some distance. */
export interface TargetEstimates {
  /** cm */
  distance: number;
  /** Mean irradiance over the LED-area rectangle, mW/cm2. */
  mean: Estimate;
  /** Irradiance at the brightest place, mW/cm2. */
  peak?: Estimate;
  /** Irradiance at the dimmest place over the mean. */
  evenness?: Estimate;
  /** Why these two cannot be told. */
  peakAbsent?: string;
}

/** What is found of a panel. */
export interface OpticsEstimates {
  source: BeamSource;
  /** Degrees. */
  halfAngle: Estimate;
  /** Power through the LED-area rectangle on the reference plane over emitted power. */
  capture: Estimate;
  /** Grid mean over true mean; undefined without a grid. */
  samplingBias?: Estimate;
  /**
   * Share of the grid's mean that is not taken for light straight from the panel: what the room gives back, and what
   * readings are off by; undefined without a grid.
   */
  strayShare?: number;
  /** W */
  emitted: Estimate;
  /** Emitted power over mains draw: what the simulation says of it. */
  efficiency?: Spread;
  /** At each target distance of the layout, in its order. */
  targets: TargetEstimates[];
  /** For drawing, and for other distances. */
  model: PanelModel;
}

/** Chi-square of the beam that explains the readings best, and the probability of a larger one. */
export interface BeamFit {
  readings: number;
  chiSquare: number;
  probability: number;
}

/** What came of a panel's readings. */
export interface OpticsResult {
  fit?: BeamFit;
  /** Why there is nothing. */
  withheld?: string;
  estimates?: OpticsEstimates;
  /** Claimed half angle, degrees, where the readings rule it out. */
  claimRuledOut?: number;
}
