import type { PanelEntry } from '../../ledger/ledger.ts';
import { cautiousEnd } from '../../measure/exposure/words.ts';
import { type Figure, figureFinder, isFigure } from '../../measure/figure.ts';
import { CAUTION_WORDS, cautionText, PANEL_CAUTIONS, type PanelCaution } from '../../words/caution-words.ts';
import { markOf } from '../../words/flags.ts';
import { showFigure } from '../../words/format.ts';
import { DOUBT_MARK } from '../../words/marks.ts';

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
  concerns: string[];
}

/** Depth of flicker, %, from which on a panel's own page speaks of it. Our own choice. */
const FLICKER_FROM = 1;

/** Share of a reference level, %, from which on a panel's own page speaks of it among the cautions. Our own choice. */
const FIELD_FROM = 10;

/** From this wavelength on, nm, the eye sees next to nothing; what a maker claims above it is near-infrared. */
const UNSEEN_FROM = 700;

const CONCERNS: Readonly<Record<PanelCaution, string[]>> = {
  eyes: ['peak-irradiance-combined', 'peak-irradiance-near-infrared'],
  'skin-and-heat': ['peak-irradiance-combined'],
  'mains-electricity': ['mains-draw-combined'],
  'implants-and-fields': ['magnetic-field-on', 'electric-field-on', 'radio-field-on'],
  flicker: ['flicker-combined', 'flicker-red', 'flicker-near-infrared'],
};

/**
 * Cautions of a panel in the words that its own readings give. Those of eyes, skin, mains and implants stand whatever
 * was read, that of flicker unless readings show next to none: a missing reading is said to be missing, and takes no
 * caution away. They say that a hazard is there, with its size where it is known; they never give a verdict.
 */
export function calledCautions(panel: PanelEntry, currency: string): CalledCaution[] {
  const said: Record<PanelCaution, string | undefined | false> = {
    eyes: eyesSaid(panel, currency),
    'skin-and-heat': skinSaid(panel, currency),
    'mains-electricity': mainsSaid(panel, currency),
    'implants-and-fields': fieldSaid(panel, currency),
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

/** How a panel's figures are found and written. */
function reader(panel: PanelEntry, currency: string) {
  return { figure: figureFinder(panel.figures), text: (it: Figure) => markedText(it, currency) };
}

/** A figure within a sentence; what is in doubt, or can't be right, says so there too. */
function markedText(it: Figure, currency: string): string {
  const { text } = showFigure(it, currency);
  const mark = markOf(it)?.mark;
  if (mark === undefined) return text;
  return `${text} (${mark} ${mark === DOUBT_MARK ? 'in doubt' : 'impossible as it stands'})`;
}

/** What a result against a published limit says of this panel, where it has one. */
function limitWords(panel: PanelEntry, id: string): string {
  const result = panel.current?.limits.find((it) => it.id === id);
  return result && isFigure(result.figure) ? ` ${result.outcome.join(' ')}` : '';
}

const atDistance = (panel: PanelEntry) => (panel.current ? ` at ${panel.current.conditions.distance} cm` : '');

function strongest(panel: PanelEntry): Figure | undefined {
  const figure = figureFinder(panel.figures);
  return figure('peak-irradiance-combined') ?? figure('peak-irradiance-near-infrared') ?? figure('peak-irradiance-red');
}

function eyesSaid(panel: PanelEntry, currency: string): string | undefined {
  const { figure, text } = reader(panel, currency);
  const peak = strongest(panel);
  const infrared = figure('peak-irradiance-near-infrared');
  const claimed = panel.data.claims?.wavelengths ?? [];
  const claimsInfrared = claimed.some((it) => it.peak.value >= UNSEEN_FROM);
  const unseen = infrared
    ? `Near-infrared alone gives ${text(infrared)}, which the eye does not see.`
    : claimsInfrared
      ? 'Part of it is near-infrared, which the eye does not see; near-infrared alone was not read.'
      : peak && claimed.length === 0
        ? 'How much of it is near-infrared, which the eye does not see, was not read.'
        : '';
  if (!peak) return unseen ? `${CAUTION_WORDS.eyes.notRead} ${unseen}` : undefined;
  const strength = `Up to ${text(peak)}${atDistance(panel)}.`;
  return [strength, unseen].filter(Boolean).join(' ') + limitWords(panel, 'infrared-share-at-reading');
}

function skinSaid(panel: PanelEntry, currency: string): string | undefined {
  const peak = strongest(panel);
  return peak && `Light of ${markedText(peak, currency)}${atDistance(panel)} warms the skin.`;
}

function mainsSaid(panel: PanelEntry, currency: string): string | undefined {
  const { figure, text } = reader(panel, currency);
  const draw = figure('mains-draw-combined') ?? figure('mains-draw-red') ?? figure('mains-draw-near-infrared');
  return draw && `Draws ${text(draw)} from the mains.`;
}

function fieldSaid(panel: PanelEntry, currency: string): string | undefined {
  const { figure, text } = reader(panel, currency);
  const magnetic = figure('magnetic-field-on');
  const shares = (['magnetic', 'electric'] as const).map((kind) => shareWords(panel, kind)).filter(Boolean);
  if (!magnetic)
    return shares.length > 0 ? `${CAUTION_WORDS['implants-and-fields'].notRead} ${shares.join(' ')}` : undefined;
  const at = panel.current?.readings.magnetic?.distance;
  // A meter for the mains alone is deaf to drivers, and a low reading of it clears nothing.
  const size = text(magnetic).replace(/^< /, 'below ');
  const read = `A magnetic field of ${size}${at ? ` at ${at.written}` : ''}`;
  const room = figure('magnetic-field-off');
  const isRoom = room && !room.bound && !magnetic.bound && magnetic.value <= room.value;
  const unseen = 'what the meter can’t see is not in it.';
  return [isRoom ? `${read}, no more than the room’s own there; ${unseen}` : `${read}; ${unseen}`, ...shares].join(' ');
}

/** A field's share of the reference level for the public, by its strict end, from where it is worth a word. */
function shareWords(panel: PanelEntry, kind: 'magnetic' | 'electric'): string {
  const share = figureFinder(panel.figures)(`${kind}-field-share`);
  const high = share && (cautiousEnd(share, 'high') ?? share.value);
  if (!share || high === undefined || high < FIELD_FROM) return '';
  return `The ${kind} field is up to ${Math.ceil(high)} % of the reference level for the public, which is not made for implants.`;
}

/** False where readings show that there is next to none. */
function flickerSaid(panel: PanelEntry, currency: string): string | undefined | false {
  const { figure, text } = reader(panel, currency);
  const modes = ['combined', 'red', 'near-infrared'] as const;
  const read = modes.flatMap((mode) => {
    const depth = figure(`flicker-${mode}`);
    return depth ? [{ depth, frequency: figure(`flicker-frequency-${mode}`) }] : [];
  });
  if (read.length === 0) return undefined;
  const [worst] = read
    .filter(({ depth }) => depth.value >= FLICKER_FROM)
    .toSorted((a, b) => b.depth.value - a.depth.value);
  if (!worst) return false;
  const pulsing = modes.map((mode) => limitWords(panel, `pulsing-${mode}`)).join('');
  return `The light flickers by ${text(worst.depth)}${worst.frequency ? ` at ${text(worst.frequency)}` : ''}.${pulsing}`;
}
