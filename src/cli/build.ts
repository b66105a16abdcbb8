import type { Command } from 'commander';
import { addressState, ensureAddresses } from '../build/address-record.ts';
import { addressLine, buildEnding, earlierRanks } from '../build/build-ending.ts';
import { buildGuide } from '../build/build-guide.ts';
import { takeBuildLock } from '../build/build-lock.ts';
import { comparisonsOf } from '../build/kept-comparisons.ts';
import { keptContent } from '../build/kept-content.ts';
import { keepRanks, keptRanks } from '../build/kept-ranks.ts';
import { ensureWritable, outputFault } from '../build/output-fault.ts';
import { ensurePhotos } from '../build/photos/photo-problems.ts';
import { KEPT } from '../build/places.ts';
import { PageFault } from '../build/program/page-fault.ts';
import { clearStage, endProgress, startProgress, tellStage } from '../build/progress.ts';
import { siteFolder } from '../build/site-folder.ts';
import { ContentError } from '../content/read/problem-list.ts';
import { contentFolder, loadLedger } from '../ledger/load-ledger.ts';
import { tellWarnings } from '../site/warnings/tell-warnings.ts';
import { hasImpossible } from '../site/warnings/warning-list.ts';
import { ledgerCommand } from './command.ts';
import { IMPOSSIBLE_CODE, PROBLEM_CODE } from './exit-codes.ts';
import { rowsText, wrapped } from './text/lay-out.ts';

interface BuildOptions {
  strict?: boolean;
  fresh?: boolean;
  record?: boolean;
  out?: string;
}

const STAGES = { read: 'Reading and checking the content', work: 'Working out the light of every session' } as const;

/** `build`: checks the content, then has Astro write the guide to `dist/`. Exit codes as in its help. */
export function buildCommand(): Command {
  const command = ledgerCommand('build', {
    does: 'Check the content and write the guide to dist/.',
    more: `What is impossible or doubtful is printed, and stops nothing. The last lines say
what was built, and what changed in rank since the guide that lay there. On a
terminal a line tells how far it is, once it takes longer.

A build that would drop an address that content/addresses.txt keeps stops, and
says for each what to do: lead it on, or withdraw it with a reason.`,
    examples: [
      ['build', 'write the guide'],
      ['build --strict', 'before you publish: not while something can’t be right'],
      ['build --record', 'and keep its addresses: no later build drops one unseen'],
      ['build --out /srv/guide', 'write it to another place, on whatever disk'],
    ],
    exits: {
      0: 'built',
      [PROBLEM_CODE]:
        'a problem, another build at work, or an output that can’t be written:\nnothing was built, and the guide that lay there is as it was',
      [IMPOSSIBLE_CODE]: 'with --strict: something can’t be right as it stands; nothing was built',
    },
  })
    .option('--out <folder>', 'write it there (default: what LEDGER_DIST says, or dist)')
    .option('--strict', 'build nothing while something is impossible as it stands')
    .option('--record', 'add the addresses of this guide to content/addresses.txt, as published')
    .option('--fresh', 'render every page anew, also where nothing has changed');
  return command.action(async ({ strict = false, fresh = false, record = false, out }: BuildOptions) => {
    const started = performance.now();
    if (out !== undefined) process.env.LEDGER_DIST = out;
    if (fresh) process.env.LEDGER_FRESH = '1';
    // Whatever the shell is set up for, this is the published guide: no drafts, and the policy in its pages. The
    // bundler takes variables of these names from the shell for its own.
    process.env.NODE_ENV = 'production';
    for (const name of ['DEV', 'PROD', 'MODE', 'SSR', 'SITE', 'BASE_URL', 'ASSETS_PREFIX']) delete process.env[name];
    // The bundler's allocator keeps what it has freed, a hundred megabytes and more, unless it is told to give it back.
    process.env.MIMALLOC_PURGE_DELAY ??= '0';
    try {
      startProgress();
      const kept = fresh ? undefined : { files: keptContent(KEPT), comparisons: comparisonsOf(KEPT) };
      const loaded = loadLedger({ onStage: (stage) => tellStage(STAGES[stage], true), ...kept });
      clearStage();
      ensureAddresses(loaded, contentFolder());
      // Here too, not only in Astro's hook, which puts lines of its own around a refusal.
      ensureWritable(siteFolder(), '.build');
      takeBuildLock('.build');
      kept?.files.keep();
      kept?.comparisons.keep();
      const warnings = tellWarnings(loaded);
      if (strict && hasImpossible(warnings)) {
        console.error('Something is impossible as it stands; nothing was built.');
        process.exitCode = IMPOSSIBLE_CODE;
        return;
      }
      const earlier = keptRanks(KEPT, siteFolder()) ?? earlierRanks(siteFolder());
      tellStage('Photos');
      await ensurePhotos(loaded);
      await buildGuide(loaded);
      endProgress();
      keepRanks(KEPT, siteFolder(), loaded.ledger);
      const seconds = (performance.now() - started) / 1000;
      const { lines, changes } = buildEnding(loaded, { earlier, warnings, folder: siteFolder(), seconds });
      const addresses = addressLine(addressState(loaded, contentFolder(), record));
      console.log(
        [...[...lines, ...addresses].map((it) => wrapped(it)), ...(changes.length > 0 ? [rowsText(changes)] : [])].join(
          '\n',
        ),
      );
    } catch (error) {
      endProgress();
      if (error instanceof PageFault) {
        console.error(`${error.message}\nNothing was built.\n\n${error.trace}`);
        process.exitCode = PROBLEM_CODE;
        return;
      }
      if (!(error instanceof ContentError)) throw outputFault(error, [siteFolder(), '.build', '.astro']) ?? error;
      console.error(error.message.trim());
      process.exitCode = PROBLEM_CODE;
    }
  });
}
