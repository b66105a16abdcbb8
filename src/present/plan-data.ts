import type { Ledger, PanelEntry } from '../ledger/ledger.ts';
import { knowsSpectralError, type ShareReading } from '../measure/exposure/index.ts';
import { type FigureOrGap, isFigure } from '../measure/figure.ts';
import type { PanelModel } from '../measure/optics/panel-model.ts';
import { distanceMetric, TABLE_DISTANCES } from '../measure/optics/table-distances.ts';
import { calledCautions } from './called-cautions.ts';
import type { PanelCaution } from './caution-words.ts';

/** Ends of a 95 % interval over the value, at a distance, cm. */
export type SpreadAt = [distance: number, low: number, high: number];

/** What the planner knows of a panel. */
export interface PlanPanel {
  slug: string;
  name: string;
  /** Size class in words. */
  group: string;
  /** Why its light cannot be modelled; then nothing of the model is here. */
  reason?: string;
  model?: PanelModel;
  /** Of the mean over the field and of the peak, at the distances of the table. */
  spread?: { mean: SpreadAt[]; peak: SpreadAt[] };
  /** Mains draw with both channels on, W: value and interval; or why there is none. */
  mains: { value: number; low?: number; high?: number } | { absent: string };
  /** Shares of the infrared limit that were read, nearest first, and whether the meter's error there is known. */
  infrared: { shares: ShareReading[]; isErrorKnown: boolean } | { absent: string };
  /** What its readings say of each caution that it has; null where it was not read. */
  cautions: Partial<Record<PanelCaution, string | null>>;
}

/** What the planner's page fetches. */
export interface PlanData {
  currency: string;
  tariff: { price: number; date: string; source: string };
  panels: PlanPanel[];
}

const DIGITS = 6;
/** Decimals of the parts of a beam. */
const PART_DIGITS = 6;
const short = (value: number) => Number(value.toPrecision(DIGITS));

/** `data/plan.json`. */
export function planJson(ledger: Ledger): string {
  const { guide } = ledger;
  const panels = [...ledger.panels.values()].filter(isListed);
  const data: PlanData = {
    currency: guide.currency,
    tariff: guide.tariff,
    panels: panels
      .map((panel) => planPanel(panel, guide.currency))
      .toSorted((a, b) => a.name.localeCompare(b.name, 'en')),
  };
  return JSON.stringify(data);
}

/** The planner names published panels alone. */
const isListed = ({ data }: PanelEntry) => data.status === 'published';

/** True where the planner can reckon with a panel: it names it, and has a model of its light. */
export function isPlannable(panel: PanelEntry): boolean {
  return isListed(panel) && panel.current?.light.model !== undefined;
}

function planPanel(panel: PanelEntry, currency: string): PlanPanel {
  const { slug, name, sizeClass, figures } = panel;
  const light = panel.current?.light;
  const model = light?.model;
  const figure = (metric: string) => figures.get(metric);
  const mains = figure('mains-draw-combined');
  const emitted = figure('emitted-power');
  return {
    slug,
    name,
    group: sizeClass?.name ?? 'Size not known',
    ...(model
      ? {
          model: shortModel(model),
          spread: {
            mean: TABLE_DISTANCES.flatMap((cm) => spreadOf(figure(distanceMetric('mean-irradiance', cm)), cm)),
            peak: TABLE_DISTANCES.flatMap((cm) => spreadOf(figure(distanceMetric('peak-irradiance', cm)), cm)),
          },
        }
      : { reason: emitted && !isFigure(emitted) ? emitted.reason : 'its light is not modelled' }),
    mains: isFigure(mains)
      ? {
          value: short(mains.value),
          ...(mains.interval95 && { low: short(mains.interval95[0]), high: short(mains.interval95[1]) }),
        }
      : { absent: 'the mains draw was not measured' },
    infrared: infraredOf(panel),
    cautions: Object.fromEntries(calledCautions(panel, currency).map((it) => [it.anchor, it.said ?? null])),
  };
}

/** Fewer digits than a reader could see, for fewer bytes. */
export function shortModel(model: PanelModel): PanelModel {
  const few = (value: number) => Number(value.toFixed(PART_DIGITS));
  return { ...model, weights: model.weights.map(few), drive: model.drive.map(few), power: short(model.power) };
}

function spreadOf(it: FigureOrGap | undefined, distance: number): SpreadAt[] {
  if (!isFigure(it) || !it.interval95 || !(it.value > 0)) return [];
  return [[distance, short(it.interval95[0] / it.value), short(it.interval95[1] / it.value)]];
}

function infraredOf({ figures, current }: PanelEntry): PlanPanel['infrared'] {
  const reading = figures.get('peak-irradiance-near-infrared');
  if (!isFigure(reading) || !current) {
    return { absent: 'near-infrared alone was not measured' };
  }
  // Above a bound may be anything.
  if (reading.bound === 'above') return { absent: 'near-infrared alone is only known to be above a bound' };
  return {
    shares: current.eyeShares.map(({ distance, value, low, high }) => ({
      distance,
      value: short(value),
      low: short(low),
      high: short(high),
    })),
    isErrorKnown: knowsSpectralError(reading),
  };
}
