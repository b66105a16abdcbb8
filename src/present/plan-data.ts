import type { Ledger, PanelEntry } from '../ledger/ledger.ts';
import { type Figure, type FigureOrGap, isFigure } from '../measure/figure.ts';
import type { PanelModel } from '../measure/optics/panel-model.ts';
import { distanceMetric, TABLE_DISTANCES } from '../measure/optics/table-distances.ts';
import { productFigure } from '../measure/uncertainty.ts';
import { calledCautions } from './called-cautions.ts';

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
  /** Reading with near-infrared alone, mW/cm², at a distance; and how far its share of the limit may be off. */
  infrared: { value: number; distance: number; spread: SpreadAt[] } | { absent: string };
  /** The caution of its flicker, where it flickers. */
  flicker?: string;
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
  const panels = [...ledger.panels.values()].filter((it) => it.data.status === 'published');
  const data: PlanData = {
    currency: guide.currency,
    tariff: guide.tariff,
    panels: panels
      .map((panel) => planPanel(panel, guide.currency))
      .toSorted((a, b) => a.name.localeCompare(b.name, 'en')),
  };
  return JSON.stringify(data);
}

function planPanel(panel: PanelEntry, currency: string): PlanPanel {
  const { slug, name, sizeClass, figures } = panel;
  const light = panel.current?.light;
  const model = light?.model;
  const figure = (metric: string) => figures.get(metric);
  const mains = figure('mains-draw-combined');
  const flicker = calledCautions(panel, currency).find((it) => it.anchor === 'flicker');
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
    ...(flicker && { flicker: flicker.text }),
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
  const here = current.light.own?.peak;
  return {
    value: short(reading.value),
    distance: current.conditions.distance,
    spread: current.light.figures.distances.flatMap(({ distance, peak }) =>
      isFigure(here) && isFigure(peak) ? spreadOf(scaledBy(reading, peak, here), distance) : [],
    ),
  };
}

/**
 * The reading scaled by two modelled peaks, with the errors that the three share; the same product as the guide's
 * infrared shares, so that its interval is known at every distance of the table and not only at an eye's.
 */
function scaledBy(reading: Figure, there: Figure, here: Figure): Figure {
  const { id, metric, unit, method } = reading;
  return productFigure({ id, metric, unit, method, basis: 'modelled' }, [
    { figure: reading, power: 1 },
    { figure: there, power: 1 },
    { figure: here, power: -1 },
  ]);
}
