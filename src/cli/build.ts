import { Command } from 'commander';
import { takeBuildLock } from '../build/build-lock.ts';
import { ensureWritable, outputFault } from '../build/output-fault.ts';
import { loadLedger } from '../ledger/load-ledger.ts';
import { ContentError } from '../ledger/problem-list.ts';

/** `build`: checks the content, then has Astro write the guide to `dist/`. Exit 1 and no new output on any problem, while another build is at work, and where the output can't be written. */
export function buildCommand(): Command {
  return new Command('build').description('Check the content and write the guide to dist/.').action(async () => {
    // Whatever the shell is set up for, this is the published guide: no drafts, and the policy in its pages. The
    // bundler takes variables of these names from the shell for its own.
    process.env.NODE_ENV = 'production';
    for (const name of ['DEV', 'PROD', 'MODE', 'SSR', 'SITE', 'BASE_URL', 'ASSETS_PREFIX']) delete process.env[name];
    // The bundler's allocator keeps what it has freed, a hundred megabytes and more, unless it is told to give it back.
    process.env.MIMALLOC_PURGE_DELAY ??= '0';
    try {
      loadLedger();
      // Here too, not only in Astro's hook, which puts lines of its own around a refusal.
      ensureWritable('dist', '.build');
      takeBuildLock('.build');
      // Loaded here alone: the other commands do without it, and are faster for that.
      const { build } = await import('astro');
      await build({ logLevel: 'warn' });
    } catch (error) {
      if (!(error instanceof ContentError)) throw outputFault(error, ['dist', '.build', '.astro']) ?? error;
      console.error(error.message.trim());
      process.exitCode = 1;
    }
  });
}
