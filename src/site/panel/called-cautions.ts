import type { PanelEntry } from '../../ledger/ledger.ts';
import type { LimitResult } from '../../measure/exposure/index.ts';
import { type Figure, figureFinder } from '../../measure/figure.ts';
import type { MetricId } from '../../measure/metrics.ts';
import { MODES_COMBINED_FIRST } from '../../measure/modes.ts';
import { carriedWords } from '../../words/carried-words.ts';
import {
  type EyesFinding,
  eyeShareWords,
  eyesWords,
  flickerFindingWords,
  implantsWords,
  type LightFinding,
  mainsWords,
  skinHeatWords,
} from '../../words/caution-findings.ts';
import { CAUTION_WORDS, cautionText, PANEL_CAUTIONS, type PanelCaution } from '../../words/caution-words.ts';

/** A caution beside a panel's figures. */
export interface CalledCaution {
  /** Anchor on the page of cautions. */
  anchor: PanelCaution;
  title: string;
  /** What the panel's readings say of it; undefined where it was not read. */
  said?: string;
  /** What was read, or that it was not, and what to do. */
  text: string;
  /** Metrics that it stands beside. */
  concerns: readonly MetricId[];
}

/** Depth of flicker, %, from which on a panel's own page speaks of it. Our own choice. */
const FLICKER_FROM = 1;

/** From this wavelength on, nm, the eye sees next to nothing; what a maker claims above it is near-infrared. */
const UNSEEN_FROM = 700;

const CONCERNS: Readonly<Record<PanelCaution, readonly MetricId[]>> = {
  eyes: ['peak-irradiance-combined', 'peak-irradiance-near-infrared'],
  'skin-and-heat': ['peak-irradiance-combined'],
  'mains-electricity': ['mains-draw-combined'],
  'implants-and-fields': ['magnetic-field-on', 'electric-field-on', 'radio-field-on'],
  flicker: MODES_COMBINED_FIRST.map((mode) => `flicker-${mode}` as const),
};

/**
 * Cautions of a panel in the words that its own readings give (words/caution-findings.ts). Those of eyes, skin, mains and
 * implants stand whatever was read, that of flicker unless readings show next to none: a missing reading is said to be
 * missing, and takes no caution away.
 */
export function calledCautions(panel: PanelEntry, currency: string): CalledCaution[] {
  const figure = figureFinder(panel.figures);
  const light = lightOf(panel);
  const draw = figure('mains-draw-combined') ?? figure('mains-draw-red') ?? figure('mains-draw-near-infrared');
  const said: Record<PanelCaution, string | undefined | false> = {
    eyes: eyesWords({ ...light, ...unseenOf(panel) }, currency),
    'skin-and-heat': skinHeatWords(light, currency),
    'mains-electricity': mainsWords(draw, currency),
    'implants-and-fields': fieldsSaid(panel, currency),
    flicker: flickerSaid(panel, currency),
  };
  return PANEL_CAUTIONS.flatMap((anchor) => {
    const own = said[anchor];
    if (own === false) return [];
    const { title } = CAUTION_WORDS[anchor];
    return [
      {
        anchor,
        title,
        ...(own !== undefined && { said: own }),
        text: cautionText(anchor, own),
        concerns: CONCERNS[anchor],
      },
    ];
  });
}

/** What the eyes get, in half a sentence for the first screen; undefined where it was not read. */
export function eyesInShort(panel: PanelEntry): string | undefined {
  const share = resultOf(panel, 'infrared-share-at-reading');
  const carried = carriedWords(share?.figure);
  return carried ? `${eyeShareWords(share)}, ${carried}` : eyeShareWords(share);
}

/** The panel's current results against published limits, by what they are called. */
const resultOf = (panel: PanelEntry, id: string): LimitResult | undefined =>
  panel.current?.limits.find((it) => it.id === id);

function lightOf(panel: PanelEntry): LightFinding {
  const figure = figureFinder(panel.figures);
  return {
    peak:
      figure('peak-irradiance-combined') ?? figure('peak-irradiance-near-infrared') ?? figure('peak-irradiance-red'),
    distance: panel.current?.conditions.distance,
  };
}

function unseenOf(panel: PanelEntry): Omit<EyesFinding, keyof LightFinding> {
  const claimed = panel.data.claims?.wavelengths ?? [];
  const isUnseen = claimed.some((it) => it.peak.value >= UNSEEN_FROM);
  return {
    nearInfrared: figureFinder(panel.figures)('peak-irradiance-near-infrared'),
    claimed: isUnseen ? 'unseen' : claimed.length > 0 ? 'seen' : 'nothing',
    share: resultOf(panel, 'infrared-share-at-reading'),
  };
}

function fieldsSaid(panel: PanelEntry, currency: string): string | undefined {
  const figure = figureFinder(panel.figures);
  return implantsWords(
    {
      on: figure('magnetic-field-on'),
      off: figure('magnetic-field-off'),
      place: panel.current?.used.magnetic?.distance?.written,
      shares: (['magnetic', 'electric'] as const).flatMap((kind) => {
        const share = figure(`${kind}-field-share`);
        return share ? [[kind, share] as const] : [];
      }),
    },
    currency,
  );
}

/** False where readings show that there is next to none. */
function flickerSaid(panel: PanelEntry, currency: string): string | undefined | false {
  const figure = figureFinder(panel.figures);
  const read = MODES_COMBINED_FIRST.flatMap((mode): Array<{ depth: Figure; frequency: Figure | undefined }> => {
    const depth = figure(`flicker-${mode}`);
    return depth ? [{ depth, frequency: figure(`flicker-frequency-${mode}`) }] : [];
  });
  if (read.length === 0) return undefined;
  const [worst] = read
    .filter(({ depth }) => depth.value >= FLICKER_FROM)
    .toSorted((a, b) => b.depth.value - a.depth.value);
  if (!worst) return false;
  const pulsing = MODES_COMBINED_FIRST.map((mode) => resultOf(panel, `pulsing-${mode}`)).filter(
    (it) => it !== undefined,
  );
  return flickerFindingWords({ ...worst, pulsing }, currency);
}
