import { Command } from 'commander';
import { problemList } from '../../content/read/problem-list.ts';
import { contentFolder } from '../../ledger/load-ledger.ts';
import { todayFrom } from '../../ledger/today.ts';
import { agreedTo } from '../ask/agree.ts';
import { carryOut } from '../ask/carry-out.ts';
import { type Answer, decide, slipHelp, slipList, slipNames } from '../ask/slips.ts';
import type { Terminal } from '../ask/terminal.ts';
import { PROBLEM_CODE } from '../exit-codes.ts';
import { ChangedMeanwhile, writeSafely } from '../files/write-safely.ts';
import { type CalibrationFlags, type NewCalibration, readCalibration } from './calibration-input.ts';
import { CALIBRATION_SLIPS, calibrationSlips } from './calibration-slips.ts';
import { calibrationText } from './calibration-text.ts';
import { type CalibrationPlan, planCalibration, readInstrument } from './plan.ts';

const SLIP_IDS = Object.keys(CALIBRATION_SLIPS);

const EXPLAINED = `
A session rests on the newest calibration of its day or before, so earlier
sessions keep theirs: the command says which, and which rest on the new one.
On a terminal, what is not given is asked for; otherwise the day is today and
the months are those of the newest calibration. Uncertainties are expanded, by
k = 2 unless --coverage-factor says otherwise.

Slips are asked about on a terminal, and otherwise refused:
${slipHelp(CALIBRATION_SLIPS)}

Example:
  npm run ledger -- recalibrate bench-thermopile --date 2026-11-20 \\
    --valid-months 24 --relative 4 --reference "Lamp standard, in house"

Exit code:
  0  written, or shown (--dry-run)
  ${PROBLEM_CODE}  nothing was written: a problem, a slip nobody decided on, or a no`;

interface Options extends CalibrationFlags {
  quantity?: string;
  accept?: string[];
  yes?: boolean;
  dryRun?: boolean;
  json?: boolean;
}

/** Files that change under a command's hands over and over are somebody else's work. */
const MOST_TURNS = 5;

/** `recalibrate`: a new dated calibration of an instrument, and which sessions it is of. Exit codes as in its help. */
export function recalibrateCommand(terminal?: Terminal): Command {
  return new Command('recalibrate')
    .description('Add a dated calibration to an instrument, and tell which sessions it concerns.')
    .argument('<instrument>', 'the name of its file, without the ending')
    .option('--quantity <kind>', 'which of its quantities, where it reads several')
    .option('--date <day>', 'day of the calibration, YYYY-MM-DD')
    .option('--valid-months <months>', 'months until the next one is due')
    .option('--relative <percent>', 'expanded uncertainty, in % of the reading')
    .option('--absolute <amount>', 'expanded uncertainty, in the unit of the display')
    .option('--coverage-factor <k>', 'of the two; 2 unless given')
    .option('--reference <text>', 'against what, and by whom in general terms')
    .option('--accept <slips>', 'write in spite of these slips', slipNames('--accept', SLIP_IDS))
    .option('-y, --yes', 'write without asking')
    .option('-n, --dry-run', 'show what would be written')
    .option('--json', 'print it as JSON, and ask nothing')
    .addHelpText('after', EXPLAINED)
    .action((id: string, options: Options) =>
      carryOut(
        async (own, tell) => {
          const done = await recalibrate(id, options, own);
          if (done) tell(done);
          return done !== undefined;
        },
        { terminal, json: options.json },
      ),
    );
}

/** What was done, or would be; undefined where it stopped, which has been said. */
async function recalibrate(id: string, options: Options, terminal: Terminal): Promise<object | undefined> {
  const folder = contentFolder();
  const today = todayFrom(process.env, new Date());
  const given = { accept: options.accept ?? [], skip: [] };
  const answers = new Map<string, Answer>();
  const read = await calibrationOf(id, options, folder, today, terminal);
  if (!read) return undefined;
  let shown = '';
  let agreed = options.yes === true;
  for (let turn = 1; ; turn++) {
    const instrument = readInstrument(folder, id, options.quantity);
    const plan = planCalibration(folder, instrument, read);
    const text = calibrationText(instrument, read, plan);
    if (text !== shown) {
      terminal.say(text);
      agreed = options.yes === true;
    }
    shown = text;
    const open = await decide(calibrationSlips(read, plan, instrument.quantity.unit), given, answers, terminal);
    if (open.length > 0) {
      if (!terminal.ask) terminal.complain(`\n${slipList(open, CALIBRATION_SLIPS)}\n`);
      terminal.complain('Nothing was written.');
      return undefined;
    }
    if (options.dryRun) {
      terminal.say('\nNothing was written (--dry-run).');
      return summary(id, read, plan, false);
    }
    if (!agreed && !(await agreedTo(`Add it to ${plan.change.path}?`, terminal))) return undefined;
    agreed = true;
    try {
      await writeSafely(folder, { files: [plan.change] }, today);
      terminal.say(`\nAdded to ${plan.change.path}.\nNext: npm run check, then npm run build.`);
      return summary(id, read, plan, true);
    } catch (error) {
      if (!(error instanceof ChangedMeanwhile) || turn === MOST_TURNS) throw error;
    }
  }
}

/** The calibration that flags and answers tell of; undefined where something is wrong with it, which has been said. */
async function calibrationOf(
  id: string,
  options: Options,
  folder: string,
  today: string,
  { ask, complain }: Terminal,
): Promise<NewCalibration | undefined> {
  const { quantity } = readInstrument(folder, id, options.quantity);
  const newest = quantity.calibrations.toSorted((a, b) => b.date.localeCompare(a.date))[0];
  const months = newest ? String(newest.validMonths) : '';
  const flags: CalibrationFlags = { ...options };
  if (ask) {
    flags.date ??= (await ask(`Day of the calibration [${today}]: `)) || today;
    if (flags.relative === undefined && flags.absolute === undefined) {
      flags.relative = await ask('Expanded uncertainty relative to the reading, in %: ');
      flags.absolute = await ask(`Expanded absolute uncertainty, in ${quantity.unit} [none]: `);
    }
    flags.validMonths ??= (await ask(`Months until the next one is due${months && ` [${months}]`}: `)) || months;
    flags.reference ??= await ask('Against what, and by whom in general terms: ');
  }
  flags.validMonths ??= months;
  const { calibration, problems } = readCalibration(flags, { today, unit: quantity.unit });
  if (!calibration) complain(problemList(problems, 'nothing was written'));
  return calibration;
}

function summary(instrument: string, calibration: NewCalibration, plan: CalibrationPlan, written: boolean): object {
  const { before, concerned, kept } = plan;
  return { instrument, file: plan.change.path, before: before ?? null, calibration, concerned, kept, written };
}
