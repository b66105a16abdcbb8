import { join } from 'node:path';
import { Argument, Command, Option } from 'commander';
import { errorCode } from '../../build/error-code.ts';
import { ContentError, problemList } from '../../content/read/problem-list.ts';
import { UsageError } from '../../content/read/usage-error.ts';
import { contentFolder } from '../../ledger/load-ledger.ts';
import { todayFrom } from '../../ledger/today.ts';
import { dayFlag } from '../ask/day-flag.ts';
import { slipHelp, slipNames } from '../ask/slips.ts';
import { processTerminal, type Terminal } from '../ask/terminal.ts';
import { PROBLEM_CODE } from '../exit-codes.ts';
import { readText } from '../files/changes.ts';
import { panelFiles } from '../files/panel-files.ts';
import { writeNewFile } from '../files/write-new.ts';
import { fileInput, flagInput, isFile, type PriceFlags } from './input.ts';
import { planJson } from './plan-json.ts';
import { COLUMNS } from './price-row.ts';
import { guideCurrencies, priceSheet, type Separator } from './price-sheet.ts';
import { PRICE_SLIPS } from './price-slips.ts';
import { SEPARATORS } from './read-cells.ts';
import { reprice } from './run.ts';

const SLIP_IDS = Object.keys(PRICE_SLIPS);

const EXPLAINED = `
A file has a first line with the names of its columns, in any order, of these:
  ${COLUMNS.join(', ')}
divided by commas, semicolons or tabs. panel is the name of the panel's folder
or its full name; code is no, needed or earns. A price has paid, list or both.
Without a column or flag, the day is today, and currency, code and link are
those of the panel's newest price. Amounts are never taken over: --confirm, or
--accept unchanged, says that they were looked up again and stand.

Slips are asked about on a terminal, and otherwise refused:
${slipHelp(PRICE_SLIPS)}

Examples:
  npm run ledger -- reprice --template prices.csv
  npm run ledger -- reprice prices.csv
  npm run ledger -- reprice kelpwright-gannet --paid 799 --list 1190

Exit code:
  0  written, shown (--dry-run), or nothing to write
  ${PROBLEM_CODE}  nothing was written: a problem, a slip nobody decided on, or a no`;

interface Options extends PriceFlags {
  accept?: string[];
  skip?: string[];
  yes?: boolean;
  dryRun?: boolean;
  json?: boolean;
  template?: string | true;
  separator?: Separator;
}

/** `reprice`: new prices of one panel or many, from a file or flags. Exit codes as in its help. */
export function repriceCommand(terminal?: Terminal): Command {
  return new Command('reprice')
    .description('Add dated prices to panels, from a CSV file or from flags, and keep all else in their files.')
    .addArgument(new Argument('[what...]', 'a CSV file, - for the standard input, or a panel'))
    .option('--paid <amount>', 'what a buyer really pays')
    .option('--list <amount>', 'the list price')
    .option('--date <day>', 'YYYY-MM-DD; of prices that name no day')
    .option('--currency <code>', 'of both amounts, such as EUR')
    .option('--code <which>', 'no, needed, or earns: a code by which you earn')
    .option('--link <address>', 'where it is offered')
    .option('--paid-link <yes-or-no>', 'you earn when a reader buys through the link')
    .option('--note <text>', 'anything worth knowing')
    .option('--confirm', 'the newest prices of these panels were looked up again, and stand')
    .option('--accept <slips>', 'write in spite of these slips', slipNames('--accept', SLIP_IDS))
    .option('--skip <slips>', 'leave rows with these slips out', slipNames('--skip', SLIP_IDS))
    .option('-y, --yes', 'write without asking')
    .option('-n, --dry-run', 'show what would be written')
    .option('--json', 'print what is written as JSON, and ask nothing')
    .option('--template [file]', 'print or write a CSV file of all panels with their prices, to be filled in')
    .addOption(new Option('--separator <which>', 'of the template').choices(Object.keys(SEPARATORS)).default('comma'))
    .addHelpText('after', EXPLAINED)
    .action(async (what: string[], options: Options) => {
      const folder = contentFolder();
      const today = todayFrom(process.env, new Date());
      const guide = guideCurrencies(readGuide(folder));
      const day = dayFlag(options.date, today);
      if (options.template !== undefined) {
        const { separator = 'comma', template } = options;
        printTemplate(priceSheet(panelFiles(folder), { day, currency: guide.own, separator }), template);
        return;
      }
      const [first] = what;
      if (first === undefined)
        throw new UsageError('Which prices? Give a CSV file, - or a panel; --help has examples.');
      if (isFile(first) && what.length > 1) throw new UsageError('One file at a time.');
      const context = { day, today, currencies: guide.known };
      const input = isFile(first) ? fileInput(first, context) : flagInput(what, options, context);
      const own = terminal ?? processTerminal({ isInputTaken: first === '-' || options.json === true });
      if (input.problems.length > 0) {
        own.complain(problemList(input.problems, 'nothing was written'));
        process.exitCode = PROBLEM_CODE;
        return;
      }
      const given = { accept: options.accept ?? [], skip: options.skip ?? [] };
      const settings = {
        folder,
        today,
        currency: guide.own,
        given,
        isAgreed: options.yes === true,
        isDry: options.dryRun === true,
      };
      const quiet = options.json ? { ...own, say: () => {}, ask: undefined } : own;
      try {
        const plan = await reprice(input.rows, settings, quiet);
        if (!plan) process.exitCode = PROBLEM_CODE;
        else if (options.json) own.say(JSON.stringify(planJson(plan, folder, !settings.isDry), null, 2));
      } catch (error) {
        if (!(error instanceof ContentError)) throw error;
        own.complain(problemList(error.problems, 'nothing was written'));
        process.exitCode = PROBLEM_CODE;
      }
    });
}

function readGuide(folder: string): string {
  try {
    return readText(folder, 'guide.yaml');
  } catch (error) {
    if (errorCode(error) !== 'ENOENT') throw error;
    throw new UsageError(`There is no ${join(folder, 'guide.yaml')}; LEDGER_CONTENT names another content folder.`);
  }
}

/** To a file that is not there yet, or else to the standard output. */
function printTemplate(sheet: string, file: string | true): void {
  if (file === true) {
    process.stdout.write(sheet);
    return;
  }
  writeNewFile(file, sheet);
  console.log(`Wrote ${file}.\nNext: put in the new prices, then npm run ledger -- reprice ${file}`);
}
