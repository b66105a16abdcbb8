import { ContentError, problemList } from '../../content/read/problem-list.ts';
import { PROBLEM_CODE } from '../exit-codes.ts';
import { processTerminal, type Terminal } from './terminal.ts';

/**
 * What a command does.
 *
 * @param terminal that says nothing and asks nobody where the command answers in JSON
 * @param tell prints what was done as JSON, where that is asked for
 * @returns false where it was not done though it was asked for, which has been said
 */
export type Work = (terminal: Terminal, tell: (done: object) => void) => Promise<boolean>;

interface Setting {
  /** Whom the command talks to; left out: the terminal of this process. */
  terminal: Terminal | undefined;
  /** The command answers in JSON. */
  json?: boolean | undefined;
  /** What problems in the content have led to. */
  undone?: string;
}

/** Does what a command does, tells the problems that stand against it, and sets the exit code. */
export async function carryOut(
  work: Work,
  { terminal, json = false, undone = 'nothing was written' }: Setting,
): Promise<void> {
  const own = terminal ?? processTerminal({ isInputTaken: json });
  const quiet = json ? { ...own, say: () => {}, ask: undefined } : own;
  try {
    const isDone = await work(quiet, (done) => json && own.say(JSON.stringify(done, null, 2)));
    if (!isDone) process.exitCode = PROBLEM_CODE;
  } catch (error) {
    if (!(error instanceof ContentError)) throw error;
    own.complain(problemList(error.problems, undone));
    process.exitCode = PROBLEM_CODE;
  }
}
