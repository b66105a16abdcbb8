import { join } from 'node:path';
import type { Command } from 'commander';
import { FILE_READERS } from '../../content/read/files/readers.ts';
import { counted } from '../../content/read/problem-list.ts';
import { contentFolder } from '../../ledger/load-ledger.ts';
import { todayFrom } from '../../ledger/today.ts';
import { sizeText } from '../../words/file-words.ts';
import { agreedTo } from '../ask/agree.ts';
import { carryOut } from '../ask/carry-out.ts';
import type { Terminal } from '../ask/terminal.ts';
import { wrapped } from '../ask/wrap.ts';
import { ledgerCommand } from '../command.ts';
import { PROBLEM_CODE } from '../exit-codes.ts';
import { refuseProblems } from '../files/check-changes.ts';
import { panelFiles } from '../files/panel-files.ts';
import { writeSafely } from '../files/write-safely.ts';
import { entryFor, type SetFields, setField } from './entry.ts';
import { type Import, nameFor, planImports } from './plan.ts';
import { keyOf, panelFor, placeFor, type Said, sessionFor } from './target.ts';
import { understood } from './understood.ts';

interface Options extends Said {
  kind?: string;
  set?: SetFields;
  yes?: boolean;
  dryRun?: boolean;
  json?: boolean;
}

/** `import`: files of meters, put beside a panel and into its session. Exit codes as in its help. */
export function importCommand(terminal?: Terminal): Command {
  return ledgerCommand('import', {
    does: 'Recognise files from the bench, put them beside a panel and name them in its session.',
    more: `
A file is told by what is in it, and shown as it was understood. What can't be told is asked for on a terminal: the
panel, the session, where in it the file belongs, and what else is to be said of it. Elsewhere the flags say it.

Each file is copied beside the panel's index, never over another one, and every other byte of the panel's file stays.
What the check refuses is not written.

Kinds (--kind): ${FILE_READERS.map((it) => `${it.kind}, ${it.called}`).join('; ')}.`,
    examples: [
      ['import ~/meter/r150-red.csv', 'asks what it can’t tell'],
      ['import red.csv --panel ostrel-vagg --as spectra.red --yes', 'asks nothing, as for a script'],
      ['import notes.pdf --kind other --panel ostrel-vagg', 'a file that is published as it is'],
    ],
    exits: {
      0: 'written, or shown (--dry-run)',
      [PROBLEM_CODE]: 'nothing was written: a file that is none of these, a problem, or a no',
    },
  })
    .argument('<files...>', 'where they lie now')
    .option('--panel <name>', 'the panel’s folder')
    .option('--session <day>', 'YYYY-MM-DD')
    .option('--as <place>', 'where in the session: spectra.red, sweeps, soundClips.on, …')
    .option('--kind <kind>', 'what it is, where that can’t be told')
    .option('--set <field=value>', 'a field beside its name; may be given again', setField)
    .option('-y, --yes', 'write without asking')
    .option('-n, --dry-run', 'show what would be written')
    .option('--json', 'print it as JSON, and ask nothing')
    .action((files: string[], options: Options) =>
      carryOut(
        async (own, tell) => {
          const done = await importFiles(files, options, own);
          if (done) tell(done);
          return done !== undefined;
        },
        { terminal, json: options.json },
      ),
    );
}

/** What was done, or would be; undefined where nothing was written though it was asked for, which has been said. */
async function importFiles(
  files: readonly string[],
  options: Options,
  terminal: Terminal,
): Promise<object | undefined> {
  const { say } = terminal;
  const folder = contentFolder();
  const today = todayFrom(process.env, new Date());
  const imports: Import[] = [];
  for (const path of files) imports.push(await importOf(path, options, { folder, imports, terminal }));
  const changes = { files: planImports(imports) };
  refuseProblems(folder, changes, today);
  say('');
  for (const it of imports) say(planText(it));
  const done = (isWritten: boolean) => ({ imports: imports.map((it) => summary(it)), written: isWritten });
  if (options.dryRun) {
    say('\nNothing was written (--dry-run).');
    return done(false);
  }
  const question = imports.length === 1 ? 'Put it there?' : `Put all ${imports.length} there?`;
  if (!options.yes && !(await agreedTo(question, terminal))) return undefined;
  await writeSafely(folder, changes, today);
  say(
    `\n${wrapped(`Wrote ${counted(changes.files.length, 'file')}. Next: npm run check, which tells what is odd about them.`)}`,
  );
  return done(true);
}

/** Goes through what has to be known of one file. */
async function importOf(
  path: string,
  options: Options,
  { folder, imports, terminal }: { folder: string; imports: readonly Import[]; terminal: Terminal },
): Promise<Import> {
  const file = understood(path, options.kind);
  terminal.say(wrapped(`${file.name} (${sizeText(file.bytes)}): ${file.recognised.understood}.`));
  for (const it of file.others) terminal.say(wrapped(`less likely ${it.recognised.understood} (--kind ${it.kind})`, 2));
  const panel = await panelFor(file, options, panelFiles(folder), folder, terminal);
  const session = await sessionFor(file, options, panel, terminal);
  const place = await placeFor(file, options, session, terminal);
  const taken = new Set(imports.filter((it) => it.panel.slug === panel.slug).map((it) => it.name));
  const { name, isThere } = nameFor(file, panel, folder, taken);
  const entry = await entryFor(file, name, place, options.set ?? new Map(), terminal);
  return { file, panel, session, place, name, isThere, entry };
}

function planText({ file, panel, session, place, name, isThere, entry }: Import): string {
  const where = isThere ? `stays where it lies` : `goes to ${join(panel.path, '..', name)}`;
  const renamed = !isThere && name !== file.name ? ', since another file has its name' : '';
  const said = typeof entry === 'string' ? entry : JSON.stringify(entry);
  return [
    wrapped(`${file.name} ${where}${renamed}`),
    wrapped(`session ${session.date} of ${panel.name}: ${keyOf(place)}: ${said}`, 2),
  ].join('\n');
}

function summary({ file, panel, session, place, name, isThere, entry }: Import): object {
  return {
    file: file.path,
    kind: file.reader.kind,
    confidence: file.recognised.confidence,
    understood: file.recognised.understood,
    sha256: file.sha256,
    panel: panel.slug,
    session: session.date,
    field: keyOf(place),
    entry,
    copied_as: isThere ? null : name,
  };
}
