import { createInterface } from 'node:readline/promises';

/** Whom a command talks to. */
export interface Terminal {
  say(text: string): void;
  /** What is wrong, on the error channel. */
  complain(text: string): void;
  /** Puts a question and waits for a line; undefined where nobody is there to answer. An end of input is no answer. */
  ask: ((question: string) => Promise<string>) | undefined;
}

/** The terminal that this process runs in; without one at both ends, or with `input` taken, nobody is asked. */
export function processTerminal({ isInputTaken = false } = {}): Terminal {
  const isAsked = !isInputTaken && process.stdin.isTTY && process.stdout.isTTY;
  return {
    say: (text) => console.log(text),
    complain: (text) => console.error(text),
    ask: isAsked ? askOnce : undefined,
  };
}

async function askOnce(question: string): Promise<string> {
  const lines = createInterface({ input: process.stdin, output: process.stdout });
  const ended = new Promise<undefined>((resolve) => lines.once('close', () => resolve(undefined)));
  try {
    const answer = await Promise.race([lines.question(question), ended]);
    // The cursor is still behind the question.
    if (answer === undefined) console.log();
    return answer?.trim() ?? '';
  } finally {
    lines.close();
  }
}
