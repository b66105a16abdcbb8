import type { Command } from 'commander';
import { ContentError, problemList } from '../content/read/problem-list.ts';
import { loadLedger } from '../ledger/load-ledger.ts';
import { CALIBRATION_DUE_DAYS, OLD_SESSION_YEARS, STALE_PRICE_DAYS } from '../measure/thresholds.ts';
import { linkAnswers } from '../site/stale/link-answers.ts';
import { outsideLinks, staleLinks } from '../site/stale/outside-links.ts';
import { inOrder, staleItems } from '../site/stale/stale-items.ts';
import { staleLead, staleSections } from '../site/stale/stale-words.ts';
import { ledgerCommand } from './command.ts';
import { PROBLEM_CODE } from './exit-codes.ts';
import { sectionText, wrapped } from './text/lay-out.ts';

interface Options {
  links?: boolean;
  json?: boolean;
  exitCode?: boolean;
}

/** `stale`: what in the content was true when it was written, and may not be any more. Exit codes as in its help. */
export function staleCommand(): Command {
  return ledgerCommand('stale', {
    does: 'List what has gone stale, or soon will: prices, calibrations, sessions, claims.',
    more: `Prices over ${STALE_PRICE_DAYS} days; calibrations that have run out or do within ${CALIBRATION_DUE_DAYS} days;
panels last read ${OLD_SESSION_YEARS} years ago, or under an earlier bench procedure; claims,
exchange rates and tariffs that are old. Each with its place and what to do.
Outside links are asked only with --links, four at a time.

--json prints one array; each entry has kind (price, calibration, session,
procedure, claims, rate, tariff, link), state (past, soon), day (or null), file,
line, field, name, text and todo.`,
    examples: [
      ['stale', 'what to look up, read or have calibrated'],
      ['stale --links', 'and ask whether outside links answer'],
    ],
    exits: {
      0: 'listed, whatever has gone stale',
      [PROBLEM_CODE]: 'the content has a problem; with --exit-code: something is past its time',
    },
  })
    .option('--links', 'ask whether outside links answer')
    .option('--json', 'print the list as JSON')
    .option('--exit-code', 'end with 1 where something is past its time')
    .action(async ({ links = false, json = false, exitCode = false }: Options) => {
      try {
        const loaded = loadLedger();
        const outside = links ? outsideLinks(loaded) : [];
        const answers = await linkAnswers(outside.map((it) => it.address));
        const items = inOrder([...staleItems(loaded), ...staleLinks(outside, answers)]);
        if (json) console.log(JSON.stringify(items, null, 2));
        else {
          const lead = staleLead(items, links ? { lookedAt: answers.size } : {});
          console.log([wrapped(lead), ...(items.length > 0 ? [sectionText(staleSections(items))] : [])].join('\n\n'));
        }
        if (exitCode && items.some((it) => it.state === 'past')) process.exitCode = PROBLEM_CODE;
      } catch (error) {
        if (!(error instanceof ContentError)) throw error;
        console.error(problemList(error.problems, 'nothing was looked at'));
        process.exitCode = PROBLEM_CODE;
      }
    });
}
