import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { Command } from 'commander';
import { astroSettings } from '../build/astro-settings.ts';
import { siteFolder } from '../build/site-folder.ts';
import { calledAs } from '../content/read/called-as.ts';
import { UsageError } from '../content/read/usage-error.ts';
import { ledgerCommand } from './command.ts';
import { withServerFlags } from './dev.ts';
import { PROBLEM_CODE } from './exit-codes.ts';

/** `preview`: serves what the last build has written. */
export function previewCommand(): Command {
  return withServerFlags(
    ledgerCommand('preview', {
      does: 'Serve dist/, as the last build has written it.',
      more: 'Search works here, as it will when the guide is published. Stop it with Ctrl-C.',
      examples: [['preview --open', 'look at what was built in the browser']],
      exits: { 0: 'it was stopped', [PROBLEM_CODE]: 'it could not start; or nothing was built yet' },
    }),
  ).action(async (flags: { port?: number; host?: string | true; open?: true }) => {
    if (!existsSync(join(siteFolder(), 'index.html'))) {
      throw new UsageError(`Nothing is built in ${siteFolder()}/ yet: run \`${calledAs()} build\` first.`);
    }
    const { preview } = await import('astro');
    await preview({ ...astroSettings(), server: flags });
  });
}
