import { type Figure, type FigureOrGap, gap, isFigure, type Unassessed } from '../figure.ts';
import { sameDistance } from '../irradiance/same-distance.ts';
import { identityOf, type ListedMetricId } from '../metrics.ts';
import { number } from '../numbers.ts';
import { makeFigure, productFigure } from '../uncertainty.ts';
import { cautiousEnd, roundedTo } from './cautious-end.ts';
import type { EyeDistance } from './eye-distances.ts';
import { LONG_EXPOSURE } from './infrared.ts';
import { leavingOut, relation } from './made-of.ts';
import { type ShareReading, type ShareThere, shareThere } from './share-by-distance.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** What a budget leaves out, and why. */
    'places-off-middle': object;
    'infrared-raised-from-middle': object;
    'infrared-above-a-bound': object;
    /** Nearer than it was read, `than` cm. */
    'infrared-not-known-nearer': { than: number };
    'infrared-not-read-there': object;
    /** Ends of a range, %. */
    'infrared-share-range': InfraredRange;
    /** The range's equation: where it is, cm, and of which reading, cm, its cautious end is taken. */
    'infrared-share-range-equation': InfraredRange & { distance: number; from: number };
  }
}

/** Ends of a range of the share, %, rounded away from the middle. */
interface InfraredRange {
  low: number;
  high: number;
}

/** mW/cm² to % of the long-exposure limit: 1 mW/cm² is 10 W/m². */
const PERCENT_PER_UNIT = (100 * 10) / LONG_EXPOSURE;

/** A reading before the middle of the LED field with near-infrared alone on. */
export interface AxisReading {
  /** cm */
  distance: number;
  /** mW/cm² */
  irradiance: Figure;
}

/**
 * Infrared as it was read: the whole reading with near-infrared alone on is taken for infrared of 780-3000 nm, or the sum
 * of a spectrum over that band, as far as its instrument sees.
 */
export interface Infrared {
  /** Highest over the panel at the reading's own distance, mW/cm². */
  irradiance: FigureOrGap;
  /** cm */
  distance: number;
  /** Before the middle, at any distance, that one too. */
  axis: readonly AxisReading[];
  /** What the budget of the irradiance leaves out. */
  unassessed: Unassessed[];
  /** The irradiance is the sum of a spectrum. */
  isFromSpectrum: boolean;
}

/** The share at a distance: a figure with what it was made from, or a gap. */
export interface Share {
  figure: FigureOrGap;
  /** Undefined where nothing was read that tells of it. */
  there?: ShareThere;
}

const UNMIXED: Unassessed = {
  what: { code: 'places-off-middle' },
  reason: { code: 'infrared-raised-from-middle' },
};

/** Share of the long-exposure limit at the reading's own distance, %. */
export function shareAtReading(session: string, { irradiance, unassessed }: Infrared): FigureOrGap {
  const metric = 'infrared-share-at-reading';
  if (!isFigure(irradiance)) return gap(metric, irradiance.reason);
  return leavingOut(shareFigure(session, metric, irradiance), ...unassessed);
}

/**
 * The share at another distance: of a reading there, or a range between the bounds that the other readings set, given
 * as a bound at its cautious end; a gap nearer than the reading.
 */
export function shareAt(session: string, infrared: Infrared, distance: EyeDistance): Share {
  const metric = `infrared-share-at-${distance}-cm` as const;
  const { irradiance } = infrared;
  if (!isFigure(irradiance)) return { figure: gap(metric, irradiance.reason) };
  if (irradiance.bound === 'above') return { figure: gap(metric, { code: 'infrared-above-a-bound' }) };
  const figures = readShares(session, infrared, irradiance, metric);
  const there = shareThere(figures.map(readingOf), distance);
  if (there.kind === 'nearer') {
    return { figure: gap(metric, { code: 'infrared-not-known-nearer', than: there.than }), there };
  }
  if (there.kind === 'read') return { figure: readAt(figures, there.reading).share, there };
  return { figure: rangeFigure(session, metric, distance, there, readAt(figures, there.from).share), there };
}

