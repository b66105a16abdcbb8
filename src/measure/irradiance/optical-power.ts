import type { BudgetComponent, Figure } from '../figure.ts';
import { calibrationComponents, type Instrument, resolutionComponents } from '../instrument/instrument.ts';
import { identityOf } from '../metrics.ts';
import { number } from '../numbers.ts';
import type { Statement } from '../statement.ts';
import { makeFigure, productFigure, rectangular, typeB } from '../uncertainty.ts';
import { MILLI } from '../unit-factors.ts';

declare module '../statement.ts' {
  interface StatementData {
    'edge-setting': { side: 'width' | 'height' };
    /** Half-width at each of two edges, cm. */
    'edges-as-set': { halfWidth: number };
    'tape-calibration': object;
    'tape-not-named': object;
  }
}

/** A side of the LED field as it was measured. */
export interface SideReading {
  panel: string;
  side: 'width' | 'height';
  /** cm, outer edge of the first LED to outer edge of the last. */
  value: number;
  /** How far either edge may be off, cm; rectangular. */
  edgeSetting: number;
  /** The tape or rule, where a session names it. */
  instrument: Instrument | undefined;
}

/** One side as a figure, cm. Two edges are set independently, each within +-a: u = a sqrt(2/3). */
export function sideFigure({ panel, side, value, edgeSetting, instrument }: SideReading): Figure {
  const identity = identityOf(`field-${side}`, panel);
  const { id } = identity;
  const absent: Statement | undefined = instrument ? instrument.calibrationAbsent : { code: 'tape-not-named' };
  const edges: BudgetComponent[] =
    edgeSetting === 0
      ? []
      : [
          {
            source: typeB({
              key: `${id}/edges`,
              what: { code: 'edge-setting', side },
              distribution: 'rectangular',
              evaluation: { code: 'edges-as-set', halfWidth: edgeSetting },
            }),
            contribution: Math.SQRT2 * rectangular(edgeSetting),
          },
        ];
  return makeFigure(
    {
      ...identity,
      basis: 'measured',
      inputs: [`${panel}/field.${side}`],
    },
    value,
    {
      budget: [
        ...edges,
        ...(instrument ? [...calibrationComponents(instrument, value), ...resolutionComponents(instrument, id)] : []),
      ],
      unassessed: absent === undefined ? [] : [{ what: { code: 'tape-calibration' }, reason: absent }],
    },
  );
}

/** LED area = width x height, cm2: LEDs edge to edge, not the housing (common practice, no source). */
export function ledAreaFigure(panel: string, width: Figure, height: Figure): Figure {
  const value = width.value * height.value;
  return productFigure(
    {
      ...identityOf('led-area', panel),
      basis: 'derived',
      calculation: `A = w × h = ${number(width.value)} cm × ${number(height.value)} cm = ${number(value)} cm²`,
    },
    [
      { figure: width, power: 1 },
      { figure: height, power: 1 },
    ],
  );
}

/**
 * Optical power through the LED-area rectangle at the measuring distance, W: mean irradiance (mW/cm2) times
 * LED area (cm2) / 1000. Light that has left past the edges is not in it (common practice, no source).
 */
export function opticalPowerFigure(session: string, mean: Figure, area: Figure): Figure {
  const value = (mean.value * area.value) / MILLI;
  return productFigure(
    {
      ...identityOf('optical-power', session),
      basis: 'derived',
      calculation: `P = Ē × A ÷ 1000 = ${number(mean.value)} mW/cm² × ${number(area.value)} cm² ÷ 1000 = ${number(value)} W`,
    },
    [
      { figure: mean, power: 1 },
      { figure: area, power: 1 },
    ],
    1 / MILLI,
  );
}

/** Peak irradiance over the mean of the grid; both from one instrument, so its calibration cancels. */
export function peakToMeanFigure(session: string, peak: Figure, mean: Figure): Figure {
  return productFigure(
    {
      ...identityOf('peak-to-mean', session),
      basis: 'derived',
      calculation: `R = ${number(peak.value)} mW/cm² ÷ ${number(mean.value)} mW/cm² = ${number(peak.value / mean.value)}`,
    },
    [
      { figure: peak, power: 1 },
      { figure: mean, power: -1 },
    ],
  );
}
