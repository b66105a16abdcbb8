import { counted } from '../../content/read/problem-list.ts';
import { type Answer, decide, type Given, type Slip, slipList } from '../ask/slips.ts';
import { isAgreed, type Terminal } from '../ask/terminal.ts';
import { panelFiles } from '../files/panel-files.ts';
import { ChangedMeanwhile, writeSafely } from '../files/write-safely.ts';
import { type Plan, planPrices } from './plan.ts';
import type { PriceRow } from './price-row.ts';
import { PRICE_SLIPS } from './price-slips.ts';
import { priceTable } from './price-table.ts';

/** How prices are to be written. */
export interface RepriceOptions {
  folder: string;
  /** `YYYY-MM-DD` */
  today: string;
  /** The guide's own. */
  currency: string;
  given: Given;
  /** Writes without asking. */
  isAgreed: boolean;
  /** Shows what would be written. */
  isDry: boolean;
}

/** Files that change under a command's hands over and over are somebody else's work. */
const MOST_TURNS = 5;

/**
 * Shows what prices would change, has slips decided on, and writes all or nothing.
 *
 * @returns what was written or would be; undefined where it stopped, which has been said
 * @throws ContentError where the content would have a problem that it has not now
 */
export async function reprice(
  rows: readonly PriceRow[],
  options: RepriceOptions,
  terminal: Terminal,
): Promise<Plan | undefined> {
  const { folder, today, isDry } = options;
  const answers = new Map<string, Answer>();
  let shown = '';
  let agreed = options.isAgreed;
  for (let turn = 1; ; turn++) {
    const plan = await decided(rows, options, answers, terminal);
    if (!plan) return undefined;
    const table = plan.planned.length > 0 ? priceTable(plan.planned) : '';
    if (table !== shown) terminal.say(table);
    // What was agreed to is what was shown.
    if (table !== shown && turn > 1) agreed = options.isAgreed;
    shown = table;
    const left = rows.length - plan.planned.length;
    if (left > 0) terminal.say(`\nLeft out: ${counted(left, 'row')}.`);
    if (plan.files.length === 0) {
      terminal.say('\nThere is nothing to write.');
      return plan;
    }
    if (isDry) {
      terminal.say('\nNothing was written (--dry-run).');
      return plan;
    }
    if (!agreed && !(await agreedTo(plan, terminal))) return undefined;
    agreed = true;
    try {
      await writeSafely(folder, plan, today);
      terminal.say(`\n${written(plan)} Next: npm run check, then npm run build.`);
      return plan;
    } catch (error) {
      if (!(error instanceof ChangedMeanwhile) || turn === MOST_TURNS) throw error;
    }
  }
}

/** A plan of which every slip has been decided on; leaving a row out may bring others to light. */
async function decided(
  rows: readonly PriceRow[],
  { folder, currency, given }: RepriceOptions,
  answers: Map<string, Answer>,
  terminal: Terminal,
): Promise<Plan | undefined> {
  for (;;) {
    const plan = planPrices(rows, panelFiles(folder), answers, currency);
    const slips = [...plan.aside, ...plan.planned.flatMap((it) => it.slips)];
    const before = answers.size;
    const open = await decide(slips, given, answers, terminal);
    if (open.length > 0) {
      refuse(plan, open, terminal);
      return undefined;
    }
    if (answers.size === before) return plan;
  }
}

function refuse({ planned }: Plan, open: readonly Slip[], { say, complain, ask }: Terminal): void {
  if (!ask) {
    if (planned.length > 0) say(priceTable(planned));
    complain(`\n${slipList(open, PRICE_SLIPS)}\n`);
  }
  complain('Nothing was written.');
}

async function agreedTo(plan: Plan, { complain, ask }: Terminal): Promise<boolean> {
  if (
    ask &&
    (await isAgreed(ask, `\nWrite ${counted(plan.planned.length, 'price')} to ${counted(plan.files.length, 'file')}?`))
  )
    return true;
  complain(ask ? 'Nothing was written.' : '\nNothing was written. To write it, add --yes.');
  return false;
}

const written = ({ planned, files }: Plan) =>
  `Wrote ${counted(planned.length, 'price')} to ${counted(files.length, 'file')}.`;
