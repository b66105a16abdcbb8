/** What every command's help has, and what happens where a command or a flag is misspelt. */
import type { Command } from 'commander';
import { describe, expect, test } from 'vitest';
import { ledgerProgram } from '../../src/cli/program.ts';

const commands = (of: Command, path: string[] = []): Array<[string, Command]> =>
  of.commands.flatMap((it) => {
    const name = [...path, it.name()];
    return it.commands.length > 0 ? commands(it, name) : [[name.join(' '), it] as [string, Command]];
  });

/** The help as it is printed, with what stands after it. */
function helpOf(command: Command): string {
  let text = '';
  command.configureOutput({ writeOut: (it) => (text += it) }).outputHelp();
  return text;
}

describe.each(commands(await ledgerProgram()))('the help of %s', (name, command) => {
  const help = helpOf(command);

  test('has a description, examples of how to call it, and exit codes', () => {
    expect(command.description()).toMatch(/^[A-Z].*\.$/s);
    expect(help).toMatch(new RegExp(`\\nExamples?:\\n(.*\\n)*? {2}npm run ledger -- ${name}`));
    expect(help).toMatch(/\nExit code:\n {2}0 {2}\S.*\n( {5}.*\n)* {2}1 {2}\S/);
  });

  test('fits 80 columns, and has no colours', () => {
    expect(help.split('\n').filter((it) => it.length > 80)).toEqual([]);
    expect(help).not.toContain('\u001b');
  });
});

test('a command is found by its own name, and is alone then', async () => {
  for (const it of (await ledgerProgram()).commands) {
    const { commands } = await ledgerProgram(it.name());
    expect(commands.map((own) => own.name())).toEqual([it.name()]);
  }
});

test('the help of check says what it ends with where something is impossible', async () => {
  const check = (await ledgerProgram('check')).commands[0] as Command;
  expect(helpOf(check)).toMatch(/Exit code:\n {2}0 {2}.*\n {2}1 {2}.*problem\n {2}2 {2}no problem, but/);
});

test.each([
  [['chekc'], "unknown command 'chekc'", 'Did you mean check?'],
  [['check', '--jsn'], "unknown option '--jsn'", 'Did you mean --json?'],
  [['start', 'x', '--publsher', 'A'], "unknown option '--publsher'", 'Did you mean --publisher?'],
  [['upgrad'], "unknown command 'upgrad'", 'Did you mean upgrade?'],
])('%s gets the nearest one', async (args, what, hint) => {
  const program = await ledgerProgram();
  let said = '';
  for (const it of [program, ...commands(program).map(([, it]) => it)])
    it.exitOverride().configureOutput({ writeErr: (text) => (said += text) });
  await expect(program.parseAsync(args, { from: 'user' })).rejects.toThrow(what);
  expect(said).toContain(hint);
});
