import type { OtherFigure, OtherGuide, OtherPanel } from '../content/read/others/other-guide.ts';
import { EN_LIMIT, enNumber } from '../measure/agreement/en-number.ts';
import { type Explanation, explainedBy } from '../measure/agreement/explained-by.ts';
import { type Figure, isFigure } from '../measure/figure.ts';
import { isInDoubt } from '../measure/handed-on.ts';
import { sameDistance } from '../measure/irradiance/same-distance.ts';
import { METRICS, type Metric } from '../measure/metrics.ts';
import type { Ledger, PanelEntry } from './ledger.ts';

/** A figure that two guides have of one model. */
export interface SharedFigure {
  metric: Metric;
  own: Figure;
  other: OtherFigure;
  /** Own less other, in the figure's unit. */
  difference: number;
  en: number;
  /** |E_n| of at most 1. */
  agrees: boolean;
  /** The own error that would have to be off by the fewest standard uncertainties, where they do not agree. */
  explanation?: Explanation;
  isOtherVersion: boolean;
  inDoubt: boolean;
  /** It is apart because another one is that it is made of, or that its model was given. */
  follows: boolean;
}

/** Why a figure that both have is not compared. */
export type NotCompared = 'other-distance' | 'price' | 'other-unit' | 'bound' | 'no-interval';

/** A model that both have read. */
export interface SharedPanel {
  panel: PanelEntry;
  other: OtherPanel;
  /** The farthest apart first. */
  figures: readonly SharedFigure[];
  left: ReadonlyMap<NotCompared, readonly Metric[]>;
}

/** A guide held against another. */
export interface GuideAgreement {
  other: OtherGuide;
  shared: readonly SharedPanel[];
  /** Names of published panels that the other guide does not have. */
  onlyOwn: readonly string[];
  onlyOther: readonly string[];
}

/** Models are one where maker and model are, but for case, blanks and signs. */
const modelKey = (maker: string, model: string) => `${maker}/${model}`.toLowerCase().replace(/[^\p{L}\p{N}/]+/gu, '');

/** Holds the newest sessions of all models that both guides have against each other, figure by figure. */
export function guideAgreement(ledger: Ledger, other: OtherGuide): GuideAgreement {
  const own = [...ledger.panels.values()].filter((it) => it.data.status === 'published' && it.current);
  const keyOf = (it: PanelEntry) => modelKey(it.maker.name, it.data.model);
  const others = new Map(other.panels.map((it) => [modelKey(it.maker, it.model), it]));
  const keys = new Set(own.map(keyOf));
  return {
    other,
    shared: own.flatMap((panel) => {
      const theirs = others.get(keyOf(panel));
      return theirs ? [sharedPanel(panel, theirs)] : [];
    }),
    onlyOwn: own.filter((it) => !others.has(keyOf(it))).map((it) => it.name),
    onlyOther: other.panels
      .filter((it) => !keys.has(modelKey(it.maker, it.model)))
      .map((it) => `${it.maker} ${it.model}`),
  };
}

function sharedPanel(panel: PanelEntry, other: OtherPanel): SharedPanel {
  const figures: SharedFigure[] = [];
  const left = new Map<NotCompared, Metric[]>();
  for (const metric of METRICS) {
    const own = panel.figures.get(metric.id);
    const theirs = other.figures.get(metric.id);
    if (!isFigure(own) || !theirs) continue;
    const why = notCompared(metric, own, theirs, { panel, other });
    if (why) left.set(why, [...(left.get(why) ?? []), metric]);
    else figures.push(sharedFigure(metric, own, theirs));
  }
  return { panel, other, figures: withCauses(figures).toSorted((a, b) => Math.abs(b.en) - Math.abs(a.en)), left };
}

/** Tells figures that are apart for themselves from those that only follow. */
function withCauses(figures: readonly SharedFigure[]): SharedFigure[] {
  const apart = figures.filter((it) => !it.agrees);
  const ids = new Set(apart.map((it) => it.own.id));
  const isReadApart = apart.some((it) => it.own.basis !== 'modelled');
  return figures.map((it) => ({
    ...it,
    follows:
      !it.agrees && (it.own.inputs.some((input) => ids.has(input)) || (it.own.basis === 'modelled' && isReadApart)),
  }));
}

function notCompared(
  { unit, method, id }: Metric,
  own: Figure,
  theirs: OtherFigure,
  { panel, other }: { panel: PanelEntry; other: OtherPanel },
): NotCompared | undefined {
  // What a panel costs is no measurement, and differs from shop to shop.
  if (unit.includes('currency')) return 'price';
  if (own.bound) return 'bound';
  const [low, high] = own.interval95 ?? [0, 0];
  const [theirLow, theirHigh] = theirs.interval95;
  if (!own.interval95 || (low === high && theirLow === theirHigh)) return 'no-interval';
  if (unit !== theirs.unit) return 'other-unit';
  const [ours, their] = distancesOf(id, method, panel, other);
  return ours === undefined || their === undefined || sameDistance(ours, their) ? undefined : 'other-distance';
}

/** Methods whose figures are of no distance, or of a stated one. */
const ANYWHERE: ReadonlySet<string> = new Set([
  ...['led-area', 'mains-draw', 'wavelength', 'flicker', 'flicker-lines'],
  ...['emitted-power', 'efficiency-emitted', 'beam-half-angle', 'distance-table'],
]);
const BLOCKS = ['magnetic', 'electric', 'radio', 'sound'] as const;

/** Distances that a figure was read at on both benches, cm; undefined where it has none, or none is stated. */
function distancesOf(
  id: string,
  method: string,
  { current }: PanelEntry,
  other: OtherPanel,
): [number | undefined, number | undefined] {
  if (ANYWHERE.has(method) || /-at-\d+-cm$/.test(id)) return [undefined, undefined];
  const block = BLOCKS.find((it) => id.startsWith(it));
  if (block) return [current?.used[block]?.distance?.value, other.blockDistances.get(block)];
  return [current?.conditions.distance, other.distance];
}

function sharedFigure(metric: Metric, own: Figure, other: OtherFigure): SharedFigure {
  const { difference, en } = enNumber(
    { value: own.value, interval95: own.interval95 ?? [own.value, own.value] },
    other,
  );
  const agrees = Math.abs(en) <= EN_LIMIT;
  const explanation = agrees ? undefined : explainedBy(own.budget, difference);
  return {
    metric,
    own,
    other,
    difference,
    en,
    agrees,
    ...(explanation && { explanation }),
    isOtherVersion: own.method.version !== other.methodVersion,
    inDoubt: isInDoubt(own) || other.inDoubt,
    follows: false,
  };
}
