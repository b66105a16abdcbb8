import type { Command } from 'commander';
import { readBench } from '../../content/read/read-bench.ts';
import { makerSchema } from '../../content/schema/maker.ts';
import { newMakerText } from '../../content/templates/new-maker.ts';
import { contentFolder } from '../../ledger/load-ledger.ts';
import { ledgerCommand } from '../command.ts';
import { PROBLEM_CODE } from '../exit-codes.ts';
import { freeName } from './names.ts';
import { placed, setting, several, written } from './settings.ts';
import { type WriteFlags, writeNew } from './write-new.ts';

interface Flags extends WriteFlags {
  country?: string;
  website?: string;
  warrantyYears?: string;
  returns?: string;
  note?: string;
  set?: readonly string[];
}

/** `new maker NAME`: a file with every field that a maker may have. */
export function newMakerCommand(): Command {
  return ledgerCommand('maker', {
    does: 'Begin a maker: a file with every field that there is, each explained.',
    more: 'A maker’s name is all that is needed.',
    examples: [
      ['new maker Kelpwright', 'write content/makers/kelpwright.yaml'],
      ['new maker Kelpwright --country Ireland --warranty-years 3', 'with what is known of it'],
    ],
    exits: { 0: 'written, or printed', [PROBLEM_CODE]: 'the name is taken, or a value can’t be: nothing was written' },
  })
    .argument('<name>', 'name of the maker')
    .option('--country <name>', 'where it is registered')
    .option('--website <address>', 'its site')
    .option('--warranty-years <number>', 'warranty it promises')
    .option('--returns <terms>', 'its terms of return')
    .option('--note <text>', 'anything else, such as a connection to the tester')
    .option('--set <field=value>', 'any other field; may stand several times', several)
    .option('--print', 'print the file and write nothing')
    .option('--json', 'tell file and gaps as JSON')
    .action((name: string, { country, website, warrantyYears, returns, note, set = [], ...flags }: Flags) => {
      const slug = freeName(name, readBench(contentFolder()).taken.makers, 'a maker');
      const values = placed({
        name: name.trim(),
        ...{ country, website, returns, note },
        warrantyYears: warrantyYears && written(warrantyYears),
        ...Object.fromEntries(set.map(setting)),
      });
      const text = newMakerText(values);
      writeNew(
        {
          path: `makers/${slug}.yaml`,
          text,
          given: values,
          schema: makerSchema,
          said: [['named', `in panels as maker: ${slug}`]],
        },
        flags,
      );
    });
}
