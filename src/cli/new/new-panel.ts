import type { Command } from 'commander';
import { calledAs } from '../../content/read/called-as.ts';
import { type Bench, readBench } from '../../content/read/read-bench.ts';
import { UsageError } from '../../content/read/usage-error.ts';
import { panelSchema } from '../../content/schema/panel.ts';
import { nearest } from '../../content/schema/suggest.ts';
import { slugOf } from '../../content/templates/file-name.ts';
import { newPanelText } from '../../content/templates/new-panel.ts';
import { contentFolder } from '../../ledger/load-ledger.ts';
import { todayFrom } from '../../ledger/today.ts';
import { ledgerCommand } from '../command.ts';
import { PROBLEM_CODE } from '../exit-codes.ts';
import { chosenInstruments } from './bench-instruments.ts';
import { freeName } from './names.ts';
import { placed, setting, several, written } from './settings.ts';
import { type WriteFlags, writeNew } from './write-new.ts';

interface Flags extends WriteFlags {
  maker?: string;
  model?: string;
  list?: string;
  price?: string;
  currency?: string;
  priceDate?: string;
  obtained?: string;
  paidBy?: string;
  session?: string;
  distance?: string;
  methodVersion?: string;
  grid?: string;
  instrument?: readonly string[];
  set?: readonly string[];
}

/** Fields that are lists of blocks: a path through them means the first entry. */
const LISTS = ['sessions', 'prices', 'claims.wavelengths', 'leds.groups', 'photos'];

/** Points of the grid that is the habit. */
const HABIT = '3x3';

/** `new panel NAME`: a draft with every field that a panel may have. */
export function newPanelCommand(): Command {
  return ledgerCommand('panel', {
    does: 'Begin a panel: a draft with every field that there is, each explained.',
    more: `NAME is the maker’s name and the model’s, as in "Kelpwright Plover", or the
folder’s own, as in kelpwright-plover. What is not given is left as a gap,
marked TODO; check lists the gaps, and they are no problem while the panel is a
draft. The session names, for each quantity, the instrument that was calibrated
last and still holds, and has a gap for each of its readings.`,
    examples: [
      ['new panel "Kelpwright Plover" --session 2026-11-21', 'write content/panels/kelpwright-plover/index.md'],
      ['new panel kelpwright-plover --print', 'print it instead'],
    ],
    exits: { 0: 'written, or printed', [PROBLEM_CODE]: 'the name is taken, or a value can’t be: nothing was written' },
  })
    .argument('<name>', 'maker and model, or the folder’s name')
    .option('--maker <id>', 'its maker: a file in content/makers, without the ending')
    .option('--model <name>', 'model name')
    .option('--price <number>', 'what a buyer really pays')
    .option('--list <number>', 'list price')
    .option('--currency <code>', 'currency of the two; the guide’s where left out')
    .option('--price-date <day>', 'day of price and claims; today where left out')
    .option('--obtained <how>', 'bought, lent or given')
    .option('--paid-by <whom>', 'by whose money')
    .option('--session <day>', 'day of the bench session')
    .option('--distance <length>', 'distance of the readings; the guide’s reference distance where left out')
    .option('--method-version <number>', 'version of the bench procedure; the guide’s where left out')
    .option('--grid <columns x rows>', 'points of the grid', HABIT)
    .option(
      '--instrument <kind=id>',
      'another instrument than the one calibrated last; may stand several times',
      several,
    )
    .option('--set <field=value>', 'any other field, such as "claims.power=110 W"; may stand several times', several)
    .option('--print', 'print the file and write nothing')
    .option('--json', 'tell file and gaps as JSON')
    .action(newPanel);
}

