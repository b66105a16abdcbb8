import type { Figure } from '../figure.ts';
import { methodReference } from '../method-versions.ts';
import { identityOf, type ListedMetricId } from '../metrics.ts';
import type { Mode } from '../modes.ts';
import { number } from '../numbers.ts';
import { linearFigure, productFigure } from '../uncertainty.ts';

declare module '../statement.ts' {
  interface StatementData {
    'scaled-by-peaks': object;
  }
}

/** What one mode's efficiency is calculated from. */
export interface EfficiencyInputs {
  session: string;
  /** `red`, `near-infrared` or `combined`: the end of the metric's id. */
  mode: Mode;
  /** Optical power with both channels on, W. */
  power: Figure;
  /** Mains draw in the mode, W; above zero. */
  draw: Figure;
  /** Peaks that scale the power to the mode; left out for both channels on. */
  peaks?: { mode: Figure; combined: Figure };
}

/**
 * Efficiency of one mode, %: optical power at the reference plane over mains draw. The grid is read with both
 * channels on, so a single channel's power is scaled by the peaks, which takes both channels to be spread
 * alike over the field (our own assumption).
 */
export function efficiencyFigure(inputs: EfficiencyInputs): Figure {
  return efficiency(`efficiency-${inputs.mode}`, inputs, inputs.draw, `${number(inputs.draw.value)} W`);
}

/**
 * Efficiency with the draw in standby taken off, %: what the light itself costs. Returns undefined where
 * standby is as large as the draw as far as their 95 % interval tells, which leaves nothing to divide by.
 */
export function netEfficiencyFigure(inputs: EfficiencyInputs, standby: Figure): Figure | undefined {
  const net = linearFigure(
    {
      id: `${inputs.session}/net-draw-${inputs.mode}`,
      metric: 'net-draw',
      unit: 'W',
      basis: 'derived',
      method: methodReference('efficiency'),
    },
    [
      { figure: inputs.draw, sensitivity: 1 },
      { figure: standby, sensitivity: -1 },
    ],
  );
  if ((net.interval95?.[0] ?? net.value) <= 0) return undefined;
  const figure = efficiency(
    `efficiency-${inputs.mode}-net`,
    inputs,
    net,
    `(${number(inputs.draw.value)} W − ${number(standby.value)} W)`,
  );
  // The draw less standby is no figure of its own: readers find, and flags follow, what it is made of.
  return { ...figure, inputs: figure.inputs.flatMap((it) => (it === net.id ? net.inputs : [it])) };
}

function efficiency(
  metric: ListedMetricId,
  { session, power, peaks }: EfficiencyInputs,
  draw: Figure,
  drawText: string,
): Figure {
  const scale = peaks ? peaks.mode.value / peaks.combined.value : 1;
  const scaleText = peaks ? ` × ${number(peaks.mode.value)} ÷ ${number(peaks.combined.value)}` : '';
  return productFigure(
    {
      ...identityOf(metric, session),
      basis: 'derived',
      calculation: `η = ${number(power.value)} W${scaleText} ÷ ${drawText} = ${number((100 * power.value * scale) / draw.value)} %`,
      notes: peaks ? [{ code: 'scaled-by-peaks' }] : [],
    },
    [
      { figure: power, power: 1 },
      { figure: draw, power: -1 },
      ...(peaks
        ? [
            { figure: peaks.mode, power: 1 },
            { figure: peaks.combined, power: -1 },
          ]
        : []),
    ],
    100,
  );
}
