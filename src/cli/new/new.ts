import type { Command } from 'commander';
import { ledgerCommand } from '../command.ts';
import { PROBLEM_CODE } from '../exit-codes.ts';
import { newInstrumentCommand } from './new-instrument.ts';
import { newMakerCommand } from './new-maker.ts';
import { newPanelCommand } from './new-panel.ts';

/** `new panel`, `new instrument`, `new maker`: the files that a tester begins with. */
export function newCommand(): Command {
  return ledgerCommand('new', {
    does: 'Begin a panel, an instrument or a maker: a file in which every field is explained.',
    examples: [
      ['new maker Kelpwright', 'a maker'],
      ['new panel "Kelpwright Plover" --price 229', 'a panel of that maker'],
      ['new panel --help', 'what can be said beforehand'],
    ],
    exits: { 0: 'written, or printed', [PROBLEM_CODE]: 'nothing was written' },
  })
    .addCommand(newPanelCommand())
    .addCommand(newInstrumentCommand())
    .addCommand(newMakerCommand());
}
