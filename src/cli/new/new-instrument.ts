import type { Command } from 'commander';
import { readBench } from '../../content/read/read-bench.ts';
import { UsageError } from '../../content/read/usage-error.ts';
import { INSTRUMENT_KINDS, type InstrumentKind, instrumentSchema } from '../../content/schema/instrument.ts';
import { nearest } from '../../content/schema/suggest.ts';
import { newInstrumentText } from '../../content/templates/new-instrument.ts';
import { contentFolder } from '../../ledger/load-ledger.ts';
import { ledgerCommand } from '../command.ts';
import { PROBLEM_CODE } from '../exit-codes.ts';
import { freeName } from './names.ts';
import { placed, setting, several, written } from './settings.ts';
import { type WriteFlags, writeNew } from './write-new.ts';

interface Flags extends WriteFlags {
  measures?: readonly string[];
  unit?: string;
  from?: string;
  to?: string;
  resolution?: string;
  response?: string;
  calibrated?: string;
  months?: string;
  relative?: string;
  absolute?: string;
  reference?: string;
  set?: readonly string[];
}

/** `new instrument NAME`: a file with every field that an instrument may have. */
export function newInstrumentCommand(): Command {
  return ledgerCommand('instrument', {
    does: 'Begin an instrument: a file with every field that there is, each explained.',
    more: `--measures says what it reads; several of them give a block for each quantity.
What is not given is left as a gap, marked TODO. Drafts may name an instrument
that has gaps, published panels may not.`,
    examples: [
      ['new instrument "Bench thermopile" --measures irradiance', 'write content/instruments/bench-thermopile.yaml'],
      ['new instrument Meter --measures magnetic --measures sound', 'a meter that reads two quantities'],
    ],
    exits: { 0: 'written, or printed', [PROBLEM_CODE]: 'the name is taken, or a value can’t be: nothing was written' },
  })
    .argument('<name>', 'what the bench calls it')
    .option('--measures <kind>', `what it reads: ${INSTRUMENT_KINDS.join(', ')}`, several)
    .option('--unit <unit>', 'unit of its display')
    .option('--from <number>', 'lowest reading')
    .option('--to <number>', 'highest reading')
    .option('--resolution <number>', 'smallest step of the display')
    .option('--response <text>', 'what it responds to')
    .option('--calibrated <day>', 'day of the calibration')
    .option('--months <number>', 'how long the calibration holds')
    .option('--relative <percent>', 'expanded uncertainty, % of the reading')
    .option('--absolute <number>', 'expanded uncertainty, in the unit of the display')
    .option('--reference <text>', 'against what it was calibrated')
    .option('--set <field=value>', 'any other field, such as repeatability=0.8; may stand several times', several)
    .option('--print', 'print the file and write nothing')
    .option('--json', 'tell file and gaps as JSON')
    .action(newInstrument);
}

function newInstrument(name: string, flags: Flags): void {
  const measures = [...new Set((flags.measures ?? []).map(kindOf))];
  const given = {
    unit: flags.unit,
    'range.from': flags.from && written(flags.from),
    'range.to': flags.to && written(flags.to),
    resolution: flags.resolution && written(flags.resolution),
  };
  const ofOne = Object.entries(given).find(([, value]) => value !== undefined)?.[0];
  if (measures.length > 1 && ofOne !== undefined) {
    const [first] = measures;
    throw new UsageError(
      `Which quantity has ${ofOne}? Say it by name: --set "quantities.${first}.${ofOne}=${String(given[ofOne as keyof typeof given])}"`,
    );
  }
  const values = placed(
    {
      ...given,
      response: flags.response,
      'calibrations.date': flags.calibrated,
      'calibrations.validMonths': flags.months && written(flags.months),
      'calibrations.relative': flags.relative && written(flags.relative),
      'calibrations.absolute': flags.absolute && written(flags.absolute),
      'calibrations.reference': flags.reference,
      ...Object.fromEntries((flags.set ?? []).map(setting)),
    },
    ['calibrations', ...INSTRUMENT_KINDS.map((kind) => `quantities.${kind}.calibrations`)],
  );
  const slug = freeName(name, readBench(contentFolder()).taken.instruments, 'an instrument');
  writeNew(
    {
      path: `instruments/${slug}.yaml`,
      text: newInstrumentText({ name: name.trim(), measures, values }),
      given: values,
      schema: instrumentSchema,
      said: [['named', `in sessions as ${measures.map((it) => `${it}: ${slug}`).join(', ') || slug}`]],
    },
    flags,
  );
}

function kindOf(text: string): InstrumentKind {
  const kind = INSTRUMENT_KINDS.find((it) => it === text);
  if (kind) return kind;
  const near = nearest(text, INSTRUMENT_KINDS);
  throw new UsageError(
    `--measures "${text}"; wanted one of: ${INSTRUMENT_KINDS.join(', ')}${near ? `\nDid you mean ${near}?` : ''}`,
  );
}
