/** What a figure held against a published limit says, in words that give no verdict. */
export interface LimitWords {
  /** "Infrared at the eye, 30 cm": results of one subject stand together. */
  subject: string;
  /** Which of its figures it is: "share of the limit". Left out where there is one. */
  aspect?: string;
  /** What the figure is, beside the subject: the aspect, or what stands in its place. */
  label: string;
  /** Where there is no figure, why not, in a sentence. */
  withheld?: string;
  /** Plain English, a sentence or two each: what came out for this panel. */
  outcome: readonly string[];
  /** The same beside a table whose line has the reading, the limit and the share: what the line has not. */
  beside: readonly string[];
  /** What of the background hangs on this panel's readings; the rest is the same for all panels. */
  own: readonly string[];
  /** The limit with its source, year and edition, and what was taken for granted. */
  background: readonly string[];
}

/** The last words of every result: what it is not. */
export const CLOSING =
  'Not a product certification and not medical advice; a licensed professional and local codes decide.';

/** What one result is called. */
type Head = Pick<LimitWords, 'subject' | 'aspect'> & Partial<Pick<LimitWords, 'label'>>;

/**
 * A result's words from their parts, empty ones left out. The label is the aspect where none is given.
 *
 * @param beside left out where the table says none of the outcome
 * @param own stands before the rest of the background, and in it
 */
export function worded(
  { subject, aspect, label = aspect ?? '' }: Head,
  {
    withheld,
    outcome = [],
    beside = outcome,
    own = [],
    background,
  }: {
    withheld?: string;
    outcome?: readonly string[];
    beside?: readonly string[];
    own?: readonly string[];
    background: readonly string[];
  },
): LimitWords {
  const isSaid = (part: string) => part !== '';
  return {
    subject,
    ...(aspect !== undefined && { aspect }),
    label,
    ...(withheld !== undefined && { withheld }),
    outcome: outcome.filter(isSaid),
    beside: beside.filter(isSaid),
    own: own.filter(isSaid),
    background: [...own, ...background].filter(isSaid),
  };
}

/** What a result is called, in full: "Infrared at the eye, 30 cm: share of the limit". */
export function titleOf({ subject, aspect }: Pick<LimitWords, 'subject' | 'aspect'>): string {
  return aspect === undefined ? subject : `${subject}: ${aspect}`;
}

/** All of a result's text; it ends with what it is not. */
export function textOf({
  withheld,
  outcome,
  background,
}: Pick<LimitWords, 'withheld' | 'outcome' | 'background'>): string {
  return [...(withheld === undefined ? [] : [withheld]), ...outcome, ...background, CLOSING].join(' ');
}
