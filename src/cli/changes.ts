import { type Command, Option } from 'commander';
import { siteFolder } from '../build/site-folder.ts';
import { ContentError, problemList } from '../content/read/problem-list.ts';
import { contentFolder, loadLedger } from '../ledger/load-ledger.ts';
import { changesOf } from '../site/changes/changes-of.ts';
import { changesLead, changesSections } from '../site/changes/changes-words.ts';
import { isUnchanged } from '../site/changes/compare-states.ts';
import { usualAgainst } from '../site/changes/published-side.ts';
import { ledgerCommand } from './command.ts';
import { PROBLEM_CODE } from './exit-codes.ts';
import { sectionText, wrapped } from './text/lay-out.ts';
import { sectionMarkdown } from './text/markdown.ts';

interface Options {
  against?: string;
  format: 'text' | 'markdown' | 'json';
  all?: boolean;
  exitCode?: boolean;
}

/** `changes`: what differs between the content and what was published last. Exit codes as in its help. */
export function changesCommand(): Command {
  return ledgerCommand('changes', {
    does: 'Tell what would change for readers since the guide was published.',
    more: `What a build of the content as it is would change: figures that moved by more
than their rounding, ranks, ties, prices, flags, claims, pages. A revision is
worked out by today’s methods and for today: what differs is what was written.
A panels.json tells of the day and of the methods that it was made by.`,
    examples: [
      ['changes', 'against the guide in dist, or else the newest revision'],
      ['changes --against HEAD~1', 'against an earlier revision of the content'],
      ['changes --against https://panels.example/ --format markdown', 'against what readers have now'],
    ],
    exits: {
      0: 'compared, whatever has changed',
      [PROBLEM_CODE]:
        'the content has a problem, or there is nothing to compare with;\nwith --exit-code: something has changed',
    },
  })
    .option('--against <what>', 'a built folder, a panels.json, its address, or a git revision (default: dist or HEAD)')
    .addOption(new Option('--format <format>', 'how to print it').choices(['text', 'markdown', 'json']).default('text'))
    .option('--all', 'list every figure that moved, not the weightiest alone')
    .option('--exit-code', 'end with 1 where something has changed, as diff does')
    .action(async ({ against, format, all = false, exitCode = false }: Options) => {
      try {
        const loaded = loadLedger();
        const found = await changesOf(against ?? usualAgainst(siteFolder()), { folder: contentFolder(), loaded });
        const words = { against: found.against, guide: loaded.ledger.guide, isAll: all };
        const lead = changesLead(found.changes, words);
        if (format === 'json') console.log(JSON.stringify(found, jsonValue, 2));
        else {
          const sections = changesSections(found.changes, words);
          if (format === 'markdown') console.log(sectionMarkdown('What changes', lead, sections));
          else console.log([wrapped(lead), ...(sections.length > 0 ? [sectionText(sections)] : [])].join('\n\n'));
        }
        if (exitCode && !isUnchanged(found.changes)) process.exitCode = PROBLEM_CODE;
      } catch (error) {
        if (!(error instanceof ContentError)) throw error;
        console.error(problemList(error.problems, 'nothing was compared'));
        process.exitCode = PROBLEM_CODE;
      }
    });
}

/** JSON knows no infinite number: the weight of a figure that came or went is null. */
function jsonValue(_key: string, it: unknown): unknown {
  return it === Number.POSITIVE_INFINITY ? null : it;
}
