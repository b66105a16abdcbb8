/** What a panel's readings say beside each caution: that a hazard is there, with its size where it is known. No verdict. */
import { cautiousEnd, roundedTo } from '../measure/exposure/cautious-end.ts';
import type { FieldKind } from '../measure/exposure/field-reading.ts';
import type { LimitResult } from '../measure/exposure/index.ts';
import { type Figure, isFigure } from '../measure/figure.ts';
import { number } from '../measure/numbers.ts';
import { carriedWords } from './carried-words.ts';
import { CAUTION_WORDS } from './caution-words.ts';
import { markOf } from './flags.ts';
import { showFigure } from './format.ts';
import { capital, hertzWords } from './limits/amounts.ts';
import { FIELD_NAMES } from './limits/field-words.ts';
import { limitWords } from './limits/index.ts';
import { SPECTRAL_UNKNOWN } from './limits/infrared-phrases.ts';
import { DOUBT_MARK } from './marks.ts';

/** Share of a reference level, %, from which on a panel's own page speaks of it among the cautions. Our own choice. */
const FIELD_FROM = 10;

/** The light that cautions speak of. */
export interface LightFinding {
  /** The strongest reading; undefined where none was taken. */
  peak: Figure | undefined;
  /** Where it was read, cm. */
  distance: number | undefined;
}

/** What is known of the part that the eye does not see. */
export interface EyesFinding extends LightFinding {
  /** Read with near-infrared alone on. */
  nearInfrared: Figure | undefined;
  /** Wavelengths by the maker: some that the eye does not see, only others, or none at all. */
  claimed: 'unseen' | 'seen' | 'nothing';
  /** Its share of the infrared limit at the distance of the reading. */
  share: LimitResult | undefined;
}

export interface FieldsFinding {
  /** Magnetic field with the panel on and off. */
  on: Figure | undefined;
  off: Figure | undefined;
  /** Where it was read, as the tester wrote it. */
  place: string | undefined;
  /** Shares of the reference levels, by the strict end. */
  shares: ReadonlyArray<readonly [FieldKind, Figure]>;
}

export interface FlickerFinding {
  /** Of the mode that flickers deepest, %. */
  depth: Figure;
  /** Hz */
  frequency: Figure | undefined;
  /** Modes that pulse. */
  pulsing: readonly LimitResult[];
}

/** A figure within a sentence; what is in doubt, can't be right, or is from an earlier day says so there too. */
function marked(it: Figure, currency: string): string {
  return showFigure(it, currency).text + inBrackets(besideWords(it));
}

function besideWords(it: Figure): string {
  const mark = markOf(it)?.mark;
  const doubt = mark && `${mark} ${mark === DOUBT_MARK ? 'in doubt' : 'impossible as it stands'}`;
  return [doubt, carriedWords(it)].filter(Boolean).join('; ');
}

const inBrackets = (words: string) => (words === '' ? '' : ` (${words})`);

/** The same with "below" for its sign. */
function boundInWords(it: Figure, currency: string): string {
  const { bound, ...value } = it;
  return bound === 'below' ? `below ${marked(value, currency)}` : marked(it, currency);
}

const at = (distance: number | undefined) => (distance === undefined ? '' : ` at ${distance} cm`);

/** What came out beside a published limit, behind another sentence. */
const besideLimit = (result: LimitResult | undefined) =>
  result && isFigure(result.figure) ? ` ${limitWords(result).outcome.join(' ')}` : '';

/**
 * A share of the infrared limit for the eye by its cautious end: `up to 3.29 times the infrared limit for long exposures`.
 * Undefined where it is not known.
 */
export function eyeShareWords(result: LimitResult | undefined): string | undefined {
  if (!result || !isFigure(result.figure)) return undefined;
  const end = cautiousEnd(result.figure, 'high');
  const share = roundedTo(end ?? result.figure.value, 'high');
  const size = share < 100 ? `${number(share)} % of` : `${number(share / 100)} times`;
  return `${end === undefined ? 'more than' : 'up to'} ${size} the infrared limit for long exposures`;
}

/** How strong the light that the eye does not see is; undefined where nothing is known of the light. */
export function eyesWords(
  { peak, distance, nearInfrared, claimed, share }: EyesFinding,
  currency: string,
): string | undefined {
  if (nearInfrared) {
    const beside = eyeShareWords(share);
    const doubt = share && 'isSpectralErrorKnown' in share && !share.isSpectralErrorKnown ? ` ${SPECTRAL_UNKNOWN}` : '';
    return `Near-infrared alone is ${marked(nearInfrared, currency)}${at(distance)}${beside ? `, ${beside}` : ''}; the eye neither sees it nor turns away.${doubt}`;
  }
  const unseen = unseenWords(peak, claimed);
  if (!peak) return unseen ? `${CAUTION_WORDS.eyes.notRead} ${unseen}` : undefined;
  return [`Up to ${marked(peak, currency)}${at(distance)}.`, unseen].filter((it) => it !== '').join(' ');
}

/** What is known of the part that was not read. */
function unseenWords(peak: Figure | undefined, claimed: EyesFinding['claimed']): string {
  if (claimed === 'unseen') {
    return 'Part of it is near-infrared, which the eye does not see; near-infrared alone was not read.';
  }
  return peak && claimed === 'nothing'
    ? 'How much of it is near-infrared, which the eye does not see, was not read.'
    : '';
}

/** How much light warms the skin. */
export function skinHeatWords({ peak, distance }: LightFinding, currency: string): string | undefined {
  return peak && `Up to ${marked(peak, currency)}${at(distance)} warms it.`;
}

/** The mains draw. */
export function mainsWords(draw: Figure | undefined, currency: string): string | undefined {
  return draw && `Draws ${marked(draw, currency)}.`;
}

/** The magnetic field beside the room's, and shares of reference levels from where they are worth a word. */
export function implantsWords({ on, off, place, shares }: FieldsFinding, currency: string): string | undefined {
  const told = shares.map(([kind, share]) => levelWords(kind, share)).filter((it) => it !== '');
  if (!on) return told.length > 0 ? [CAUTION_WORDS['implants-and-fields'].notRead, ...told].join(' ') : undefined;
  // An instrument for the mains alone is deaf to drivers, and a low reading of it clears nothing.
  const size = boundInWords(on, currency);
  const read = `${capital(FIELD_NAMES.magnetic)} of ${size}${place === undefined ? '' : ` at ${place}`}`;
  const isRoom = off && !off.bound && !on.bound && on.value <= off.value;
  const unseen = 'what the meter can’t see is not in it.';
  return [isRoom ? `${read}, no more than the room’s own there; ${unseen}` : `${read}; ${unseen}`, ...told].join(' ');
}

function levelWords(kind: FieldKind, share: Figure): string {
  const high = cautiousEnd(share, 'high') ?? share.value;
  if (high < FIELD_FROM) return '';
  return `${capital(FIELD_NAMES[kind])} up to ${Math.ceil(high)} % of the reference level for the public, which is not made for implants.`;
}

/** How deep and fast the light flickers, and which modes pulse. */
export function flickerFindingWords({ depth, frequency, pulsing }: FlickerFinding, currency: string): string {
  // What both have beside them stands once, behind the two.
  const isAlike = frequency && besideWords(frequency) === besideWords(depth);
  const by = isAlike ? showFigure(depth, currency).text : marked(depth, currency);
  const speed = frequency ? ` at ${hertzWords(frequency.value)}${inBrackets(besideWords(frequency))}` : '';
  return `The light flickers by ${by}${speed}.${pulsing.map(besideLimit).join('')}`;
}
