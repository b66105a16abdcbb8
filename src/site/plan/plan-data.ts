import type { Ledger, PanelEntry } from '../../ledger/ledger.ts';
import type { PanelModel } from '../../measure/beam/panel-model.ts';
import { distanceMetric, TABLE_DISTANCES } from '../../measure/beam/table-distances.ts';
import { knowsSpectralError } from '../../measure/exposure/index.ts';
import { type FigureOrGap, isFigure } from '../../measure/figure.ts';
import { impossibility } from '../../measure/handed-on.ts';
import type { MetricId } from '../../measure/metrics.ts';
import { carriedWords } from '../../words/carried-words.ts';
import { type Dagger, daggerOf } from '../../words/flags.ts';
import { say } from '../../words/say.ts';
import { type TextTable, textTable } from '../export/text-table.ts';
import { calledCautions } from '../panel/called-cautions.ts';
import { photoEntry } from '../shared/small-photo.ts';
import { type Doubted, type PackedPlan, PLAN_FORMAT, type PlanPanel, type SpreadAt } from './browser/plan-panel.ts';

const DIGITS = 6;
/** Decimals of the parts of a beam. */
const PART_DIGITS = 6;
const short = (value: number) => Number(value.toPrecision(DIGITS));

/** `data/plan.json`. */
export function planJson(ledger: Ledger): string {
  const { guide } = ledger;
  const panels = [...ledger.panels.values()].filter(isListed);
  const texts = textTable();
  const data: PackedPlan = {
    format: PLAN_FORMAT,
    currency: guide.currency,
    tariff: guide.tariff,
    panels: panels
      .map((panel) => planPanel(panel, guide.currency, texts))
      .toSorted((a, b) => a.name.localeCompare(b.name, 'en')),
    texts: texts.texts(),
  };
  return JSON.stringify(data);
}

/** The planner names published panels alone. */
const isListed = ({ data }: PanelEntry) => data.status === 'published';

/** True where the planner can calculate with a panel: it names it, has a model of its light, and nothing rules it out. */
export function isPlannable(panel: PanelEntry): boolean {
  return isListed(panel) && panel.current?.light.model !== undefined && whyImpossible(panel) === undefined;
}

const overDistances = (quantity: 'mean-irradiance' | 'peak-irradiance') =>
  TABLE_DISTANCES.map((cm) => distanceMetric(quantity, cm));

/** Figures whose flags a part of a plan has: those at the distances of the table stand for all between. */
const MADE_OF: Readonly<Record<Doubted, readonly MetricId[]>> = {
  mean: overDistances('mean-irradiance'),
  peak: overDistances('peak-irradiance'),
  mains: ['mains-draw-combined'],
  infrared: ['infrared-share-at-reading'],
};

/** Marks of a plan's parts. */
function doubtsOf({ figures }: PanelEntry): Partial<Record<Doubted, Dagger>> {
  const entries = Object.entries(MADE_OF).flatMap(([part, metrics]) => {
    const found = metrics.map((it) => figures.get(it)).filter((it) => it !== undefined);
    const dagger = daggerOf(found.filter(isFigure).flatMap((it) => it.flags));
    return dagger ? [[part, dagger] as const] : [];
  });
  return Object.fromEntries(entries);
}

/** The days of a plan's parts that were not read again. */
function carriedParts({ figures }: PanelEntry): Partial<Record<Doubted, string>> {
  const entries = Object.entries(MADE_OF).flatMap(([part, metrics]) => {
    const [carried] = metrics.flatMap((it) => carriedWords(figures.get(it)) ?? []);
    return carried ? [[part, carried] as const] : [];
  });
  return Object.fromEntries(entries);
}

/** Why something that a plan would rest on can't be right; undefined where nothing is. */
function whyImpossible({ figures }: PanelEntry): string | undefined {
  for (const metric of Object.values(MADE_OF).flat()) {
    const it = figures.get(metric);
    const flag = isFigure(it) && impossibility(it);
    if (flag) return say({ code: 'impossible-as-it-stands', finding: flag.finding });
  }
  return undefined;
}

function planPanel(panel: PanelEntry, currency: string, texts: TextTable): PackedPlan['panels'][number] {
  const { slug, name, sizeClass, figures } = panel;
  const light = panel.current?.light;
  const impossible = whyImpossible(panel);
  const model = impossible === undefined ? light?.model : undefined;
  const figure = (metric: MetricId) => figures.get(metric);
  const mains = figure('mains-draw-combined');
  const emitted = figure('emitted-power');
  const doubts = doubtsOf(panel);
  const carried = carriedParts(panel);
  return {
    slug,
    ...(panel.data.formerly && { formerly: panel.data.formerly }),
    name,
    group: sizeClass?.name ?? 'Size not known',
    ...photoEntry(panel),
    ...(model
      ? {
          model: shortModel(model),
          spread: {
            mean: TABLE_DISTANCES.flatMap((cm) => spreadOf(figure(distanceMetric('mean-irradiance', cm)), cm)),
            peak: TABLE_DISTANCES.flatMap((cm) => spreadOf(figure(distanceMetric('peak-irradiance', cm)), cm)),
          },
        }
      : { reason: impossible ?? (emitted && !isFigure(emitted) ? say(emitted.reason) : 'its light is not modelled') }),
    mains: isFigure(mains)
      ? {
          value: short(mains.value),
          ...(mains.interval95 && { low: short(mains.interval95[0]), high: short(mains.interval95[1]) }),
        }
      : { absent: 'the mains draw was not measured' },
    ...(Object.keys(doubts).length > 0 && { doubts }),
    ...(Object.keys(carried).length > 0 && { carried }),
    infrared: infraredOf(panel),
    cautions: Object.fromEntries(
      calledCautions(panel, currency).map(({ anchor, said }) => [
        anchor,
        said === undefined ? null : texts.filled(said),
      ]),
    ),
  };
}

/** Fewer digits than a reader could see, for fewer bytes. */
export function shortModel(model: PanelModel): PanelModel {
  // JSON has no nought with a sign.
  const few = (value: number) => Number(value.toFixed(PART_DIGITS)) + 0;
  const { emitter } = model;
  return {
    ...model,
    emitter: emitter.kind === 'leds' ? { ...emitter, ledSize: short(emitter.ledSize) } : emitter,
    weights: model.weights.map(few),
    drive: model.drive.map(few),
    power: short(model.power),
  };
}

function spreadOf(it: FigureOrGap | undefined, distance: number): SpreadAt[] {
  if (!isFigure(it) || !it.interval95 || !(it.value > 0)) return [];
  return [[distance, short(it.interval95[0] / it.value), short(it.interval95[1] / it.value)]];
}

function infraredOf({ figures, current }: PanelEntry): PlanPanel['infrared'] {
  const reading = figures.get('peak-irradiance-near-infrared');
  if (!isFigure(reading) || !current) {
    return { absent: say({ code: 'near-infrared-not-measured' }) };
  }
  // Above a bound may be anything.
  if (reading.bound === 'above') return { absent: say({ code: 'infrared-above-a-bound' }) };
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
