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
  const ended = new Promise<string>((resolve) => lines.once('close', () => resolve('')));
  try {
    return (await Promise.race([lines.question(question), ended])).trim();
  } finally {
    lines.close();
  }
}

/** Asks for a yes; anything else is a no. */
export async function isAgreed(ask: NonNullable<Terminal['ask']>, question: string): Promise<boolean> {
  return /^y(es)?$/i.test(await ask(`${question} [y/N] `));
}
