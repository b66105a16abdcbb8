import { existsSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { Command } from 'commander';
import { folderFiles, LARGEST_PACKAGE, type PackageFiles, zipFiles } from '../content/read/others/package-files.ts';
import { readPackage } from '../content/read/others/read-package.ts';
import { ContentError, problemList } from '../content/read/problem-list.ts';
import { UsageError } from '../content/read/usage-error.ts';
import { guideAgreement } from '../ledger/agreement.ts';
import { loadLedger } from '../ledger/load-ledger.ts';
import { type AgreementPanel, agreementView } from '../site/agreement/agreement-view.ts';
import { EN_MEANS, EN_MISSES, followingText } from '../site/agreement/agreement-words.ts';
import type { Section } from '../site/shared/told.ts';
import { ledgerCommand } from './command.ts';
import { PROBLEM_CODE } from './exit-codes.ts';
import { sectionText, wrapped } from './text/lay-out.ts';

interface Options {
  json?: boolean;
  all?: boolean;
  exitCode?: boolean;
}

/** `against <package>`: how far this guide's figures agree with another tester's. Exit codes as in its help. */
export function againstCommand(): Command {
  return ledgerCommand('against', {
    does: 'Hold this guide’s figures against another tester’s, model by model.',
    more: `The other guide’s data package is a folder or ZIP with datapackage.json and its
tables/, as every guide has it at /data/. Panels of the same maker and model are
held against each other: each shared figure with its difference, the E_n number
of the two intervals and, where they are apart, which of our own errors would
explain it. Prices are left out, and figures read at different distances.

To publish it as /agreement/, put the package into content/others/NAME and name
it in guide.yaml under agreement.

--json prints one object with other, lead, panels (each with apart, following, agreeing:
metric, name, own, other, difference, en, enValue, remark) and rest.`,
    examples: [
      ['against ~/downloads/salt-pier.zip', 'what they and we have both read'],
      ['against content/others/salt-pier --all', 'agreeing figures line by line too'],
    ],
    exits: {
      0: 'compared, however far they are apart',
      [PROBLEM_CODE]: 'the content or the package can’t be read;\nwith --exit-code: a figure is apart',
    },
  })
    .argument('<package>', 'folder or ZIP file of a data package')
    .option('--all', 'list figures that agree too')
    .option('--json', 'print the comparison as JSON')
    .option('--exit-code', 'end with 1 where a figure is apart')
    .action((path: string, { json = false, all = false, exitCode = false }: Options) => {
      try {
        const { ledger } = loadLedger();
        const read = readPackage(packageAt(path), path);
        if (!read.guide) throw new ContentError(read.problems);
        const view = agreementView(guideAgreement(ledger, read.guide), ledger.guide.currency);
        if (json) console.log(JSON.stringify(view, null, 2));
        else {
          const sections = view.panels.map((it) => panelSection(it, all));
          console.log(
            [
              wrapped(view.lead),
              ...(sections.length > 0 ? [sectionText(sections)] : []),
              ...view.rest.map((it) => wrapped(it)),
              ...(sections.length > 0 ? [wrapped(`${EN_MEANS} ${EN_MISSES}`)] : []),
            ].join('\n\n'),
          );
        }
        if (exitCode && view.panels.some((it) => it.apart.length > 0)) process.exitCode = PROBLEM_CODE;
      } catch (error) {
        if (!(error instanceof ContentError)) throw error;
        console.error(problemList(error.problems, 'nothing was compared'));
        process.exitCode = PROBLEM_CODE;
      }
    });
}

/** @throws UsageError where there is nothing to read */
function packageAt(path: string): PackageFiles {
  if (!existsSync(path)) throw new UsageError(`There is no ${path}. Name a folder or ZIP file with datapackage.json.`);
  const found = statSync(path);
  if (found.isDirectory()) {
    // A built guide has it one folder down.
    const inside = join(path, 'data');
    return folderFiles(!existsSync(join(path, 'datapackage.json')) && existsSync(inside) ? inside : path);
  }
  if (found.size > LARGEST_PACKAGE) throw new UsageError(`${path} is larger than any package that is read.`);
  try {
    return zipFiles(readFileSync(path));
  } catch (error) {
    throw new UsageError(`${path} is no ZIP archive that can be read: ${(error as Error).message}.`);
  }
}

function panelSection(
  { name, days, says, apart, following, explained, agreeing, left }: AgreementPanel,
  isAll: boolean,
): Section {
  const [largest] = agreeing;
  return {
    title: `${name}, ${days}`,
    lead: says,
    rows: [
      ...apart.map((it) => ({
        name: it.name,
        text: `${it.own} here, ${it.other} there: ${it.difference}, E_n ${it.en}`,
        ...(it.remark && { todo: it.remark }),
      })),
      ...explained.map((text) => ({ name: '', text })),
      ...(following.length > 0 ? [{ name: '', text: followingText(following) }] : []),
      ...(isAll
        ? agreeing.map((it) => ({ name: it.name, text: `${it.own}, ${it.other}: E_n ${it.en}` }))
        : largest
          ? [{ name: '', text: `Of those that agree, the farthest: ${largest.name.toLowerCase()}, E_n ${largest.en}.` }]
          : []),
      ...(left ? [{ name: '', text: left }] : []),
    ],
  };
}
