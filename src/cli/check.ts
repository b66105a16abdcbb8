import type { Command } from 'commander';
import { addressProblems } from '../build/address-record.ts';
import { tryEditorSchemas } from '../build/editor-schemas.ts';
import { photoProblems } from '../build/photos/photo-problems.ts';
import { calledAs } from '../content/read/called-as.ts';
import type { Content } from '../content/read/content.ts';
import { ContentError, counted, problemList } from '../content/read/problem-list.ts';
import type { Problem } from '../content/schema/problem.ts';
import { NO_LONGER_READ } from '../content/schema/replaced.ts';
import { contentFolder, contentIn, type Loaded, loadLedger } from '../ledger/load-ledger.ts';
import { linkWarnings } from '../site/warnings/link-warnings.ts';
import type { Warning } from '../site/warnings/warning.ts';
import { hasImpossible, problemJson, warningCount, warningJson, warningList } from '../site/warnings/warning-list.ts';
import { warningsOf, worstFirst } from '../site/warnings/warnings.ts';
import { ledgerCommand } from './command.ts';
import { IMPOSSIBLE_CODE, PROBLEM_CODE } from './exit-codes.ts';

/** `check [folder]`: every problem of the content, or else everything odd in it. Exit codes as in its help. */
export function checkCommand(): Command {
  return ledgerCommand('check', {
    does: 'List every problem in the content files, and all that is odd.',
    more: `Problems stop a build; what is impossible, doubtful or worth a note does not, and
is listed worst first. Drafts are looked at too. Figures can only be looked at
where there is no problem left. Links within the guide are followed to the part
of the page; those to other sites only with --links.

--json prints one array; each entry has severity (problem, impossible, doubt,
note), file, line, field, check, found, wanted, hint and figures (metric ids).
What does not apply is null, or an empty text or list.`,
    examples: [
      ['check', 'look at the guide’s own content'],
      ['check --links', 'and ask whether links to other sites answer'],
      ['check ../other/content --json', 'look at another folder, for a program'],
    ],
    exits: {
      0: 'nothing, or doubts and notes only',
      [PROBLEM_CODE]: 'at least one problem',
      [IMPOSSIBLE_CODE]: 'no problem, but something that can’t be right as it stands',
    },
  })
    .argument('[folder]', 'the content folder', contentFolder())
    .option('--links', 'ask whether links to other sites answer too')
    .option('--json', 'print the list as JSON')
    .action(async (given: string, { json = false, links = false }: { json?: boolean; links?: boolean }) => {
      const folder = contentIn(given);
      tryEditorSchemas(folder);
      let loaded: Loaded;
      try {
        loaded = loadLedger({ folder, drafts: true });
        const problems = [...(await photoProblems(loaded)), ...addressProblems(loaded, folder)];
        if (problems.length > 0) throw new ContentError(problems);
      } catch (error) {
        if (!(error instanceof ContentError)) throw error;
        if (json) printJson(error.problems.map(problemJson));
        else console.error(problemList(error.problems) + upgradeHint(error.problems));
        process.exitCode = PROBLEM_CODE;
        return;
      }
      const asked = links ? await linkWarnings(loaded) : [];
      const warnings = worstFirst([...warningsOf(loaded), ...asked]);
      if (json) printJson(warnings.map(warningJson));
      else console.log(report(folder, loaded.content, warnings));
      if (hasImpossible(warnings)) process.exitCode = IMPOSSIBLE_CODE;
    });
}

/** Where former fields stand, who has not followed every version need not mend them by hand. */
function upgradeHint(problems: readonly Problem[]): string {
  if (!problems.some((it) => it.found.endsWith(NO_LONGER_READ))) return '';
  return `\n\nSome of this was written for an earlier version: \`${calledAs()} upgrade\` shows what mends it.`;
}

function report(
  folder: string,
  { panels, methods, instruments, standards, makers }: Content,
  warnings: readonly Warning[],
): string {
  const kept = standards.size > 0 ? `, ${counted(standards.size, 'check standard')}` : '';
  const size = `${counted(panels.size, 'panel')}, ${counted(makers.size, 'maker')}, ${counted(instruments.size, 'instrument')}${kept}, ${counted(methods.size, 'method')}`;
  if (warnings.length === 0) return `No problems in ${folder}, and nothing odd: ${size}.`;
  return `${warningList(warnings)}\n\n${warningCount(warnings)} (${folder}: ${size}).`;
}

function printJson(findings: readonly unknown[]): void {
  console.log(JSON.stringify(findings, null, 2));
}
