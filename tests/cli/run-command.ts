/** Runs a command in this process, as a tester at a terminal or without one. */
import type { Command } from 'commander';
import type { Terminal } from '../../src/cli/ask/terminal.ts';
import { TODAY } from '../support/content-folder.ts';

export interface Ran {
  code: number;
  out: string;
  error: string;
  /** Questions that were put. */
  asked: string[];
}

/**
 * @param make gives the command that talks to a terminal
 * @param answers what a tester answers, one after another; without it there is nobody to ask
 */
export async function runCommand(
  make: (terminal: Terminal) => Command,
  args: readonly string[],
  folder: string,
  answers?: readonly string[],
): Promise<Ran> {
  const ran: Ran = { code: 0, out: '', error: '', asked: [] };
  const left = [...(answers ?? [])];
  const terminal: Terminal = {
    say: (text) => {
      ran.out += `${text}\n`;
    },
    complain: (text) => {
      ran.error += `${text}\n`;
    },
    ask:
      answers &&
      (async (question) => {
        ran.asked.push(question.trim());
        return left.shift() ?? '';
      }),
  };
  const before = { ...process.env };
  Object.assign(process.env, { LEDGER_CONTENT: folder, LEDGER_TODAY: TODAY });
  process.exitCode = 0;
  try {
    await make(terminal)
      .exitOverride()
      .configureOutput({
        writeOut: (text) => {
          ran.out += text;
        },
        writeErr: (text) => {
          ran.error += text;
        },
      })
      .parseAsync(args, { from: 'user' });
  } catch (error) {
    ran.error += `${(error as Error).message}\n`;
    process.exitCode = 1;
  } finally {
    ran.code = Number(process.exitCode);
    process.exitCode = 0;
    restoreEnvironment(before);
  }
  return ran;
}

/** Puts the environment right in its place: whoever stubs it holds on to the object that it was at first. */
export function restoreEnvironment(before: NodeJS.ProcessEnv): void {
  for (const name of Object.keys(process.env)) if (!(name in before)) delete process.env[name];
  Object.assign(process.env, before);
}