/** The share that a reading is of; a RangeError where there is none. */
function readAt(shares: readonly ReadShare[], { distance }: ShareReading): ReadShare {
  const found = shares.find((it) => it.distance === distance);
  if (!found) throw new RangeError(`no share was read at ${distance} cm`);
  return found;
}

/** Shares that were read, from the reading's own distance on, nearest first; for the planner too. */
export function shareReadings(session: string, infrared: Infrared): ShareReading[] {
  const { irradiance } = infrared;
  if (!isFigure(irradiance) || irradiance.bound === 'above') return [];
  return readShares(session, infrared, irradiance, 'infrared-share-at-reading').map(readingOf);
}

interface ReadShare {
  distance: number;
  share: Figure;
  /** Times which the reading before the middle was raised. */
  raised: number;
}

/**
 * Readings before the middle miss what is brighter beside it. So they count where one at the reading's own distance
 * says how much that is, and only farther away, where beams mix: nearer, single LEDs stand out the more.
 */
function readShares(session: string, infrared: Infrared, irradiance: Figure, metric: ListedMetricId): ReadShare[] {
  const { distance, axis, unassessed } = infrared;
  const tie = axis.find((it) => sameDistance(it.distance, distance))?.irradiance;
  const own = { distance, share: leavingOut(shareFigure(session, metric, irradiance), ...unassessed), raised: 1 };
  if (!tie || !(tie.value > 0)) return [own];
  const raised = Math.max(1, irradiance.value / tie.value);
  const farther = axis
    .filter((it) => it.distance > distance && !sameDistance(it.distance, distance))
    .toSorted((a, b) => a.distance - b.distance)
    .map((it) => ({
      distance: it.distance,
      share: leavingOut(
        shareFigure(session, metric, it.irradiance, raised > 1 ? { highest: irradiance, middle: tie } : undefined),
        ...unassessed,
        UNMIXED,
      ),
      raised,
    }));
  return [own, ...farther];
}

function readingOf({ distance, share, raised }: ReadShare): ShareReading {
  const high = cautiousEnd(share, 'high') ?? share.value;
  // What is certain of a plane is its middle, as it was read.
  const low = share.bound === 'below' ? 0 : (cautiousEnd(share, 'low') ?? 0) / raised;
  return { distance, value: share.value, low, high };
}

/** Irradiance to its share of the limit; `by` raises it from the middle to the highest of the plane. */
function shareFigure(
  session: string,
  metric: ListedMetricId,
  irradiance: Figure,
  by?: { highest: Figure; middle: Figure },
): Figure {
  const ratio = by ? by.highest.value / by.middle.value : 1;
  const words = by ? ` × (${number(by.highest.value)} ÷ ${number(by.middle.value)})` : '';
  return productFigure(
    {
      ...identityOf(metric, session),
      basis: 'derived',
      calculation: `s ${relation(irradiance.bound)} 100 × ${number(irradiance.value)} mW/cm²${words} × 10 ÷ ${LONG_EXPOSURE} W/m² = ${number(PERCENT_PER_UNIT * irradiance.value * ratio)} %`,
    },
    [
      { figure: irradiance, power: 1 },
      ...(by
        ? [
            { figure: by.highest, power: 1 },
            { figure: by.middle, power: -1 },
          ]
        : []),
    ],
    PERCENT_PER_UNIT,
  );
}

/** A range has no middle that could be its value: it stands as a bound at its cautious end. */
function rangeFigure(
  session: string,
  metric: ListedMetricId,
  distance: number,
  there: Extract<ShareThere, { kind: 'range' }>,
  source: Figure,
): Figure {
  const [low, high] = [roundedTo(there.low, 'low'), roundedTo(there.high, 'high')];
  const from = there.from.distance;
  const figure = makeFigure(
    {
      ...identityOf(metric, session),
      basis: 'derived',
      bound: 'below',
      inputs: source.inputs,
      notes: [{ code: 'infrared-share-range', low, high }],
      calculation: { code: 'infrared-share-range-equation', distance, from, low, high },
    },
    high,
    { absent: { code: 'infrared-not-read-there' } },
  );
  return { ...leavingOut(figure, ...source.unassessed), flags: source.flags };
}
