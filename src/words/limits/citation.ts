/** How a published limit is cited. Apart from the table of all of them, for a page's script needs one or two. */

/**
 * How far the text of a limit was checked: `read` on a page that quotes it, `secondary` only in something that
 * cites it, `memory` neither.
 */
export type LimitStanding = 'read' | 'secondary' | 'memory';

/** Where a published limit, level or line stands, and how well we know its text. Data files have it as it is here. */
export interface Citation {
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

/** By whom and when the limits for light are published. */
export const IEC_62471 = { source: 'IEC 62471', year: 2006, edition: 'first edition' } as const;

/** The infrared limit for the eye. */
export const INFRARED_EYE: Citation = {
  name: 'infrared limit for the cornea and lens',
  ...IEC_62471,
  clause: '4.3.7',
  standing: 'secondary',
  alsoIn: directive('numbers'),
};

const STANDING_WORDS: Record<LimitStanding, string> = {
  read: 'seen on a page that quotes it',
  secondary: 'seen in secondary sources only',
  memory: 'from memory',
};

/** The limit as a sentence part: name, source, year, edition, clause, and how well its text is known. */
export function cited({ name, source, year, edition, clause, standing }: Citation): string {
  // "2015 edition" names its year already.
  const when = edition.includes(String(year)) ? [] : [String(year)];
  const place = [source, ...when, edition, ...(clause ? [`clause ${clause}`] : [])].join(', ');
  return `${name} of ${place} (${STANDING_WORDS[standing]})`;
}

/** The same in brackets, without the name: "(IEC 62471:2006, 4.3.7, seen in secondary sources only)". */
export function citedShortly({ source, year, clause, standing }: Citation): string {
  return `(${[`${source}:${year}`, ...(clause ? [clause] : []), STANDING_WORDS[standing]].join(', ')})`;
}

/** Limit and its second place, as sentences: "The limit is the ...". */
export function limitSentence(limit: Citation): string {
  return `The limit is the ${cited(limit)}.${limit.alsoIn ? ` ${limit.alsoIn}.` : ''}`;
}

/** Where a limit of the standard stands too. */
export function directive(formula: string): string {
  return `Directive 2006/25/EC, Annex I, for people at work limits the same band (seen on a page that quotes it), by the same ${formula} (from memory)`;
}
