import type { FigureOrGap } from '../figure.ts';

/**
 * How far the text of a limit was checked: `read` on a page that quotes it, `secondary` only in something that
 * cites it, `memory` neither.
 */
export type LimitStanding = 'read' | 'secondary' | 'memory';

/** A published limit, level or line, and how well we know its text. */
export interface Limit {
  /** What it limits: "infrared limit for the cornea and lens". */
  name: string;
  /** Who published it: "IEC 62471". */
  source: string;
  year: number;
  edition: string;
  clause?: string;
  standing: LimitStanding;
  /** Where the same limit stands too, and how well that is known; a sentence without its full stop. */
  alsoIn?: string;
}

/** Anchors of the page of cautions that a result stands beside. */
export type CautionAnchor = 'eyes' | 'skin-and-heat' | 'flicker' | 'implants-and-fields' | 'sound';

/** One figure held against one published limit, in words that give no verdict. */
export interface LimitResult {
  /** The figure's metric; for pulsing, `pulsing-<mode>`. */
  id: string;
  title: string;
  figure: FigureOrGap;
  /** Plain English, a sentence or two each: what came out for this panel. */
  outcome: readonly string[];
  /** The limit with its source, year and edition, what was taken for granted, and last what the result is not. */
  background: readonly string[];
  /** Undefined where the figure is held against none. */
  limit: Limit | undefined;
  caution: CautionAnchor;
  /** Distance that it is for, cm, where it is for one. */
  distance?: number;
}

/** The last words of every result: what it is not. */
export const CLOSING =
  'Not a product certification and not medical advice; a licensed professional and local codes decide.';

const STANDING_WORDS: Record<LimitStanding, string> = {
  read: 'seen on a page that quotes it',
  secondary: 'seen in secondary sources only',
  memory: 'from memory',
};

/** The limit as a sentence part: name, source, year, edition, clause, and how well its text is known. */
export function cited({ name, source, year, edition, clause, standing }: Limit): string {
  // "2015 edition" names its year already.
  const when = edition.includes(String(year)) ? [] : [String(year)];
  const place = [source, ...when, edition, ...(clause ? [`clause ${clause}`] : [])].join(', ');
  return `${name} of ${place} (${STANDING_WORDS[standing]})`;
}

/** Limit and its second place, as sentences: "The limit is the ...". */
export function limitSentence(limit: Limit): string {
  return `The limit is the ${cited(limit)}.${limit.alsoIn ? ` ${limit.alsoIn}.` : ''}`;
}

/** A result's text. */
export type Wording = Pick<LimitResult, 'outcome' | 'background'>;

/** All of a result's text. */
export function sentenceOf({ outcome, background }: Wording): string {
  return [...outcome, ...background].join(' ');
}

/** A result's text from its parts, empty ones left out; it ends with what it is not. */
export function worded(said: readonly string[], ...beside: readonly string[]): Wording {
  const isSaid = (part: string) => part !== '';
  return { outcome: said.filter(isSaid), background: [...beside.filter(isSaid), CLOSING].map(once) };
}

/** Texts that one panel after another has alike; kept once, they are a twentieth of what a ledger would hold. */
const texts = new Map<string, string>();

function once(text: string): string {
  const known = texts.get(text);
  if (known !== undefined) return known;
  texts.set(text, text);
  return text;
}
