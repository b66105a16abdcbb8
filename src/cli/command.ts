import { Command, Help } from 'commander';
import { calledAs } from '../content/read/called-as.ts';

/** What the help of a command says of it. */
export interface About {
  /** What it does, in one sentence. */
  does: string;
  /** What else has to be known, in paragraphs; their lines are broken anew. */
  more?: string;
  /** What one types after the program's name, and what that does. */
  examples: ReadonlyArray<readonly [line: string, does: string]>;
  /** What each exit code means; a meaning may have several lines. */
  exits: Readonly<Record<number, string>>;
}

/** A command whose help has the shape that all have: what it does, its flags, more, examples, exit codes. */
export function ledgerCommand(name: string, { does, more, examples, exits }: About): Command {
  const parts = [
    ...(more ? more.trim().split('\n\n').map(paragraph) : []),
    `${examples.length > 1 ? 'Examples' : 'Example'}:\n${examples.map(([line, what]) => `  ${calledAs()}${line && ` ${line}`}\n      ${what}`).join('\n')}`,
    `Exit code:\n${Object.entries(exits)
      .map(([code, means]) => `  ${code}  ${means.replaceAll('\n', '\n     ')}`)
      .join('\n')}`,
  ];
  return new Command(name).description(does).addHelpText('after', `\n${parts.join('\n\n')}`);
}

const COLUMNS = 80;
const paragraph = (text: string) => new Help().boxWrap(text.replace(/\s+/g, ' '), COLUMNS);
