import type { Command } from 'commander';
import { calledAs } from '../content/read/called-as.ts';
import { UsageError } from '../content/read/usage-error.ts';
import { nearest } from '../content/schema/suggest.ts';
import { loadLedger } from '../ledger/load-ledger.ts';
import { containerFile } from '../site/serving/container-file.ts';
import { nginxFile } from '../site/serving/nginx-file.ts';
import { workflowFile } from '../site/serving/workflow-file.ts';
import { sitePath } from '../site/shared/site-address.ts';
import { ledgerCommand } from './command.ts';
import { PROBLEM_CODE } from './exit-codes.ts';

/** What can be printed, with what it is for, and the text made for a guide's address. */
const RECIPES: Readonly<Record<string, { does: string; text(site: string): string }>> = {
  nginx: { does: 'a server of your own: headers, compression, caches', text: (site) => nginxFile(site) },
  container: { does: 'the same in a container', text: (site) => containerFile(sitePath(site)) },
  workflow: { does: 'checks and builds at every change of the repository', text: () => workflowFile(calledAs()) },
};

/** `recipe [name]`: files with which the guide is published, made for its address. */
export function recipeCommand(): Command {
  return ledgerCommand('recipe', {
    does: 'Print a file with which the guide is published: nginx, container, workflow.',
    more: `Each is made for the address that guide.yaml names as site, and is yours to
change. A host that takes static files needs none of them: copy dist/ there.`,
    examples: [
      ['recipe', 'list them'],
      ['recipe nginx > nginx.conf', 'what nginx needs, with the content security policy'],
      ['recipe container > Containerfile', 'a container of nginx and dist/'],
    ],
    exits: { 0: 'printed', [PROBLEM_CODE]: 'there is no such recipe; or the content has a problem' },
  })
    .argument('[name]', 'which one')
    .action((name?: string) => {
      if (name === undefined) {
        const lines = Object.entries(RECIPES).map(([id, { does }]) => `${id.padEnd(12)}${does}`);
        console.log(lines.join('\n'));
        return;
      }
      const recipe = Object.hasOwn(RECIPES, name) ? RECIPES[name] : undefined;
      if (!recipe) {
        const near = nearest(name, Object.keys(RECIPES));
        throw new UsageError(
          `There is no recipe "${name}"${near ? `; did you mean "${near}"?` : `; \`${calledAs()} recipe\` lists them.`}`,
        );
      }
      console.log(recipe.text(loadLedger().ledger.guide.site).trimEnd());
    });
}
