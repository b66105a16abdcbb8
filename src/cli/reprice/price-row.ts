/** Whether a code was needed for the paid price, as the column says it. */
export const CODES = { no: undefined, needed: { testerEarns: false }, earns: { testerEarns: true } } as const;
export type Code = keyof typeof CODES;

/** Columns of a file of prices; flags of the command have the same names. */
export const COLUMNS = ['panel', 'date', 'list', 'paid', 'currency', 'code', 'link', 'paidLink', 'note'] as const;
export type Column = (typeof COLUMNS)[number];

/**
 * One price that was seen, as a row of a file or the flags of the command say it. What is undefined was not said at all;
 * null says that there is none.
 */
export interface PriceRow {
  /** What it is called in messages: `prices.csv:4`, or `the command line`. */
  place: string;
  panel: string;
  /** `YYYY-MM-DD` */
  date: string;
  list: number | null | undefined;
  paid: number | null | undefined;
  currency: string | undefined;
  code: Code | undefined;
  link: string | null | undefined;
  paidLink: boolean | undefined;
  note: string | undefined;
  /** The newest price was looked up again, and stands. */
  isConfirmed: boolean;
}
