import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Command } from 'commander';
import { calledAs } from '../content/read/called-as.ts';
import { productTexts, TEXTS, textName } from '../content/read/product-texts.ts';
import { UsageError } from '../content/read/usage-error.ts';
import { valueAt } from '../content/schema/block.ts';
import { nearest } from '../content/schema/suggest.ts';
import { contentFolder } from '../ledger/load-ledger.ts';
import { ledgerCommand } from './command.ts';
import { PROBLEM_CODE } from './exit-codes.ts';
import { writeNew } from './files/write-new.ts';

interface Text {
  id: string;
  /** Below the content folder. */
  name: string;
  /** The product's file. */
  path: string;
  edition: number;
}

/** `text [name]`: the product's texts, and a copy of one to be changed. */
export function textCommand(): Command {
  return ledgerCommand('text', {
    does: 'List the texts that come with the program, or copy one to make it your own.',
    more: `A copy takes the place of the program’s text in your guide. It says which edition
it stands for, and check gives a note when the program’s has moved on.`,
    examples: [
      ['text', 'list them all, and which are yours'],
      ['text cautions', 'copy the page of cautions into the content folder'],
    ],
    exits: { 0: 'listed or copied', [PROBLEM_CODE]: 'there is no such text, or you have one of your own already' },
  })
    .argument('[name]', 'name of a text, as it is listed')
    .action((name?: string) => {
      const folder = contentFolder();
      if (name === undefined) {
        console.log(
          allTexts()
            .map((it) => line(it, folder))
            .join('\n'),
        );
        return;
      }
      const found = allTexts().find((it) => it.id === name);
      if (!found) {
        const near = nearest(
          name,
          allTexts().map((it) => it.id),
        );
        throw new UsageError(
          `There is no text "${name}"${near ? `; did you mean "${near}"?` : `; \`${calledAs()} text\` lists them.`}`,
        );
      }
      const text = readFileSync(found.path, 'utf8').replace(/^edition: .*$/m, `standsFor: ${found.edition}`);
      writeNew(folder, new Map([[found.name, text]]));
      console.log(
        `Wrote ${join(folder, found.name)}, for edition ${found.edition}. It stands in your guide from now on; delete it to have the program’s again.`,
      );
    });
}

function allTexts(): Text[] {
  return TEXTS.flatMap((collection) =>
    [...productTexts(collection)].flatMap(([id, { source }]) =>
      source
        ? [
            {
              id,
              name: textName(collection, id),
              path: source.path,
              edition: Number(valueAt(source.data, ['edition'])),
            },
          ]
        : [],
    ),
  );
}

function line({ id, name, edition }: Text, folder: string): string {
  return `${id.padEnd(26)} edition ${edition}${existsSync(join(folder, name)) ? `, yours: ${join(folder, name)}` : ''}`;
}
