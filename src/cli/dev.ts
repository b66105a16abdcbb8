import { type Command, InvalidArgumentError } from 'commander';
import { astroSettings } from '../build/astro-settings.ts';
import { ledgerCommand } from './command.ts';
import { PROBLEM_CODE } from './exit-codes.ts';

interface Flags {
  port?: number;
  host?: string | true;
  open?: true;
}

/** `dev`: serves the guide while the tester writes, drafts included. */
export function devCommand(): Command {
  return withServerFlags(
    ledgerCommand('dev', {
      does: 'Serve the guide while you write, drafts included, and follow your changes.',
      more: 'Problems and what is odd are printed; a page tells of the problems that it has.\nSearch is there after a build only. Stop it with Ctrl-C.',
      examples: [
        ['dev', 'serve at http://localhost:4321/, or the next port that is free'],
        ['dev --port 8080', 'serve at another port'],
      ],
      exits: { 0: 'it was stopped', [PROBLEM_CODE]: 'it could not start' },
    }),
  ).action(async (flags: Flags) => {
    process.env.NODE_ENV ??= 'development';
    const { dev } = await import('astro');
    await dev({ ...astroSettings(), server: flags });
  });
}

/** Where to listen, for the two commands that serve. */
export function withServerFlags(command: Command): Command {
  return command
    .option('--port <number>', 'port to serve at', portOf)
    .option('--host [address]', 'serve other machines too, at this address or at all')
    .option('--open', 'open the guide in the browser');
}

function portOf(text: string): number {
  const port = Number(text);
  if (!Number.isInteger(port) || port < 1 || port > 65535) {
    throw new InvalidArgumentError('Wanted a whole number from 1 to 65535.');
  }
  return port;
}
