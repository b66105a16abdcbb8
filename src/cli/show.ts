import type { Command } from 'commander';
import { ContentError, problemList } from '../content/read/problem-list.ts';
import { UsageError } from '../content/read/usage-error.ts';
import { nearest } from '../content/schema/suggest.ts';
import type { Ledger, PanelEntry, SessionEntry } from '../ledger/ledger.ts';
import { loadLedger } from '../ledger/load-ledger.ts';
import { panelJson } from '../site/show/panel-json.ts';
import { panelText } from '../site/show/panel-text-view.ts';
import { ledgerCommand } from './command.ts';
import { PROBLEM_CODE } from './exit-codes.ts';
import { sectionText, wrapped } from './text/lay-out.ts';

/** `show <panel…>`: panels' figures, flags, place, claims and prices as plain text. Exit codes as in its help. */
export function showCommand(): Command {
  return ledgerCommand('show', {
    does: 'Show panels’ figures with their intervals, flags, place, claims and prices.',
    more: `A panel is named by its folder in content/panels. Drafts are shown too.
† is in doubt, ‡ impossible as it stands: the flags say why.

--json prints one array, a panel each, with figures in full digits under the
names of data/panels.json.`,
    examples: [
      ['show kelpwright-gannet', 'its newest figures'],
      ['show fennimarsh-sedge --session 2026-11-10', 'those of an earlier session'],
      ['show kelpwright-gannet quennick-tope --json', 'two panels, for another program'],
    ],
    exits: {
      0: 'shown',
      [PROBLEM_CODE]: 'no such panel or session, or the content has a problem',
    },
  })
    .argument('<panel...>', 'names of panels')
    .option('--session <date>', 'the figures of the session of that day (YYYY-MM-DD), and not of the newest')
    .option('--json', 'print figures in full digits as JSON')
    .action((slugs: string[], { session, json = false }: { session?: string; json?: boolean }) => {
      try {
        const { ledger } = loadLedger({ drafts: true });
        const shown = slugs.map((slug) => {
          const panel = panelNamed(slug, ledger);
          return { panel, session: session === undefined ? panel.current : sessionOf(panel, session) };
        });
        if (json)
          console.log(
            JSON.stringify(
              shown.map((it) => panelJson(it.panel, ledger, it.session)),
              null,
              2,
            ),
          );
        else console.log(shown.map((it) => plainText(it.panel, ledger, it.session)).join('\n\n\n'));
      } catch (error) {
        if (!(error instanceof ContentError)) throw error;
        console.error(problemList(error.problems, 'nothing is shown'));
        process.exitCode = PROBLEM_CODE;
      }
    });
}

function plainText(panel: PanelEntry, ledger: Ledger, session: SessionEntry | undefined): string {
  const { title, lines, sections } = panelText(panel, ledger, session);
  return [[title, ...lines].map((it) => wrapped(it)).join('\n'), sectionText(sections)].join('\n\n');
}

/** @throws UsageError with the nearest name, where there is no panel of that one */
export function panelNamed(slug: string, { panels }: Pick<Ledger, 'panels'>): PanelEntry {
  const found = panels.get(slug);
  if (found) return found;
  const word = slug.toLowerCase();
  // The model alone will do to be found by, where one panel alone has it.
  const within = [...panels.keys()].filter((it) => it.includes(word));
  const near = within.length === 1 ? within[0] : nearest(slug, [...panels.keys()]);
  throw new UsageError(
    `no panel is called "${slug}"; ${near === undefined ? `there are: ${[...panels.keys()].join(', ')}` : `did you mean "${near}"?`}`,
  );
}

function sessionOf({ sessions, name }: PanelEntry, date: string): SessionEntry {
  const found = sessions.find((it) => it.date === date);
  if (found) return found;
  const days = sessions.map((it) => it.date).join(', ');
  throw new UsageError(
    `the ${name} has no session of ${date}; ${days === '' ? 'it was never on the bench' : `it has: ${days}`}`,
  );
}
