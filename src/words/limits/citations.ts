import type { LimitId } from '../../measure/exposure/limit.ts';

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

const IEC_62471 = { source: 'IEC 62471', year: 2006, edition: 'first edition' } as const;
const IEEE_1789 = { source: 'IEEE Std 1789', year: 2015, edition: '2015 edition' } as const;
const ICNIRP_2010 = { source: 'ICNIRP', year: 2010, edition: 'Health Physics 99(6):818–836' } as const;
const ICNIRP_2020 = { source: 'ICNIRP', year: 2020, edition: 'Health Physics 118(5):483–524' } as const;

const directive = (formula: string) =>
  `Directive 2006/25/EC, Annex I, for people at work limits the same band (seen on a page that quotes it), by the same ${formula} (from memory)`;

/** Apart, for the planner's script, which needs no other. */
export const INFRARED_EYE: Citation = {
  name: 'infrared limit for the cornea and lens',
  ...IEC_62471,
  clause: '4.3.7',
  standing: 'secondary',
  alsoIn: directive('numbers'),
};

/** Every limit that figures are held against or corrected by. */
export const CITATIONS: Readonly<Record<LimitId, Citation>> = {
  'infrared-eye': INFRARED_EYE,
  'skin-heating': {
    name: 'thermal limit for the skin',
    ...IEC_62471,
    clause: '4.3.8',
    standing: 'secondary',
    alsoIn: directive('formula'),
  },
  retina: {
    name: 'thermal limits for the retina',
    ...IEC_62471,
    clause: '4.3.5–4.3.6',
    standing: 'memory',
  },
  'flicker-low-risk': {
    name: 'low-risk line (Practice 1)',
    ...IEEE_1789,
    clause: '8.1.1',
    standing: 'secondary',
  },
  'flicker-no-effect': {
    name: 'no-observable-effect line (Practice 2)',
    ...IEEE_1789,
    clause: '8.1.1',
    standing: 'secondary',
  },
  'flicker-seizures': { name: 'rule against seizures (Practice 3)', ...IEEE_1789, standing: 'memory' },
  'magnetic-level': { name: 'reference level for magnetic fields, general public,', ...ICNIRP_2010, standing: 'read' },
  'electric-level': { name: 'reference level for electric fields, general public,', ...ICNIRP_2010, standing: 'read' },
  'radio-level': {
    name: 'whole-body reference level for radio fields, general public,',
    ...ICNIRP_2020,
    standing: 'secondary',
  },
  'radio-level-local': {
    name: 'local reference level for radio fields, general public,',
    ...ICNIRP_2020,
    standing: 'read',
  },
  'sleeping-places': {
    name: 'ranges for sleeping places',
    source: 'the Standard of Building Biology Testing Methods',
    year: 2015,
    edition: 'SBM-2015 with the numbers seen for SBM-2008',
    standing: 'memory',
  },
  'background-sound': {
    name: 'correction for background sound, equation 16,',
    source: 'ISO 3744',
    year: 2010,
    edition: '2010 edition',
    standing: 'secondary',
  },
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