function newPanel(name: string, flags: Flags): void {
  const bench = readBench(contentFolder());
  const today = todayFrom(process.env, new Date());
  const { slug, maker, model } = named(name, flags, bench);
  const { chosen, lapsed } = chosenInstruments(bench, flags.session ?? today, flags.instrument ?? []);
  const values = placed(
    {
      maker,
      model,
      'obtained.how': flags.obtained,
      'obtained.paidBy': flags.paidBy,
      // Whoever begins the file has the maker's page before them.
      'claims.date': flags.priceDate ?? today,
      'prices.date': flags.priceDate ?? today,
      'prices.list': flags.list && written(flags.list),
      'prices.paid': flags.price && written(flags.price),
      'prices.currency': flags.currency ?? bench.guide?.currency,
      ...Object.fromEntries((flags.set ?? []).map(setting)),
    },
    LISTS,
  );
  const text = newPanelText({
    values,
    session: {
      date: flags.session,
      methodVersion: flags.methodVersion ? written(flags.methodVersion) : (bench.guide?.methodVersion ?? 1),
      distance: flags.distance ? written(flags.distance) : (bench.guide?.referenceDistance.written ?? '6 in'),
      instruments: chosen,
      grid: gridOf(flags.grid ?? HABIT),
    },
  });
  const used = Object.entries(chosen).map(([kind, id]) => `${kind} ${id}`);
  writeNew(
    {
      path: `panels/${slug}/index.md`,
      text,
      given: values,
      schema: panelSchema,
      said: [
        ['maker', maker ?? `still open; known: ${[...bench.taken.makers].toSorted().join(', ') || 'none yet'}`],
        ['instruments', used.join(', ') || 'none: begin one with new instrument'],
        ...(lapsed.length > 0 ? [['ran out', `no calibration holds for: ${lapsed.join(', ')}`] as const] : []),
      ],
      next: [['then', `write status: published, and run ${calledAs()} build`]],
    },
    flags,
  );
}

/** Folder, maker and model, of what was said and of what can be told from the name. */
function named(name: string, flags: Flags, bench: Bench): { slug: string; maker?: string; model?: string } {
  const makers = [...bench.taken.makers];
  if (flags.maker !== undefined && !makers.includes(flags.maker)) {
    const near = nearest(flags.maker, makers);
    const next = near ? `Did you mean ${near}?` : `Begin it with: ${calledAs()} new maker "${flags.maker}"`;
    throw new UsageError(
      `--maker "${flags.maker}"; wanted one of: ${makers.join(', ') || 'there is none yet'}\n${next}`,
    );
  }
  const slug = slugOf(name);
  const [told] = makers.filter((it) => slug.startsWith(`${it}-`)).toSorted((a, b) => b.length - a.length);
  const maker = flags.maker ?? told;
  const isOfMaker = maker !== undefined && slug.startsWith(`${maker}-`);
  const model = flags.model ?? (maker === undefined ? undefined : modelOf(name, isOfMaker ? maker : ''));
  const full = maker !== undefined && !isOfMaker ? `${maker}-${slug}` : slug;
  return {
    slug: freeName(full, bench.taken.panels, 'a panel'),
    ...(maker !== undefined && { maker }),
    ...(model !== undefined && { model }),
  };
}

/** The words of a name that are not its maker's; a folder's name gets its capital back. */
function modelOf(name: string, maker: string): string {
  const words = name.trim().split(name.includes(' ') ? /\s+/ : '-');
  const ofMaker = maker === '' ? 0 : words.findIndex((_, i) => slugOf(words.slice(0, i + 1).join(' ')) === maker) + 1;
  const model = words.slice(ofMaker).join(' ');
  return model.charAt(0).toUpperCase() + model.slice(1);
}

function gridOf(text: string): { columns: number; rows: number } {
  const [, columns = 0, rows = 0] = (/^(\d{1,2})\s*[x×]\s*(\d{1,2})$/.exec(text.trim()) ?? []).map(Number);
  if (columns > 0 && rows > 0) return { columns, rows };
  throw new UsageError(`--grid "${text}"; wanted columns and rows, such as 3x5`);
}
