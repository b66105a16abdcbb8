import type { PanelModel } from '../../../measure/beam/panel-model.ts';
import type { ShareReading } from '../../../measure/exposure/index.ts';
import type { PanelCaution } from '../../../words/caution-words.ts';
import type { Dagger } from '../../../words/flags.ts';
import type { SmallPhoto } from '../../shared/browser/small-photo.ts';
import { type TextRef, textOf } from '../../shared/browser/text-ref.ts';

/** Ends of a 95 % interval over the value, at a distance, cm. */
export type SpreadAt = [distance: number, low: number, high: number];

/** What the planner knows of a panel. */
export interface PlanPanel {
  slug: string;
  /** Names that addresses had for it before; left out where there are none. */
  formerly?: readonly string[];
  name: string;
  /** Size class in words. */
  group: string;
  photo?: SmallPhoto;
  /** Why nothing can be planned with it; then nothing of the model is here. */
  reason?: string;
  model?: PanelModel;
  /** Of the mean over the field and of the peak, at the distances of the table. */
  spread?: { mean: SpreadAt[]; peak: SpreadAt[] };
  /** Mains draw with both channels on, W: value and interval; or why there is none. */
  mains: { value: number; low?: number; high?: number } | { absent: string };
  /** Marks of what a plan is made of, where it is in doubt: the irradiances, the mains draw, the share for the eye. */
  doubts?: Partial<Record<Doubted, Dagger>>;
  /** From which day the same are, where their readings were not taken again. */
  carried?: Partial<Record<Doubted, string>>;
  /** Shares of the infrared limit that were read, nearest first, and whether the instrument's error there is known. */
  infrared: { shares: ShareReading[]; isErrorKnown: boolean } | { absent: string };
  /** What its readings say of each caution that it has; null where it was not read. */
  cautions: Partial<Record<PanelCaution, string | null>>;
}

/** What of a plan can be in doubt, or from an earlier day. */
export type Doubted = 'mean' | 'peak' | 'mains' | 'infrared';

/** Version of the file's form; goes up when a field changes its meaning or goes. */
export const PLAN_FORMAT = 2;

/** What the planner knows. */
export interface PlanData {
  currency: string;
  tariff: { price: number; date: string; source: string };
  panels: PlanPanel[];
}

/** What the planner's page fetches: sentences of many panels that differ in their numbers alone are there once. */
export interface PackedPlan extends Omit<PlanData, 'panels'> {
  format: typeof PLAN_FORMAT;
  texts: string[];
  panels: Array<Omit<PlanPanel, 'cautions'> & { cautions: Partial<Record<PanelCaution, TextRef | null>> }>;
}

/** The same with every sentence in its place. */
export function unpackPlan({ panels, texts, ...rest }: PackedPlan): PlanData {
  const said = (ref: TextRef | null) => (ref === null ? null : textOf(ref, texts));
  return {
    ...rest,
    panels: panels.map(({ cautions, ...it }) => ({
      ...it,
      cautions: Object.fromEntries(Object.entries(cautions).map(([anchor, ref]) => [anchor, said(ref)])),
    })),
  };
}
