import { mean } from 'simple-statistics';
import { acceptedReadings } from '../content/read/grid-points.ts';
import type { Session } from '../content/schema/session.ts';
import { emittedEfficiencyFigure, pricePerEmittedWattFigure } from '../measure/beam/figures.ts';
import type { PanelLight } from '../measure/beam/panel-light.ts';
import { type LimitResult, type ShareReading, shareReadings } from '../measure/exposure/index.ts';
import { type Figure, type FigureOrGap, figureFinder, type Gap, gap, isFigure } from '../measure/figure.ts';
import { efficiencyFigure, netEfficiencyFigure } from '../measure/irradiance/efficiency.ts';
import { gridFigures, gridGaps } from '../measure/irradiance/grid.ts';
import { type GridGeometry, gridGeometry } from '../measure/irradiance/grid-geometry.ts';
import { opticalPowerFigure, peakToMeanFigure } from '../measure/irradiance/optical-power.ts';
import { exposureEachMinuteFigure, timeEachJouleFigure } from '../measure/irradiance/radiant-exposure-figures.ts';
import { METRICS, type MetricId } from '../measure/metrics.ts';
import { MODES, type Mode } from '../measure/modes.ts';
import { pricePerWattFigure } from '../measure/money/price.ts';
import { runningCostFigure } from '../measure/money/running-cost.ts';
import { isCode, type Statement } from '../measure/statement.ts';
import { exposureLimits, sessionInfrared } from './exposure-limits.ts';
import { readingsWithFiles } from './file-figures.ts';
import type { WorkedLight } from './modelled-light.ts';
import { modelledLight } from './modelled-light.ts';
import { retinaView } from './retina-view.ts';
import type { SessionBench } from './session-bench.ts';

declare module '../measure/statement.ts' {
  interface StatementData {
    /** How far inside the edges of the field the points lie, as the tester wrote it. */
    'field-too-small': { inset: string };
    'not-worked-out': object;
    'standby-only-a-bound': object;
    'standby-as-large': object;
  }
}

/** What a session's figures are made from, besides its readings. */
export interface SessionExtras {
  /** What the panel costs, by which the current session's watts are priced; a gap where there is none. */
  price: FigureOrGap;
  /** Its light, worked out. */
  light: WorkedLight;
}

/** All figures of one session, by metric, what was not read as a gap with its reason; and the modelled light. */
export function sessionFigures(
  bench: SessionBench,
  { price, light: worked }: SessionExtras,
): {
  figures: Map<MetricId, FigureOrGap>;
  light: PanelLight;
  limits: LimitResult[];
  eyeShares: readonly ShareReading[];
} {
  const { id, lightId, session, guide, instrumentFor, field, distance } = bench;
  const figures = new Map<MetricId, FigureOrGap>(
    [field.width, field.height, field.area].map((it) => [it.metric, it] as const),
  );
  const put = (...all: FigureOrGap[]) => {
    for (const it of all) figures.set(it.metric, it);
  };
  put(...readingsWithFiles(bench));

  const grid = session.grid
    ? gridFigures(
        {
          points: session.grid.rows.map((row) => row.map(acceptedReadings)),
          session: lightId,
          instrument: instrumentFor('irradiance'),
          distance,
          bands: bench.bands.combined,
        },
        geometryOf(session.grid, field),
      )
    : gridGaps({ code: 'grid-not-measured' });
  put(grid.mean, grid.cellMean, grid.lowestToMean, grid.highestToMean, grid.variation);

  const get = (metric: MetricId): FigureOrGap => figures.get(metric) ?? notMeasured(metric);
  const peak = get('peak-irradiance-combined');
  put(from('peak-to-mean', [peak, grid.mean], (p, m) => peakToMeanFigure(lightId, p, m)));
  const power = from('optical-power', [grid.mean, field.area], (m, a) => opticalPowerFigure(lightId, m, a));
  put(power);
  const draw = get('mains-draw-combined');
  const light = modelledLight(worked, isFigure(power) ? power : undefined);
  const { halfAngle, samplingBias, capture, emitted, distances } = light.figures;
  put(halfAngle, samplingBias, capture, emitted);
  for (const { mean, peak: highest, evenness } of distances) put(mean, highest, evenness);
  const withheld = isFigure(emitted) ? undefined : emitted.reason;
  put(
    from('efficiency-emitted', [emitted, draw], (p, mains) => emittedEfficiencyFigure(id, p, mains, light.efficiency)),
  );
  put(from('radiant-exposure-minute', [grid.mean], (m) => exposureEachMinuteFigure(lightId, m)));
  put(from('time-per-joule', [grid.mean], (m) => timeEachJouleFigure(lightId, m)));
  put(
    from('running-cost', [get('mains-draw-combined')], (draw) =>
      runningCostFigure(id, draw, guide.tariff.price, guide.currency),
    ),
  );
  for (const mode of MODES) put(...efficiencies(id, mode, get, power, peak));

  const reading = figures.get('peak-irradiance-near-infrared');
  const infrared = sessionInfrared(bench, reading, figures.get('infrared-sum'));
  const limits = exposureLimits(bench, infrared, retinaView(bench, figureFinder(figures)), (metric) =>
    figures.get(metric),
  );
  // What pulses is named by a reading that is there already.
  for (const { figure, id: result } of limits) if (figure.metric === result) put(figure);

  put(price, perWatt(id, price, power, guide.currency));
  put(from('price-per-emitted-watt', [price, emitted], (c, p) => pricePerEmittedWattFigure(id, c, p, guide.currency)));
  const notWorkedOut = withheld ?? NOT_WORKED_OUT;
  for (const metric of METRICS) {
    if (figures.has(metric.id)) continue;
    put(metric.method === 'distance-table' ? gap(metric.id, notWorkedOut) : notMeasured(metric.id));
  }
  return { figures, light, limits, eyeShares: shareReadings(id, infrared) };
}

