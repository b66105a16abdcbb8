import { type Command, Option } from 'commander';
import { editContent } from '../../content/edit/edit-content.ts';
import { ContentError } from '../../content/read/problem-list.ts';
import { readContent } from '../../content/read/read-content.ts';
import { UsageError } from '../../content/read/usage-error.ts';
import { sessionSchema } from '../../content/schema/session.ts';
import { nearest } from '../../content/schema/suggest.ts';
import { contentFolder } from '../../ledger/load-ledger.ts';
import { todayFrom } from '../../ledger/today.ts';
import { agreedTo } from '../ask/agree.ts';
import { carryOut } from '../ask/carry-out.ts';
import type { Terminal } from '../ask/terminal.ts';
import { wrapped } from '../ask/wrap.ts';
import { ledgerCommand } from '../command.ts';
import { PROBLEM_CODE } from '../exit-codes.ts';
import { refuseProblems } from '../files/check-changes.ts';
import { panelFiles } from '../files/panel-files.ts';
import { writeSafely } from '../files/write-safely.ts';
import { type FoundPoint, gridRows, gridSize, ORDERS, type Order, type Proposal, proposed } from './proposal.ts';

interface Options {
  session?: string;
  order: Order;
  grid?: ReturnType<typeof gridSize>;
  yes?: boolean;
  dryRun?: boolean;
  json?: boolean;
}

/** `plateaus`: the points of a grid, found in a log. Exit codes as in its help. */
export function plateausCommand(terminal?: Terminal): Command {
  return ledgerCommand('plateaus', {
    does: 'Find the points of a grid in a log that was taken in one go, and write them on agreement.',
    more: `
The log is the one that the session names under sweeps with grid: true. Points are stretches of two seconds or more in
which the sensor was held still. They are shown with the places that they would get. Where the session has a typed grid,
both stand side by side, and nothing is written.`,
    examples: [
      ['plateaus ruddlestone-r150', 'shows the points of its newest log'],
      ['plateaus ruddlestone-r150 --grid 3x5 --order rows --yes', 'writes them, as for a script'],
    ],
    exits: {
      0: 'written, or shown',
      [PROBLEM_CODE]: 'nothing was written: the points can’t be told, a problem, or a no',
    },
  })
    .argument('<panel>', 'the panel’s folder')
    .option('--session <day>', 'YYYY-MM-DD; the newest with such a log, where it is left out')
    .addOption(
      new Option(
        '--order <which>',
        'the sensor’s way: ' +
          Object.entries(ORDERS)
            .map(([id, what]) => `${id}, ${what}`)
            .join('; '),
      )
        .choices(Object.keys(ORDERS))
        .default('route'),
    )
    .option('--grid <size>', 'points across and down, where none are typed yet', gridSize)
    .option('-y, --yes', 'write without asking')
    .option('-n, --dry-run', 'show what would be written')
    .option('--json', 'print it as JSON, and ask nothing')
    .action((panel: string, options: Options) =>
      carryOut((own, tell) => run(panel, options, own, tell), { terminal, json: options.json }),
    );
}

async function run(slug: string, options: Options, terminal: Terminal, tell: (done: object) => void): Promise<boolean> {
  const folder = contentFolder();
  const today = todayFrom(process.env, new Date());
  const { content, problems } = readContent({ folder, today });
  if (!content) throw new ContentError(problems);
  if (!content.panels.has(slug)) {
    const near = nearest(slug, [...content.panels.keys()]);
    throw new UsageError(`There is no panel "${slug}"${near ? `; did you mean ${near}?` : '.'}`);
  }
  const proposal = proposed(content, { slug, date: options.session, order: options.order, size: options.grid });
  terminal.say(shown(proposal));
  const done = await written(proposal, options, { folder, today, terminal });
  tell({ ...jsonOf(proposal), written: done === 'written' });
  return done !== 'refused';
}

type Done = 'written' | 'shown' | 'refused';

async function written(
  proposal: Proposal,
  { yes, dryRun }: Options,
  { folder, today, terminal }: { folder: string; today: string; terminal: Terminal },
): Promise<Done> {
  const { say } = terminal;
  if (!proposal.points) return 'refused';
  if (proposal.isTyped) {
    say(
      wrapped(
        '\nThe session has a typed grid; nothing was written. Take it out of the file to have these in its place.',
      ),
    );
    return 'shown';
  }
  const panel = panelFiles(folder).find((it) => it.slug === proposal.slug);
  if (!panel) return 'refused';
  const after = editContent(panel.text, panel.path, [
    {
      do: 'add',
      field: ['sessions', proposal.index, 'grid'],
      value: { rows: gridRows(proposal) },
      order: Object.keys(sessionSchema.shape),
    },
  ]);
  const changes = { files: [{ path: panel.path, before: panel.text, after }] };
  refuseProblems(folder, changes, today);
  if (dryRun) {
    say('\nNothing was written (--dry-run).');
    return 'shown';
  }
  if (!yes && !(await agreedTo('Write them as the grid of the session?', terminal))) return 'refused';
  await writeSafely(folder, changes, today);
  say(`\nWrote ${panel.path}. Next: npm run check.`);
  return 'written';
}

function shown({ file, date, columns, rows, search, points }: Proposal): string {
  const head = `${file}, session ${date}: a grid of ${columns} across and ${rows} down.`;
  if (!points) {
    const list = search.found.map((it, i) => `  ${i + 1}`.padStart(4) + line(it));
    return [
      wrapped(`${head} Held still ${search.found.length} times, which can’t be told for ${columns * rows} points.`),
      ...list,
      wrapped(
        'Neighbours that read alike become one where the sensor was moved smoothly: cover it on the way, or hold each for longer.',
      ),
    ].join('\n');
  }
  const left = search.left.length === 0 ? '' : ` Left aside: ${search.left.length} shorter.`;
  return [
    wrapped(`${head}${left}`),
    '   no row column     from       to  mW/cm2  scatter   typed  differs',
    ...points.map(
      (it, i) =>
        `  ${String(i + 1).padStart(3)} ${String(it.row + 1).padStart(3)} ${String(it.column + 1).padStart(6)}${line(it)}${typed(it)}`,
    ),
  ].join('\n');
}

const line = ({ from, to, mean, deviation }: Pick<FoundPoint, 'from' | 'to' | 'mean' | 'deviation'>) =>
  `${`${from.toFixed(1)} s`.padStart(9)}${`${to.toFixed(1)} s`.padStart(9)}${mean.toFixed(2).padStart(8)}${deviation.toFixed(2).padStart(9)}`;

const typed = ({ typed: value, mean }: FoundPoint) =>
  value === undefined
    ? ''
    : `${value.toFixed(1).padStart(8)}${`${(100 * (mean / value - 1)).toFixed(1)} %`.replace('-', '−').padStart(9)}`;

function jsonOf({ slug, date, file, columns, rows, points, search, isTyped }: Proposal): object {
  return {
    ...{ panel: slug, session: date, file, columns, rows, typed: isTyped },
    points: points ?? null,
    found: search.found.length,
  };
}
