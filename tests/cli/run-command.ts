import type { Command } from 'commander';
import type { Terminal } from '../../src/cli/ask/terminal.ts';
import { UsageError } from '../../src/content/read/usage-error.ts';

/** What a command said, and how it ended. */
export interface Ran {
  said: string;
  complained: string;
  code: number;
}

/**
 * Runs a command in this process on a content folder, as the command line would.
 *
 * @param answer to whatever it asks; undefined where nobody is there to answer
 */
export async function runCommand(
  make: (terminal: Terminal) => Command,
  folder: string,
  args: readonly string[],
  { answer, today }: { answer?: string; today: string },
): Promise<Ran> {
  const said: string[] = [];
  const complained: string[] = [];
  const kept = { content: process.env.LEDGER_CONTENT, today: process.env.LEDGER_TODAY, code: process.exitCode };
  process.env.LEDGER_CONTENT = folder;
  process.env.LEDGER_TODAY = today;
  process.exitCode = 0;
  try {
    const command = make({
      say: (text) => said.push(text),
      complain: (text) => complained.push(text),
      ask: answer === undefined ? undefined : () => Promise.resolve(answer),
    });
    command.exitOverride().configureOutput({ writeErr: (text) => complained.push(text) });
    await command.parseAsync(args, { from: 'user' });
  } catch (error) {
    if (!(error instanceof UsageError)) throw error;
    complained.push(error.message);
    process.exitCode = 1;
  }
  const code = Number(process.exitCode ?? 0);
  restore('LEDGER_CONTENT', kept.content);
  restore('LEDGER_TODAY', kept.today);
  process.exitCode = kept.code;
  return { said: said.join('\n'), complained: complained.join('\n'), code };
}

function restore(name: string, value: string | undefined): void {
  if (value === undefined) delete process.env[name];
  else process.env[name] = value;
}