const NOT_WORKED_OUT: Statement = { code: 'not-worked-out' };

/** A session has a hundred of these, and one object does for all that lack the same. */
const NOT_MEASURED = new Map<MetricId, Gap>();

function notMeasured(metric: MetricId): Gap {
  const known = NOT_MEASURED.get(metric) ?? Object.freeze(gap(metric, { code: 'not-measured' }));
  NOT_MEASURED.set(metric, known);
  return known;
}

function efficiencies(
  session: string,
  mode: Mode,
  get: (metric: MetricId) => FigureOrGap,
  power: FigureOrGap,
  peak: FigureOrGap,
): FigureOrGap[] {
  const metric = `efficiency-${mode}` as const;
  const net = `${metric}-net` as const;
  const draw = get(`mains-draw-${mode}`);
  const inputs = (p: Figure, d: Figure, modePeak?: Figure, combinedPeak?: Figure) => ({
    session,
    mode,
    power: p,
    draw: d,
    ...(modePeak && combinedPeak && { peaks: { mode: modePeak, combined: combinedPeak } }),
  });
  const peaks = mode === 'combined' ? [] : [get(`peak-irradiance-${mode}`), peak];
  const gross = from(metric, [power, draw, ...peaks], (p, d, mp, cp) => efficiencyFigure(inputs(p, d, mp, cp)));
  const standby = get('mains-draw-standby');
  const lessStandby = from(net, [power, draw, standby, ...peaks], (p, d, s, mp, cp) => {
    if (s.bound) return gap(net, { code: 'standby-only-a-bound' });
    return netEfficiencyFigure(inputs(p, d, mp, cp), s) ?? gap(net, { code: 'standby-as-large' });
  });
  return [gross, lessStandby];
}

/** What a watt through the reference plane costs; a gap where there is no price or no power. */
export function perWatt(session: string, price: FigureOrGap, power: FigureOrGap, currency: string): FigureOrGap {
  return from('price-per-watt', [price, power], (c, p) => pricePerWattFigure(session, c, p, currency));
}

/** A figure from others; where one of them is a gap, a gap that hands the reason on. */
function from(
  metric: MetricId,
  inputs: readonly FigureOrGap[],
  make: (...figures: [Figure, Figure, Figure, ...Figure[]]) => FigureOrGap,
): FigureOrGap {
  const missing = inputs.find((it) => !isFigure(it));
  if (missing && !isFigure(missing)) return gap(metric, reasonFor(missing.metric, missing.reason));
  return make(...(inputs as [Figure, Figure, Figure, ...Figure[]]));
}

function reasonFor(metric: string, reason: Statement): Statement {
  return isCode(reason, 'not-measured') ? { code: 'input-not-measured', metric } : reason;
}

function geometryOf(grid: NonNullable<Session['grid']>, field: SessionBench['field']): GridGeometry | Statement {
  if (!isFigure(field.width)) return field.width.reason;
  if (!isFigure(field.height)) return field.height.reason;
  const geometry = gridGeometry(
    grid.rows[0]?.length ?? 0,
    grid.rows.length,
    field.width.value,
    field.height.value,
    grid.inset.value,
  );
  return geometry ?? { code: 'field-too-small', inset: grid.inset.written };
}

/** Mean of the accepted readings of each point of a session's grid, row by row; null where there is none. */
export function gridPointMeans(session: Session): Array<number | null> {
  return (session.grid?.rows ?? []).flat().map((point) => {
    const accepted = acceptedReadings(point);
    return accepted.length > 0 ? mean(accepted) : null;
  });
}
